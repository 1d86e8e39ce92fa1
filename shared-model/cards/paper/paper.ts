/** Sizes of paper, in the order in which they are offered. */
export const PAPERS = ["a6", "a5", "a4", "half-letter", "letter"] as const;
export type Paper = (typeof PAPERS)[number];

/** Width and height in millimetres. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** How a sheet lies on the desk. */
export type Orientation = "tall" | "wide";

interface PaperForm {
  /** As a person says it. */
  readonly name: string;
  /** Standing upright. */
  readonly tall: Size;
  /** How such a card usually lies; the other way is taken when it saves a page. */
  readonly usual: Orientation;
  /** Millimetres left white above the foot of a page, for a pencil. */
  readonly pencil: number;
}

/** ISO 216 and the North American sizes (ANSI/ASME Y14.1: letter is 8.5 by 11 inches). */
export const PAPER_FORMS: Readonly<Record<Paper, PaperForm>> = {
  a6: { name: "A6", tall: { width: 105, height: 148 }, usual: "wide", pencil: 8 },
  a5: { name: "A5", tall: { width: 148, height: 210 }, usual: "tall", pencil: 14 },
  a4: { name: "A4", tall: { width: 210, height: 297 }, usual: "tall", pencil: 20 },
  "half-letter": { name: "half letter", tall: { width: 139.7, height: 215.9 }, usual: "tall", pencil: 14 },
  letter: { name: "letter", tall: { width: 215.9, height: 279.4 }, usual: "tall", pencil: 20 },
};

/** White edge on all sides, in millimetres: more than any usual printer leaves, so that nothing is cut off. */
export const MARGIN = 7;

/** The sheet as it lies, in millimetres. */
export function sizeOf(paper: Paper, orientation: Orientation): Size {
  const { width, height } = PAPER_FORMS[paper].tall;
  return orientation === "tall" ? { width, height } : { width: height, height: width };
}
