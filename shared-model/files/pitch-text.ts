import { type Foot, footOf } from "../pitch/foot.ts";
import { displacement, harmonicOf } from "../pitch/harmonics.ts";
import { isUsualPitch, oldRounding, readPitch } from "../pitch/reading.ts";

/** The words before a pitch, and the pitch as it stands at the end of a stop's text. */
export interface PitchAtEnd {
  readonly before: string;
  readonly printed: string;
  /** `null` when what stands there begins with a figure but is no length (`2 2/2`). */
  readonly foot: Foot | null;
}

/** Parts `Nasat 2 2/3` into the words and the pitch; `null` when the text does not end in a figure or a fraction. */
export function pitchAtEnd(text: string): PitchAtEnd | null {
  const words = text.trim().split(/\s+/);
  const parted = (count: number, foot: Foot | null): PitchAtEnd => ({
    before: words.slice(0, -count).join(" "),
    printed: words.slice(-count).join(" "),
    foot,
  });
  // The longest end that is one length: `1 1/3`, not `1/3`; `2 2/3 ft` has three words.
  for (let count = Math.min(3, words.length); count > 0; count -= 1) {
    const end = words.slice(-count).join(" ");
    if (!/^[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑.]/u.test(end)) continue;
    const read = readPitch(end);
    if (read.foot) return parted(count, read.foot);
  }
  const figures = /^\d/.test(words[words.length - 1] ?? "") ? (/^\d+$/.test(words[words.length - 2] ?? "") ? 2 : 1) : 0;
  return figures > 0 ? parted(figures, null) : null;
}

/** Lengths offered to a person whose pitch is none, from the usual stoplists. Common practice. */
const OFFERED: readonly Foot[] = (
  [
    [32, 1],
    [16, 1],
    [32, 3],
    [8, 1],
    [16, 3],
    [4, 1],
    [16, 5],
    [8, 3],
    [2, 1],
    [8, 5],
    [4, 3],
    [8, 7],
    [1, 1],
    [8, 9],
    [2, 3],
    [1, 2],
  ] as const
).map(([over, under]) => footOf(over, under));

/** Whether an organ can have a rank of that length; 7' and 3' are none. */
export const canSpeak = isUsualPitch;

/** The length most likely meant by one that no rank has: an old rounding mended, else the nearest usual length. */
export function likelyPitch(length: Foot): Foot {
  const mended = oldRounding(length);
  if (mended) return mended;
  const distance = (pitch: Foot): number => Math.abs(displacement(pitch, length).keys);
  return OFFERED.reduce((best, pitch) => (distance(pitch) < distance(best) ? pitch : best));
}

/** Whether the length is a third of some octave (17th, 10th, 24th). */
export const isThird = (pitch: Foot): boolean => pitch.under % 5 === 0 && pitch.under % 3 !== 0 && isUsualPitch(pitch);

/** Whether the length is an octave of 8 feet. */
export const isOctave = (pitch: Foot): boolean => {
  const { over, under } = harmonicOf(pitch);
  return Number.isInteger(Math.log2(over)) && Number.isInteger(Math.log2(under));
};

/** Keys by which a rank of `pitch` begins above the first pipe of one of `longest`; negative when it would begin below. */
export const pipesAbove = (longest: Foot, pitch: Foot): number => displacement(pitch, longest).keys;
