const KEPT = 12;

/** Remembers the latest answers of a dear pure function, by a text that stands for its arguments. */
export function remembering<Argument, Answer>(
  keyOf: (argument: Argument) => string,
  reckon: (argument: Argument) => Answer,
) {
  const known = new Map<string, Answer>();
  return (argument: Argument): Answer => {
    const key = keyOf(argument);
    const old = known.get(key);
    if (old !== undefined) return old;
    const answer = reckon(argument);
    known.set(key, answer);
    const [oldest] = known.keys();
    if (known.size > KEPT && oldest !== undefined) known.delete(oldest);
    return answer;
  };
}
