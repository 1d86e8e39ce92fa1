import { leadsFrom, type Phons } from "../acoustics/hearing.ts";
import type { PartSound } from "../acoustics/part-sound.ts";
import type { PartContext } from "./rule.ts";

/** From which lead on, in hundredths of a phon, a sound is so loud against another. 1000 is twice as loud. */
const RATIOS: readonly (readonly [Phons, string])[] = [
  [1800, "more than three times as loud"],
  [1250, "about three times as loud"],
  [800, "about twice as loud"],
  [450, "about half as loud again"],
  [150, "a little louder"],
  [-150, "about as loud"],
  [-450, "a little softer"],
  [-800, "about two thirds as loud"],
  [-1250, "about half as loud"],
  [-1800, "about a third as loud"],
];

/** How loud a sound is against another, as a listener says it: `about twice as loud`, `a little softer`. */
export const ratioWords = (lead: Phons): string => RATIOS.find(([least]) => lead >= least)?.[1] ?? "far softer";

/** The same with what it is held against: `about twice as loud as Gedackt 8`. */
export function ratioTo(lead: Phons, other: string): string {
  const words = ratioWords(lead);
  return `${words} ${/softer|louder/.test(words) ? "than" : "as"} ${other}`;
}

/** Harmonics of the 8' unison by their names, up to where the ear still tells them. */
const HARMONICS: readonly (readonly [number, string])[] = [
  [1.4, "unison"],
  [2.4, "octave"],
  [3.4, "twelfth"],
  [4.4, "fifteenth"],
  [5.4, "seventeenth"],
  [7, "nineteenth"],
  [10, "twenty-second"],
];
/** Key at which colours are compared in words: e'. */
const KEY = 64;
const A4 = 69;

/**
 * ` and has its own colour above the twelfth`, where the first sound leads from some harmonic upward; else nothing.
 *
 * @param has `has its own colour`, or the same of several stops.
 */
export function ownColour(first: PartSound, second: PartSound, context: PartContext, has: string): string {
  const from = first.blend && second.blend ? leadsFrom(first.blend, second.blend) : null;
  if (from === null) return "";
  const unison = context.instrument.a4 * 2 ** ((KEY - A4) / 12);
  const name = HARMONICS.find(([below]) => from / unison < below)?.[1];
  if (!name) return "";
  return ` and ${has} ${name === "unison" ? "throughout" : `above the ${name}`}`;
}
