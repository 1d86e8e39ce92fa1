/** So many answers are kept; then all are forgotten. */
const MOST_KEPT = 4000;
/** Longer texts come once and are not worth keeping. */
const LONGEST_KEPT = 160;

/**
 * The same function with its answers kept: reading a list asks for the same words over and over. For functions of a text
 * alone, whose answers nobody changes; memory is bounded.
 */
export function remembered<T>(answer: (text: string) => T): (text: string) => T {
  const kept = new Map<string, T>();
  return (text) => {
    if (text.length > LONGEST_KEPT) return answer(text);
    const known = kept.get(text);
    if (known !== undefined || kept.has(text)) return known as T;
    if (kept.size >= MOST_KEPT) kept.clear();
    const found = answer(text);
    kept.set(text, found);
    return found;
  };
}
