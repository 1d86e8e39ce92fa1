import type { Foot } from "../../pitch/foot.ts";
import type { Key } from "../../pitch/key.ts";
import type { Question } from "./question.ts";

/** One printed stop as understood. A line that prints two stops gives two; a line that stands for both halves gives one, `both`. */
export interface ReadStop {
  /** As printed, without pitch, ranks, half, footnote signs and remarks. */
  readonly name: string;
  /** What sounds (old roundings mended); `null` when nothing is printed and custom does not settle it. */
  readonly pitch: Foot | null;
  /** The pitch as it stands in print, `null` when none does. */
  readonly printed: string | null;
  /** Number of ranks of a compound; the larger of a range. */
  readonly ranks: number | null;
  readonly half: "bass" | "treble" | "both" | null;
  /** Line of the list, from 1. */
  readonly line: number;
  /** Pitches of a compound where the list prints them (`2 2/3 + 1 3/5`). */
  readonly composition: readonly Foot[] | null;
  /** Lowest key where the list says so (`ab c1`, `from tenor C`). */
  readonly from: Key | null;
  /** Whose pipes it uses, as printed (`from Great`, `Ext. 7`); `null` when nothing says so. */
  readonly borrowed: string | null;
  /** The letter of the row of pipes that it draws, where the list prints one for each row; `null` when it prints none. */
  readonly row: string | null;
  /** Planned but not built (`prepared for`, `vorgesehen`): read, and marked off. */
  readonly prepared: boolean;
  /** What else the line says, in its words. */
  readonly remark: string | null;
}

export interface ReadDivision {
  readonly name: string | null;
  readonly kind: "manual" | "pedal";
  /** Manuals count from the lowest where the list numbers them. */
  readonly keyboard: number | null;
  readonly low: Key | null;
  readonly high: Key | null;
  /** Keys between them that do not exist: a short octave, a lowest C sharp that was left out. */
  readonly missing: readonly Key[];
  readonly enclosed: boolean;
  readonly stops: readonly ReadStop[];
}

/** A printed stoplist, understood as far as it goes. */
export interface Reading {
  readonly name: string | null;
  /** Who made it and when, where the list says so beside its name. */
  readonly builder: string | null;
  readonly year: number | null;
  readonly divisions: readonly ReadDivision[];
  /** By the names of divisions above. */
  readonly couplers: readonly { readonly from: string; readonly to: string; readonly pitch: 16 | 8 | 4 }[];
  /** Divisions whose own pitch can be turned off on their keyboard. */
  readonly unisonOff: readonly string[];
  /** Division names, or `all`. */
  readonly tremulants: readonly string[];
  readonly questions: readonly Question[];
}
