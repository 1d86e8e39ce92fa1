import type { Foot } from "../../pitch/foot.ts";
import type { Key } from "../../pitch/key.ts";
import type { HalfMark } from "./halves.ts";
import type { PitchMark } from "./pitches-in-line.ts";
import type { RanksMark } from "./ranks-in-line.ts";

/** A stop while its line is being read: everything found, nothing concluded. */
export interface StopDraft {
  /** Place of its first sign in the line, for lines joined from several. */
  at: number;
  name: string;
  /** The name without a word that may or may not be a half (`Violon basse`, `Cornet D`); equal to `name` when there is none. */
  bareName: string;
  pitches: PitchMark[];
  /** Lengths that stand in brackets; they count when no other is printed. */
  aside: PitchMark[];
  /** Lengths are joined by a sign that makes them one stop or several (`8' + 4'`); a dash makes them a change of one. */
  joined: boolean;
  ranks: RanksMark | null;
  composition: readonly Foot[] | null;
  half: HalfMark | null;
  from: Key | null;
  /** Highest key (`bass up to B`). */
  to: Key | null;
  borrowed: string | null;
  prepared: boolean;
  atPedal: boolean;
  remarks: string[];
}

/** What a line holds: stops, marks that belong to a stop printed before or after, and words that are neither. */
export type LinePart =
  | { readonly kind: "stop"; readonly draft: StopDraft }
  | { readonly kind: "marks"; readonly draft: StopDraft }
  | { readonly kind: "words"; readonly text: string; readonly at: number };

/** A stop of which nothing is known but its place. */
export const emptyDraft = (at: number): StopDraft => ({
  at,
  name: "",
  bareName: "",
  pitches: [],
  aside: [],
  joined: false,
  ranks: null,
  composition: null,
  half: null,
  from: null,
  to: null,
  borrowed: null,
  prepared: false,
  atPedal: false,
  remarks: [],
});

/** Whether a length, ranks or a composition stands beside the name. */
export const hasMarks = (draft: StopDraft): boolean =>
  draft.pitches.length > 0 || draft.aside.length > 0 || draft.ranks !== null || draft.composition !== null;

/** Whether a length stands beside the name, in brackets or not. */
export const hasLength = (draft: StopDraft): boolean => draft.pitches.length > 0 || draft.aside.length > 0;

/** Whether a mark says by itself that this is a stop: a foot mark, a word for ranks, a composition. */
export const isSure = (draft: StopDraft): boolean =>
  draft.pitches.some((mark) => mark.sure) ||
  draft.aside.some((mark) => mark.sure) ||
  draft.ranks?.sign === "counted" ||
  draft.composition !== null;

/** The first key that is named counts. */
export function takeKey(draft: StopDraft, key: Key, end: "from" | "to"): void {
  if (end === "from") draft.from ??= key;
  else draft.to ??= key;
}

/** Marks of a line without a name put to a stop printed on another line. */
export function giveMarks(from: StopDraft, to: StopDraft): void {
  to.pitches.push(...from.pitches);
  to.aside.push(...from.aside);
  to.joined ||= from.joined;
  to.ranks ??= from.ranks;
  to.composition ??= from.composition;
  to.half ??= from.half;
  to.from ??= from.from;
  to.to ??= from.to;
  to.borrowed ??= from.borrowed;
  to.prepared ||= from.prepared;
  to.atPedal ||= from.atPedal;
  to.remarks.push(...from.remarks);
}
