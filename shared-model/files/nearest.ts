/** A name for comparison: small letters without accents, `ß` as `ss`, hyphens, stops and spaces alike. */
export const folded = (name: string): string =>
  name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .replace(/[\s\-‐-―_.'’]+/g, " ")
    .trim();

/** Letters to change, add, take away or swap with their neighbour to make one word of the other, at most `limit + 1`. */
function lettersApart(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const changed = (row[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped =
        i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? (before[j - 2] as number) + 1 : changed;
      next.push(Math.min(changed, swapped, (row[j] as number) + 1, (next[j - 1] as number) + 1));
    }
    if (Math.min(...next) > limit) return limit + 1;
    [before, row] = [row, next];
  }
  return row[b.length] as number;
}

/** Names that are looked through: more than any division or catalogue has. */
const NAMES_LIMIT = 500;

/**
 * The names most like `text`, best first, at most `count`: those that begin with it or hold it, then those that differ
 * in no more than a third of their letters. Empty when none is near.
 */
export function nearestOf(text: string, names: readonly string[], count = 3): readonly string[] {
  const wanted = folded(text).slice(0, 60);
  if (wanted === "") return [];
  const scored: { name: string; apart: number }[] = [];
  for (const name of new Set(names.slice(0, NAMES_LIMIT))) {
    const other = folded(name).slice(0, 60);
    const limit = Math.max(1, Math.floor(Math.max(wanted.length, other.length) / 3));
    const within = wanted.length >= 3 && other.length >= 3 && (other.includes(wanted) || wanted.includes(other));
    const apart = within ? 0.5 : lettersApart(wanted, other, limit);
    if (apart <= limit) scored.push({ name, apart });
  }
  return scored
    .sort((a, b) => a.apart - b.apart)
    .slice(0, count)
    .map((entry) => entry.name);
}
