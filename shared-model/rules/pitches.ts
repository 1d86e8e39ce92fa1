import type { PartSound } from "../acoustics/part-sound.ts";
import { pitchBit } from "../acoustics/pitch-set.ts";
import { footOf } from "../pitch/foot.ts";
import type { PartContext } from "./rule.ts";

/** The set of 32' alone. */
export const FEET_32 = pitchBit(footOf(32));
/** The set of 16' alone. */
export const FEET_16 = pitchBit(footOf(16));
/** The set of 8' alone. */
export const FEET_8 = pitchBit(footOf(8));
/** The set of 4' alone. */
export const FEET_4 = pitchBit(footOf(4));
/** The set of 2' alone. */
export const FEET_2 = pitchBit(footOf(2));
/** The set of 5 1/3' alone. */
export const FEET_5_1_3 = pitchBit(footOf(16, 3));
/** The set of 3 1/5' alone. */
export const FEET_3_1_5 = pitchBit(footOf(16, 5));
/** The set of 2 2/3' alone. */
export const FEET_2_2_3 = pitchBit(footOf(8, 3));
/** The set of 1 3/5' alone. */
export const FEET_1_3_5 = pitchBit(footOf(8, 5));
/** The set of 1 1/3' alone. */
export const FEET_1_1_3 = pitchBit(footOf(4, 3));
/** The set of 1 1/7' alone. */
export const FEET_1_1_7 = pitchBit(footOf(8, 7));
/** The set of 8/9' alone. */
export const FEET_8_9 = pitchBit(footOf(8, 9));

/** The length at which the part should sound, as a set: 8' unless the music says otherwise. */
export function unisonOf(context: PartContext): number {
  const { sounding } = context.part;
  return sounding === 8 ? FEET_8 : sounding === 4 ? FEET_4 : sounding === 16 ? FEET_16 : FEET_2;
}

/** Zones in which the part's own unison speaks; a bass in the feet may have it at 16' or at 8'. */
export function unisonCover(sound: PartSound, context: PartContext): number {
  const { sounding, hands, role } = context.part;
  if (hands === "feet" && role === "bass") return sound.cover16 | sound.cover8;
  return sounding === 8 ? sound.cover8 : sounding === 4 ? sound.cover4 : sounding === 16 ? sound.cover16 : sound.cover2;
}

/** Lengths at which a plain flue speaks; a mutation counts at its own length. */
export const fluePitches = (sound: PartSound): number =>
  sound.principal | sound.flute | sound.string | sound.celeste | sound.mutation;
