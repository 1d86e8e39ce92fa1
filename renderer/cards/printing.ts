import sans from "@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url";
import sansBold from "@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url";
import serif from "@expo-google-fonts/source-serif-4/400Regular/SourceSerif4_400Regular.ttf?url";
import serifBold from "@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf?url";
import dynamic from "@expo-google-fonts/source-serif-4/700Bold_Italic/SourceSerif4_700Bold_Italic.ttf?url";
import { type Handout, handoutPages } from "../../shared-model/cards/handout.ts";
import { type PiecePart, piecePages } from "../../shared-model/cards/pages.ts";
import { imposed } from "../../shared-model/cards/paper/impose.ts";
import type { PrintedCards } from "../../shared-model/cards/paper/page.ts";
import type { Paper } from "../../shared-model/cards/paper/paper.ts";
import type { Face } from "../../shared-model/cards/paper/type.ts";
import { openTypefaces, pdfOf, type TypefaceBytes, type Typefaces } from "../../shared-model/cards/pdf.ts";
import type { PieceCards } from "../../shared-model/cards/piece-card.ts";

const FILES: Readonly<Record<Face, string>> = {
  serif,
  "serif-bold": serifBold,
  sans,
  "sans-bold": sansBold,
  dynamic,
};

let loaded: Promise<Typefaces> | null = null;

async function load(): Promise<Typefaces> {
  const files = await Promise.all(
    Object.entries(FILES).map(async ([face, address]) => {
      const answer = await fetch(address);
      if (!answer.ok) throw new Error(`The font file ${address} is missing.`);
      return [face, new Uint8Array(await answer.arrayBuffer())] as const;
    }),
  );
  return openTypefaces(Object.fromEntries(files) as TypefaceBytes);
}

/** The faces that cards are printed in, loaded once. */
function typefaces(): Promise<Typefaces> {
  // What failed once may be there the next time.
  loaded ??= load().catch((thrown: unknown) => {
    loaded = null;
    throw thrown;
  });
  return loaded;
}

/** How cards are printed. */
export interface PrintForm {
  readonly paper: Paper;
  /** A larger sheet that is cut; `null` when each page is a sheet of its own. */
  readonly sheet: Paper | null;
  readonly parts: readonly PiecePart[];
  /** Numbers of the changes whose cards are wanted; `null` for all. */
  readonly only: readonly number[] | null;
}

/** The pages of a piece's cards. Where no two of them go on the sheet, each is a sheet of its own. */
export async function pagesOf(cards: PieceCards, { paper, sheet, parts, only }: PrintForm): Promise<PrintedCards> {
  const { measure } = await typefaces();
  const pages = piecePages(cards, { paper, measure }, parts, only);
  return sheet === null ? pages : (imposed(pages, sheet) ?? pages);
}

/** The same as a PDF file. */
export const pdfBytes = async (cards: PieceCards, form: PrintForm): Promise<Uint8Array> =>
  pdfOf(await pagesOf(cards, form), await typefaces());

/** A handout as a PDF file. */
export async function handoutBytes(handout: Handout, paper: Paper): Promise<Uint8Array> {
  const faces = await typefaces();
  return pdfOf(handoutPages(handout, { paper, measure: faces.measure }), faces);
}
