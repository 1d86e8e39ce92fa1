import { scoreOf } from "../judging/judge.ts";
import { listen } from "../judging/listening.ts";
import type { Problem } from "../judging/problem.ts";
import { climbBySteps } from "../propose/single-steps.ts";
import { isProposable } from "../propose/state-space.ts";
import type { Points } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";
import type { Drawn } from "./carry-direct.ts";
import { type Aim, distanceOf, type HeardPart } from "./meaning.ts";

/** More than all points: what a rule forbids comes last. */
const FORBIDDEN: Points = 1_000_000;

/** Something that is on or off at the console. */
interface Knob {
  readonly of: "drawn" | "couplers" | "tremulants";
  readonly name: string;
}

const toggled = (set: ReadonlySet<string>, name: string): ReadonlySet<string> => {
  const other = new Set(set);
  if (!other.delete(name)) other.add(name);
  return other;
};

/** Every knob that can be moved, in printed order: stops within reach of a part, then couplers, then tremulants. */
function knobs(problem: Problem, { state, placings }: Drawn): readonly Knob[] {
  const { instrument } = problem;
  const reached = new Set(placings.map((each) => each.keyboard));
  for (const coupler of instrument.couplers)
    if (coupler.fixed || state.couplers.has(coupler.name)) reached.add(coupler.from);
  const stops = problem.stops.filter((stop) => !stop.off && reached.has(stop.division));
  const couplers = instrument.couplers.filter((each) => !each.fixed && reached.has(each.to));
  const shaken = instrument.tremulants.filter((name) => name === "all" || reached.has(name));
  return [
    ...stops.map(({ id }) => ({ of: "drawn" as const, name: id })),
    ...couplers.map(({ name }) => ({ of: "couplers" as const, name })),
    ...shaken.map((name) => ({ of: "tremulants" as const, name })),
  ];
}

/** Points less what is meant otherwise; minus infinity where it cannot be judged. */
function worthOf(
  problem: Problem,
  { state, placings }: Drawn,
  meant: readonly HeardPart[],
  weight: number,
  aim: Aim,
): number {
  const parts = listen(problem, state, placings);
  const judged = parts && scoreOf(problem, state, placings);
  if (!parts || !judged) return Number.NEGATIVE_INFINITY;
  return judged.score - weight * distanceOf(meant, parts, aim) - (judged.forbidden ? FORBIDDEN : 0);
}

/** A keyboard that is played and has nothing drawn gets a plain 8' to begin with, or what is nearest to that. */
export function withVoice({ instrument, stops }: Problem, { state, placings }: Drawn): Drawn {
  const drawn = new Set(state.drawn);
  const feet = ({ pitch }: Stop): number => (pitch ? pitch.over / pitch.under : 0);
  for (const { keyboard } of placings) {
    const isPedal = instrument.divisions.find(({ name }) => name === keyboard)?.kind === "pedal";
    const own = stops.filter((stop) => stop.division === keyboard && isProposable(stop));
    if (own.some(({ id }) => drawn.has(id))) continue;
    const far = (stop: Stop): number =>
      Math.abs(Math.log2(Math.max(feet(stop), 0.1) / (isPedal ? 16 : 8))) +
      stop.strength / 100 +
      (stop.ranks > 1 ? 9 : 0);
    const [first] = own.toSorted((a, b) => far(a) - far(b));
    if (first) drawn.add(first.id);
  }
  return { placings, state: { ...state, drawn } };
}

/**
 * Moves one knob after another as long as that brings a registration nearer to what was meant or earns points. A climb, not
 * a search: what it ends with is looked at beside the proposals and decides nothing.
 */
export const nearestTo = (
  problem: Problem,
  start: Drawn,
  meant: readonly HeardPart[],
  weight: number,
  aim: Aim = "playing",
): Drawn =>
  climbBySteps<Drawn, Knob>(start, {
    movesFrom: (here) => knobs(problem, here),
    made: (here, { of, name }) => ({ ...here, state: { ...here.state, [of]: toggled(here.state[of], name) } }),
    worthOf: (here) => worthOf(problem, here, meant, weight, aim),
  });
