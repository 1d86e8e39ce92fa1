import type { ConsoleState, Placing } from "../console/state.ts";
import { type Judgement, judge } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import { wantedStops } from "../judging/wanted-stops.ts";
import { climb } from "../propose/climb.ts";
import type { Found } from "../propose/found.ts";
import { search, tellingPart } from "../propose/search.ts";
import { withPatience } from "../propose/work.ts";
import type { Points } from "../rules/rule.ts";

/**
 * How many sets of stops are gone through before the search for the best gives way to single steps. A recipe that an organ
 * hardly matches has millions of registrations that are equally poor, and a survey asks for every texture of every school.
 */
const PATIENCE = 60_000;
/** Of how many stops that a recipe knows for one part no set is proven the best: of sixty, each more or less, there are too many. */
const MOST_KNOWN = 54;

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

/** How many stops the recipes know for the part that they give most to. */
function stopsKnown({ instrument, readings }: Problem): number {
  const counts = readings.flatMap(({ recipes }) =>
    [...recipes.values()].map((some) => {
      const wanted = some.flatMap(({ prescribed: { must, oneOf = [], may = [] } }) => [
        ...must,
        ...oneOf.flat(),
        ...may,
      ]);
      return new Set(wanted.flatMap((one) => [...wantedStops(instrument, one, 0)])).size;
    }),
  );
  return Math.max(0, ...counts);
}

/** The best that reaches `least`; `undefined` when it would take too long to prove it. */
function provenBest(problem: Problem, least: Points): Found | null | undefined {
  if (stopsKnown(problem) > MOST_KNOWN) return undefined;
  return withPatience(problem, PATIENCE, () => search(problem, 1, null, least)[0] ?? null);
}

/**
 * The best registration that is worth so much at least, exactly; where that would take too long, the best that single
 * changes lead to, and then it is not known whether another is better.
 */
export function bestFrom(problem: Problem, least: Points): Looked {
  const proven = provenBest(problem, least);
  const telling = problem.section.parts[tellingPart(problem)]?.id ?? "";
  const found = proven === undefined ? climb(problem, telling)[0] : proven;
  const judgement = found && judge(problem, found.state, found.placings);
  const best = found && judgement && judgement.score >= least ? { ...found, judgement } : null;
  return { best: best ?? null, exact: proven !== undefined };
}
