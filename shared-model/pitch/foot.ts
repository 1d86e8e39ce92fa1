/**
 * A pitch length as the trade writes it (8', 2 2/3', 1 3/5'), held as an exact fraction.
 *
 * Never a floating number: of the ratios between the usual lengths one in five is wrong in its last
 * digit when computed in floating point, and a mutation is *defined* by such a ratio.
 */
export interface Foot {
  /** Numerator of the reduced fraction, a positive integer. */
  readonly over: number;
  /** Denominator of the reduced fraction, a positive integer. */
  readonly under: number;
}

const made = new Map<string, Foot>();

const greatestCommonDivisor = (a: number, b: number): number => (b === 0 ? a : greatestCommonDivisor(b, a % b));

/**
 * The one frozen value for a length of `over/under` feet; equal lengths are the same object.
 *
 * @throws RangeError unless both are positive safe integers.
 */
export function footOf(over: number, under = 1): Foot {
  if (!Number.isSafeInteger(over) || !Number.isSafeInteger(under) || over <= 0 || under <= 0) {
    throw new RangeError(`A pitch length is a positive fraction of feet, not ${over}/${under}.`);
  }
  const divisor = greatestCommonDivisor(over, under);
  const [n, d] = [over / divisor, under / divisor];
  const text = `${n}/${d}`;
  const known = made.get(text);
  if (known) return known;
  const foot = Object.freeze({ over: n, under: d });
  made.set(text, foot);
  return foot;
}

/** Rational text of a length, the form used in JSON and as a key: `8`, `8/3`, `16/5`. */
export const footText = (foot: Foot): string => (foot.under === 1 ? `${foot.over}` : `${foot.over}/${foot.under}`);

/**
 * Reads the rational text that {@link footText} writes (`8`, `8/3`), nothing else; `null` for anything else.
 * The many ways in which the trade prints a length are read by `readPitch`.
 */
export function footFromText(text: string): Foot | null {
  const match = /^([1-9]\d{0,5})(?:\/([1-9]\d{0,5}))?$/.exec(text);
  return match ? footOf(Number(match[1]), Number(match[2] ?? 1)) : null;
}

/** A length `times/per` as long: `stretch(foot, 1, 2)` sounds an octave higher. */
export const stretch = (foot: Foot, times: number, per = 1): Foot => footOf(foot.over * times, foot.under * per);

/** Longest (lowest) first: negative when `a` is longer than `b`. */
export const compareFeet = (a: Foot, b: Foot): number => b.over * a.under - a.over * b.under;
