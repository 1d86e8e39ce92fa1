import type { Colour } from "../acoustics/colour.ts";
import type { Problem } from "../judging/problem.ts";
import type { Points } from "../rules/rule.ts";
import { boundInColour } from "./entries.ts";
import { compareFound, type Found } from "./found.ts";
import { type Effort, type Frames, highestOf, type Option, tablesOf } from "./frames.ts";
import { type Kept, Round } from "./round.ts";

/** Points below which no state can fall: every rule's worst together is far above it. */
const WORST: Points = -100_000;
/** The first sinking of a threshold; the next ones grow. */
const FIRST_STEP: Points = 50;
const LONG_STEP: Points = 150;
/** Where one state alone is wanted: as soon as one is found it is the cut, so a long step finds no more than that. */
const ALONE = 4;

/**
 * The best states of a section by score, exactly: every state of the state space that is worth at least the last one
 * kept has been found, equals by printed order.
 *
 * The threshold starts at the highest bound and sinks until enough states lie above it. Under a threshold everything
 * above it is found: placings by the sum of their parts' bounds, sets of a part from its pool, and pairs of parts as
 * soon as both are drawn.
 *
 * @param wanted how many states to keep.
 * @param colour keep only states whose telling part has this colour.
 * @param floor points below which nothing is looked for.
 * @param onlyReading score states in the light of this reading alone.
 * @param ceiling points above which there is known to be nothing.
 * @param kept `drawings`: of states whose drawing is one (`found.ts`) the best alone is kept and counted.
 */
export function search(
  problem: Problem,
  wanted: number,
  colour: Colour | null = null,
  floor: Points = Number.NEGATIVE_INFINITY,
  effort: Effort = { rounds: 0, pools: 0, candidates: 0, pairs: 0, bound: Number.NEGATIVE_INFINITY, last: 0 },
  onlyReading: number | null = null,
  kept: Kept = "states",
  ceiling: Points = Number.POSITIVE_INFINITY,
): readonly Found[] {
  const telling = tellingPart(problem);
  const frames = tablesOf(problem);
  let readings = frames.options.flatMap((parts, reading) => {
    if (onlyReading !== null && reading !== onlyReading) return [];
    const pairs = frames.pairMost[reading] as Points;
    if (!colour) return [{ reading, parts: parts as Option[][], pairs }];
    const id = (problem.section.parts[telling] as (typeof problem.section.parts)[number]).id;
    const others = parts.reduce(
      (sum, options, index) => (index === telling ? sum : sum + highestOf(options, frames.mayShare[index])),
      pairs,
    );
    const most = others + highestOf(parts[telling] as Option[], true);
    if (most < floor) return [];
    const keeps = frames.recipes.keepsInColour(reading, id, colour);
    if (most + keeps < floor) return [];
    const own = (parts[telling] as Option[]).flatMap((option): Option[] => {
      const { placed, weighed } = option;
      if (!placed || !weighed || Math.min(option.bound, option.loose + keeps) + others < floor) return [];
      const apart = placed.reach.every((each) => each.couplers.length === 0);
      // Stops that other parts have settled may come along for nothing, so a coupled keyboard keeps its loose bound.
      const inColour = boundInColour(problem, weighed, colour);
      if (inColour === Number.NEGATIVE_INFINITY) return [];
      const bound = apart ? Math.min(option.bound, inColour) : option.loose + keeps;
      return bound + others < floor ? [] : [{ placed, weighed, loose: option.loose + keeps, bound, sharp: false }];
    });
    return own.length === 0
      ? []
      : [{ reading, parts: parts.map((options, index) => (index === telling ? own : options)), pairs }];
  });
  const highestIn = ({ parts, pairs }: (typeof readings)[number]): Points => highestSum(frames, parts, pairs);
  const highest = (): Points =>
    readings.reduce((most, each) => Math.max(most, highestIn(each)), Number.NEGATIVE_INFINITY);
  const top = highest();
  if (!colour && onlyReading === null) effort.bound = top;
  if (!Number.isFinite(top) || top < floor) return [];
  let found = new Map<string, Found>();
  let threshold = Math.min(top, Math.max(ceiling, floor));
  const [first, long] = wanted === 1 ? [FIRST_STEP * ALONE, LONG_STEP * ALONE] : [FIRST_STEP, LONG_STEP];
  let step = first;
  for (;;) {
    effort.rounds += 1;
    const cut = Math.max(threshold, floor);
    const round = new Round(problem, frames, { wanted, kept }, cut, colour, telling, effort);
    for (const each of readings) {
      if (highestIn(each) < cut) {
        round.pruned = true;
        continue;
      }
      // Whether every part can be played at all is dear to ask, and many readings are never come to.
      if (!frames.canBePlayed(each.reading, effort)) {
        readings = readings.filter((other) => other !== each);
        continue;
      }
      for (const options of each.parts) sortByBound(options);
      round.explore(each.parts, each.pairs);
    }
    found = round.found;
    if (found.size >= wanted || !round.pruned || threshold <= Math.max(floor, WORST)) break;
    const now = highest();
    if (now === Number.NEGATIVE_INFINITY) break;
    // Bounds sharpened on the way may say that nothing lies just below: begin again where something can.
    if (now < threshold - step) {
      threshold = now;
      step = first;
    } else {
      threshold -= step;
      // Steps that are too long find far more than is wanted; but what lies very deep has to be reached.
      step = Math.min(Math.ceil(step * 1.6), Math.max(long, Math.ceil((top - threshold) / 10)));
    }
  }
  const best = [...found.values()].sort(compareFound).slice(0, wanted);
  if (!colour && onlyReading === null) effort.last = best[best.length - 1]?.score ?? 0;
  return best;
}

/** Highest bound first. Most rounds lower no bound, and sorting what is sorted would be the dearest thing they do. */
function sortByBound(options: Option[]): void {
  for (let i = 1; i < options.length; i++) {
    if ((options[i] as Option).bound <= (options[i - 1] as Option).bound) continue;
    options.sort((a, b) => b.bound - a.bound);
    return;
  }
}

/** What the parts come to at most, each wherever that is highest, with what pairs of them give at most. */
const highestSum = (frames: Frames, parts: readonly (readonly Option[])[], pairs: Points): Points =>
  parts.reduce((sum, options, index) => sum + highestOf(options, frames.mayShare[index]), pairs);

/** An upper bound of every state in the light of each reading, without looking for any. */
export function boundsOfReadings(problem: Problem): readonly Points[] {
  const frames = tablesOf(problem);
  return frames.options.map((parts, reading) => highestSum(frames, parts, frames.pairMost[reading] as Points));
}

/** The same for one state whose score is known: no reading gives it more, so the first that gives as much is its best. */
export const boundsOf = (bounds: readonly Points[], { score }: Pick<Found, "score">): readonly Points[] =>
  bounds.map((bound) => Math.min(bound, score));

/** Index of the part whose colour tells one proposal from another. */
export function tellingPart(problem: Problem): number {
  const { parts } = problem.section;
  for (const role of ["melody", "cantus-firmus", "plenum", "voice", "accompaniment"]) {
    const index = parts.findIndex((part) => part.role === role);
    if (index >= 0) return index;
  }
  return 0;
}
