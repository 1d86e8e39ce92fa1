import { comparePlans, comparisonWords, type PlanComparison } from "../../shared-model/cards/plan-comparison.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Piece } from "../../shared-model/music/piece.ts";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { type PlannedPiece, workOut } from "../../shared-model/plan/planned.ts";
import { asRegistered, type PlanBasis, type Variant, variantOf } from "../../shared-model/plan/variants.ts";
import { USUAL_WEIGHTS } from "../../shared-model/plan/weights.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { lineOf, nameOf, type PlannedLine } from "./planning.ts";

/** What the piece on the desk is compared with: another way to plan it, or its text as it was kept. */
export type CompareWith = { readonly variant: Variant } | { readonly kept: string };

/** What is asked of the worker: texts of the organ's and the piece's files as the desk has them. */
export interface CompareAsk {
  readonly organ: string;
  readonly piece: string;
  readonly against: CompareWith;
}

/** What comes of it. */
export interface CompareAnswer {
  /** `null` when there is nothing to compare; then the troubles say why. */
  readonly comparison: PlanComparison | null;
  /** What the other plan is against the piece, in a sentence or two. */
  readonly words: string;
  /** By section of the other plan, as a plan would put it on the desk. */
  readonly lines: readonly PlannedLine[];
  readonly troubles: readonly string[];
}

const none = (troubles: readonly string[]): CompareAnswer => ({ comparison: null, words: "", lines: [], troubles });

function planOf({ instrument, piece, weights }: PlanBasis): PlannedPiece | readonly string[] {
  const row = chooseRow(instrument, piece, { weights });
  if (!("troubles" in row)) return workOut(row);
  return row.troubles.map((each) =>
    each.section === null ? each.text : `${nameOf(piece, each.section)}: ${each.text}`,
  );
}

/** The piece as its sections are registered, whatever is open planned round them. */
const registered = (instrument: Instrument, piece: Piece): PlanBasis => ({
  instrument,
  piece: asRegistered(piece),
  weights: USUAL_WEIGHTS,
});

/** Sets the piece as it stands beside another plan of it. Takes its time: for the worker. */
export function compareFor({ organ, piece: text, against }: CompareAsk): CompareAnswer {
  const { instrument } = readInstrumentFile(organ, "the organ");
  if (!instrument) return none(["The file of the organ has errors; mend them first."]);
  const { piece, troubles } = readPieceFile(text, "the piece", instrument);
  if (!piece) return none(troubles.map(troubleLine));
  const kept = "kept" in against ? readPieceFile(against.kept, "the plan that was kept", instrument) : null;
  if (kept && !kept.piece) return none(kept.troubles.map(troubleLine));
  const other =
    "variant" in against
      ? variantOf(instrument, piece, against.variant)
      : registered(instrument, (kept?.piece ?? piece) as Piece);
  const [one, two] = [planOf(registered(instrument, piece)), planOf(other)];
  if (!("sections" in one)) return none(one);
  if (!("sections" in two)) return none(two);
  const comparison = comparePlans(one, two);
  return {
    comparison,
    words: comparisonWords(comparison),
    lines: two.sections.map((section) => lineOf(other.piece, section)),
    troubles: [],
  };
}
