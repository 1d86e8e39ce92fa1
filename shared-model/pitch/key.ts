/**
 * A key of a keyboard or pedalboard, numbered in semitones so that middle C (C4) is 60 and the lowest
 * key of most organs (C2) is 36. Range 0 to 127. The numbering is that of the MIDI standard.
 */
export type Key = number;

/** The lowest key of most organs, at which pitches are nominal and from which lists count keys. */
export const LOWEST_KEY: Key = 36;

const STEPS: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const NAMES = ["C", "C#", "D", "Eb", "E", "F", "F#", "G", "G#", "A", "Bb", "B"] as const;

/** Reads a key in scientific pitch notation (`C2`, `F#4`, `Eb5`); `null` when the text is not such a key. */
export function keyFromText(text: string): Key | null {
  const match = /^([A-Ga-g])([#b♯♭]?)(-?\d{1,2})$/.exec(text.trim());
  if (!match) return null;
  const step = STEPS[(match[1] as string).toUpperCase()] as number;
  const bend = match[2] === "" ? 0 : match[2] === "#" || match[2] === "♯" ? 1 : -1;
  const key = (Number(match[3]) + 1) * 12 + step + bend;
  return key >= 0 && key <= 127 ? key : null;
}

/** The key in scientific pitch notation: 60 is `C4`. */
export const keyText = (key: Key): string => `${NAMES[((key % 12) + 12) % 12]}${Math.floor(key / 12) - 1}`;

/** The keys that a keyboard has: an unbroken row but for the missing ones (short octaves, a lacking low C#). */
export interface Compass {
  readonly low: Key;
  readonly high: Key;
  /** Keys between `low` and `high` that do not exist or do not speak. */
  readonly missing: readonly Key[];
}

/** Whether the compass has the key. */
export const hasKey = (compass: Compass, key: Key): boolean =>
  key >= compass.low && key <= compass.high && !compass.missing.includes(key);
