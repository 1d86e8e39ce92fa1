import { colourOf } from "../acoustics/colour.ts";
import type { ConsoleState, Placing } from "../console/state.ts";
import { judge, scoreOf } from "../judging/judge.ts";
import { couplersBearing } from "../judging/listening.ts";
import type { PlacedPart } from "../judging/placed-part.ts";
import type { Problem } from "../judging/problem.ts";
import { voicesOf } from "../judging/voices.ts";
import type { Points } from "../rules/rule.ts";
import type { Coupler } from "../stoplist/instrument.ts";
import { compareFound, type Found, identify } from "./found.ts";
import { type Option, tablesOf } from "./frames.ts";
import { climbBySteps } from "./single-steps.ts";
import { isProposable, standTogether } from "./state-space.ts";

/** From how many readings it begins, the most promising first, and from how many keyboards in each. */
const MOST_READINGS = 3;
const MOST_KEYBOARDS = 4;
/** Placings of a part that are looked at for a beginning. */
const MOST_PLACINGS = 12;

type Placed = readonly (PlacedPart | null)[];

/** What stands while a registration is built: where the parts are played, and what is drawn. */
interface Built {
  readonly placed: Placed;
  readonly drawn: ReadonlySet<string>;
}

/** A stop that is drawn or put in, or a coupler likewise. */
type Step = { readonly stop: string } | { readonly coupler: Coupler };

const keyboardsOf = (placed: Placed): string =>
  placed.map((each) => (each === null ? "-" : `${each.keyboard.name} ${each.octave}`)).join("|");

/** Placings of all parts that can stand together, likeliest first: of the same keyboards the likeliest alone. */
function* beginnings(problem: Problem, parts: readonly (readonly Option[])[]): Generator<Placed> {
  const choices = parts.map((options) => [...options].sort((a, b) => b.bound - a.bound).slice(0, MOST_PLACINGS));
  const seen = new Set<string>();
  const visit = function* (index: number, chosen: Placed): Generator<Placed> {
    if (index === choices.length) {
      const keyboards = keyboardsOf(chosen);
      if (seen.has(keyboards) || !standTogether(problem, chosen)) return;
      seen.add(keyboards);
      yield chosen;
      return;
    }
    for (const { placed } of choices[index] ?? []) yield* visit(index + 1, [...chosen, placed]);
  };
  yield* visit(0, []);
}

const presentIn = (placed: Placed): readonly PlacedPart[] => placed.filter((each) => each !== null);

const stateOf = ({ placed, drawn }: Built): ConsoleState => ({
  drawn,
  couplers: new Set(presentIn(placed).flatMap((each) => each.couplers.map(({ name }) => name))),
  tremulants: new Set(),
  boxes: new Map(),
  unisonOff: new Set(),
});

const placingsOf = (placed: Placed): readonly Placing[] =>
  presentIn(placed).map(({ part, keyboard, octave }) => ({ part: part.id, keyboard: keyboard.name, octave }));

/** The same keyboards under other couplers; `null` where no proposal may be coupled so. */
function coupledBy(
  problem: Problem,
  placed: Placed,
  allowed: readonly ReadonlySet<PlacedPart | null>[],
  on: ReadonlySet<Coupler>,
): Placed | null {
  const next = placed.map((one, index) => {
    if (one === null) return null;
    const bearing = couplersBearing(problem.instrument.couplers, one.keyboard, (each) => on.has(each));
    return problem.place(index, one.keyboard, one.octave, bearing);
  });
  const may = next.every((one, index) => one === null || allowed[index]?.has(one));
  return may && standTogether(problem, next) ? next : null;
}

const toggled = <Thing>(things: ReadonlySet<Thing>, one: Thing): ReadonlySet<Thing> => {
  const other = new Set(things);
  if (!other.delete(one)) other.add(one);
  return other;
};

const couplersOf = (placed: Placed): ReadonlySet<Coupler> =>
  new Set(presentIn(placed).flatMap(({ couplers }) => couplers));

/** Couplers that bring a keyboard nothing that is drawn. */
function idleIn(problem: Problem, { placed, drawn }: Built): readonly Coupler[] {
  return presentIn(placed).flatMap((one) => {
    const sounding = one.reach.filter(({ division }) =>
      division.stops.some((stop) => drawn.has(stop.id) && voicesOf(problem, one, stop) !== null),
    );
    const bringing = new Set(sounding.flatMap((each) => each.couplers));
    return one.couplers.filter((each) => !bringing.has(each));
  });
}

