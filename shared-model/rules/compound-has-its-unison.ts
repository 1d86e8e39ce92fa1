import { footOf } from "../pitch/foot.ts";
import { agree, draw, idsOf, named, ofKinds, The, the, undrawnAt } from "./naming.ts";
import type { PartRule } from "./rule.ts";

export const compoundHasItsUnison: PartRule = {
  id: "compound-has-its-unison",
  conventions: [5],
  reads: "part",
  statement: "A Cornet or Sesquialtera without an 8' rank of its own has an 8' drawn with it.",
  why: "A Cornet of four ranks lacks its 8', one of three its 8' and one more: alone it sounds a fifth or a third.",
  source: "bedos-1766-pipes",
  severity: "error",
  // A recipe that says "Cornet" means one that is complete.
  yieldsToPrescription: false,
  applies: (context) => context.part.role !== "bass",
  most: () => 0,
  forbids: (sound) => sound.cornets + sound.tierceCompounds > 0 && (sound.mutation8 & ~sound.cover8) !== 0,
  weigh: () => 0,
  atMost: (now, all) => (now.cornets + now.tierceCompounds > 0 && (now.mutation8 & ~all.cover8) !== 0 ? null : 0),
  words: (_sound, context, heard) => {
    const compounds = ofKinds(heard.stops, ["sesquialtera", "tertian", "cornet"]);
    return {
      text: `${named(compounds)} on ${the(context)} ${agree(compounds, "has", "have")} no 8' of ${agree(compounds, "its", "their")} own, and no other stop sounds one.`,
      remedy: draw(
        undrawnAt(heard, footOf(8), context, ["stopped-flute", "open-flute", "harmonic-flute", "principal"]),
        `${The(context)} has no 8' for this part.`,
      ),
      stops: idsOf(compounds),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Swell: Cornet III from C4 (Stopped Diapason 8)",
        plays: "melody on Swell",
        says: "Cornet III on the Swell has no 8' of its own, and no other stop sounds one.",
      },
      {
        organ: "Oberwerk: Flöte 4, Cornet III from C4 (Gedackt 8)",
        plays: "melody on Oberwerk",
        says: "Cornet III on the Oberwerk has no 8' of its own, and no other stop sounds one.",
      },
    ],
    silent: [
      { organ: "Récit: Cornet V from C4", plays: "melody on Récit" },
      { organ: "Swell: Cornet III from C4, Stopped Diapason 8", plays: "melody on Swell" },
      { organ: "Oberwerk: Gedackt 8, Sesquialtera II", plays: "melody on Oberwerk" },
    ],
  },
};
