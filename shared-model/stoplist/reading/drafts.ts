import type { Compass } from "../../pitch/key.ts";
import type { Role } from "./division-words.ts";
import type { Question } from "./question.ts";
import type { StopDraft } from "./stop-draft.ts";

/** A stop as found, with its line. */
export interface PlacedStop {
  readonly draft: StopDraft;
  readonly line: number;
}

/** A division while the list is being read. */
export interface DivisionDraft {
  name: string | null;
  readonly role: Role;
  readonly kind: "manual" | "pedal";
  keyboard: number | null;
  compass: Compass | null;
  enclosed: boolean;
  readonly line: number;
  pullDown: boolean;
  readonly stops: PlacedStop[];
}

/** More questions than this are no help: the list is not one. */
const MOST_QUESTIONS = 200;

/** A question to be asked; without choices an open one. */
type Asked = Omit<Question, "stops" | "choices"> & Partial<Pick<Question, "stops" | "choices">>;

/** Questions in the order of the lines, each once. */
export class Questions {
  readonly #all: Question[] = [];
  readonly #seen = new Set<string>();

  ask({ kind, line, text, about, stops = [], choices = [] }: Asked): void {
    const key = `${line} ${text}`;
    if (this.#seen.has(key)) return;
    this.#seen.add(key);
    this.#all.push({ kind, line, text, about: about.length > 120 ? `${about.slice(0, 119)}…` : about, stops, choices });
  }

  add(questions: readonly Question[]): void {
    for (const question of questions) this.ask(question);
  }

  /** All of them by line; beyond two hundred only their number. */
  list(): readonly Question[] {
    const sorted = [...this.#all].sort((a, b) => a.line - b.line);
    if (sorted.length <= MOST_QUESTIONS) return sorted;
    const rest = sorted.slice(MOST_QUESTIONS);
    const first = rest[0] as Question;
    return [
      ...sorted.slice(0, MOST_QUESTIONS),
      {
        kind: "whole-text",
        line: first.line,
        text: `From here on ${rest.length} more lines are unclear; is this a stoplist?`,
        about: first.about,
        stops: [],
        choices: [],
      },
    ];
  }
}
