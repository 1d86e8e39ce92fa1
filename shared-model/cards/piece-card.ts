import type { Dynamic } from "../music/texture.ts";
import type { RegistrationDrawing } from "../pictures/registration-picture.ts";
import type { CardWarning, CueCard } from "./cue-card.ts";

/** One thing to move, as the jamb names it. */
export interface CardMove {
  /** Draw, put in, or set (a box). */
  readonly act: "draw" | "cancel" | "set";
  /** What it is when it is no stop: `coupler`, `tremulant`, `box`, `unison off`; else `null`. */
  readonly what: string | null;
  /** The division of a stop; `null` for all else, whose name says it. */
  readonly division: string | null;
  readonly name: string;
}

/** Who moves things. */
export const CARD_WORKERS = ["left", "right", "feet", "assistant"] as const;
export type CardWorker = (typeof CARD_WORKERS)[number];

/** A worker in the middle of a sentence. */
export const WORKER_WORDS: Readonly<Record<CardWorker, string>> = {
  left: "left hand",
  right: "right hand",
  feet: "foot",
  assistant: "assistant",
};

/** What one hand, foot or helper does for a change. */
export interface CardTask {
  readonly who: CardWorker;
  /** When, if long before the change: `in the rest at bar 12`, `at any time before`; `null` at the change itself. */
  readonly ready: string | null;
  readonly turnsPage: boolean;
  /** What goes in before what comes out, division by division. */
  readonly moves: readonly CardMove[];
}

/** A piston or stud that makes a change. */
export interface CardPress {
  /** `General`, or the division whose piston it is. */
  readonly name: string;
  readonly number: number;
  /** Memory level; `null` where there is only one. */
  readonly level: number | null;
  /** Whether the level is another than that of the change before. */
  readonly newLevel: boolean;
}

/** How a change goes. `loud`: it must not be overlooked. */
export interface CardVerdict {
  /** `easy`, `brisk`, `needs the assistant`, `not possible as written`. */
  readonly words: string;
  /** The same in a word or two, for the foot of the card before. */
  readonly brief: string;
  readonly loud: boolean;
  /** Seconds needed and left, in a sentence; `null` where nobody is pressed. */
  readonly detail: string | null;
}

/** One change of a piece, or its beginning. */
export interface ChangeCard {
  /** From 1, in playing order. */
  readonly number: number;
  readonly section: string | null;
  /** `bar 25`, as the file writes it; `null` when it does not say. */
  readonly where: string | null;
  /** What happens just before, by which the moment is known: `fermata`, `rest of 2 beats`. */
  readonly cue: string | null;
  readonly dynamic: Dynamic | null;
  /** `null` for the beginning, for which there is all the time in the world. */
  readonly verdict: CardVerdict | null;
  /** What is pressed, in order: a general, or pistons of several divisions. */
  readonly presses: readonly CardPress[];
  /** With what: `thumb`, `toe`; `assistant` when the assistant presses; `null` where it does not matter. */
  readonly pressedBy: "thumb" | "toe" | "assistant" | null;
  /** What is moved besides. Empty when a piston does it all, when nothing changes, and for the beginning. */
  readonly tasks: readonly CardTask[];
  /** Silent from here on: goes in when there is time. */
  readonly whenTime: readonly CardMove[];
  /** Silent from here on and wanted again: left as they are. */
  readonly stays: readonly string[];
  /** How the console stands and who plays where from here on. */
  readonly state: CueCard;
  readonly warnings: readonly CardWarning[];
}

/** What is stored on one piston before the piece is played. */
export interface PistonSetting {
  readonly press: CardPress;
  /** Numbers of the changes that it makes. */
  readonly changes: readonly number[];
  readonly state: CueCard;
}

/** A section on the time line of a piece. */
export interface TimeLineSection {
  /** Number of the change at its beginning. */
  readonly number: number;
  /** Place of the section in the piece, from 0; a section that grows has a stretch for each of its steps. */
  readonly section: number;
  /** How long it is against the others: bars where they are known. More than 0. */
  readonly length: number;
  /** How loud it is between the softest, 0, and the loudest, 1, of the piece. */
  readonly level: number;
}

/** All that is printed for one piece on one organ. */
export interface PieceCards {
  readonly piece: string;
  readonly organ: string;
  readonly changes: readonly ChangeCard[];
  /** Where the assistant stands, as the player sees it; `null` without one. */
  readonly assistant: "left" | "right" | null;
  readonly pistons: readonly PistonSetting[];
  /** What is to be minded before the memory is touched, a sentence or two each. */
  readonly cautions: readonly string[];
  readonly timeLine: readonly TimeLineSection[];
  /** What each registration sounds, drawn, in playing order. */
  readonly pictures: readonly RegistrationDrawing[];
}

/** `General 3, level 2`. */
export const pressWords = ({ name, number, level }: CardPress): string =>
  [`${name} ${number}`, ...(level === null ? [] : [`level ${level}`])].join(", ");

/** Before the names of stops that stay drawn though they are silent. */
export const STAYS = "silent, stay drawn";
