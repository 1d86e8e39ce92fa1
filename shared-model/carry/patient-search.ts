import type { ConsoleState, Placing } from "../console/state.ts";
import { type Judgement, judge } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import { climb } from "../propose/climb.ts";
import { boundsOf, boundsOfReadings, search, tellingPart } from "../propose/search.ts";
import { withPatience } from "../propose/work.ts";
import type { Points } from "../rules/rule.ts";

/**
 * How many sets of stops are gone through before the search for the best gives way to single steps. A recipe that an organ
 * hardly matches has millions of registrations that are equally poor, and a survey asks for every texture of every school.
 */
const PATIENCE = 60_000;

/** The best registration that was found. */
export interface Best {
  readonly judgement: Judgement;
  readonly state: ConsoleState;
  readonly placings: readonly Placing[];
}

/** What was found, and whether it is known that nothing is better. */
interface Looked {
  readonly best: Best | null;
  readonly exact: boolean;
}

/**
 * The best registration that is worth so much at least, exactly; where that would take too long, the best that single
 * changes lead to, and then it is not known whether another is better.
 *
 * @param patience how many sets of stops the proof may cost.
 */
export function bestFrom(problem: Problem, least: Points, patience = PATIENCE): Looked {
  const proven = withPatience(problem, patience, () => search(problem, 1, null, least)[0] ?? null);
  const telling = problem.section.parts[tellingPart(problem)]?.id ?? "";
  const found = proven === undefined ? climb(problem, telling)[0] : proven;
  const judgement = found && judge(problem, found.state, found.placings, boundsOf(boundsOfReadings(problem), found));
  const best = found && judgement && judgement.score >= least ? { ...found, judgement } : null;
  return { best: best ?? null, exact: proven !== undefined };
}
