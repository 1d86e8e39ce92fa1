import type { Happening, LinkKind } from "../music/piece.ts";
import type { Kind } from "../stoplist/kind.ts";
import type { FileKind } from "./file-kind.ts";

/** What a name in a file can point to. */
export type Named = "division" | "stop" | "rank" | "box" | "part" | "coupler" | "texture" | "section";

/** Trouble with the text itself: it cannot be read as YAML at all, or not safely. */
export type TextTrouble =
  | { readonly code: "empty" }
  | { readonly code: "not-text"; readonly character: number }
  | { readonly code: "not-utf8" }
  | { readonly code: "too-large"; readonly limit: number }
  | { readonly code: "too-deep"; readonly limit: number }
  | { readonly code: "too-long"; readonly limit: number }
  | { readonly code: "yaml"; readonly problem: string }
  | { readonly code: "duplicate-key"; readonly key: string; readonly firstLine: number }
  | { readonly code: "odd-key" }
  | { readonly code: "alias-unknown"; readonly name: string }
  | { readonly code: "alias-too-many"; readonly limit: number }
  | { readonly code: "too-many-troubles"; readonly limit: number };

/** Trouble with the form of a file: its first line, its keys, the sort of value that a key takes. */
export type FormTrouble =
  | { readonly code: "version-missing"; readonly kind: FileKind; readonly wanted: string }
  | { readonly code: "version-other"; readonly found: string; readonly kind: FileKind; readonly wanted: string }
  | { readonly code: "version-newer"; readonly found: string; readonly wanted: string }
  | { readonly code: "not-keys"; readonly of: string }
  | { readonly code: "key-missing"; readonly key: string; readonly of: string; readonly expected: string }
  | { readonly code: "value-wrong"; readonly key: string; readonly expected: string; readonly found: string }
  | {
      readonly code: "word-unknown";
      readonly key: string;
      readonly found: string;
      readonly nearest: readonly string[];
      readonly all: readonly string[];
    }
  | {
      readonly code: "key-unknown";
      readonly key: string;
      readonly of: string;
      readonly nearest: readonly string[];
      readonly times: number;
    };

/** Trouble with a pitch, a key or a compass. */
export type PitchTrouble =
  | { readonly code: "pitch-unreadable"; readonly stop: string; readonly problem: string }
  | { readonly code: "pitch-not-a-pipe"; readonly stop: string; readonly pitch: string; readonly nearest: string }
  | { readonly code: "pitch-missing"; readonly stop: string }
  | { readonly code: "pitch-implied"; readonly stop: string; readonly pitch: string }
  | { readonly code: "key-unreadable"; readonly text: string }
  | { readonly code: "compass-unreadable"; readonly text: string }
  | { readonly code: "compass-upside-down"; readonly low: string; readonly high: string }
  | { readonly code: "missing-outside"; readonly key: string; readonly division: string }
  | { readonly code: "range-upside-down"; readonly stop: string; readonly from: string; readonly to: string }
  | {
      readonly code: "range-outside";
      readonly stop: string;
      readonly key: string;
      readonly division: string;
      readonly compass: string;
    }
  | { readonly code: "no-keys"; readonly stop: string }
  | { readonly code: "treble-by-custom"; readonly stop: string; readonly from: string; readonly low: string };

/** Trouble with divisions and their stops. */
export type StopTrouble =
  | { readonly code: "no-divisions" }
  | { readonly code: "no-stops" }
  | { readonly code: "no-manual" }
  | { readonly code: "all-off" }
  | { readonly code: "too-many-stops"; readonly limit: number }
  | { readonly code: "division-twice"; readonly name: string; readonly firstLine: number }
  | { readonly code: "keyboard-counted"; readonly division: string; readonly keyboard: number }
  | { readonly code: "keyboard-shared"; readonly division: string; readonly other: string; readonly keyboard: number }
  | { readonly code: "keyboard-needless"; readonly division: string; readonly kind: "pedal" | "floating" }
  | { readonly code: "stop-form" }
  | { readonly code: "stop-nameless" }
  | {
      readonly code: "name-unknown";
      readonly stop: string;
      readonly nearest: readonly string[];
      readonly kinds: readonly Kind[];
    }
  | {
      readonly code: "name-ambiguous";
      readonly stop: string;
      readonly choices: readonly string[];
      readonly kinds: readonly Kind[];
    }
  | { readonly code: "pipes-twice"; readonly stop: string; readonly first: string; readonly second: string }
  | { readonly code: "composition-empty"; readonly stop: string }
  | { readonly code: "composition-late"; readonly stop: string; readonly key: string; readonly from: string }
  | { readonly code: "ranks-differ"; readonly stop: string; readonly stated: number; readonly found: number }
  | { readonly code: "ranks-by-custom"; readonly stop: string; readonly ranks: number; readonly composition: string }
  | { readonly code: "rank-twice"; readonly id: string; readonly firstLine: number }
  | { readonly code: "rank-idle"; readonly id: string }
  | {
      readonly code: "rank-short";
      readonly stop: string;
      readonly from: string;
      readonly to: string;
      readonly of: string;
    }
  | {
      readonly code: "borrowed-short";
      readonly stop: string;
      readonly from: string;
      readonly to: string;
      readonly of: string;
    }
  | { readonly code: "borrows-itself"; readonly stop: string }
  | { readonly code: "borrowed-pitch"; readonly stop: string; readonly pitch: string; readonly of: string }
  | { readonly code: "bass-needs-from"; readonly stop: string }
  | {
      readonly code: "unknown-name";
      readonly what: Named;
      readonly name: string;
      readonly where: string | null;
      readonly nearest: readonly string[];
      /** What there is, for where nothing is near. */
      readonly all?: readonly string[];
    }
  | { readonly code: "ambiguous-stop"; readonly name: string; readonly choices: readonly string[] };

