import type { Foot } from "../pitch/foot.ts";
import type { Half } from "../stoplist/instrument.ts";
import { pitchAtEnd } from "./pitch-text.ts";

const ROMAN = [
  "I",
  "II",
  "III",
  "IV",
  "V",
  "VI",
  "VII",
  "VIII",
  "IX",
  "X",
  "XI",
  "XII",
  "XIII",
  "XIV",
  "XV",
  "XVI",
  "XVII",
  "XVIII",
  "XIX",
  "XX",
] as const;

/** A number of ranks as the trade writes it, 1 to 20. */
export const romanNumeral = (ranks: number): string => ROMAN[ranks - 1] ?? String(ranks);

/** The number a Roman numeral or a range of them (`III-V`, the larger counts) stands for; `null` for other text. */
export function ranksFromRoman(text: string): number | null {
  const parts = text.split(/[-–]/);
  const numbers = parts.map((part) => ROMAN.indexOf(part as (typeof ROMAN)[number]) + 1);
  return parts.length <= 2 && numbers.every((number) => number > 0) ? Math.max(...numbers) : null;
}

/** What stands behind a stop's name, taken off it. */
export interface StopText {
  readonly name: string;
  readonly pitch: Foot | null;
  /** The pitch as it stands, `null` when none does; with `pitch` `null` it is no length. */
  readonly printedPitch: string | null;
  readonly ranks: number | null;
  readonly half: Half;
}

/** Which parts are read off the end of a text. */
export interface TakenOff {
  readonly half: boolean;
  readonly pitch: boolean;
  readonly ranks: boolean;
}

/**
 * Parts a stop's text as the instrument file writes it: the name, then ranks in Roman numerals, then the pitch, then
 * `bass` or `treble`: `Mixtur IV 1 1/3`, `Dulzian 8 bass`. What `take` leaves out stays in the name.
 */
export function partStopText(text: string, take: TakenOff): StopText {
  let name = text.trim().replace(/\s+/g, " ");
  let half: Half = null;
  const behind = / (bass|treble)$/.exec(name);
  if (take.half && behind) {
    half = behind[1] as Half;
    name = name.slice(0, behind.index);
  }
  const end = take.pitch ? pitchAtEnd(name) : null;
  if (end) name = end.before;
  const numeral = / (\S+)$/.exec(name);
  const ranks = take.ranks && numeral ? ranksFromRoman(numeral[1] as string) : null;
  if (ranks !== null && numeral) name = name.slice(0, numeral.index);
  return { name, pitch: end?.foot ?? null, printedPitch: end?.printed ?? null, ranks, half };
}
