import { type Foot, footOf, footText } from "../pitch/foot.ts";

/**
 * The lengths that stops sound at, lowest first, as they stand after a part is played an octave away or through an
 * octave coupler. A set of them is one 32-bit integer, bit `i` for the `i`th length, so that a rule compares whole
 * choruses in one operation.
 */
const LENGTHS: readonly Foot[] = (
  [
    [64],
    [32],
    [64, 3],
    [16],
    [64, 5],
    [32, 3],
    [64, 7],
    [8],
    [32, 5],
    [16, 3],
    [32, 7],
    [4],
    [16, 5],
    [8, 3],
    [16, 7],
    [16, 9],
    [2],
    [8, 5],
    [4, 3],
    [8, 7],
    [1],
    [8, 9],
    [4, 5],
    [2, 3],
    [4, 7],
    [1, 2],
    [2, 5],
    [1, 3],
    [1, 4],
  ] as const
).map(([over, under]) => footOf(over, under));

const INDEX: ReadonlyMap<string, number> = new Map(LENGTHS.map((foot, index) => [footText(foot), index]));

/** A set of pitch lengths: bit `i` stands for the `i`th length of the table, lowest (64') first. */
export type PitchSet = number;

/** The set of that one length; 0 for a length no organ has. */
export function pitchBit(foot: Foot): PitchSet {
  const index = INDEX.get(footText(foot));
  return index === undefined ? 0 : 1 << index;
}

const bits = (...texts: readonly string[]): PitchSet =>
  texts.reduce((set, text) => set | (1 << (INDEX.get(text) as number)), 0);

/** Single lengths by name, for rules: `P["8"]`, `P["8/3"]`. */
export const P: Readonly<Record<string, PitchSet>> = Object.fromEntries(
  LENGTHS.map((foot, index) => [footText(foot), 1 << index]),
);

/** Octaves of the unison: 64 32 16 8 4 2 1 1/2 1/4. */
export const OCTAVES: PitchSet = bits("64", "32", "16", "8", "4", "2", "1", "1/2", "1/4");
/** Fifths: 10 2/3, 5 1/3, 2 2/3, 1 1/3, 2/3, 1/3 and their octaves. */
export const FIFTHS: PitchSet = bits("64/3", "32/3", "16/3", "8/3", "4/3", "2/3", "1/3");
/** Thirds: 6 2/5, 3 1/5, 1 3/5, 4/5 and their octaves. */
export const THIRDS: PitchSet = bits("64/5", "32/5", "16/5", "8/5", "4/5", "2/5");
/** Sevenths and ninths. */
export const FAR: PitchSet = bits("64/7", "32/7", "16/7", "8/7", "4/7", "16/9", "8/9");

/** How many lengths a set holds. */
export function countPitches(set: PitchSet): number {
  let rest = set - ((set >>> 1) & 0x55555555);
  rest = (rest & 0x33333333) + ((rest >>> 2) & 0x33333333);
  return (((rest + (rest >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}

/** The lowest length of a set, as a set; 0 for the empty one. */
export const lowestOf = (set: PitchSet): PitchSet => set & -set;
/** All lengths deeper than the lowest of `set` (all of them for the empty set). */
export const deeperThan = (set: PitchSet): PitchSet => (set === 0 ? 0x7fffffff : lowestOf(set) - 1);
/** The highest length of a set, as a set; 0 for the empty one. */
export const highestOf = (set: PitchSet): PitchSet => (set === 0 ? 0 : 1 << (31 - Math.clz32(set)));

/** The lengths of a set, lowest first. */
export const pitchesOf = (set: PitchSet): readonly Foot[] => LENGTHS.filter((_, index) => set & (1 << index));
