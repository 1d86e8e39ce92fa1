import type { Blend } from "./blend.ts";
import { chordSones, type Phons } from "./hearing.ts";
import { phonOf } from "./loudness.ts";
import type { PartSound } from "./part-sound.ts";

/**
 * Between which bounds the loudness of a sum lies, from numbers that a search can add stop by stop. The loudness itself
 * hangs on 38 bands and is reckoned of the sets that are kept.
 *
 * In no band does loudness grow more slowly than the fifth root of the excitation: the fifth power of a sum is at least
 * the sum of the fifth powers. Pipes that several stops share speak once, so of such stops only the loudest counts. And
 * nowhere but near the threshold does it grow faster than the excitation: a sum has no more sones than its parts
 * together, but for a trifle.
 */
type LoudnessBounds = Pick<PartSound, "loudestStop" | "powers" | "sones">;

/** Sones that a stop may gain in bands where it lies near the threshold, all bands together. */
const NEAR_THRESHOLD = 0.2;
const ROOT = 5;

/** What one stop adds. @param shares whether other stops may ask for the same pipes. */
export function loudnessBoundsOf(blend: Blend, shares: boolean): LoudnessBounds {
  const sones = chordSones(blend);
  const power = Math.floor(sones ** ROOT);
  return { loudestStop: power, powers: shares ? 0 : power, sones: Math.ceil(100 * (sones + NEAR_THRESHOLD)) };
}

const level = (sones: number): Phons => Math.round(100 * phonOf(sones));

/** What `strengthOf` of the sound is at least, in hundredths of a phon. */
export const strengthAtLeast = ({ loudestStop, powers }: PartSound): Phons =>
  level(Math.max(loudestStop, powers) ** (1 / ROOT));

/** What `strengthOf` of the sound is at most. */
export const strengthAtMost = ({ sones }: PartSound): Phons => level(sones / 100);
