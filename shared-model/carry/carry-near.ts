import type { ConsoleState } from "../console/state.ts";
import { scoreOf } from "../judging/judge.ts";
import { listen } from "../judging/listening.ts";
import type { Problem } from "../judging/problem.ts";
import type { Points } from "../rules/rule.ts";
import type { Drawn } from "./carry-direct.ts";
import { distanceOf, type HeardPart } from "./meaning.ts";

/** A registration grows better by so many moves at most. */
const MOST_MOVES = 12;
/** More than all points: what a rule forbids comes last. */
const FORBIDDEN: Points = 1_000_000;

const toggled = (set: ReadonlySet<string>, name: string): ReadonlySet<string> => {
  const other = new Set(set);
  if (!other.delete(name)) other.add(name);
  return other;
};

/** Every state that is one knob away, in printed order: stops within reach of a part, then couplers, then tremulants. */
function neighbours(problem: Problem, { state, placings }: Drawn): readonly ConsoleState[] {
  const { instrument } = problem;
  const reached = new Set(placings.map((each) => each.keyboard));
  for (const coupler of instrument.couplers)
    if (coupler.fixed || state.couplers.has(coupler.name)) reached.add(coupler.from);
  const stops = problem.stops.filter((stop) => !stop.off && reached.has(stop.division));
  const couplers = instrument.couplers.filter((each) => !each.fixed && reached.has(each.to));
  const shaken = instrument.tremulants.filter((name) => name === "all" || reached.has(name));
  return [
    ...stops.map((stop) => ({ ...state, drawn: toggled(state.drawn, stop.id) })),
    ...couplers.map((each) => ({ ...state, couplers: toggled(state.couplers, each.name) })),
    ...shaken.map((name) => ({ ...state, tremulants: toggled(state.tremulants, name) })),
  ];
}

/** Points less what is meant otherwise; `null` where it cannot be judged. */
function worthOf(problem: Problem, { state, placings }: Drawn, meant: readonly HeardPart[], weight: number) {
  const parts = listen(problem, state, placings);
  const judged = parts && scoreOf(problem, state, placings);
  if (!parts || !judged) return null;
  return judged.score - weight * distanceOf(meant, parts) - (judged.forbidden ? FORBIDDEN : 0);
}

/**
 * Moves one knob after another as long as that brings a registration nearer to what was meant or earns points, always the
 * knob that brings most. A climb, not a search: what it ends with is looked at beside the proposals and decides nothing.
 */
export function climb(problem: Problem, start: Drawn, meant: readonly HeardPart[], weight: number): Drawn {
  let here = start;
  let worth = worthOf(problem, here, meant, weight);
  for (let move = 0; move < MOST_MOVES && worth !== null; move++) {
    let best: { readonly next: Drawn; readonly worth: number } | null = null;
    for (const state of neighbours(problem, here)) {
      const next = { state, placings: here.placings };
      const found = worthOf(problem, next, meant, weight);
      if (found !== null && found > (best?.worth ?? worth)) best = { next, worth: found };
    }
    if (!best) break;
    here = best.next;
    worth = best.worth;
  }
  return here;
}
