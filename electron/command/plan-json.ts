import { labelOf } from "../../shared-model/cards/label.ts";
import { registrationValue } from "../../shared-model/files/registration-value.ts";
import type { Move } from "../../shared-model/plan/changes.ts";
import {
  givenUpPoints,
  type PlannedChange,
  type PlannedPiece,
  type PlannedSection,
} from "../../shared-model/plan/planned.ts";
import { settingSheet } from "../../shared-model/plan/setting-sheet.ts";
import { registrationOf } from "../../shared-model/plan/written.ts";
import { decimal, reasonJson } from "./proposal-json.ts";

const moveJson = ({ act, what, name, division, to }: Move) => ({
  act,
  what,
  name,
  division,
  ...(to !== null && { to }),
});

/** JSON has no infinity: as long as is wanted is `null`. */
const seconds = (value: number): number | null => (Number.isFinite(value) ? Math.round(value * 100) / 100 : null);

const changeJson = (change: PlannedChange) => ({
  into: change.section + 1,
  step: change.step,
  before: change.time.what,
  assumed: change.time.assumed,
  verdict: change.verdict,
  needed: seconds(change.handling.need),
  available: seconds(change.handling.available),
  alone: { needed: seconds(change.alone.need), available: seconds(change.alone.available) },
  means: change.means,
  assistant: change.assistant,
  moves: change.moves.map(moveJson),
  later: change.later.map(moveJson),
  left: change.left.map(moveJson),
  tasks: change.handling.tasks
    .filter((task) => task.moves.length > 0 || task.turns)
    .map((task) => ({
      who: task.who,
      moves: task.moves.map(moveJson),
      ahead: task.ahead,
      turns: task.turns,
      seconds: seconds(task.seconds),
    })),
  shifts: change.shifts,
  reasons: change.reasons.map(reasonJson),
  advice: change.advice,
});

function sectionJson(plan: PlannedPiece, { music, chosen, candidates, links, givenUp }: PlannedSection, at: number) {
  const stands = [chosen.entry, ...chosen.steps.map((step) => step.stand)];
  const [first, ...steps] = stands.map((stand) => registrationValue(plan.instrument, registrationOf(stand)));
  return {
    number: at + 1,
    name: music.section.name,
    bars: music.section.bars,
    texture: music.section.texture,
    label: labelOf(candidates.problem, chosen.judgement.parts),
    score: decimal(chosen.score),
    place: chosen.place,
    from: chosen.origin,
    registration: first,
    steps,
    links: links.map(({ link, holds }) => ({ kind: link.kind, to: link.to + 1, holds })),
    givenUp: givenUp && { points: decimal(givenUp.points), why: givenUp.why },
  };
}

/** A plan as outside programs read it. */
export const planJson = (plan: PlannedPiece) => ({
  instrument: plan.instrument.name,
  piece: plan.row.piece.name,
  choice: plan.row.count,
  givenUp: decimal(givenUpPoints(plan)),
  sections: plan.sections.map((section, at) => sectionJson(plan, section, at)),
  changes: plan.changes.map(changeJson),
  memory: { exact: plan.memoryExact, ...settingSheet(plan) },
  assumed: plan.assumed,
});
