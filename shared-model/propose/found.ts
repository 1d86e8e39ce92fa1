import type { Colour } from "../acoustics/colour.ts";
import type { BoxPosition, ConsoleState, Placing } from "../console/state.ts";
import type { Problem } from "../judging/problem.ts";
import type { Points } from "../rules/rule.ts";
import type { Division, Stop } from "../stoplist/instrument.ts";

/** A state that the search found, with its exact score. */
export interface Found {
  readonly score: Points;
  readonly state: ConsoleState;
  readonly placings: readonly Placing[];
  readonly colour: Colour;
  /** Sorts equals by printed order: keyboards first, then stops. */
  readonly order: readonly number[];
  /** One text for one state, however it was reached. */
  readonly signature: string;
  /** One text for all states that differ in nothing but how far their boxes are open, and what grounds the bass. */
  readonly drawing: string;
}

const printed = new WeakMap<Problem, ReadonlyMap<Stop, number>>();
/** Places of the stops in the printed list. */
export const placesInPrint = (problem: Problem): ReadonlyMap<Stop, number> => {
  let table = printed.get(problem);
  if (!table) {
    table = new Map(problem.stops.map((stop, index) => [stop, index]));
    printed.set(problem, table);
  }
  return table;
};

const grounds = new WeakMap<Problem, ReadonlySet<number>>();
/**
 * Places in print of the stops that ground a bass and nothing else: those of the pedal where the hands have the music.
 * Eight registrations should be eight for the hands, each over its best bass.
 */
export function groundOf(problem: Problem): ReadonlySet<number> {
  let ground = grounds.get(problem);
  if (!ground) {
    const { instrument, section } = problem;
    const pedals = new Set(instrument.divisions.filter(({ kind }) => kind === "pedal").map(({ name }) => name));
    const lent = instrument.couplers.some(({ from }) => pedals.has(from));
    const forBass = section.parts.every(({ hands, role }) => hands !== "feet" || role === "bass");
    const apart = forBass && !lent && section.parts.some(({ hands }) => hands !== "feet");
    ground = new Set(apart ? problem.stops.flatMap((stop, index) => (pedals.has(stop.division) ? [index] : [])) : []);
    grounds.set(problem, ground);
  }
  return ground;
}

/** Best first; equals by printed order of keyboards, then of stops. */
export function compareFound(
  a: Pick<Found, "score" | "order" | "signature">,
  b: Pick<Found, "score" | "order" | "signature">,
): number {
  if (a.score !== b.score) return b.score - a.score;
  const length = Math.min(a.order.length, b.order.length);
  for (let i = 0; i < length; i++) {
    const difference = (a.order[i] as number) - (b.order[i] as number);
    if (difference !== 0) return difference;
  }
  return a.order.length - b.order.length || (a.signature < b.signature ? -1 : a.signature > b.signature ? 1 : 0);
}

/** A keyboard and octave as one number that sorts by printed order. */
export const placeCode = (problem: Problem, keyboard: Division, octave: number): number =>
  problem.instrument.divisions.indexOf(keyboard) * 4 + (octave === 0 ? 0 : octave === -1 ? 1 : 2);

/** What tells one state from another, and its printed order. */
export interface Identity {
  readonly signature: string;
  readonly drawing: string;
  readonly order: readonly number[];
}

/**
 * @param keyboards by part, as {@link placeCode} has them.
 * @param drawn places of the drawn stops in print, in order.
 * @param boxes those that are not open, with their position, in any order.
 */
export function identityOf(
  problem: Problem,
  keyboards: readonly number[],
  drawn: readonly number[],
  couplers: ReadonlySet<string>,
  tremulants: readonly string[],
  boxes: readonly (readonly [string, BoxPosition])[],
): Identity {
  const ground = groundOf(problem);
  const means = `${keyboards.join(" ")}|${[...couplers].sort().join("+")}|${[...tremulants].sort().join("+")}`;
  const shut = boxes.map(([box, at]) => `${at} ${box}`).sort();
  return {
    order: [...keyboards, ...drawn],
    drawing: `${means}|${drawn.filter((place) => !ground.has(place)).join(" ")}`,
    signature: `${means}|${drawn.join(" ")}|${shut.join("+")}`,
  };
}

/** The texts and the printed order of a state with its placings: the same for the search and for enumeration. */
export function identify(problem: Problem, state: ConsoleState, placings: readonly Placing[]): Identity {
  const places = placesInPrint(problem);
  const drawn = problem.stops.filter((stop) => state.drawn.has(stop.id)).map((stop) => places.get(stop) as number);
  const keyboards = problem.section.parts.map((part) => {
    const placing = placings.find((each) => each.part === part.id);
    if (!placing) return 9999;
    const keyboard = problem.instrument.divisions.find((division) => division.name === placing.keyboard) as Division;
    return placeCode(problem, keyboard, placing.octave);
  });
  const boxes = [...state.boxes].filter(([, at]) => at !== "open");
  return identityOf(problem, keyboards, drawn, state.couplers, [...state.tremulants], boxes);
}
