/**
 * What a question asks, which settles what an answer to it does:
 * `pitch`: how long a stop is, or how many ranks it has; `name`: what a stop is whose name is not known; `meaning`: which of
 * the things a stop is that its name can mean; `stop-home`: to which division a stop belongs that stands elsewhere;
 * `pedal-stops`: whether stops printed under a manual make a pedal division; `heading`: what stands over stops like a
 * heading; `groups`: what two groups without headings are; `coupler-ends`: from where to where a coupler goes;
 * `coupler-to-pedal`: which keyboard a coupler brings to the pedal; `tremulant`: what it shakes; `order`: whether keyboards
 * are numbered as taken; `rows`: whether stops of one letter draw one row of pipes; `left-out`: what was left out, with nothing to choose; `whole-text`: what is wrong with the text.
 */
export type QuestionKind =
  | "pitch"
  | "name"
  | "meaning"
  | "stop-home"
  | "pedal-stops"
  | "heading"
  | "groups"
  | "coupler-ends"
  | "coupler-to-pedal"
  | "tremulant"
  | "order"
  | "rows"
  | "left-out"
  | "whole-text";

/** Something that a printed list leaves open. */
export interface Question {
  readonly kind: QuestionKind;
  readonly line: number;
  /** A sentence for an organist. */
  readonly text: string;
  /** What it is about: the stop, heading or word as printed. */
  readonly about: string;
  /** Names of the stops of that line about which it is asked; empty when it is about something else. */
  readonly stops: readonly string[];
  /** The answers to choose from; empty when it is an open question. */
  readonly choices: readonly string[];
}

/** Answers of `heading`. */
export const HEADING_ANSWERS = {
  manual: "a manual division",
  pedal: "the pedal",
  none: "part of the division before",
} as const;

/** Answers of `groups`. */
export const GROUP_ANSWERS = {
  one: "one manual",
  halves: "bass half and treble half",
  manuals: "two manuals",
} as const;

/** Answers of `pedal-stops`. */
export const PEDAL_STOP_ANSWERS = { pedal: "a pedal division", stay: "keep them here" } as const;

/** Answers of `rows`. */
export const ROW_ANSWERS = { shared: "one row for each letter", own: "each stop has its own pipes" } as const;

/** Answer of `tremulant` besides the names of divisions. */
export const SHAKES_ALL = "the whole organ";

/** Answer of `pitch` where the number can be ranks. */
export const ranksAnswer = (ranks: number): string => `${ranks} ranks`;
