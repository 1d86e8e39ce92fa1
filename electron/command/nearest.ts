import Fuse from "fuse.js";

/** Up to three of the words that a mistyped or half-remembered one may have meant, nearest first. */
export const nearestWords = (word: string, all: readonly string[]): readonly string[] =>
  new Fuse(all, { threshold: 0.4 }).search(word.slice(0, 60), { limit: 3 }).map((hit) => hit.item);
