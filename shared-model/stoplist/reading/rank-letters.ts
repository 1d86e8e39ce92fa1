import type { Questions } from "./drafts.ts";
import type { PrintedLine } from "./plain-text.ts";

const LETTER = /\s?\(([A-Z])\)(?=\s*$|\s*\t|\s+\d)/gu;
/** Letters that stand for halves: bass, Diskant, soprani. */
const HALVES = "BDS";

/**
 * Lists of unit organs print a letter for each rank behind the stops that use it (`Octave 4 (A)`). Such letters are taken
 * off, since `(B)` alone would be a bass half, and what they mean is asked once.
 */
export function withoutRankLetters(lines: readonly PrintedLine[], questions: Questions): readonly PrintedLine[] {
  const letters = new Set<string>();
  const marked = lines.filter(({ text }) => {
    const found = [...text.matchAll(LETTER)].map((match) => match[1] as string);
    for (const letter of found) letters.add(letter);
    return found.length > 0;
  });
  const [first] = marked;
  const others = [...letters].filter((letter) => !HALVES.includes(letter));
  if (!first || marked.length < 3 || others.length === 0) return lines;
  const list = [...letters].sort().map((letter) => `(${letter})`);
  questions.ask({
    kind: "left-out",
    line: first.line,
    text: `Letters in brackets stand behind the stops: ${list.join(", ")}. They are left out; where stops of one letter use the same pipes, say so in the organ's file.`,
    about: list[0] as string,
  });
  return lines.map((one) => ({ line: one.line, text: one.text.replace(LETTER, "") }));
}
