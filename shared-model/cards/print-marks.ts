import { joined } from "../rules/rule.ts";
import { PIECE_PARTS, type PiecePart } from "./pages.ts";
import { nextWords } from "./paper/change-sheet.ts";
import type { ChangeCard, PieceCards } from "./piece-card.ts";

/** What stood on one printed thing, in short: the same mark, the same words. */
export interface PrintMark {
  /** Number of a change's card, else the part of the cards: `overview`, `pistons`, `assistant`. */
  readonly what: string;
  readonly mark: string;
  /** When it was printed, in milliseconds since 1970. */
  readonly when: number;
}

/** A short mark of a text: FNV-1a, twice with different beginnings. Two texts of one mark are not to be expected. */
function markOf(value: unknown): string {
  const text = JSON.stringify(value);
  let [one, other] = [0x811c9dc5, 0x1b873593];
  for (let at = 0; at < text.length; at++) {
    one = Math.imul(one ^ text.charCodeAt(at), 0x01000193);
    other = Math.imul(other ^ text.charCodeAt(text.length - 1 - at), 0x01000193);
  }
  return [one, other].map((each) => (each >>> 0).toString(36)).join("-");
}

/** What an overview shows of a change, at most. */
const inShort = ({ number, section, where, dynamic, state, presses, verdict }: ChangeCard): unknown => [
  number,
  section,
  where,
  dynamic,
  state.label,
  presses,
  verdict?.words,
];

/** What an assistant's card shows of a change. */
const ofAssistant = ({ number, where, cue, tasks, presses, pressedBy }: ChangeCard): unknown => [
  number,
  where,
  cue,
  tasks.filter((task) => task.who === "assistant"),
  pressedBy === "assistant" ? presses : null,
];

/** The marks of all that can be printed of a piece: whatever would read otherwise on paper has another mark. */
export function printMarks(cards: PieceCards): ReadonlyMap<string, string> {
  const { changes, piece, organ, pistons, cautions, timeLine, assistant } = cards;
  const parts: Readonly<Record<Exclude<PiecePart, "changes">, unknown>> = {
    overview: [piece, organ, timeLine, changes.map(inShort)],
    pistons: [piece, organ, pistons, cautions],
    assistant: [piece, organ, assistant, changes.map(ofAssistant)],
    pictures: cards.pictures,
  };
  return new Map([
    ...changes.map((card, at) => [String(card.number), markOf([piece, card, nextWords(changes[at + 1])])] as const),
    ...Object.entries(parts).map(([what, value]) => [what, markOf(value)] as const),
  ]);
}

/** What was printed so far, after `parts` were printed too (of the changes `only` some numbers, or all). Things that are no more are dropped. */
export function printedNow(
  before: readonly PrintMark[],
  cards: PieceCards,
  parts: readonly PiecePart[],
  only: readonly number[] | null,
  when: number,
): readonly PrintMark[] {
  const now = printMarks(cards);
  const isPrinted = (what: string): boolean =>
    /^\d/.test(what)
      ? parts.includes("changes") && (only === null || only.includes(Number(what)))
      : parts.includes(what as PiecePart);
  return [...now].flatMap(([what, mark]): readonly PrintMark[] => {
    if (isPrinted(what)) return [{ what, mark, when }];
    return before.filter((each) => each.what === what);
  });
}

/** What is different from the paper. */
export interface PrintedSince {
  /** When the last of what was printed was printed. */
  readonly when: number;
  /** Numbers of cards that read otherwise now, that were never printed, and that are no more. */
  readonly changed: readonly number[];
  readonly fresh: readonly number[];
  readonly gone: readonly number[];
  /** Other sheets that were printed and read otherwise now. */
  readonly parts: readonly PiecePart[];
}

/** Compares what was printed with the cards as they are; `null` where no card of a change was ever printed. */
export function printedSince(printed: readonly PrintMark[], cards: PieceCards): PrintedSince | null {
  const now = printMarks(cards);
  const numbers = (marks: readonly string[]): readonly number[] => marks.filter((what) => /^\d/.test(what)).map(Number);
  const before = new Map(printed.map(({ what, mark }) => [what, mark]));
  const differs = [...before.keys()].filter((what) => now.has(what) && now.get(what) !== before.get(what));
  if (numbers([...before.keys()]).length === 0) return null;
  return {
    when: Math.max(...printed.map((each) => each.when)),
    changed: numbers(differs),
    fresh: numbers([...now.keys()].filter((what) => !before.has(what))),
    gone: numbers([...before.keys()].filter((what) => !now.has(what))),
    parts: PIECE_PARTS.filter((part) => differs.includes(part)),
  };
}

const PART_NAMES: Readonly<Record<PiecePart, string>> = {
  overview: "the overview",
  pistons: "the sheet of pistons",
  changes: "the cards",
  assistant: "the assistant's card",
  pictures: "the pictures",
};

/** `Since you printed on 3 May: cards 3 and 7 have changed, card 8 is new.`; `day` as a person writes it. */
export function sinceWords({ changed, fresh, gone, parts }: PrintedSince, day: string): string {
  const cards = (numbers: readonly number[], one: string, more: string): readonly string[] =>
    numbers.length === 0
      ? []
      : [`card${numbers.length === 1 ? "" : "s"} ${joined(numbers.map(String))} ${numbers.length === 1 ? one : more}`];
  const said = [
    ...cards(changed, "has changed", "have changed"),
    ...cards(fresh, "is new", "are new"),
    ...cards(gone, "is no longer wanted", "are no longer wanted"),
    ...(parts.length === 0
      ? []
      : [`${joined(parts.map((part) => PART_NAMES[part]))} ${parts.length === 1 ? "has" : "have"} changed`]),
  ];
  return said.length === 0
    ? `What you printed on ${day} still holds.`
    : `Since you printed on ${day}: ${said.join(", ")}.`;
}
