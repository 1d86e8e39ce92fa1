import type { PrintedCards } from "../../shared-model/cards/paper/page.ts";
import type { PieceCards } from "../../shared-model/cards/piece-card.ts";
import type { PrintForm } from "./printing.ts";

/** What is asked of the worker that plans and prints. */
export type CardsAsk = {
  /** Texts of the organ's and the piece's files as the desk has them. */
  readonly organ: string;
  readonly piece: string;
} & ({ readonly wants: "cards" } | { readonly wants: "pages" | "pdf"; readonly form: PrintForm });

/** What comes of it. */
export interface CardsAnswer {
  /** `null` when there can be none; then the troubles say why. */
  readonly cards: PieceCards | null;
  readonly troubles: readonly string[];
  readonly printed: PrintedCards | null;
  readonly pdf: Uint8Array | null;
}
