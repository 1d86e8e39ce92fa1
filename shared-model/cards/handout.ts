import { framed, type Sheet } from "./paper/frame.ts";
import { handoutSheet } from "./paper/handout-sheet.ts";
import type { Page, PrintedCards } from "./paper/page.ts";
import { type Orientation, type Paper, sizeOf } from "./paper/paper.ts";
import { setterAt } from "./paper/setter.ts";
import type { Measure } from "./paper/type.ts";

/** One thing that stands on a handout. */
export interface HandoutItem {
  /** In bold before it; `null` without. */
  readonly lead: string | null;
  readonly text: string;
  /** Lines left white under it, to be written on. */
  readonly white: number;
}

/** What stands under one head. */
export interface HandoutPart {
  readonly head: string;
  readonly items: readonly HandoutItem[];
}

/** Something to be read in the hand, not on the desk: a survey, a sheet for a visit. Host and screen may set it as they like. */
export interface Handout {
  readonly title: string;
  /** Under the title; `null` without. */
  readonly label: string | null;
  readonly parts: readonly HandoutPart[];
  readonly foot: string;
}

/**
 * Against the sizes of a card: in the hand, at 40 cm, half of what a desk at 80 cm needs looks as large. Largest first; the
 * smallest sets text of 8 points.
 */
const SCALES = [0.8, 0.74, 0.68, 0.62, 0.57, 0.535] as const;
/** Millimetres above the foot that stay white. */
const WHITE = 2;

/** The pages of a handout: one, in the largest type in which it goes on one; more in the smallest where it does not. */
export function handoutPages(
  handout: Handout,
  {
    paper,
    measure,
    lying = "tall",
  }: { readonly paper: Paper; readonly measure: Measure; readonly lying?: Orientation },
): PrintedCards {
  const size = sizeOf(paper, lying);
  const setAt = (scale: number): readonly Page[] => {
    const setter = setterAt(scale, measure);
    const sheet: Sheet = handoutSheet(handout, size, setter);
    return framed(sheet, size, WHITE, setter).pages;
  };
  let pages: readonly Page[] = [];
  for (const scale of SCALES) {
    pages = setAt(scale);
    if (pages.length === 1) break;
  }
  return { title: handout.title, pages };
}
