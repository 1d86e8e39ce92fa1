import { footOf } from "../pitch/foot.ts";
import { keyText } from "../pitch/key.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { partName } from "./balance.ts";
import { ofKinds, soundingAt } from "./naming.ts";
import type { AdviceRule, HeardStop, PartContext } from "./rule.ts";

/** Stops up to which an organ counts as small. */
const SMALL = 8;

const smallOnes = new WeakMap<Instrument, boolean>();
function isSmall(instrument: Instrument): boolean {
  let known = smallOnes.get(instrument);
  if (known === undefined) {
    const stops = instrument.divisions.flatMap((division) => division.stops);
    const speaking = stops.filter(({ off, family }) => !off && family !== "effect" && family !== "percussion");
    known = speaking.length <= SMALL;
    smallOnes.set(instrument, known);
  }
  return known;
}

/** Whether the part can move an octave on its keyboard. */
const hasRoom = (context: PartContext, octave: -1 | 1): boolean =>
  octave < 0
    ? context.part.low - 12 >= context.keyboard.compass.low
    : context.part.high + 12 <= context.keyboard.compass.high;

const own = (stops: readonly HeardStop[], context: PartContext, feet: number): readonly HeardStop[] =>
  soundingAt(ofKinds(stops, KIND_GROUPS.foundation), footOf(feet), context).filter(
    (each) => each.stop.division === context.keyboard.name,
  );

export const smallOrganWays: AdviceRule = {
  id: "small-organ-ways",
  conventions: [46],
  reads: "advice",
  statement: "On a small organ a 4 an octave lower is a second 8, and an 8 an octave higher a second 4.",
  why: "Few stops give more colours than there are knobs, for a line that has room on the keyboard.",
  source: "common practice",
  severity: "note",
  advise: (_sound, context, heard) => {
    const { role, hands } = context.part;
    if (
      hands === "feet" ||
      (role !== "melody" && role !== "voice") ||
      context.octave !== 0 ||
      !isSmall(context.instrument)
    )
      return null;
    const eights = own(heard.stops, context, 8);
    const [four] = own(heard.undrawn, context, 4);
    const [eight] = eights;
    // A line on one 8 alone has not been given a colour of its own yet.
    if (eight && four && heard.stops.length === 1 && hasRoom(context, -1)) {
      return {
        text: `${four.label} alone, played an octave lower, gives the ${partName(context)} another 8 than ${eight.label}.`,
        remedy: `From ${keyText(context.part.low - 12)} up on the ${context.keyboard.name}.`,
        stops: [four.stop.id],
      };
    }
    const [higher] = own(heard.undrawn, context, 8);
    if (!eight && own(heard.stops, context, 4).length > 0 && higher && hasRoom(context, 1)) {
      return {
        text: `${higher.label} alone, played an octave higher, gives the ${partName(context)} another 4.`,
        remedy: `Up to ${keyText(context.part.high + 12)} on the ${context.keyboard.name}.`,
        stops: [higher.stop.id],
      };
    }
    return null;
  },
  examples: {
    speaks: [
      {
        organ: "Manual: Gedackt 8 (Flöte 4)",
        plays: "melody on Manual",
        says: "Flöte 4 alone, played an octave lower, gives the melody another 8 than Gedackt 8.",
      },
      {
        organ: "Manual: Flöte 4 (Gedackt 8)",
        plays: "melody on Manual",
        ranges: { melody: "C4-F5" },
        says: "Gedackt 8 alone, played an octave higher, gives the melody another 4.",
      },
    ],
    silent: [
      { organ: "Manual: Gedackt 8, Flöte 4", plays: "melody on Manual" },
      { organ: "Manual: Gedackt 8 (Flöte 4)", plays: "plenum on Manual" },
    ],
  },
};
