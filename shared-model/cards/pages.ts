import type { RegistrationDrawing } from "../pictures/registration-picture.ts";
import type { CueCard } from "./cue-card.ts";
import { assistantSheet } from "./paper/assistant-sheet.ts";
import { changeSheet, nextWords } from "./paper/change-sheet.ts";
import { columnWidth } from "./paper/flow.ts";
import { bodyWidth, framed, type Sheet } from "./paper/frame.ts";
import { type Density, overviewSheet } from "./paper/overview-sheet.ts";
import type { Page, PrintedCards } from "./paper/page.ts";
import { type Orientation, PAPER_FORMS, type Paper, type Size, sizeOf } from "./paper/paper.ts";
import { picturePage } from "./paper/picture-page.ts";
import { registrationSheet } from "./paper/registration-sheet.ts";
import { type Setter, setterAt } from "./paper/setter.ts";
import { settingSheet } from "./paper/setting-sheet.ts";
import { type Measure, SCALES } from "./paper/type.ts";
import type { PieceCards } from "./piece-card.ts";

/** What cards are set for. */
export interface CardForm {
  readonly paper: Paper;
  /** Of the faces in which the pages will be printed. */
  readonly measure: Measure;
}

/** Sheets set for a size and an enlargement. */
export type SheetsFor = (size: Size, setter: Setter) => readonly Sheet[];

/**
 * Sets sheets on paper: lying as usual for its size unless the other way saves a page, all in one enlargement, the
 * largest that costs neither a page nor a remark nor makes a sheet tighter.
 */
function printed(sheets: SheetsFor, { paper, measure }: CardForm): readonly Page[] {
  const { usual, pencil } = PAPER_FORMS[paper];
  const setAt = (orientation: Orientation, scale: number): { pages: readonly Page[]; short: number } => {
    const size = sizeOf(paper, orientation);
    const setter = setterAt(scale, measure);
    const cards = sheets(size, setter).map((sheet) => framed(sheet, size, pencil, setter));
    return { pages: cards.flatMap((card) => card.pages), short: cards.filter((card) => card.short).length };
  };
  const [asUsual, turned] = [setAt(usual, 1), setAt(usual === "tall" ? "wide" : "tall", 1)];
  const least = turned.pages.length < asUsual.pages.length ? turned : asUsual;
  const orientation: Orientation = least === asUsual ? usual : usual === "tall" ? "wide" : "tall";
  for (const scale of SCALES) {
    const larger = scale === 1 ? least : setAt(orientation, scale);
    if (larger.pages.length <= least.pages.length && larger.short <= least.short) return larger.pages;
  }
  return least.pages;
}

/**
 * An overview is looked through in the hand, before one plays: where it would not go on one page in the type of the desk it
 * says less and is set smaller, down to text of 9 points; last of all it names sections and bars alone.
 */
const OVERVIEW_DENSITIES: readonly (readonly Density[])[] = [["named", "grown"], ["bare"]];
const OVERVIEW_SCALES = [1, 0.9, 0.8, 0.7, 0.6] as const;
/** Millimetres above the foot of an overview that stay white where room is short. */
const OVERVIEW_WHITE = 2;
/** Columns of a list are no narrower than so many ems of its text. */
const LEAST_COLUMN = { named: 14, bare: 7 } as const;

/** The overview on one page: as large as the paper lets it be, else saying less, else smaller; on more pages only where nothing helps. */
function overviewPages(cards: PieceCards, form: CardForm): readonly Page[] {
  const plain = (density: Density): readonly Page[] =>
    printed((size, setter) => [overviewSheet(cards, { density, columns: 1 }, size, setter)], form);
  const whole = plain("all");
  if (whole.length === 1) return whole;
  const { usual } = PAPER_FORMS[form.paper];
  let least = whole;
  const orientations: readonly Orientation[] = [usual, usual === "tall" ? "wide" : "tall"];
  const ways = OVERVIEW_DENSITIES.flatMap((densities) =>
    OVERVIEW_SCALES.flatMap((scale) =>
      densities.flatMap((density) =>
        orientations.flatMap((orientation) =>
          [1, 2, 3].map((columns) => ({ scale, density, size: sizeOf(form.paper, orientation), columns })),
        ),
      ),
    ),
  );
  for (const { scale, density, size, columns } of ways) {
    const setter = setterAt(scale, form.measure);
    const narrowest = LEAST_COLUMN[density === "bare" ? "bare" : "named"] * setter.em("text");
    if (columns > 1 && columnWidth(bodyWidth(size), columns) < narrowest) continue;
    const { pages } = framed(overviewSheet(cards, { density, columns }, size, setter), size, OVERVIEW_WHITE, setter);
    if (pages.length === 1) return pages;
    if (pages.length < least.length) least = pages;
  }
  return least;
}

/**
 * The pages of a registration's card: stops in at least 22 points and nothing under 15, read at 80 cm.
 *
 * A card that does not go on one page goes on with a clear mark; no stop is left out and no pitch parts from its name.
 *
 * @param drawing for a page behind the card with what each hand sounds, and the balance.
 */
export function registrationPages(
  card: CueCard,
  form: CardForm,
  drawing: RegistrationDrawing | null = null,
): PrintedCards {
  const title = [card.section ?? card.label, card.organ].join(", ");
  const pages = printed((size, setter) => [registrationSheet(card, size, setter)], form);
  return { title, pages: drawing ? [...pages, picturePage(drawing, form.paper, form.measure)] : pages };
}

/** What is printed of a piece, in the order in which it is printed when all is. */
export const PIECE_PARTS = ["overview", "pistons", "changes", "assistant", "pictures"] as const;
export type PiecePart = (typeof PIECE_PARTS)[number];
/** What is printed where nobody says otherwise: what lies on the desk. */
const USUAL_PARTS: readonly PiecePart[] = PIECE_PARTS.filter((part) => part !== "pictures");

/**
 * The pages of a whole piece: an overview, what to store on the pistons, a card for each change in playing order, the
 * assistant's own card, and, when they are asked for, a picture of what each registration sounds. Parts that the piece has
 * not (no pistons, nobody needed) give no page.
 *
 * @param only numbers of the changes whose cards and pictures are wanted; `null` for all.
 */
export function piecePages(
  cards: PieceCards,
  form: CardForm,
  parts: readonly PiecePart[] = USUAL_PARTS,
  only: readonly number[] | null = null,
): PrintedCards {
  const { changes, piece, organ } = cards;
  const isWanted = (number: number): boolean => only === null || only.includes(number);
  const sheetsOf: Readonly<Record<Exclude<PiecePart, "overview" | "pictures">, SheetsFor>> = {
    pistons: (size, setter) => [settingSheet(cards, size, setter)].filter((sheet) => sheet !== null),
    changes: (size, setter) =>
      changes.flatMap((card, index) =>
        isWanted(card.number) ? [changeSheet(card, piece, nextWords(changes[index + 1]), size, setter)] : [],
      ),
    assistant: (size, setter) => [assistantSheet(cards, size, setter)].filter((sheet) => sheet !== null),
  };
  const pagesOf = (part: PiecePart): readonly Page[] => {
    if (part === "overview") return overviewPages(cards, form);
    if (part !== "pictures") return printed(sheetsOf[part], form);
    const drawings = cards.pictures.filter((_, at) => isWanted(at + 1));
    return drawings.map((drawing) => picturePage(drawing, form.paper, form.measure));
  };
  const wanted = PIECE_PARTS.filter((part) => parts.includes(part));
  return { title: `${piece}, ${organ}`, pages: wanted.flatMap(pagesOf) };
}
