import { LINK_WORDS } from "../music/piece.ts";
import type { Points } from "../rules/rule.ts";
import type { Alternative } from "./candidates.ts";
import { type Feasibility, VERDICTS, WOULD } from "./feasibility.ts";
import { linkHolds } from "./links.ts";
import type { ChosenRow } from "./plan.ts";

/** What was given up in a section for the sake of the row. */
export interface GivenUp {
  /** The best of the list, which was not taken. */
  readonly best: Alternative;
  readonly points: Points;
  /** Why not, a sentence each, the weightiest first. */
  readonly why: readonly string[];
}

/** How the change between two neighbours goes, by the better means. */
function change(row: ChosenRow, at: number, earlier: Alternative, later: Alternative): Feasibility & { moves: number } {
  const time = row.times[at];
  if (!time) throw new Error("The first section has no change into it.");
  const difference = row.costs.difference(earlier, later);
  const moves = difference.needed.length + difference.later.length;
  const found = row.row.pressed[at] ? row.costs.byPress(difference, time, at) : row.costs.byHand(difference, time, at);
  return { ...found, moves };
}

const nameOf = (row: ChosenRow, at: number): string => row.piece.sections[at]?.section.name ?? `Section ${at + 1}`;

const seconds = (value: number): string => `${value.toFixed(1)} s`;

/** Why the best of a section's list does not stand in the row, its neighbours staying as they are. */
function whyNot(row: ChosenRow, at: number, best: Alternative): readonly string[] {
  const why: string[] = [];
  const mine = row.chosen[at] as Alternative;
  for (const link of row.links) {
    if (link.from !== at && link.to !== at) continue;
    const other = row.chosen[link.from === at ? link.to : link.from] as Alternative;
    const holds = (one: Alternative): boolean =>
      link.from === at
        ? linkHolds(link.kind, one.sound, other.sound).holds
        : linkHolds(link.kind, other.sound, one.sound).holds;
    if (holds(mine) && !holds(best)) {
      const [from, to] = [nameOf(row, link.from), nameOf(row, link.to)];
      why.push(`With it, ${from} would not be ${LINK_WORDS[link.kind]} ${to}.`);
    }
  }
  const written = row.piece.sections[at]?.registration;
  let work = 0;
  for (const into of [at, at + 1]) {
    const [earlier, later] = [row.chosen[into - 1], row.chosen[into]];
    if (!earlier || !later || !row.times[into]) continue;
    const now = change(row, into, earlier, later);
    const then = into === at ? change(row, into, earlier, best) : change(row, into, best, later);
    work += then.moves - now.moves;
    if (VERDICTS.indexOf(then.verdict) <= VERDICTS.indexOf(now.verdict)) continue;
    const where = into === at ? "into it" : `from it into ${nameOf(row, into)}`;
    const { need, available } = then.alone;
    why.push(
      `The change ${where} ${WOULD[then.verdict]}: alone it takes ${seconds(need)}, and the music leaves ${seconds(available)}.`,
    );
  }
  for (const into of [at, at + 1]) {
    const [before, after] = [row.candidates[into - 1], row.candidates[into]];
    const [earlier, later] = [row.chosen[into - 1], row.chosen[into]];
    if (!before || !after || !earlier || !later) continue;
    const now = row.costs.ofRow(before, earlier, after, later);
    const then =
      into === at ? row.costs.ofRow(before, earlier, after, best) : row.costs.ofRow(before, best, after, later);
    if (then > now) why.push(`Beside ${nameOf(row, into === at ? at - 1 : into)} it would stand out less.`);
  }
  if (work > 0) why.push(`It would take ${work === 1 ? "one more knob" : `${work} more knobs`} to move.`);
  if (why.length === 0 && written && mine.origin !== "proposed") why.push("The piece has another one, which is kept.");
  if (why.length === 0) why.push("With it, another section would lose more.");
  return why;
}

/** What a section gave up; `null` where it has a pin, or the best of its list. */
export function givenUpIn(row: ChosenRow, at: number): GivenUp | null {
  const chosen = row.chosen[at];
  const list = row.candidates[at]?.list ?? [];
  const [first] = list;
  if (!chosen || !first) return null;
  const best = list.reduce((one, other) => (other.score > one.score ? other : one), first);
  if (chosen.score >= best.score) return null;
  return { best, points: best.score - chosen.score, why: whyNot(row, at, best) };
}
