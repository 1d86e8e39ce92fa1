import type { ConsoleState, Placing } from "../console/state.ts";
import type { Points } from "../rules/rule.ts";
import type { Division, Instrument, Stop } from "../stoplist/instrument.ts";
import { divisionKinds } from "../stoplist/keyboard-kind.ts";
import { pairStops, unlikeness } from "./carry-stops.ts";

/** A console and where it is played. */
export interface Drawn {
  readonly state: ConsoleState;
  readonly placings: readonly Placing[];
}

/** A registration set again on another organ. */
export interface Direct extends Drawn {
  /** Whether every stop, coupler, tremulant and box found its like. */
  readonly whole: boolean;
}

/** Points for divisions that do not correspond. Our own setting. */
const NO_LIKE: Points = 300;
const OTHER_ROLE: Points = 80;
const OTHER_HEIGHT: Points = 10;
const TWO_ON_ONE: Points = 250;
/** So many of the most fitting divisions are tried for each. */
const TRIED = 4;

interface Fit {
  readonly division: Division;
  readonly points: number;
}

/** Divisions that a registration uses, in printed order. */
function usedDivisions(organ: Instrument, { state, placings }: Drawn): readonly Division[] {
  const coupled = organ.couplers.filter((each) => !each.fixed && state.couplers.has(each.name));
  const names = new Set([
    ...placings.map((each) => each.keyboard),
    ...coupled.flatMap((each) => [each.from, each.to]),
    ...state.tremulants,
    ...state.unisonOff,
  ]);
  const isShut = (box: string | null): boolean => box !== null && (state.boxes.get(box) ?? "open") !== "open";
  return organ.divisions.filter(
    ({ name, box, stops }) => names.has(name) || isShut(box) || stops.some((stop) => state.drawn.has(stop.id)),
  );
}

/** How well the divisions of the other organ serve in a division's place, best first. */
function fitsOf(from: Instrument, one: Division, drawn: ReadonlySet<string>, to: Instrument): readonly Fit[] {
  const roles = divisionKinds(from).get(one.name);
  const wanted = one.stops.filter((stop) => drawn.has(stop.id));
  return to.divisions
    .filter(
      (other) =>
        (one.kind === "pedal") === (other.kind === "pedal") && (one.kind === "floating" || other.kind !== "floating"),
    )
    .map((other): Fit => {
      const stops = wanted.reduce((sum, stop) => {
        const costs = other.stops.flatMap((each) => unlikeness(stop, each) ?? []);
        return sum + Math.min(NO_LIKE, ...costs);
      }, 0);
      const sameRole = [...(divisionKinds(to).get(other.name) ?? [])].some((role) => roles?.has(role));
      const height = Math.abs((one.keyboard ?? 0) - (other.keyboard ?? 0));
      // Hundredths of a point's hundredth settle what is equal: the same name, then the same place in the list.
      const apart = Math.abs(from.divisions.indexOf(one) - to.divisions.indexOf(other));
      const tie = (one.name === other.name ? 0 : 0.1) + apart / 100;
      return { division: other, points: stops + (sameRole ? 0 : OTHER_ROLE) + height * OTHER_HEIGHT + tie };
    })
    .sort((a, b) => a.points - b.points);
}

/** The best ways to give each division one in its place; two may share one where there are too few. */
function correspondences(
  from: Instrument,
  drawn: Drawn,
  to: Instrument,
  count: number,
  given: ReadonlyMap<string, string>,
): readonly ReadonlyMap<string, Division>[] {
  const used = usedDivisions(from, drawn);
  const fits = used.map((one) => {
    const own = fitsOf(from, one, drawn.state.drawn, to);
    const fixed = own.filter(({ division }) => division.name === given.get(one.name));
    return fixed.length > 0 ? fixed : own.slice(0, TRIED);
  });
  const found: { readonly points: number; readonly map: ReadonlyMap<string, Division> }[] = [];
  const visit = (at: number, points: number, map: ReadonlyMap<string, Division>): void => {
    const one = used[at];
    if (!one) {
      found.push({ points, map });
      return;
    }
    const options = fits[at] ?? [];
    if (options.length === 0) visit(at + 1, points + NO_LIKE, map);
    for (const { division, points: more } of options) {
      const shared = [...map.values()].includes(division) ? TWO_ON_ONE : 0;
      visit(at + 1, points + more + shared, new Map([...map, [one.name, division]]));
    }
  };
  visit(0, 0, new Map());
  return found
    .sort((a, b) => a.points - b.points)
    .slice(0, count)
    .map(({ map }) => map);
}

