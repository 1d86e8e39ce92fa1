import { labelOf } from "../../shared-model/cards/label.ts";
import { suitOf } from "../../shared-model/carry/suits.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";

/** What is asked of the worker that weighs a piece against an organ: the texts of their files. */
export interface SuitsAsk {
  readonly organ: string;
  readonly piece: string;
}

/** How a piece suits an organ; `null` for a file that has errors. */
export interface SuitsAnswer {
  readonly suits: { readonly share: number; readonly text: string } | null;
}

let last: { readonly text: string; readonly read: ReturnType<typeof readInstrumentFile> } | null = null;

/** Weighs one piece against an organ. Takes its time: for the worker. */
export function suitsFor({ organ, piece: text }: SuitsAsk): SuitsAnswer {
  if (last?.text !== organ) last = { text: organ, read: readInstrumentFile(organ, "the organ") };
  const { instrument } = last.read;
  const { piece } = readPieceFile(text, "the piece", null);
  if (!instrument || !piece || piece.sections.length === 0) return { suits: null };
  const { share, text: said } = suitOf(instrument, piece, labelOf);
  return { suits: { share, text: said } };
}
