import { pedalsFor } from "../console/range.ts";
import { partName } from "./balance.ts";
import type { PlacingRule } from "./rule.ts";

const IN_THE_HANDS = -300;

export const bassGoesToTheHands: PlacingRule = {
  id: "bass-goes-to-the-hands",
  conventions: [12, 43],
  reads: "placing",
  statement:
    "Where there is no pedal, or one of few keys, the left hand takes what the feet would play, and loses its freedom.",
  why: "Small and old organs have no pedal, or one too short to walk on.",
  source: "common practice",
  severity: "note",
  weigh: ({ part, keyboard }) => (part.hands === "feet" && keyboard.kind !== "pedal" ? IN_THE_HANDS : 0),
  words: (context) => {
    const [pedal] = pedalsFor(context.instrument, context.part);
    const who = partName(context);
    if (pedal) {
      const text = `The ${who} of the feet lies on the ${context.keyboard.name}.`;
      return { text, remedy: `Play it on the ${pedal.name}.` };
    }
    const short = context.instrument.divisions.find((each) => each.kind === "pedal");
    const why = short ? `The ${short.name} is too short for the ${who}` : "There is no pedal";
    return {
      text: `${why}: the left hand plays ${short ? "it" : `the ${who}`} on the ${context.keyboard.name}.`,
      remedy: "Leave out inner notes that the hand cannot reach.",
    };
  },
  examples: {
    speaks: [
      {
        organ: "Great: Open Diapason 8, Principal 4",
        plays: "plenum on Great, bass on Great",
        says: "There is no pedal: the left hand plays the bass on the Great.",
      },
      {
        organ: "Hauptwerk: Gedackt 8 | Pedal: Subbass 16",
        plays: "bass on Hauptwerk",
        says: "The bass of the feet lies on the Hauptwerk.",
      },
    ],
    silent: [
      { organ: "Hauptwerk: Gedackt 8 | Pedal: Subbass 16", plays: "bass on Pedal" },
      { organ: "Hauptwerk: Gedackt 8", plays: "left-hand bass on Hauptwerk" },
    ],
  },
};
