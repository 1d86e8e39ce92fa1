import { partName } from "./balance.ts";
import type { PartContext, PlacingRule } from "./rule.ts";

const AWAY = -250;
/** Chords an octave away are a makeshift; a line there is a colour. */
const CHORDS_AWAY = -500;
const RECIPE_LEFT = -300;

const away = ({ part: { role } }: PartContext): number =>
  role === "plenum" || role === "accompaniment" ? CHORDS_AWAY : AWAY;

const askedFor = (context: PartContext): -1 | 0 | 1 => context.prescribed?.octave ?? 0;
const direction = (octave: -1 | 0 | 1): string =>
  octave < 0 ? "an octave lower than written" : octave > 0 ? "an octave higher than written" : "as written";

export const octaveShift: PlacingRule = {
  id: "octave-shift",
  conventions: [44],
  reads: "placing",
  statement: "A part is played where it is written, or an octave away where a recipe or a missing pitch asks for it.",
  why: "It makes a missing 16 or 2 of an 8, but all stops of the part move along, and the hands may meet.",
  source: "common practice",
  severity: "note",
  weigh: (context) => {
    const asked = askedFor(context);
    if (context.octave === asked) return 0;
    return (asked !== 0 ? RECIPE_LEFT : 0) + (context.octave !== 0 ? away(context) : 0);
  },
  words: (context) => {
    const asked = askedFor(context);
    const who = `The ${partName(context)} on the ${context.keyboard.name}`;
    if (asked !== 0) {
      return {
        text: `${who} is played ${direction(context.octave)}; the recipe has it ${direction(asked)}.`,
        remedy: `Play it ${direction(asked)}.`,
      };
    }
    return {
      text: `${who} is played ${direction(context.octave)}: all its stops move along.`,
      remedy:
        context.octave < 0
          ? "Mind the lowest keys, and that the hands do not meet."
          : "Mind the highest keys, and that the hands do not meet.",
    };
  },
  examples: {
    speaks: [
      {
        organ: "Oberwerk: Flöte 4",
        plays: "melody on Oberwerk",
        octaves: { melody: -1 },
        says: "The melody on the Oberwerk is played an octave lower than written: all its stops move along.",
      },
      {
        organ: "Hauptwerk: Bordun 16",
        plays: "plenum on Hauptwerk",
        octaves: { plenum: 1 },
        ranges: { plenum: "C3-C5" },
        says: "The chorus on the Hauptwerk is played an octave higher than written: all its stops move along.",
      },
    ],
    silent: [
      { organ: "Oberwerk: Flöte 4", plays: "melody on Oberwerk" },
      { organ: "Hauptwerk: Bordun 16, Principal 8", plays: "plenum on Hauptwerk", octaves: { plenum: 0 } },
    ],
  },
};
