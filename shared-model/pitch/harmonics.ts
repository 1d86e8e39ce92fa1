import { type Foot, footOf } from "./foot.ts";
import type { Key } from "./key.ts";

/** An exact ratio in lowest terms, both numbers positive integers: the harmonic number 3, or 3/2 for a 5 1/3' over 8'. */
export interface Ratio {
  readonly over: number;
  readonly under: number;
}

/** The 8' length: what a key sounds when it sounds as written. */
const UNISON: Foot = footOf(8);

/**
 * Harmonic number of a length over a unison: `unison / foot`, exact. 2 2/3' over 8' is 3, over 16' it is 6; a length that
 * is no harmonic of the unison gives a fraction (16' over 8' is 1/2, 5 1/3' over 8' is 3/2).
 */
export function harmonicOf(foot: Foot, unison: Foot = UNISON): Ratio {
  const { over, under } = footOf(unison.over * foot.under, unison.under * foot.over);
  return { over, under };
}

/** Whether the length is a harmonic of the base (2 2/3' of 8': yes; 5 1/3' of 8': no, it wants 16'). */
export const belongsTo = (foot: Foot, base: Foot): boolean => harmonicOf(foot, base).under === 1;

const isPowerOfTwo = (count: number): boolean => Number.isInteger(Math.log2(count));

/**
 * The series a length belongs to: the shortest unison of at least `least` feet (8' unless a division is built on
 * another) that it is a harmonic of, and its number there. 2 2/3' is 3 of 8', 5 1/3' 3 of 16', 10 2/3' 3 of 32',
 * 1 1/3' 6 of 8'. `null` for a length that is a harmonic of no unison: 3', 7'.
 *
 * @throws RangeError when `least` is not a unison length (a whole power of two).
 */
export function seriesOf(foot: Foot, least: Foot = UNISON): { readonly base: Foot; readonly number: number } | null {
  if (least.under !== 1 || !isPowerOfTwo(least.over)) {
    throw new RangeError(`The base of a series is 8', 16', 4' or another unison, not ${least.over}/${least.under}'.`);
  }
  if (!isPowerOfTwo(foot.over)) return null;
  const base = footOf(Math.max(foot.over, least.over));
  return { base, number: harmonicOf(foot, base).over };
}

/** Steps of the scale above a unison by harmonic number. Common practice: Italian and English stops are named so. */
const STEPS_OF_HARMONIC: readonly (readonly [harmonic: number, steps: number])[] = [
  [1, 1],
  [2, 8],
  [3, 12],
  [4, 15],
  [5, 17],
  [6, 19],
  [7, 21],
  [8, 22],
  [9, 23],
  [10, 24],
  [12, 26],
  [16, 29],
  [18, 30],
  [20, 31],
  [24, 33],
  [32, 36],
  [40, 38],
  [48, 40],
  [64, 43],
  [96, 47],
  [128, 50],
];

/**
 * The length of a stop named by its interval above a base: 12 (duodecima, twelfth) on 8' is 2 2/3', 15 is 2', 36 is 1/4'.
 * `null` for an interval that no stop is named by.
 */
export function lengthAtInterval(steps: number, base: Foot = UNISON): Foot | null {
  const row = STEPS_OF_HARMONIC.find(([, named]) => named === steps);
  return row ? footOf(base.over, base.under * row[0]) : null;
}

/** Where a harmonic lies among the keys: whole keys above the unison, and how far off equal temperament it sounds. */
export interface Displacement {
  /** Keys (semitones) above the unison; negative below it. */
  readonly keys: number;
  /** Cents sharp (+) or flat (-) of that key in equal temperament, between -50 and 50. */
  readonly cents: number;
}

/** How far a length sounds from the unison: 2 2/3' over 8' lies 19 keys higher and 1.96 cents sharp. */
export function displacement(foot: Foot, unison: Foot = UNISON): Displacement {
  const { over, under } = harmonicOf(foot, unison);
  const keys = 12 * Math.log2(over / under);
  const nearest = Math.round(keys);
  return { keys: nearest, cents: 100 * (keys - nearest) };
}

