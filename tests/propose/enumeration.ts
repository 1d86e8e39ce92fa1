import { colourOf } from "../../shared-model/acoustics/colour.ts";
import type { BoxPosition, ConsoleState, Placing } from "../../shared-model/console/state.ts";
import { scoreOf } from "../../shared-model/judging/judge.ts";
import { listen } from "../../shared-model/judging/listening.ts";
import { heardVoice, type PlacedPart } from "../../shared-model/judging/placed-part.ts";
import type { Problem, WeighedPart } from "../../shared-model/judging/problem.ts";
import type { Closeness } from "../../shared-model/judging/recipe.ts";
import { weigh } from "../../shared-model/judging/weighing.ts";
import { identify } from "../../shared-model/propose/found.ts";
import { isProposable, likeness, placingsFor, standTogether } from "../../shared-model/propose/state-space.ts";
import type { Points } from "../../shared-model/rules/rule.ts";
import type { Stop } from "../../shared-model/stoplist/instrument.ts";

export interface Enumerated {
  readonly score: Points;
  readonly signature: string;
  /** The same for states that differ only in how far boxes are open. */
  readonly drawing: string;
  readonly order: readonly number[];
}

/** Every state of the state space with its score, by brute force. */
export function enumerate(problem: Problem): { readonly best: readonly Enumerated[]; readonly states: number } {
  const kept = new Map<string, Enumerated>();
  const states = forEachState(problem, (state, placings) => {
    const result = scoreOf(problem, state, placings);
    if (!result || result.forbidden) return;
    const identity = identify(problem, state, placings);
    kept.set(identity.signature, { score: result.score, ...identity });
  });
  const best = [...kept.values()].sort((a, b) => {
    if (a.score !== b.score) return b.score - a.score;
    for (let i = 0; i < Math.min(a.order.length, b.order.length); i++) {
      if (a.order[i] !== b.order[i]) return (a.order[i] as number) - (b.order[i] as number);
    }
    return a.order.length - b.order.length || (a.signature < b.signature ? -1 : 1);
  });
  return { best, states };
}

/**
 * The most points of a state that shows each colour, by brute force: in the light of one reading, the telling part has the
 * colour, follows the recipe to the end where one speaks, without anything that stands in, and draws nothing that the recipe
 * does not know.
 */
export function bestOfColours(problem: Problem, telling: string): ReadonlyMap<string, Points> {
  const best = new Map<string, Points>();
  forEachState(problem, (state, placings) => {
    const parts = listen(problem, state, placings);
    const at = parts?.findIndex((part) => part.placing.part === telling) ?? -1;
    const part = parts?.[at];
    if (!parts || !part) return;
    problem.readings.forEach((_, reading) => {
      const { score, forbidden, weighed, closeness } = weigh(problem, parts, reading);
      const { recipe } = weighed[at] as WeighedPart;
      const close = closeness[at] as Closeness;
      if (forbidden > 0 || (recipe.speaks && (!close.conform || close.serving !== 0))) return;
      if (part.own.some((stop) => ["against", "stray"].includes(recipe.matchOf(stop).status))) return;
      const { id } = colourOf(part.sound);
      best.set(id, Math.max(score, best.get(id) ?? Number.NEGATIVE_INFINITY));
    });
  });
  return best;
}

/** Visits every state of the state space: each placing, each subset of stops, tremulants and boxes. Returns how many. */
function forEachState(problem: Problem, see: (state: ConsoleState, placings: readonly Placing[]) => void): number {
  const { instrument, section } = problem;
  let states = 0;
  const choices = section.parts.map((_, index) => placingsFor(problem, index));
  const visit = (index: number, placed: (PlacedPart | null)[]): void => {
    if (index < choices.length) {
      for (const choice of choices[index] ?? []) visit(index + 1, [...placed, choice]);
      return;
    }
    if (!standTogether(problem, placed)) return;
    const present = placed.filter((each) => each !== null);
    const hears = (stop: Stop): boolean =>
      present.some((one) => heardVoice(one, stop, problem.shared, "open") !== null);
    const pool = problem.stops.filter((stop) => isProposable(stop) && hears(stop));
    const couplers = [...new Set(present.flatMap((each) => each.couplers))];
    const placings = present.map(
      (each): Placing => ({ part: each.part.id, keyboard: each.keyboard.name, octave: each.octave }),
    );
    for (let bits = 1; bits < 2 ** pool.length; bits++) {
      const drawn = pool.filter((_, at) => bits & (1 << at));
      if (!printedFirst(problem, pool, drawn)) continue;
      if (!couplersBring(problem, present, drawn)) continue;
      const sounding = new Set(drawn.map((stop) => stop.division));
      const tremulants = instrument.tremulants.filter((name) => name === "all" || sounding.has(name));
      const boxes = [
        ...new Set(instrument.divisions.flatMap((each) => (each.box && sounding.has(each.name) ? [each.box] : []))),
      ];
      for (const shaken of subsets(tremulants)) {
        for (const positions of boxPositions(boxes)) {
          const state: ConsoleState = {
            drawn: new Set(drawn.map((stop) => stop.id)),
            couplers: new Set(couplers.map((each) => each.name)),
            tremulants: new Set(shaken),
            boxes: positions,
            unisonOff: new Set(),
          };
          states += 1;
          see(state, placings);
        }
      }
    }
  };
  visit(0, []);
  return states;
}

/** Of like stops the first printed are drawn. */
function printedFirst(problem: Problem, pool: readonly Stop[], drawn: readonly Stop[]): boolean {
  return drawn.every((stop) => {
    const text = likeness(stop, problem.shared);
    return pool.every(
      (other) =>
        other === stop ||
        likeness(other, problem.shared) !== text ||
        pool.indexOf(other) > pool.indexOf(stop) ||
        drawn.includes(other),
    );
  });
}

/** Every coupler by which a keyboard that is played hears a division brings it a drawn stop that is heard there. */
function couplersBring(problem: Problem, placed: readonly PlacedPart[], drawn: readonly Stop[]): boolean {
  return placed.every((one) => {
    const bringing = new Set<string>();
    for (const { division, couplers } of one.reach) {
      const heard = drawn.some(
        (stop) => stop.division === division.name && heardVoice(one, stop, problem.shared, "open"),
      );
      if (heard) for (const each of couplers) bringing.add(each.name);
    }
    return one.reach.every(({ couplers }) => couplers.every((each) => bringing.has(each.name)));
  });
}

function* subsets<T>(items: readonly T[]): Generator<readonly T[]> {
  for (let bits = 0; bits < 2 ** items.length; bits++) yield items.filter((_, at) => bits & (1 << at));
}

function* boxPositions(boxes: readonly string[]): Generator<ReadonlyMap<string, BoxPosition>> {
  const all: readonly BoxPosition[] = ["open", "half", "closed"];
  for (let n = 0; n < 3 ** boxes.length; n++) {
    yield new Map(boxes.map((box, at) => [box, all[Math.floor(n / 3 ** at) % 3] as BoxPosition]));
  }
}