/** The registration that single steps lead to from nothing drawn. */
function built(problem: Problem, options: readonly (readonly Option[])[], start: Placed): Built {
  const allowed = options.map((each) => new Set(each.map(({ placed }) => placed)));
  const loose = problem.instrument.couplers.filter((each) => !each.fixed);
  return climbBySteps<Built, Step>(
    { placed: start, drawn: new Set() },
    {
      movesFrom: ({ placed }) =>
        [
          ...new Set(
            presentIn(placed).flatMap(({ reach }) =>
              reach.flatMap(({ division }) => division.stops.filter(isProposable).map(({ id }) => id)),
            ),
          ),
        ]
          .map((stop): Step => ({ stop }))
          .concat(loose.map((coupler) => ({ coupler }))),
      made: (here, step) => {
        if ("stop" in step) return { ...here, drawn: toggled(here.drawn, step.stop) };
        const placed = coupledBy(problem, here.placed, allowed, toggled(couplersOf(here.placed), step.coupler));
        return placed && { ...here, placed };
      },
      worthOf: (here): Points => {
        const weight = scoreOf(problem, stateOf(here), placingsOf(here.placed));
        // What is forbidden may still be on the way to what is allowed.
        return weight === null ? Number.NEGATIVE_INFINITY : weight.score - (weight.forbidden ? 100_000 : 0);
      },
    },
  );
}

/** Only what sounds: stops that are left on a keyboard no longer coupled, and couplers that bring nothing, taken off. */
function leaner(problem: Problem, options: readonly (readonly Option[])[], one: Built): Built | null {
  const heard = new Set(
    presentIn(one.placed).flatMap((each) =>
      each.reach.flatMap(({ division }) =>
        division.stops.filter((stop) => voicesOf(problem, each, stop) !== null).map(({ id }) => id),
      ),
    ),
  );
  const drawn = new Set([...one.drawn].filter((id) => heard.has(id)));
  const idle = new Set(idleIn(problem, { ...one, drawn }));
  if (idle.size === 0) return { ...one, drawn };
  const allowed = options.map((each) => new Set(each.map(({ placed }) => placed)));
  const on = new Set([...couplersOf(one.placed)].filter((each) => !idle.has(each)));
  const placed = coupledBy(problem, one.placed, allowed, on);
  return placed && leaner(problem, options, { placed, drawn });
}

/** As the search would have found it; `null` where a rule forbids it. */
function foundAs(problem: Problem, one: Built, telling: string): Found | null {
  const [state, placings] = [stateOf(one), placingsOf(one.placed)];
  const judgement = judge(problem, state, placings);
  const part = judgement?.parts.find((each) => each.placing.part === telling) ?? judgement?.parts[0];
  if (!judgement || judgement.forbidden || !part) return null;
  return {
    score: judgement.score,
    state,
    placings,
    colour: colourOf(part.sound),
    ...identify(problem, state, placings),
  };
}

/**
 * Registrations reached by single steps, best first: where the proof of the best would take too long. Each is what no
 * single stop or coupler betters on its keyboards; whether another is better is not known.
 *
 * @param telling id of the part whose colour tells one from another.
 */
export function climb(problem: Problem, telling: string): readonly Found[] {
  const frames = tablesOf(problem);
  const bound = (parts: readonly (readonly Option[])[]): Points =>
    parts.reduce((sum, options) => sum + Math.max(...options.map((each) => each.bound)), 0);
  const readings = [...frames.options].sort((a, b) => bound(b) - bound(a)).slice(0, MOST_READINGS);
  const found = new Map<string, Found>();
  const begun = new Set<string>();
  for (const parts of readings) {
    let tried = 0;
    for (const placed of beginnings(problem, parts)) {
      if (tried++ === MOST_KEYBOARDS) break;
      const start = `${keyboardsOf(placed)} ${[...couplersOf(placed)].map(({ name }) => name).join("|")}`;
      if (begun.has(start)) continue;
      begun.add(start);
      const lean = leaner(problem, parts, built(problem, parts, placed));
      const reached = lean && foundAs(problem, lean, telling);
      if (reached) found.set(reached.signature, reached);
    }
  }
  return [...found.values()].sort(compareFound);
}
