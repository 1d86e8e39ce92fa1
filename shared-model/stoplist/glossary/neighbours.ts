import Fuse from "fuse.js";
import type { GlossaryEntry } from "./entry.ts";
import { foldedSpelling } from "./spelling.ts";

/** One spelling of an entry, as printed. */
export interface Spelled {
  readonly spelling: string;
  readonly entry: GlossaryEntry;
}

/** Spellings by the pairs of letters in them: what shares no pair with a text is not near it. */
export interface PairIndex {
  readonly spelled: readonly Spelled[];
  readonly lengths: readonly number[];
  readonly byPair: ReadonlyMap<string, readonly number[]>;
}

const pairsOf = (text: string): ReadonlySet<string> => {
  const marked = `^${foldedSpelling(text)}$`;
  return new Set(Array.from({ length: marked.length - 1 }, (_, place) => marked.slice(place, place + 2)));
};

/** Files the spellings by their pairs of letters. */
export function pairIndex(spelled: readonly Spelled[]): PairIndex {
  const byPair = new Map<string, number[]>();
  const lengths = spelled.map(({ spelling }, number) => {
    const pairs = pairsOf(spelling);
    for (const pair of pairs) {
      const there = byPair.get(pair);
      if (there) there.push(number);
      else byPair.set(pair, [number]);
    }
    return pairs.size;
  });
  return { spelled, lengths, byPair };
}

/**
 * Only so many of the likeliest spellings are compared letter by letter, which costs a hundred times more than
 * counting pairs.
 */
const MOST_COMPARED = 60;
/** The letter-by-letter search takes no more letters than this. */
const LONGEST_SEARCH = 32;
const FARTHEST = 0.45;

/** Spellings near a text, nearest first, one for each entry; empty when nothing is near. */
export function neighboursOf(text: string, index: PairIndex, count: number): readonly Spelled[] {
  const wanted = text.trim().slice(0, LONGEST_SEARCH);
  if (wanted === "") return [];
  const pairs = pairsOf(wanted);
  const shared = new Map<number, number>();
  for (const pair of pairs) {
    for (const number of index.byPair.get(pair) ?? []) shared.set(number, (shared.get(number) ?? 0) + 1);
  }
  const likeness = ([number, both]: readonly [number, number]): number =>
    (2 * both) / (pairs.size + (index.lengths[number] as number));
  const likeliest = [...shared]
    .toSorted((a, b) => likeness(b) - likeness(a) || a[0] - b[0])
    .slice(0, MOST_COMPARED)
    .map(([number]) => index.spelled[number] as Spelled);
  const fuse = new Fuse(likeliest, { keys: ["spelling"], threshold: FARTHEST, ignoreLocation: true });
  const nearest = new Map<GlossaryEntry, Spelled>();
  for (const { item } of fuse.search(wanted)) if (!nearest.has(item.entry)) nearest.set(item.entry, item);
  return [...nearest.values()].slice(0, count);
}
