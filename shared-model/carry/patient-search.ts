import { improvements } from "../check/improve.ts";
import { type Judgement, judge } from "../judging/judge.ts";
import { keyboardsFor, type Problem } from "../judging/problem.ts";
import type { Effort } from "../propose/frames.ts";
import { search } from "../propose/search.ts";
import type { Points } from "../rules/rule.ts";

/**
 * How many sets of stops are looked at before the search for the best gives way to single steps. A recipe that an organ
 * hardly matches has thousands of registrations that are equally poor, and to prove which is best can take an hour.
 */
const PATIENCE = 3000;
/** More steps than any registration has stops. */
const MOST_STEPS = 60;

/** The best registration that was found. */
export interface Best {
  readonly judgement: Judgement;
  readonly state: Parameters<typeof judge>[1];
  readonly placings: Parameters<typeof judge>[2];
}

/** What was found, and whether it is known that nothing is better. */
export interface Looked {
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

/** A registration built stop by stop: from nothing drawn, always the single change that helps most. */
function climbed(problem: Problem): Omit<Best, "judgement"> {
  const taken = new Set<string>();
  const placings = problem.section.parts.map((part, index) => {
    const keyboards = keyboardsFor(problem, index);
    const keyboard = keyboards.find(({ name }) => !taken.has(name)) ?? keyboards[0];
    if (part.apartFrom.length > 0 && keyboard) taken.add(keyboard.name);
    return { part: part.id, keyboard: keyboard?.name ?? "", octave: 0 as const };
  });
  let standing: Omit<Best, "judgement"> = {
    state: { drawn: new Set(), couplers: new Set(), tremulants: new Set(), boxes: new Map(), unisonOff: new Set() },
    placings,
  };
  for (let step = 0; step < MOST_STEPS; step++) {
    const [next] = improvements(problem, standing, 1);
    if (!next) break;
    standing = next.standing;
  }
  return standing;
}

/** @throws OutOfPatience */
function provenBest(problem: Problem, least: Points): Omit<Best, "judgement"> | null {
  const [found] = search(problem, 1, null, least, new Account());
  return found ?? null;
}

/**
 * The best registration that is worth so much at least, exactly; where that would take too long, the best that single
 * changes lead to, and then it is not known whether another is better.
 */
export function bestFrom(problem: Problem, least: Points): Looked {
  let exact = true;
  let found: Omit<Best, "judgement"> | null;
  try {
    found = provenBest(problem, least);
  } catch (error) {
    if (!(error instanceof OutOfPatience)) throw error;
    exact = false;
    found = climbed(problem);
  }
  const judgement = found && judge(problem, found.state, found.placings);
  if (!found || !judgement || judgement.forbidden || judgement.score < least) return { best: null, exact };
  return { best: { state: found.state, placings: found.placings, judgement }, exact };
}
