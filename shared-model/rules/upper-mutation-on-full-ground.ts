import { kindBits } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import { agree, draw, idsOf, named, ofKinds, The, undrawnAt } from "./naming.ts";
import { FEET_1_1_3, FEET_1_1_7, FEET_1_3_5, FEET_2_2_3, FEET_3_1_5, FEET_5_1_3, FEET_8_9 } from "./pitches.ts";
import { reachesKind } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";

const FAR_ONES = FEET_1_1_7 | FEET_8_9;
const TIERCE_ALONE = 60;
const FAR_ALONE = 120;

const UPPER = kindBits(["tierce", "septieme", "none", "tertian", "cornet", "sesquialtera"]);

export const upperMutationOnFullGround: PartRule = {
  id: "upper-mutation-on-full-ground",
  conventions: [2],
  reads: "part",
  statement:
    "The higher a mutation, the fuller the series under it: a third wants its fifth, a seventh or ninth the fifth and the third.",
  why: "The ear takes a high harmonic for colour only when the lower ones are there too.",
  source: "common practice",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) => reachesKind(context, UPPER),
  most: () => 0,
  weigh: (sound) => {
    const heard = sound.mutation | (sound.compound & ~sound.mixture);
    const under = heard | sound.mixture;
    if ((heard & FAR_ONES) !== 0 && ((under & FEET_2_2_3) === 0 || (under & (FEET_1_3_5 | FEET_1_1_3)) === 0))
      return -FAR_ALONE;
    if ((heard & FEET_1_3_5) !== 0 && (under & FEET_2_2_3) === 0) return -TIERCE_ALONE;
    return (heard & FEET_3_1_5) !== 0 && (under & FEET_5_1_3) === 0 ? -TIERCE_ALONE : 0;
  },
  words: (sound, context, heard, points) => {
    const far = points === -FAR_ALONE;
    const stops = ofKinds(heard.stops, far ? ["septieme", "none"] : ["tierce", "tertian"]);
    const under = sound.mutation | sound.compound;
    const deep = !far && ((sound.mutation | sound.compound) & FEET_1_3_5) === 0;
    const fifth = undrawnAt(heard, deep ? footOf(16, 3) : footOf(8, 3), context, ["nasard", "twelfth", "quint"]);
    const noFifth = (under & FEET_2_2_3) === 0;
    const noThird = far && (under & (FEET_1_3_5 | FEET_1_1_3)) === 0;
    const lacks = noThird ? (noFifth ? "the fifth and the third" : "the third") : "the fifth";
    const third = undrawnAt(heard, footOf(8, 5), context, ["tierce"]);
    return {
      text: `${named(stops)} ${agree(stops, "lacks", "lack")} ${lacks} under ${agree(stops, "it", "them")}.`,
      remedy: draw(
        noFifth || deep ? fifth : third,
        `${The(context)} has no such stop to go with ${agree(stops, "it", "them")}; leave ${agree(stops, "it", "them")} out.`,
      ),
      stops: idsOf(stops),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Positif: Bourdon 8, Flûte 4, Tierce 1 3/5 (Nasard 2 2/3)",
        plays: "melody on Positif",
        says: "Tierce 1 3/5 lacks the fifth under it.",
      },
      {
        organ: "Oberwerk: Gedackt 8, Flöte 4, Septime 1 1/7",
        plays: "melody on Oberwerk",
        says: "Septime 1 1/7 lacks the fifth and the third under it.",
      },
      {
        organ: "Oberwerk: Gedackt 8, Flöte 4, Nasat 2 2/3, Septime 1 1/7 (Terz 1 3/5)",
        plays: "melody on Oberwerk",
        says: "Septime 1 1/7 lacks the third under it.",
      },
    ],
    silent: [
      { organ: "Positif: Bourdon 8, Flûte 4, Nasard 2 2/3, Tierce 1 3/5", plays: "melody on Positif" },
      { organ: "Oberwerk: Gedackt 8, Flöte 4, Sesquialtera II", plays: "melody on Oberwerk" },
    ],
  },
};
