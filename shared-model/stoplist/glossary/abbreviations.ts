import type { GlossaryEntry } from "./entry.ts";
import { foldedSpelling } from "./spelling.ts";

/** A spelling taken to pieces, for comparing with abbreviations word by word. */
export interface SpelledOut {
  readonly words: readonly string[];
  readonly entry: GlossaryEntry;
}

const wordsOf = (spelling: string): readonly string[] =>
  spelling
    .split(/[\s\-–]+/)
    .map(foldedSpelling)
    .filter((word) => word !== "");

/** Takes a spelling to pieces. */
export const spelledOut = (spelling: string, entry: GlossaryEntry): SpelledOut => ({ words: wordsOf(spelling), entry });

/** Fewer letters than this say nothing. */
const FEWEST_LETTERS = 3;

/**
 * Entries whose spelling a name with points can stand for (`Rohrfl.`, `Sal. Cel.`): each word with a point must
 * begin the word in its place, each word without must be that word. Shortest spelling first, for the plain stop is
 * abbreviated oftener than its relatives. Empty for a name without points.
 */
export function entriesAbbreviated(name: string, all: readonly SpelledOut[]): readonly GlossaryEntry[] {
  if (!name.includes(".")) return [];
  const parts = name
    .replace(/\./g, ". ")
    .split(/[\s\-–]+/)
    .map((part) => ({ word: foldedSpelling(part), begins: part.endsWith(".") }))
    .filter((part) => part.word !== "");
  if (parts.reduce((sum, part) => sum + part.word.length, 0) < FEWEST_LETTERS) return [];
  const found = all.filter(
    ({ words }) =>
      words.length === parts.length &&
      parts.every(({ word, begins }, place) => (begins ? words[place]?.startsWith(word) : words[place] === word)),
  );
  const length = (one: SpelledOut): number => one.words.join("").length;
  return [...new Set(found.toSorted((a, b) => length(a) - length(b)).map((one) => one.entry))];
}
