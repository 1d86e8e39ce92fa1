import type { Handout } from "../../shared-model/cards/handout.ts";
import type { PrintedCards } from "../../shared-model/cards/paper/page.ts";
import type { Paper } from "../../shared-model/cards/paper/paper.ts";
import type { PieceCards } from "../../shared-model/cards/piece-card.ts";
import type { PrintForm } from "./printing.ts";

/** What is asked of the worker that plans and prints. */
export type CardsAsk = {
  /** Texts of the organ's and the piece's files as the desk has them. */
  readonly organ: string;
  readonly piece: string;
} & ({ readonly wants: "cards" } | { readonly wants: "pages" | "pdf"; readonly form: PrintForm });

/** What is asked of the worker to have something printed that is read in the hand; it answers with the bytes of a PDF. */
export interface HandoutAsk {
  readonly wants: "handout";
  readonly handout: Handout;
  readonly paper: Paper;
}

/** What comes of it. */
export interface CardsAnswer {
  /** `null` when there can be none; then the troubles say why. */
  readonly cards: PieceCards | null;
  readonly troubles: readonly string[];
  readonly printed: PrintedCards | null;
  readonly pdf: Uint8Array | null;
}
