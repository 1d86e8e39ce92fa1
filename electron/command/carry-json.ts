import { labelOf } from "../../shared-model/cards/label.ts";
import type { CarriedPiece } from "../../shared-model/carry/carry.ts";
import type { PlannedSection } from "../../shared-model/plan/planned.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { planJson } from "./plan-json.ts";
import { decimal } from "./proposal-json.ts";
import { registeredValues } from "./registered-text.ts";

function sideJson(instrument: Instrument, section: PlannedSection) {
  const label = labelOf(section.candidates.problem, section.chosen.judgement.parts);
  return { label, score: decimal(section.chosen.score), ...registeredValues(instrument, section) };
}

/** A carried piece as outside programs read it: each section before and after, and the changes of the new plan. */
export const carryJson = ({ from, to, piece, sections, plan }: CarriedPiece) => ({
  from: from.name,
  to: to.name,
  piece: piece.name,
  sections: sections.map(({ before, after, asItWas, missing, stops, differences, between }, at) => ({
    number: at + 1,
    name: before.music.section.name,
    texture: before.music.section.texture,
    before: sideJson(from, before),
    after: after && sideJson(to, after),
    asItWas,
    missing,
    stops,
    differences: [...differences, ...between].map(({ part, text, points }) => ({
      part,
      text,
      points: decimal(-points),
    })),
    links: (after?.links ?? []).map(({ link, holds }) => ({ kind: link.kind, to: link.to + 1, holds })),
  })),
  plan: plan && planJson(plan),
});
