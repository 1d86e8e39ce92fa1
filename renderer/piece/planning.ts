import { labelOf } from "../../shared-model/cards/label.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import { LINK_WORDS, type Piece } from "../../shared-model/music/piece.ts";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { givenUpPoints, type PlannedSection, workOut } from "../../shared-model/plan/planned.ts";
import { drawnOf } from "../state/section.ts";
import type { DrawnByHand } from "../state/work.ts";

/** What is asked of the worker: texts of the organ's and the piece's files as the desk has them. */
export interface PlanAsk {
  readonly organ: string;
  readonly piece: string;
}

/** What a plan has for one section. */
export interface PlannedLine {
  readonly registration: DrawnByHand;
  readonly steps: readonly DrawnByHand[];
  /** `null` where the best of its list was taken, or a pin. */
  readonly givenUp: GivenUpWords | null;
  /** Links that nothing on the organ can keep, a sentence each. */
  readonly unkept: readonly string[];
}

/** What a section gave up for the sake of the whole. */
export interface GivenUpWords {
  /** Label of the best that its list had. */
  readonly best: string;
  /** Whole hundredths by which that would be better. */
  readonly points: number;
  readonly why: readonly string[];
}

/** What comes of it. */
export interface PlanAnswer {
  /** By section of the file; `null` when there is no plan, and the troubles say why. */
  readonly sections: readonly PlannedLine[] | null;
  readonly troubles: readonly string[];
  /** Whole hundredths given up in all sections together. */
  readonly lost: number;
}

const none = (troubles: readonly string[]): PlanAnswer => ({ sections: null, troubles, lost: 0 });

/** A section in a sentence. */
export const nameOf = ({ sections }: Piece, at: number): string => sections[at]?.section.name ?? `Section ${at + 1}`;

/** What a plan has for one section, as the desk takes it. */
export function lineOf(piece: Piece, { chosen, candidates, links, givenUp }: PlannedSection): PlannedLine {
  return {
    registration: drawnOf(chosen.entry.state, chosen.entry.placings),
    steps: chosen.steps.map(({ stand }) => drawnOf(stand.state, stand.placings)),
    givenUp: givenUp && {
      best: labelOf(candidates.problem, givenUp.best.judgement.parts),
      points: givenUp.points,
      why: givenUp.why,
    },
    unkept: links.flatMap(({ link, holds }) =>
      holds ? [] : [`It is not ${LINK_WORDS[link.kind]} ${nameOf(piece, link.to)}: nothing here can be.`],
    ),
  };
}

/** Registrations through the piece: pins stay, all else is chosen anew. Takes its time: for the worker. */
export function planFor({ organ, piece: text }: PlanAsk): PlanAnswer {
  const { instrument } = readInstrumentFile(organ, "the organ");
  if (!instrument) return none(["The file of the organ has errors; mend them first."]);
  const { piece, troubles } = readPieceFile(text, "the piece", instrument);
  if (!piece) return none(troubles.map(troubleLine));
  const row = chooseRow(instrument, piece);
  if ("troubles" in row) {
    return none(
      row.troubles.map((each) => (each.section === null ? each.text : `${nameOf(piece, each.section)}: ${each.text}`)),
    );
  }
  const plan = workOut(row);
  return { sections: plan.sections.map((section) => lineOf(piece, section)), troubles: [], lost: givenUpPoints(plan) };
}
