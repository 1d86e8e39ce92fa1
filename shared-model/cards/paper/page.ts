import type { Face } from "./type.ts";

/** Small drawings. Half discs say who plays: filled to the right, to the left, above for both hands, below for the feet. */
export const SIGNS = ["right", "left", "both", "feet"] as const;
export type Sign = (typeof SIGNS)[number];

/** Text in one face and size, set from `x` to the right on the baseline `y`. */
export interface TextMark {
  readonly kind: "text";
  readonly text: string;
  readonly face: Face;
  /** Points. */
  readonly size: number;
  readonly x: number;
  readonly y: number;
  /** Millimetres, as measured. */
  readonly width: number;
  /** Whether the digits are set as a fraction (`2/3`). */
  readonly fraction: boolean;
  /** White on black instead of black on white. */
  readonly reversed: boolean;
}

/** A black bar: a rule across or upright. */
export interface RuleMark {
  readonly kind: "rule";
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A box round words: filled black, or drawn with a line. */
export interface FrameMark {
  readonly kind: "frame";
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly filled: boolean;
  /** Radius of the corners. */
  readonly round: number;
}

/** A drawing in a square with its upper left corner at `x`, `y`. */
export interface SignMark {
  readonly kind: "sign";
  readonly sign: Sign;
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/** A straight line from point to point, for cutting marks and curves. */
export interface LineMark {
  readonly kind: "line";
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly weight: number;
  /** Lengths of ink and gap in turn; left out for an unbroken line. */
  readonly dashes?: readonly number[];
}

/** A closed figure; where it is white, its outline is seen. */
export interface AreaMark {
  readonly kind: "area";
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly fill: "black" | "white";
  readonly weight: number;
}

/** Something printed. All lengths are millimetres from the upper left corner of the page. Ink is black on white paper. */
export type Mark = TextMark | RuleMark | FrameMark | SignMark | LineMark | AreaMark;

/** What a block is to somebody who hears the page read aloud. */
export type Tag = "heading" | "subheading" | "paragraph" | "item";

/** Marks that belong together: one heading, one paragraph, one line of a list. */
export interface PageBlock {
  readonly tag: Tag;
  readonly marks: readonly Mark[];
}

/** One page, ready to be printed or shown. */
export interface Page {
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  /** In the order of reading. */
  readonly blocks: readonly PageBlock[];
  /** Rules and cutting marks: nothing to be read. */
  readonly ornaments: readonly Mark[];
}

/** Pages that are printed together. */
export interface PrintedCards {
  /** What the document is called. */
  readonly title: string;
  readonly pages: readonly Page[];
}

/** `mark` moved by so many millimetres. */
export function moved(mark: Mark, right: number, down: number): Mark {
  if (mark.kind === "line" || mark.kind === "area")
    return { ...mark, points: mark.points.map(([x, y]) => [x + right, y + down]) };
  return { ...mark, x: mark.x + right, y: mark.y + down };
}
