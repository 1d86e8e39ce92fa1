import {
  type ComparedSection,
  type ComparedSide,
  comparisonWords,
  type PlanComparison,
  verdictsWords,
  workWords,
} from "../../shared-model/cards/plan-comparison.ts";
import type { PlannedPiece } from "../../shared-model/plan/planned.ts";
import { opposite, wrapped } from "./plain-text.ts";
import { decimal } from "./proposal-json.ts";

const INDENT = "    ";

function sideLines(lead: string, side: ComparedSide | null): readonly string[] {
  if (!side) return [`${lead}no such section`];
  const work = side.work.knobs + side.work.presses === 0 ? "nothing to move" : workWords(side.work);
  return [
    ...opposite(`${lead}${side.label}`, String(decimal(side.points))),
    ...wrapped(`${verdictsWords(side.work)}; ${work}`, " ".repeat(lead.length)),
  ];
}

function sectionLines(section: ComparedSection): readonly string[] {
  if (section.isSame) return [`${section.name}: registered alike`, ""];
  return [
    section.name,
    ...sideLines(`${INDENT}here   `, section.one),
    ...sideLines(`${INDENT}other  `, section.other),
    ...section.moves.flatMap((move) => wrapped(move, `${INDENT}       > `)),
    "",
  ];
}

/** Two plans side by side as plain text. */
export function comparisonText(plan: PlannedPiece, comparison: PlanComparison, other: string): string {
  const { one } = comparison;
  return [
    ...wrapped(`${plan.row.piece.name ?? "The piece"}, on ${plan.instrument.name}`),
    ...wrapped(`${decimal(one.points)} points; ${verdictsWords(one)}; ${workWords(one)}`, "here   "),
    ...wrapped(
      `${decimal(comparison.other.points)} points; ${verdictsWords(comparison.other)}; ${workWords(comparison.other)}`,
      "other  ",
    ),
    ...wrapped(`The other is ${other}. ${comparisonWords(comparison)}`),
    "",
    ...comparison.sections.flatMap(sectionLines),
  ]
    .join("\n")
    .trimEnd();
}

/** The same as a value for programs: points as printed. */
export function comparisonJson({ sections, one, other }: PlanComparison): unknown {
  const side = (each: ComparedSide | null): unknown => each && { ...each, points: decimal(each.points) };
  return {
    here: { ...one, points: decimal(one.points) },
    other: { ...other, points: decimal(other.points) },
    sections: sections.map(({ name, isSame, moves, one: mine, other: theirs }) => ({
      name,
      isSame,
      here: side(mine),
      other: side(theirs),
      moves,
    })),
  };
}
