import { type Foot, footOf, footText } from "./foot.ts";

/**
 * Odd harmonics that stops are built at: unison, fifth, third, flat seventh, ninth, and the rare eleventh, thirteenth,
 * fifteenth and nineteenth of the twentieth century. Common practice.
 */
const ODD_HARMONICS = [1, 3, 5, 7, 9, 11, 13, 15, 19] as const;

/**
 * Every length that a stop or a rank of a mixture may have, longest first: the odd harmonics of 64' and their octaves,
 * down to 1/16' (the top ranks of a cymbal). Old roundings such as 3' are not among them: no pipe of a quint is 3' long.
 */
export const USUAL_PITCHES: readonly Foot[] = ODD_HARMONICS.flatMap((odd) =>
  [64, 32, 16, 8, 4, 2, 1]
    .map((over) => footOf(over, odd))
    .concat([2, 4, 8, 16].map((under) => footOf(1, under * odd))),
)
  .filter((foot) => foot.over * 16 >= foot.under)
  .sort((a, b) => b.over * a.under - a.over * b.under);

const usual = new Set(USUAL_PITCHES.map(footText));

/** Whether organs have stops of that length: true for 8, 2 2/3, 8/9; false for 7, 9 and for old roundings (3, 1 1/2). */
export const isUsualPitch = (foot: Foot): boolean => usual.has(footText(foot));

/**
 * Printed length -> true length. Lists of all centuries round the fifths to 3 and its octaves; 13/5 is what 1 3/5
 * becomes when the gap is lost in print. Common practice.
 */
const ROUNDINGS: ReadonlyMap<string, Foot> = new Map([
  ["24", footOf(64, 3)],
  ["12", footOf(32, 3)],
  ["6", footOf(16, 3)],
  ["3", footOf(8, 3)],
  ["3/2", footOf(4, 3)],
  ["3/4", footOf(2, 3)],
  ["13/5", footOf(8, 5)],
]);

/**
 * What an old rounding stands for (3 -> 2 2/3), `null` when the length is none. Ask only about a stop known to be a
 * mutation: a front pipe or a regal may well be called 6 or 12 from its longest pipe.
 */
export const oldRounding = (foot: Foot): Foot | null => ROUNDINGS.get(footText(foot)) ?? null;