/**
 * The key whose equal-tempered pitch lies nearest to what sounds when `key` is pressed on a stop of that length, and the
 * deviation in cents. The numbering of keys goes on beyond any keyboard: a 64' sounds below 0 on no usual keyboard, a
 * 1/8' above 127 at its top.
 */
export function soundingKey(
  key: Key,
  foot: Foot,
  unison: Foot = UNISON,
): { readonly key: number; readonly cents: number } {
  const { keys, cents } = displacement(foot, unison);
  return { key: key + keys, cents };
}

const ORDINALS = [
  "",
  "first",
  "second",
  "third",
  "fourth",
  "fifth",
  "sixth",
  "seventh",
  "eighth",
  "ninth",
  "tenth",
  "eleventh",
  "twelfth",
  "thirteenth",
  "fourteenth",
  "fifteenth",
  "sixteenth",
  "seventeenth",
  "eighteenth",
  "nineteenth",
] as const;
const TENS = ["", "", "twenty", "thirty", "forty", "fifty"] as const;
const ROUND_TENS = ["", "", "twentieth", "thirtieth", "fortieth", "fiftieth"] as const;

const ordinal = (count: number): string =>
  ORDINALS[count] ??
  (count % 10 === 0 ? ROUND_TENS[count / 10] : `${TENS[Math.floor(count / 10)]}-${ORDINALS[count % 10]}`) ??
  `${count}th`;

/** Degree of the major scale at each key of the octave; keys between have none but the flat seventh. */
const DEGREES: Readonly<Record<number, number>> = { 0: 1, 2: 2, 4: 3, 5: 4, 7: 5, 9: 6, 10: 7, 11: 7 };

/**
 * The interval between the unison and a length in words: `twelfth` (2 2/3' over 8'), `flat twenty-first` (1 1/7'), `fifth`
 * (5 1/3'), `octave`, `unison`; below the unison `octave below`, `fourth below` (10 2/3' against 8'). A harmonic that lies
 * between the keys (more than 35 cents off, or on no degree of the scale) is named by its number: `11th harmonic`.
 */
export function intervalName(foot: Foot, unison: Foot = UNISON): string {
  const ratio = harmonicOf(foot, unison);
  const { keys, cents } = displacement(foot, unison);
  if (keys < 0) return `${intervalName(unison, foot)} below`;
  const degree = DEGREES[keys % 12];
  if (degree === undefined || Math.abs(cents) > 35) {
    return ratio.under === 1 ? `${ratio.over}th harmonic` : `${ratio.over}/${ratio.under} of the unison`;
  }
  const steps = degree + 7 * Math.floor(keys / 12);
  if (steps === 1) return "unison";
  if (steps === 8) return "octave";
  return (keys % 12 === 10 ? "flat " : "") + ordinal(steps);
}

/** Range of the pitch of A4 in hertz that files may state. */
const A4_RANGE = { low: 370, high: 500 } as const;

/**
 * Frequency in hertz of a key in equal temperament on an 8' stop.
 *
 * @throws RangeError when `a4` lies outside 370..500 Hz.
 */
export function keyFrequency(key: number, a4 = 440): number {
  if (!(a4 >= A4_RANGE.low && a4 <= A4_RANGE.high)) {
    throw new RangeError(`The pitch of A4 lies between ${A4_RANGE.low} and ${A4_RANGE.high} Hz, not at ${a4}.`);
  }
  return a4 * 2 ** ((key - 69) / 12);
}

/**
 * Frequency in hertz that a key sounds on a stop of that length. Mutations are tuned pure to the unison, so the harmonic
 * number multiplies the key's tempered pitch without rounding to a key. Common practice.
 *
 * @throws RangeError when `a4` lies outside 370..500 Hz.
 */
export function soundingFrequency(key: Key, foot: Foot, a4 = 440): number {
  const { over, under } = harmonicOf(foot);
  return (keyFrequency(key, a4) * over) / under;
}
