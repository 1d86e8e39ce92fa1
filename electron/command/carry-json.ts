import { labelOf } from "../../shared-model/cards/label.ts";
import type { CarriedPiece, CarriedSection } from "../../shared-model/carry/carry.ts";
import type { MeaningDifference } from "../../shared-model/carry/meaning.ts";
import { neverPractised, notPractised } from "../../shared-model/carry/practice-words.ts";
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
export const carryJson = (carried: CarriedPiece) => ({
  from: carried.from.name,
  to: carried.to.name,
  piece: carried.piece.name,
  for: carried.aim,
  ...(carried.aim === "practice"
    ? { practisedOn: Object.fromEntries(carried.keyboards), notPractised: neverPractised(carried) }
    : {}),
  sections: carried.sections.map((section, at) => sectionJson(carried, section, at)),
  plan: carried.plan && planJson(carried.plan),
});

const differenceJson = ({ part, text, points, about }: MeaningDifference) => ({
  part,
  text,
  points: decimal(-points),
  about,
});

function sectionJson({ from, to, aim }: CarriedPiece, section: CarriedSection, at: number) {
  const { before, after, asItWas, missing, stops, differences, between, others } = section;
  return {
    number: at + 1,
    name: before.music.section.name,
    texture: before.music.section.texture,
    before: sideJson(from, before),
    after: after && sideJson(to, after),
    asItWas,
    missing,
    stops,
    differences: [...differences, ...between].map(differenceJson),
    ...(aim === "practice" ? { notPractised: notPractised(section) } : {}),
    others: others.map(({ alternative, behind, ...other }) => ({
      ...(after && sideJson(to, { ...after, chosen: alternative })),
      behind: decimal(behind),
      stops: other.stops,
      differences: other.differences.map(differenceJson),
      remarks: other.remarks,
    })),
    links: (after?.links ?? []).map(({ link, holds }) => ({ kind: link.kind, to: link.to + 1, holds })),
  };
}
