import type { Piece } from "../music/piece.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { pistonsOn } from "./change-costs.ts";
import { type PlanWeights, USUAL_WEIGHTS } from "./weights.ts";

/** Other ways to plan a piece, to be set beside the one that is there. */
export const VARIANTS = [
  "planned",
  "unpinned",
  "best-sound",
  "least-work",
  "with-assistant",
  "alone",
  "by-hand",
  "eight-generals",
] as const;
export type Variant = (typeof VARIANTS)[number];

/** Each in a few words, behind "compared with the piece". */
export const VARIANT_WORDS: Readonly<Record<Variant, string>> = {
  planned: "planned anew, pins kept",
  unpinned: "planned without its pins",
  "best-sound": "planned for the best sound, whatever the work",
  "least-work": "planned for the least work",
  "with-assistant": "planned with an assistant at the right",
  alone: "planned without the assistant",
  "by-hand": "planned without pistons",
  "eight-generals": "planned as if there were eight general pistons",
};

/** What the work counts more where little of it is wanted. Our own setting. */
const LESS_WORK = 8;

const weighed = (factor: number): PlanWeights =>
  Object.fromEntries(
    Object.entries(USUAL_WEIGHTS).map(([name, value]) => [name, value * factor]),
  ) as unknown as PlanWeights;

/** All that a plan is made from. */
export interface PlanBasis {
  readonly instrument: Instrument;
  readonly piece: Piece;
  readonly weights: PlanWeights;
}

const EIGHT = 8;

/** The variants that are something else than the piece as it is. */
export function variantsFor(
  instrument: Instrument,
  piece: Pick<Piece, "assistant" | "pistons">,
  hasPins: boolean,
): readonly Variant[] {
  const { generals, divisionals } = pistonsOn(instrument, piece);
  const isOther: Readonly<Record<Variant, boolean>> = {
    planned: true,
    unpinned: hasPins,
    "best-sound": true,
    "least-work": true,
    "with-assistant": piece.assistant === "none",
    alone: piece.assistant !== "none",
    "by-hand": generals.length > 0 || divisionals.size > 0,
    "eight-generals": generals.length < EIGHT,
  };
  return VARIANTS.filter((each) => isOther[each]);
}

/** A piece as a variant has it: planned from the beginning round its pins, with other helpers, aids or weights. */
export function variantOf(instrument: Instrument, piece: Piece, variant: Variant): PlanBasis {
  const sections = piece.sections.map((section) =>
    section.pinned && variant !== "unpinned" ? section : { ...section, pinned: false, registration: null, steps: [] },
  );
  const basis: PlanBasis = { instrument, piece: { ...piece, sections }, weights: USUAL_WEIGHTS };
  switch (variant) {
    case "planned":
    case "unpinned":
      return basis;
    case "best-sound":
      return { ...basis, weights: weighed(0) };
    case "least-work":
      return { ...basis, weights: weighed(LESS_WORK) };
    case "with-assistant":
      return { ...basis, piece: { ...basis.piece, assistant: "right" } };
    case "alone":
      return { ...basis, piece: { ...basis.piece, assistant: "none" } };
    case "by-hand": {
      const pistons = { generals: [], divisionals: {}, levels: null };
      return { ...basis, piece: { ...basis.piece, pistons } };
    }
    case "eight-generals": {
      const aids = { ...instrument.aids, generals: Math.max(EIGHT, instrument.aids.generals) };
      const pistons = { ...basis.piece.pistons, generals: null };
      return { ...basis, instrument: { ...instrument, aids }, piece: { ...basis.piece, pistons } };
    }
  }
}

/** A piece as it is registered: every registration held, what is open planned round it. */
export const asRegistered = (piece: Piece): Piece => ({
  ...piece,
  sections: piece.sections.map((section) => ({ ...section, pinned: section.registration !== null })),
});
