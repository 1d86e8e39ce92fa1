import type { Division, Instrument } from "../stoplist/instrument.ts";

/** Written keys of a part, both ends included. */
interface Range {
  readonly low: number;
  readonly high: number;
}

const lengthOf = ({ low, high }: Range): number => high - low + 1;

/**
 * Whether so many keys of a range may be left out, or played an octave higher or lower, and the music still be what it is: a
 * third of them at most. Common practice.
 */
export const mayLack = (keys: number, length: number): boolean => keys * 3 <= length;

/** Keys of a range that lie beyond another, at either end. */
export const keysBeyond = (range: Range, { low, high }: Range): number =>
  lengthOf(range) - Math.max(0, Math.min(range.high, high) - Math.max(range.low, low) + 1);

/** The pedals on which feet can play a part; none of an organ whose pedal is too short to walk on. */
export const pedalsFor = ({ divisions }: Instrument, range: Range): readonly Division[] =>
  divisions.filter((each) => each.kind === "pedal" && mayLack(keysBeyond(range, each.compass), lengthOf(range)));

/** First key of the treble half of a keyboard's divided stops; `null` where none is divided. */
export function dividingKey({ stops }: Division): number | null {
  const trebles = stops.filter((stop) => stop.half === "treble" && !stop.off).map((stop) => stop.from);
  return trebles.length > 0 && stops.some((stop) => stop.half === "bass" && !stop.off) ? Math.min(...trebles) : null;
}

/**
 * The keys that a hand uses of its half, where the two must be told apart on one divided keyboard: what crosses the dividing
 * key by a third of the range or less is left out; what crosses it by more is played higher or lower. Common practice.
 *
 * @param hand the one whose half it is.
 * @param divide first key of the treble half.
 */
export function inItsHalf({ low, high }: Range, hand: "left" | "right", divide: number): Range {
  const across = hand === "left" ? Math.max(0, high - divide + 1) : Math.max(0, divide - low);
  const shift = mayLack(across, lengthOf({ low, high })) ? 0 : across;
  return hand === "left"
    ? { low: low - shift, high: Math.min(high, divide - 1) }
    : { low: Math.max(low, divide), high: high + shift };
}
