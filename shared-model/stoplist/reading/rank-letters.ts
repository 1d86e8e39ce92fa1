import type { Questions } from "./drafts.ts";
import type { PrintedLine } from "./plain-text.ts";
import { ROW_ANSWERS } from "./question.ts";
import type { ReadDivision, ReadStop } from "./reading.ts";

const LETTER = /\s?\(([A-Z])\)(?=\s*$|\s*\t|\s+\d)/gu;
/** Letters that stand for halves: bass, Diskant, soprani. */
const HALVES = "BDS";
/** `Ranks: Open Diapason 8 (85 pipes), ...`, `(A) Open Diapason, 85 pipes`: rows of pipes, no knobs. */
const ROWS = /^\s*(?:(?:the )?(?:ranks?|rows?(?: of pipes)?)|pfeifenreihen|reihen|rangs|jeux réels|rangen)\s*[:=]/iu;
const ROW = /^\s*\(?([A-Z])\)?\s*(?:[:=–—-]\s|(?<=\))\s*)/u;

/** A list without the letters of its ranks. */
export interface WithoutLetters {
  readonly lines: readonly PrintedLine[];
  /** The letters of each line, from left to right. */
  readonly letters: ReadonlyMap<number, readonly string[]>;
}

/**
 * Lists of unit organs print a letter for each rank behind the stops that use it (`Octave 4 (A)`), and often what the
 * letters stand for. Such letters are taken off, since `(B)` alone would be a bass half; what they mean is asked once.
 */
export function withoutRankLetters(lines: readonly PrintedLine[], questions: Questions): WithoutLetters {
  const letters = new Map<number, readonly string[]>();
  for (const { line, text } of lines) {
    const found = [...text.matchAll(LETTER)].map((match) => match[1] as string);
    if (found.length > 0) letters.set(line, found);
  }
  const all = new Set([...letters.values()].flat());
  const [first] = letters.keys();
  const others = [...all].filter((letter) => !HALVES.includes(letter));
  if (first === undefined || letters.size < 3 || others.length === 0) return { lines, letters: new Map() };
  const list = [...all].sort().map((letter) => `(${letter})`);
  questions.ask({
    kind: "rows",
    line: first,
    text: `Letters in brackets stand behind the stops: ${list.join(", ")}. Stops of one letter are taken to draw one row of pipes. Is that right?`,
    about: `(${letters.get(first)?.[0]})`,
    choices: Object.values(ROW_ANSWERS),
  });
  const isLegend = ({ line, text }: PrintedLine): boolean =>
    ROWS.test(text) || (!letters.has(line) && all.has(ROW.exec(text)?.[1] ?? ""));
  return {
    lines: lines.map((one) => ({ line: one.line, text: isLegend(one) ? "" : one.text.replace(LETTER, "") })),
    letters,
  };
}

/** Puts the letters of the ranks to the stops behind which they stand; a line of more stops or fewer leaves it open. */
export function withRows(
  divisions: readonly ReadDivision[],
  letters: WithoutLetters["letters"],
): readonly ReadDivision[] {
  const printed = new Map<number, ReadStop[]>();
  for (const stop of divisions.flatMap(({ stops }) => stops))
    printed.set(stop.line, [...(printed.get(stop.line) ?? []), stop]);
  const rowOf = (stop: ReadStop): string | null => {
    const [here, signs] = [printed.get(stop.line) ?? [], letters.get(stop.line) ?? []];
    return here.length === signs.length ? (signs[here.indexOf(stop)] ?? null) : null;
  };
  return divisions.map((division) => ({
    ...division,
    stops: division.stops.map((stop) => ({ ...stop, row: rowOf(stop) })),
  }));
}
