import { couplersBearing } from "../judging/listening.ts";
import { type PlacedPart, settlingOrder } from "../judging/placed-part.ts";
import { isPrescribed, keyboardsFor, type Problem } from "../judging/problem.ts";
import { hasOneManual, mustBeApart } from "../rules/balance.ts";
import type { Coupler, Division, Stop } from "../stoplist/instrument.ts";

/**
 * The states that a proposal may be, written down once: the search and the exhaustive enumeration of the tests share
 * this file and nothing else.
 *
 * Normal form. Every drawn stop, coupler, tremulant and box that is not open is heard by a part. A coupler is the way by
 * which some keyboard that is played hears a division, and brings each that hears it so at least one drawn stop: Great to
 * Pedal, Positive to Pedal and Positive to Great stand together, though to the pedal the last brings nothing that is not
 * there. Stops that are off, effects and percussion are never drawn. Of
 * stops of one division that are alike in everything the rules read, the first printed are drawn (the others do as
 * well, and are named so). A tremulant shakes, and a box shades, at least one drawn stop that is heard.
 *
 * Placings. Hands play manuals, feet the pedal; an optional part may be left out; where there is no pedal, what the
 * feet would play goes to a manual. A part may lie an octave higher or lower on a keyboard of its own, without
 * couplers. Parts that must differ share a keyboard only where it has divided stops, or where there is but one manual.
 * Couplers on a keyboard: at most five that a prescription for the section names, and at most one other, which does not
 * join a manual to another manual in use.
 */
const MOST_PRESCRIBED_COUPLERS = 5;
const MOST_OTHER_COUPLERS = 1;

/** Stops that a proposal may draw. */
export const isProposable = (stop: Stop): boolean =>
  !stop.off && stop.family !== "effect" && stop.family !== "percussion" && stop.uses.length > 0;

/** Whether some prescription for the section speaks of the coupler. */
function isPrescribedCoupler(problem: Problem, coupler: Coupler): boolean {
  return problem.readings.some(({ prescription }) =>
    [...(prescription?.couplers ?? []), ...(prescription?.couplersMay ?? [])].some((asked) =>
      isPrescribed(coupler, asked, problem.kindsOf),
    ),
  );
}

const setsOf = new WeakMap<Problem, Map<Division, readonly (readonly Coupler[])[]>>();

/** Every set of couplers that may bear on a keyboard. */
function couplerSets(problem: Problem, keyboard: Division): readonly (readonly Coupler[])[] {
  let table = setsOf.get(problem);
  if (!table) {
    table = new Map();
    setsOf.set(problem, table);
  }
  let sets = table.get(keyboard);
  if (!sets) {
    sets = findCouplerSets(problem, keyboard);
    table.set(keyboard, sets);
  }
  return sets;
}

function findCouplerSets(problem: Problem, keyboard: Division): readonly (readonly Coupler[])[] {
  const all = couplersBearing(problem.instrument.couplers, keyboard, () => true);
  const loose = problem.instrument.couplers.filter(
    (each) => !each.fixed && (each.to === keyboard.name || all.includes(each)),
  );
  const namedByRecipes = new Set(loose.filter((coupler) => isPrescribedCoupler(problem, coupler)));
  const sets: Coupler[][] = [];
  const grow = (start: number, chosen: readonly Coupler[], prescribed: number, other: number): void => {
    // A set counts when all of it bears on the keyboard; one that carries another on may come later in print.
    if (
      couplersBearing(problem.instrument.couplers, keyboard, (each) => chosen.includes(each)).length === chosen.length
    ) {
      sets.push([...chosen]);
    }
    for (let i = start; i < loose.length; i++) {
      const coupler = loose[i] as Coupler;
      const named = namedByRecipes.has(coupler);
      if (named && prescribed < MOST_PRESCRIBED_COUPLERS) grow(i + 1, [...chosen, coupler], prescribed + 1, other);
      if (!named && other < MOST_OTHER_COUPLERS) grow(i + 1, [...chosen, coupler], prescribed, other + 1);
    }
  };
  grow(0, [], 0, 0);
  return sets;
}

/** Every way to place a part; `null` stands for leaving an optional part out. */
export function placingsFor(problem: Problem, part: number): readonly (PlacedPart | null)[] {
  const placings: (PlacedPart | null)[] = [];
  for (const keyboard of keyboardsFor(problem, part)) {
    for (const couplers of couplerSets(problem, keyboard)) placings.push(problem.place(part, keyboard, 0, couplers));
    for (const octave of [-1, 1] as const) placings.push(problem.place(part, keyboard, octave, []));
  }
  if (problem.section.parts[part]?.optional) placings.push(null);
  return placings;
}

/** Whether a coupler that no prescription names joins a keyboard to another one that hands play on at the same time. */
const joinsTwoHands = (problem: Problem, present: readonly PlacedPart[]): boolean =>
  present.some(
    (one) =>
      one.part.hands !== "feet" &&
      one.couplers.some(
        (coupler) =>
          present.some((other) => other !== one && other.keyboard.name === coupler.from) &&
          !isPrescribedCoupler(problem, coupler),
      ),
  );

const isDivided = (division: Division): boolean => division.stops.some((stop) => stop.half !== null && !stop.off);

/** Whether placings of different parts can stand on one console; `null` entries are parts left out. */
export function standTogether(problem: Problem, placed: readonly (PlacedPart | null)[]): boolean {
  const present = placed.filter((each) => each !== null);
  if (present.length === 0) return false;
  const oneManual = hasOneManual(problem.instrument);
  for (let i = 0; i < present.length; i++) {
    for (let j = i + 1; j < present.length; j++) {
      const [a, b] = [present[i] as PlacedPart, present[j] as PlacedPart];
      if (a.keyboard !== b.keyboard) continue;
      if (a.octave !== 0 || b.octave !== 0) return false;
      if (mustBeApart(a, b) && !oneManual && !isDivided(a.keyboard)) return false;
    }
  }
  if (joinsTwoHands(problem, present)) return false;
  // A coupler that is on bears on every keyboard it reaches, whoever asked for it.
  const on = new Set(present.flatMap((each) => each.couplers));
  for (const one of present) {
    const bearing = couplersBearing(problem.instrument.couplers, one.keyboard, (coupler) => on.has(coupler));
    if (bearing.length !== one.couplers.length) return false;
  }
  for (const coupler of on) {
    if (!present.some((one) => one.reach.some(({ couplers }) => couplers.includes(coupler)))) return false;
  }
  return settlingOrder(present) !== null;
}

const signatures = new WeakMap<Stop, string>();
/** Two stops of one division with the same text are alike in everything the rules read. */
export function likeness(stop: Stop, shared: ReadonlyMap<string, number>): string {
  let text = signatures.get(stop);
  if (text === undefined) {
    const own = stop.uses.some((use) => shared.has(use.rank)) ? stop.id : "";
    const uses = stop.uses.map((use) => `${use.pitch.over}/${use.pitch.under}:${use.from}-${use.to}`).join(",");
    text = [
      stop.division,
      own,
      stop.kinds.join("+"),
      stop.family,
      stop.pitch ? `${stop.pitch.over}/${stop.pitch.under}` : "",
      stop.half ?? "",
      stop.from,
      stop.to,
      stop.strength,
      stop.brightness,
      stop.tierce,
      stop.ranks,
      uses,
    ].join("|");
    signatures.set(stop, text);
  }
  return text;
}
