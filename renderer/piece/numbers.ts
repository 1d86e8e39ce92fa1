/** Numbers as a person writes them down: `1-8, 10`; runs are drawn together. */
export function numbersText(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(", ");
}

/** The numbers that such a text means, each once and in order; `null` where it is none, or one is not from 1 to `most`. */
export function numbersIn(text: string, most: number): readonly number[] | null {
  const found = new Set<number>();
  for (const each of text.split(/[,;\s]+(?![-–—])/u).filter((part) => part !== "")) {
    const match = /^(\d{1,6})(?:\s*[-–—]\s*(\d{1,6}))?$/u.exec(each);
    if (!match) return null;
    const [from, to] = [Number(match[1]), Number(match[2] ?? match[1])];
    if (from < 1 || to < from || to > most) return null;
    for (let number = from; number <= to; number++) found.add(number);
  }
  return [...found].sort((a, b) => a - b);
}