/** Trouble with couplers and what else the console has. */
export type ConsoleTrouble =
  | { readonly code: "coupler-unreadable"; readonly text: string }
  | { readonly code: "coupler-to-itself"; readonly division: string }
  | { readonly code: "coupler-twice"; readonly name: string; readonly firstLine: number };

/** Trouble with what a section or a registration file asks for. */
export type RegistrationTrouble =
  | { readonly code: "no-music" }
  | { readonly code: "music-twice" }
  | { readonly code: "part-id"; readonly part: string; readonly expected: string }
  | { readonly code: "part-backwards"; readonly part: string; readonly low: string; readonly high: string }
  | { readonly code: "stop-off"; readonly stop: string; readonly note: string | null }
  | { readonly code: "no-box"; readonly division: string }
  | { readonly code: "no-tremulant"; readonly name: string; readonly nearest: readonly string[] }
  | { readonly code: "no-unison-off"; readonly division: string }
  | { readonly code: "no-keyboard"; readonly division: string }
  | { readonly code: "drawn-twice"; readonly stop: string };

/** Trouble with the sections of a piece. */
export type PieceTrouble =
  | { readonly code: "bars-backwards"; readonly bars: string }
  | {
      readonly code: "bars-out-of-order";
      readonly bars: string;
      readonly section: string;
      readonly before: string;
      readonly barsBefore: string;
    }
  | { readonly code: "section-ambiguous"; readonly name: string; readonly numbers: readonly number[] }
  | { readonly code: "link-to-itself"; readonly kind: LinkKind; readonly section: string }
  | {
      readonly code: "links-contradict";
      readonly section: string;
      readonly other: string;
      readonly kinds: readonly [LinkKind, LinkKind];
    }
  | { readonly code: "links-in-ring"; readonly sections: readonly string[] }
  | { readonly code: "beats-missing"; readonly what: Happening }
  | { readonly code: "pin-empty"; readonly section: string }
  | { readonly code: "other-organ"; readonly organ: string; readonly here: string; readonly registered: number };

/** Why a change asked for cannot be made in the text of a file. */
export type EditTrouble =
  | { readonly code: "edit-by-hand"; readonly what: string }
  | {
      readonly code: "edit-lost";
      readonly what: "stop" | "division" | "coupler" | "section";
      readonly name: string;
      readonly nearest: readonly string[];
    };

/** What is wrong, with the facts that the words need; a closed union, told apart by `code`. */
export type TroubleFacts =
  | TextTrouble
  | FormTrouble
  | PitchTrouble
  | StopTrouble
  | ConsoleTrouble
  | RegistrationTrouble
  | PieceTrouble
  | EditTrouble;
/** The name of one sort of trouble; names are not reused. */
export type TroubleCode = TroubleFacts["code"];

/** `error`: the file cannot be used until it is mended. `note`: read, with what was assumed or ignored. */
export type Severity = "error" | "note";

/** Where in which file: lines and columns count from 1, columns in UTF-16 units. */
export interface TroublePlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** One thing wrong or assumed in a file, at its place. Words are made by `troubleText` or `troubleLine`. */
export type Trouble = TroubleFacts & TroublePlace & { readonly severity: Severity };

const NOTES: ReadonlySet<TroubleCode> = new Set<TroubleCode>([
  "key-unknown",
  "pitch-implied",
  "missing-outside",
  "range-outside",
  "treble-by-custom",
  "no-stops",
  "no-manual",
  "all-off",
  "keyboard-counted",
  "keyboard-shared",
  "keyboard-needless",
  "composition-late",
  "ranks-differ",
  "ranks-by-custom",
  "rank-idle",
  "rank-short",
  "borrowed-short",
  "coupler-twice",
  "stop-off",
  "drawn-twice",
  "pin-empty",
  "bars-backwards",
  "bars-out-of-order",
  "other-organ",
]);

/** Whether trouble of that sort stops a file from being used. */
export const severityOf = (code: TroubleCode): Severity => (NOTES.has(code) ? "note" : "error");
