import { footOf } from "../pitch/foot.ts";
import { agree, draw, idsOf, named, ofKinds, The, the, undrawnAt } from "./naming.ts";
import { FEET_8 } from "./pitches.ts";
import type { PartRule } from "./rule.ts";

const NO_FLUE = 150;

export const tierceCompoundOnGround: PartRule = {
  id: "tierce-compound-on-ground",
  conventions: [5],
  reads: "part",
  statement: "A Sesquialtera, a Tertian or a Cornet without its own 8 stands on an 8' flute or principal.",
  why: "A string or a reed under it is heard as a second voice, not as its ground.",
  source: "adlung-1768",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) => context.part.role !== "plenum" && context.part.role !== "bass",
  most: () => 0,
  weigh: (sound) => {
    if (sound.tierceCompounds + sound.cornets === 0 || sound.cover8 === 0) return 0;
    const ground = (sound.flute | sound.principal | (sound.compound & ~sound.mixture)) & FEET_8;
    return ground !== 0 ? 0 : -NO_FLUE;
  },
  words: (_sound, context, heard) => {
    const compounds = ofKinds(heard.stops, ["sesquialtera", "tertian", "cornet"]);
    return {
      text: `${named(compounds)} on ${the(context)} ${agree(compounds, "wants", "want")} an 8' flute or principal as ground.`,
      remedy: draw(
        undrawnAt(heard, footOf(8), context, ["stopped-flute", "open-flute", "harmonic-flute", "principal"]),
        `${The(context)} has no such 8' for this part.`,
      ),
      stops: idsOf(compounds),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Brustwerk: Regal 8, Sesquialtera II (Gedackt 8)",
        plays: "melody on Brustwerk",
        says: "Sesquialtera II on the Brustwerk wants an 8' flute or principal as ground.",
      },
      {
        organ: "Swell: Viola da Gamba 8, Sesquialtera II",
        plays: "melody on Swell",
        says: "Sesquialtera II on the Swell wants an 8' flute or principal as ground.",
      },
    ],
    silent: [
      { organ: "Brustwerk: Gedackt 8, Sesquialtera II", plays: "melody on Brustwerk" },
      { organ: "Récit: Cornet V from C4", plays: "melody on Récit" },
      { organ: "Hauptwerk: Viola da Gamba 8, Principal 8, Sesquialtera II", plays: "melody on Hauptwerk" },
    ],
  },
};
