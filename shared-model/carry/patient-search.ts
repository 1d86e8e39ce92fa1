import { improvements } from "../check/improve.ts";
import type { ConsoleState, Placing } from "../console/state.ts";
import { type Judgement, judge } from "../judging/judge.ts";
import { keyboardsFor, type Problem } from "../judging/problem.ts";
import { wantedStops } from "../judging/wanted-stops.ts";
import type { Effort } from "../propose/frames.ts";
import { search } from "../propose/search.ts";
import type { Points } from "../rules/rule.ts";

/**
 * How many sets of stops are looked at before the search for the best gives way to single steps. A recipe that an organ
 * hardly matches has thousands of registrations that are equally poor, and to prove which is best can take an hour.
 */
const PATIENCE = 3000;
/** Of how many stops that a recipe knows for one part no set is proven the best: of sixty, each more or less, there are too many. */
const MOST_KNOWN = 54;
/** More steps than any registration has stops. */
const MOST_STEPS = 60;

/** From how many keyboards single steps begin. */
const MOST_STARTS = 3;

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

class OutOfPatience extends Error {}

/** The account of a search, which ends it when it has looked at too much. Counts, not time: the same on every machine. */
class Account implements Effort {
  rounds = 0;
  pools = 0;
  pairs = 0;
  bound = Number.NEGATIVE_INFINITY;
  last = 0;
  private looked = 0;

  get candidates(): number {
    return this.looked;
  }

  set candidates(count: number) {
    if (count > PATIENCE) throw new OutOfPatience();
    this.looked = count;
  }
}

type Drawn = Omit<Best, "judgement">;

/** Nothing drawn, each part on a keyboard of its own as far as they go. @param first which keyboard is given out first. */
function emptyConsole(problem: Problem, first: number): Drawn {
  const taken = new Set<string>();
  const placings = problem.section.parts.map((part, index) => {
    const all = keyboardsFor(problem, index);
    const turned = [...all.slice(first % all.length), ...all.slice(0, first % all.length)];
    const keyboard = turned.find(({ name }) => !taken.has(name)) ?? turned[0];
    if (part.apartFrom.length > 0 && keyboard) taken.add(keyboard.name);
    return { part: part.id, keyboard: keyboard?.name ?? "", octave: 0 as const };
  });
  return {
    state: { drawn: new Set(), couplers: new Set(), tremulants: new Set(), boxes: new Map(), unisonOff: new Set() },
    placings,
  };
}

/** A registration built stop by stop: always the single change that helps most. */
function climbed(problem: Problem, from: Drawn): Best | null {
  let standing = from;
  for (let step = 0; step < MOST_STEPS; step++) {
    const [next] = improvements(problem, standing, 1);
    if (!next) break;
    standing = next.standing;
  }
  const judgement = judge(problem, standing.state, standing.placings);
  return judgement && !judgement.forbidden ? { ...standing, judgement } : null;
}

/** The best of those that are built beginning from each of the first keyboards. */
function builtBest(problem: Problem): Best | null {
  const manuals = problem.instrument.divisions.filter(({ kind }) => kind === "manual").length;
  const built = Array.from({ length: Math.min(manuals, MOST_STARTS) }, (_, first) =>
    climbed(problem, emptyConsole(problem, first)),
  );
  return built.reduce(
    (best, next) => (next && (!best || next.judgement.score > best.judgement.score) ? next : best),
    null,
  );
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

/** @throws OutOfPatience when it would take too long. */
function provenBest(problem: Problem, least: Points): Best | null {
  if (stopsKnown(problem) > MOST_KNOWN) throw new OutOfPatience();
  const [found] = search(problem, 1, null, least, new Account());
  const judgement = found && judge(problem, found.state, found.placings);
  return judgement ? { state: found.state, placings: found.placings, judgement } : null;
}

/**
 * The best registration that is worth so much at least, exactly; where that would take too long, the best that single
 * changes lead to, and then it is not known whether another is better.
 */
export function bestFrom(problem: Problem, least: Points): Looked {
  const worthy = (best: Best | null): Best | null => (best && best.judgement.score >= least ? best : null);
  try {
    return { best: worthy(provenBest(problem, least)), exact: true };
  } catch (error) {
    if (!(error instanceof OutOfPatience)) throw error;
    return { best: worthy(builtBest(problem)), exact: false };
  }
}
