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
    "On one keyboard a solo has its own colour only in a half of divided stops; else one colour serves both, and the contrast is lost.",
  why: "Whoever plays should know what this organ cannot give before looking for it.",
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
    if (halves.length > 0 || heard.stops.length === 0) return null;
    return {
      text: `One keyboard gives the ${who} and the other hand the same sound of ${named(heard.stops)}: the contrast of colour is lost.`,
      remedy: "Let the tune lie on top, and play the other notes short and light.",
    };
  },
  examples: {
    speaks: [
      {
        organ: "Manual: Gedackt 8, Flöte 4",
        plays: "melody on Manual, accompaniment on Manual",
        says: "One keyboard gives the melody and the other hand the same sound of Gedackt 8 and Flöte 4: the contrast of colour is lost.",
      },
      {
        organ: "Órgano: Violón 8 bass, Corneta V treble",
        plays: "melody on Órgano, accompaniment on Órgano",
        ranges: { melody: "C4-A5", accompaniment: "C3-B3" },
        says: "The melody has the treble half with Corneta V treble, from C4 up.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Gedackt 8 | Oberwerk: Nasat 2 2/3, Gedackt 8",
        plays: "melody on Oberwerk, accompaniment on Hauptwerk",
      },
      { organ: "Manual: Gedackt 8, Flöte 4", plays: "plenum on Manual" },
    ],
  },
};
