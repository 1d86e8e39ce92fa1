import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, idsOf, named, reedsOf, soundingAt, The, the, undrawnAt } from "./naming.ts";
import { FEET_4, FEET_8, FEET_16, fluePitches } from "./pitches.ts";
import type { PartRule } from "./rule.ts";

const ALONE = 300;
/** In the feet one clear 8' draws the line; a stopped one is too soft for it. */
const UNDER_A_SOFT_8 = 120;

export const sixteenReedNotAlone: PartRule = {
  id: "sixteen-reed-not-alone",
  conventions: [34],
  reads: "part",
  statement: "A 16' reed has an 8' reed or a chorus over it, unless a solo takes it an octave higher.",
  why: "Alone it growls without a tune.",
  source: "bedos-1766",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) => context.part.sounding === 8,
  most: () => 0,
  weigh: (sound, context) => {
    // Where no 8' sounds at all the rule of the foundation speaks.
    if ((sound.reed & FEET_16) === 0 || (sound.reed & FEET_8) !== 0 || sound.cover8 === 0) return 0;
    if (context.part.hands !== "feet") return (fluePitches(sound) & FEET_4) !== 0 ? 0 : -ALONE;
    const speaking = sound.principal | sound.string | (sound.flute & ~sound.stopped);
    return (speaking & FEET_8) !== 0 ? 0 : -UNDER_A_SOFT_8;
  },
  words: (_sound, context, heard, points) => {
    const reeds = soundingAt(reedsOf(heard.stops), footOf(16), context);
    return {
      text: `${named(reeds)} on ${the(context)} ${agree(reeds, "has", "have")} ${points === -ALONE ? "neither an 8' reed nor a chorus" : "no clear 8'"} over ${agree(reeds, "it", "them")}.`,
      remedy: draw(
        undrawnAt(heard, footOf(8), context, KIND_GROUPS.reed) ??
          undrawnAt(heard, footOf(8), context, ["principal", "open-flute", "string"]),
        `${The(context)} has no such 8' to draw over ${agree(reeds, "it", "them")}.`,
      ),
      stops: idsOf(reeds),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Pédale: Soubasse 16, Bourdon 8, Bombarde 16 (Trompette 8)",
        plays: "bass on Pédale",
        says: "Bombarde 16 on the Pédale has no clear 8' over it.",
      },
      {
        organ: "Swell: Contra Fagotto 16, Stopped Diapason 8 (Cornopean 8)",
        plays: "plenum on Swell",
        says: "Contra Fagotto 16 on the Swell has neither an 8' reed nor a chorus over it.",
      },
    ],
    silent: [
      { organ: "Pedal: Posaune 16, Oktave 8", plays: "bass on Pedal" },
      { organ: "Swell: Contra Fagotto 16, Cornopean 8, Stopped Diapason 8", plays: "plenum on Swell" },
    ],
  },
};
