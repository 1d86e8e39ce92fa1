import { keyText } from "../pitch/key.ts";
import { hasOneManual, partName } from "./balance.ts";
import { idsOf, named } from "./naming.ts";
import type { AdviceRule, PartContext } from "./rule.ts";

/** The part for whose sake a second keyboard is wanted. */
const leads = (context: PartContext): boolean => context.part.role === "melody" && context.part.hands !== "feet";

export const oneKeyboardTwoColours: AdviceRule = {
  id: "one-keyboard-two-colours",
  conventions: [30],
  reads: "advice",
  statement:
    "On one keyboard a solo has a colour of its own in the treble half of divided stops, down to the dividing key.",
  why: "Below that key the other half sounds, and the other hand must not come above it.",
  source: "correa-1626",
  severity: "note",
  advise: (_sound, context, heard) => {
    if (!leads(context) || !hasOneManual(context.instrument) || context.section.roles.size < 2) return null;
    const halves = heard.stops.filter((each) => each.stop.half === "treble");
    const [first] = halves;
    const who = partName(context);
    if (first && context.part.low >= first.stop.from) {
      return {
        text: `The ${who} has the treble half with ${named(halves)}, from ${keyText(first.stop.from)} up.`,
        remedy: `Keep the other hand below ${keyText(first.stop.from)}.`,
        stops: idsOf(halves),
      };
    }
    return null;
  },
  examples: {
    speaks: [
      {
        organ: "Órgano: Violón 8 bass, Corneta V treble",
        plays: "melody on Órgano, accompaniment on Órgano",
        ranges: { melody: "C4-A5", accompaniment: "C3-B3" },
        says: "The melody has the treble half with Corneta V treble, from C4 up.",
      },
      {
        organ: "Manual: Gedackt 8 bass, Gedackt 8 treble, Flöte 4 bass, Nasat 2 2/3 treble, Terz 1 3/5 treble",
        plays: "melody on Manual, accompaniment on Manual",
        ranges: { melody: "C4-G5", accompaniment: "C3-A3" },
        says: "The melody has the treble half with Gedackt 8 treble, Nasat 2 2/3 treble and Terz 1 3/5 treble, from C4 up.",
      },
    ],
    silent: [
      { organ: "Manual: Gedackt 8, Flöte 4", plays: "melody on Manual, accompaniment on Manual" },
      {
        organ: "Hauptwerk: Gedackt 8 | Oberwerk: Nasat 2 2/3, Gedackt 8",
        plays: "melody on Oberwerk, accompaniment on Hauptwerk",
      },
      { organ: "Manual: Gedackt 8, Flöte 4", plays: "plenum on Manual" },
    ],
  },
};
