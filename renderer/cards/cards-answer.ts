import type { PieceCards } from "../../shared-model/cards/piece-card.ts";
import { pieceCards } from "../../shared-model/cards/piece-cards.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { workOut } from "../../shared-model/plan/planned.ts";
import { asRegistered } from "../../shared-model/plan/variants.ts";
import type { CardsAnswer, CardsAsk } from "./cards-ask.ts";

let last: { readonly key: string; readonly made: PieceCards | readonly string[] } | null = null;

/**
 * The cards of a piece as it stands on the desk: what is registered is held, sections without a registration are planned
 * round it. Or why there are none, in sentences.
 */
function cardsOf({ organ, piece: text }: CardsAsk): PieceCards | readonly string[] {
  const key = JSON.stringify([organ, text]);
  if (last?.key === key) return last.made;
  const { instrument } = readInstrumentFile(organ, "the organ");
  if (!instrument) return ["The file of the organ has errors; mend them first."];
  const { piece, troubles } = readPieceFile(text, "the piece", instrument);
  if (!piece) return troubles.map(troubleLine);
  const row = chooseRow(instrument, asRegistered(piece));
  const made = "troubles" in row ? row.troubles.map((trouble) => trouble.text) : pieceCards(workOut(row));
  last = { key, made };
  return made;
}

/** Plans the piece, and sets and prints its cards as far as that is asked. Runs in a worker. */
export async function cardsFor(ask: CardsAsk): Promise<CardsAnswer> {
  const made = cardsOf(ask);
  if (!("changes" in made)) return { cards: null, troubles: made, printed: null, pdf: null };
  const answer = { cards: made, troubles: [] };
  if (ask.wants === "cards") return { ...answer, printed: null, pdf: null };
  // The library that sets type and writes PDF is large, and wanted only here.
  const { pagesOf, pdfBytes } = await import("./printing.ts");
  if (ask.wants === "pages") return { ...answer, printed: await pagesOf(made, ask.form), pdf: null };
  return { ...answer, printed: null, pdf: await pdfBytes(made, ask.form) };
}
