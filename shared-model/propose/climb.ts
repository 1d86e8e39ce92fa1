import { colourOf } from "../acoustics/colour.ts";
import type { ConsoleState, Placing } from "../console/state.ts";
import { judge, scoreOf } from "../judging/judge.ts";
import type { PlacedPart } from "../judging/placed-part.ts";
import type { Problem } from "../judging/problem.ts";
import { voicesOf } from "../judging/voices.ts";
import type { Points } from "../rules/rule.ts";
import type { Coupler } from "../stoplist/instrument.ts";
import { compareFound, type Found, identify } from "./found.ts";
import { type Option, tablesOf } from "./frames.ts";
import { isProposable, standTogether } from "./state-space.ts";

/** From how many readings it begins, the most promising first, and how many placings of a part it tries in each. */
const MOST_READINGS = 3;
const MOST_PLACINGS = 4;
/** More steps than any registration has stops. */
const MOST_STEPS = 80;

/** Placings of all parts that can stand together, likeliest first. */
function* placingsOf(
  problem: Problem,
  parts: readonly (readonly Option[])[],
): Generator<readonly (PlacedPart | null)[]> {
  const choices = parts.map((options) => [...options].sort((a, b) => b.bound - a.bound).slice(0, MOST_PLACINGS));
  const visit = function* (
    index: number,
    chosen: readonly (PlacedPart | null)[],
  ): Generator<readonly (PlacedPart | null)[]> {
    if (index === choices.length) {
      if (standTogether(problem, chosen)) yield chosen;
      return;
    }
    for (const { placed } of choices[index] ?? []) yield* visit(index + 1, [...chosen, placed]);
  };
  yield* visit(0, []);
}

/** Couplers that bring a keyboard nothing that is drawn. */
function idleOn(problem: Problem, one: PlacedPart, drawn: ReadonlySet<string>): readonly Coupler[] {
  const sounding = one.reach.filter(({ division }) =>
    division.stops.some((stop) => drawn.has(stop.id) && voicesOf(problem, one, stop) !== null),
  );
  const bringing = new Set(sounding.flatMap((each) => each.couplers));
  return one.couplers.filter((each) => !bringing.has(each));
}

/** The registration that is reached from nothing by the single change that helps most, again and again. */
function climbed(problem: Problem, placed: readonly PlacedPart[], telling: string): Found | null {
  const placings = placed.map(
    ({ part, keyboard, octave }): Placing => ({ part: part.id, keyboard: keyboard.name, octave }),
  );
  const couplers = new Set(placed.flatMap((each) => each.couplers.map(({ name }) => name)));
  const offered = [...new Set(placed.flatMap((each) => each.reach.flatMap(({ division }) => division.stops)))].filter(
    isProposable,
  );
  const stateWith = (drawn: ReadonlySet<string>): ConsoleState => ({
    drawn,
    couplers,
    tremulants: new Set(),
    boxes: new Map(),
    unisonOff: new Set(),
  });
  const worth = (drawn: ReadonlySet<string>): Points => {
    const weight = scoreOf(problem, stateWith(drawn), placings);
    // What is forbidden may still be on the way to what is allowed.
    return weight === null ? Number.NEGATIVE_INFINITY : weight.score - (weight.forbidden ? 100_000 : 0);
  };
  let standing: ReadonlySet<string> = new Set();
  let now = worth(standing);
  for (let step = 0; step < MOST_STEPS; step++) {
    let best: { readonly drawn: ReadonlySet<string>; readonly worth: Points } | null = null;
    for (const { id } of offered) {
      const drawn = new Set(standing);
      if (!drawn.delete(id)) drawn.add(id);
      const points = worth(drawn);
      if (points > (best?.worth ?? now)) best = { drawn, worth: points };
    }
    if (!best) break;
    standing = best.drawn;
    now = best.worth;
  }
  const state = stateWith(standing);
  const judgement = judge(problem, state, placings);
  const part = judgement?.parts.find((each) => each.placing.part === telling) ?? judgement?.parts[0];
  if (!judgement || judgement.forbidden || !part) return null;
  const idle = new Set(placed.flatMap((one) => idleOn(problem, one, standing)));
  if (idle.size > 0) {
    const leaner = placed.map((one) =>
      problem.place(
        problem.section.parts.indexOf(one.part),
        one.keyboard,
        one.octave,
        one.couplers.filter((each) => !idle.has(each)),
      ),
    );
    return standTogether(problem, leaner) ? climbed(problem, leaner, telling) : null;
  }
  const score = judgement.score;
  return { score, state, placings, colour: colourOf(part.sound), ...identify(problem, state, placings) };
}

/**
 * Registrations reached by single changes, best first: where the proof of the best would take too long. Each is what no
 * single stop betters on its keyboards; whether another is better is not known.
 *
 * @param telling id of the part whose colour tells one from another.
 */
export function climb(problem: Problem, telling: string): readonly Found[] {
  const frames = tablesOf(problem);
  const bound = (parts: readonly (readonly Option[])[]): Points =>
    parts.reduce((sum, options) => sum + Math.max(...options.map((each) => each.bound)), 0);
  const readings = [...frames.options].sort((a, b) => bound(b) - bound(a)).slice(0, MOST_READINGS);
  const found = new Map<string, Found>();
  for (const parts of readings) {
    let tried = 0;
    for (const placed of placingsOf(problem, parts)) {
      if (tried++ === MOST_PLACINGS) break;
      const reached = climbed(
        problem,
        placed.filter((each) => each !== null),
        telling,
      );
      if (reached) found.set(reached.signature, reached);
    }
  }
  return [...found.values()].sort(compareFound);
}