function drawnAgain(
  from: Instrument,
  state: ConsoleState,
  map: ReadonlyMap<string, Division>,
): {
  readonly drawn: Set<string>;
  readonly whole: boolean;
} {
  const drawn = new Set<string>();
  let whole = true;
  for (const target of new Set(map.values())) {
    const sources = from.divisions.filter((each) => map.get(each.name) === target);
    const ones = sources.flatMap((each) => each.stops.filter((stop) => state.drawn.has(stop.id)));
    const places = new Map<Stop, number>(
      [...sources, target].flatMap((each) => each.stops.map((stop, at) => [stop, at])),
    );
    const pairs = pairStops(ones, target.stops, (stop) => places.get(stop) ?? 0);
    if (pairs.length < ones.length) whole = false;
    for (const { one, other } of pairs) {
      drawn.add(other.id);
      if (one.half !== null || other.half === null) continue;
      // A whole stop comes back as both halves.
      const rest = target.stops.find(
        (each) =>
          each.name === other.name && each.pitch === other.pitch && each.half !== null && each.half !== other.half,
      );
      if (rest && !rest.off) drawn.add(rest.id);
    }
  }
  return { drawn, whole };
}

/** Couplers, tremulants, boxes and unison-off of the corresponding divisions. */
function meansAgain(from: Instrument, state: ConsoleState, to: Instrument, map: ReadonlyMap<string, Division>) {
  let whole = true;
  const couplers = new Set<string>();
  for (const each of from.couplers.filter((one) => !one.fixed && state.couplers.has(one.name))) {
    const [source, target] = [map.get(each.from), map.get(each.to)];
    if (source && source === target && each.from !== each.to) continue;
    const found = to.couplers.find(
      (one) => one.from === source?.name && one.to === target?.name && one.pitch === each.pitch,
    );
    if (!found) whole = false;
    else if (!found.fixed) couplers.add(found.name);
  }
  const tremulants = new Set<string>();
  for (const name of state.tremulants) {
    const own = map.get(name)?.name;
    const found = [own, "all"].find((each) => each !== undefined && to.tremulants.includes(each));
    if (found === undefined || (found === "all") !== (name === "all")) whole = false;
    if (found !== undefined) tremulants.add(found);
  }
  const boxes = new Map<string, "half" | "closed">();
  for (const division of from.divisions) {
    const at = division.box === null ? "open" : (state.boxes.get(division.box) ?? "open");
    const target = map.get(division.name);
    if (at === "open" || !target) continue;
    if (target.box === null) whole = false;
    else boxes.set(target.box, at);
  }
  const unisonOff = new Set<string>();
  for (const name of state.unisonOff) {
    const target = map.get(name);
    if (target && to.unisonOff.includes(target.name)) unisonOff.add(target.name);
    else whole = false;
  }
  return { couplers, tremulants, boxes, unisonOff, whole };
}

/**
 * A registration set again on another organ as directly as can be: each division by the one that corresponds to it, each
 * stop by the nearest there. The most fitting ways first, at most `count`; none where a keyboard that is played has nothing
 * in its place.
 *
 * @param given divisions that are to stand in the place of others, whatever their stops are.
 */
export function setDirectly(
  from: Instrument,
  drawn: Drawn,
  to: Instrument,
  count: number,
  given: ReadonlyMap<string, string> = new Map(),
): readonly Direct[] {
  return correspondences(from, drawn, to, count, given).flatMap((map): readonly Direct[] => {
    const placings = drawn.placings.flatMap((placing): readonly Placing[] => {
      const keyboard = map.get(placing.keyboard);
      return keyboard && keyboard.kind !== "floating" ? [{ ...placing, keyboard: keyboard.name }] : [];
    });
    if (placings.length < drawn.placings.length) return [];
    const stops = drawnAgain(from, drawn.state, map);
    const { whole, ...means } = meansAgain(from, drawn.state, to, map);
    const apart = new Set(map.values()).size === map.size;
    return [{ state: { drawn: stops.drawn, ...means }, placings, whole: whole && stops.whole && apart }];
  });
}
