import { kindBits } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, feet, idsOf, named, ofKinds, The, undrawnAt } from "./naming.ts";
import { FEET_1_1_3, FEET_1_1_7, FEET_1_3_5, FEET_2_2_3, FEET_3_1_5, FEET_5_1_3, FEET_8_9 } from "./pitches.ts";
import { reachesKind } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";

const OF_8 = FEET_2_2_3 | FEET_1_3_5 | FEET_1_1_3 | FEET_1_1_7 | FEET_8_9;
const OF_16 = FEET_5_1_3 | FEET_3_1_5;
/** A hollow 8 + 2 2/3 is a colour that sources know, so the loss is small. */
const SOLO = 50;
const ELSEWHERE = 100;

const MUTATIONS = kindBits([...KIND_GROUPS.mutation]);

export const mutationWithOctaveBetween: PartRule = {
  id: "mutation-with-octave-between",
  conventions: [2],
  reads: "part",
  statement: "A mutation blends best when the octave stands between it and its unison.",
  why: "The octave binds the fifth or third to the note; without it the two are heard apart.",
  source: "lesson-hymns",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) => reachesKind(context, MUTATIONS),
  most: () => 0,
  weigh: (sound, context) => {
    const without4 = (sound.mutation & OF_8) !== 0 && sound.cover4 === 0;
    const without8 = (sound.mutation & OF_16) !== 0 && sound.cover8 === 0;
    if (!without4 && !without8) return 0;
    const { role } = context.part;
    return role === "melody" || role === "voice" || role === "echo" ? -SOLO : -ELSEWHERE;
  },
  words: (sound, context, heard) => {
    const octave = (sound.mutation & OF_8) !== 0 && sound.cover4 === 0 ? footOf(4) : footOf(8);
    const mutations = ofKinds(heard.stops, KIND_GROUPS.mutation);
    return {
      text: `${named(mutations)} ${agree(mutations, "stands", "stand")} apart from the note without a ${feet(octave)} between.`,
      remedy: draw(
        undrawnAt(heard, octave, context),
        `${The(context)} has no ${feet(octave)}: a hollow colour, to be wanted or left.`,
      ),
      stops: idsOf(mutations),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Rückpositiv: Gedackt 8, Nasat 2 2/3 (Rohrflöte 4)",
        plays: "melody on Rückpositiv",
        says: "Nasat 2 2/3 stands apart from the note without a 4' between.",
      },
      {
        organ: "Positif: Bourdon 8, Nasard 2 2/3, Quarte de Nasard 2, Tierce 1 3/5",
        plays: "accompaniment on Positif",
        says: "Nasard 2 2/3 and Tierce 1 3/5 stand apart from the note without a 4' between.",
      },
    ],
    silent: [
      { organ: "Rückpositiv: Gedackt 8, Rohrflöte 4, Nasat 2 2/3", plays: "melody on Rückpositiv" },
      { organ: "Positif: Bourdon 8, Flûte 4, Larigot 1 1/3", plays: "melody on Positif" },
    ],
  },
};
