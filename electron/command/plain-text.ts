import { COLUMNS } from "./terminal.ts";

const lengthOf = (text: string): number => [...text].length;

/**
 * Text broken between words to lines of at most `width` columns. The first line begins with `lead`, the others with as
 * many spaces. A word that is longer than a line stands alone on it. A pitch stays with its stop (`Nasat 2 2/3`).
 */
export function wrapped(text: string, lead = "", width = COLUMNS): readonly string[] {
  const hanging = " ".repeat(lengthOf(lead));
  const lines: string[] = [];
  let current = lead;
  let isFresh = true;
  for (const word of text.split(/\s+(?!\d)/u).filter((each) => each !== "")) {
    if (!isFresh && lengthOf(current) + 1 + lengthOf(word) > width) {
      lines.push(current.trimEnd());
      current = hanging;
      isFresh = true;
    }
    current += isFresh ? word : ` ${word}`;
    isFresh = false;
  }
  return [...lines, current.trimEnd()];
}

/** Rows of a table whose first columns are as wide as their longest cell and whose last is broken to fit. */
export function table(rows: readonly (readonly string[])[], indent = ""): readonly string[] {
  const widths: number[] = [];
  for (const row of rows) {
    for (const [at, cell] of row.slice(0, -1).entries()) widths[at] = Math.max(widths[at] ?? 0, lengthOf(cell));
  }
  return rows.flatMap((row) => {
    const cells = row.slice(0, -1).map((cell, at) => `${cell}${" ".repeat((widths[at] ?? 0) - lengthOf(cell))}  `);
    return wrapped(row.at(-1) ?? "", `${indent}${cells.join("")}`);
  });
}

/** `text` at the left and `end` at the right edge of one line; on two lines where they do not fit on one. */
export function opposite(text: string, end: string): readonly string[] {
  const gap = COLUMNS - lengthOf(text) - lengthOf(end);
  return gap >= 2 ? [`${text}${" ".repeat(gap)}${end}`] : [...wrapped(text), `  ${end}`];
}

/** `1 stop`, `2 stops`. */
export const counted = (count: number, one: string, several = `${one}s`): string =>
  `${count} ${count === 1 ? one : several}`;

/** `a, b or c`. */
export const either = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
