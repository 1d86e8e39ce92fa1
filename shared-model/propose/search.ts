import { type Colour, colourOf } from "../acoustics/colour.ts";
import type { Voice } from "../acoustics/part-sound.ts";
import { voiceOf, zonesOf } from "../acoustics/voice.ts";
import type { BoxPosition, ConsoleState, Placing } from "../console/state.ts";
import { type PlacedPart, settlingOrder } from "../judging/placed-part.ts";
import { keyboardsFor, type Problem, type WeighedPart } from "../judging/problem.ts";
import type { PartRecipe } from "../judging/reading.ts";
import { wantedStops } from "../judging/wanted-stops.ts";
import { forEachPair, yielding } from "../judging/weighing.ts";
import type { Wanted } from "../music/prescription.ts";
import { hasOneManual, mustBeApart } from "../rules/balance.ts";
import type { PairRule, Points } from "../rules/rule.ts";
import type { Division, Stop } from "../stoplist/instrument.ts";
import { type Base, boundInColour, type Candidate, Pool, voicesOf } from "./pool.ts";
import { isProposable, placingsFor, standTogether } from "./state-space.ts";

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
}

/** How much work a search did, for the bench. */
export interface Effort {
  rounds: number;
  pools: number;
  candidates: number;
  pairs: number;
  /** Highest bound of all, and the score of the last state kept: the gap between them decides the work. */
  bound: Points;
  last: Points;
}

interface Option {
  /** `null` when the part is left out. */
  readonly placed: PlacedPart | null;
  readonly weighed: WeighedPart | null;
  /** What the recipe could find at best; holds also when other parts have settled some of the stops. */
  readonly loose: Points;
  /** The best set of its own, where nothing is settled by others; starts as the loose bound. */
  bound: Points;
  sharp: boolean;
}

/** Points below which no state can fall: every rule's worst together is far above it. */
const WORST: Points = -100_000;

interface PairTable {
  readonly rules: readonly PairRule[];
  readonly most: Points;
}

/** Tables of a problem that every search in it uses: pools once made, bounds once sharpened. */
class Frames {
  readonly problem: Problem;
  private readonly pools = new Map<WeighedPart, Pool>();
  private readonly coloured = new Map<string, Map<WeighedPart, Pool>>();
  private readonly reachable = new Map<string, Points>();
  /** By reading, by part: every placing with its bound, whatever the colour. */
  readonly options: readonly (readonly Option[][])[];
  readonly pairMost: readonly Points[];
  private readonly tones = new Map<Stop, readonly Voice[]>();
  private readonly had = new Map<Wanted, Map<string, boolean>>();
  private readonly pairTables = new Map<WeighedPart, Map<WeighedPart, PairTable>>();

  constructor(problem: Problem) {
    this.problem = problem;
    const made = new Map<string, Option[]>();
    this.options = problem.readings.map((_, reading) =>
      problem.section.parts.map((part, index) => {
        const key = `${index} ${problem.light(index, reading)}`;
        let options = made.get(key);
        if (!options) {
          options = placingsFor(problem, index).flatMap((placed): Option[] => {
            if (!placed) return [{ placed, weighed: null, loose: 0, bound: 0, sharp: true }];
            const weighed = problem.weighed(placed, reading);
            if (weighed.fix === null) return [];
            const bound = weighed.fix + weighed.most + this.reachOfRecipe(reading, part.id, placed);
            return [{ placed, weighed, loose: bound, bound, sharp: false }];
          });
          made.set(key, options);
        }
        return options;
      }),
    );
    this.pairMost = this.options.map((options) => this.highestPairs(options));
  }

  /** The pair rules that have a say about two placed parts, and the most they can give. */
  pairTable(first: WeighedPart, second: WeighedPart): PairTable {
    let row = this.pairTables.get(first);
    if (!row) {
      row = new Map();
      this.pairTables.set(first, row);
    }
    let table = row.get(second);
    if (!table) {
      const rules = this.problem.rules.pair.filter((rule) => rule.applies(first.context, second.context));
      table = {
        rules,
        most: rules.reduce(
          (sum, rule) =>
            sum +
            (rule.mostHere?.(first.context, second.context) ?? Math.max(0, rule.most(first.context, second.context))),
          0,
        ),
      };
      row.set(second, table);
    }
    return table;
  }

  pool(weighed: WeighedPart, colour: Colour | null, effort: Effort): Pool {
    let table = this.pools;
    if (colour) {
      table = this.coloured.get(colour.id) ?? new Map();
      this.coloured.set(colour.id, table);
    }
    let pool = table.get(weighed);
    if (!pool) {
      effort.pools += 1;
      pool = new Pool(this.problem, weighed, null, colour);
      table.set(weighed, pool);
    }
    return pool;
  }

  /** The most that pair rules can give over all pairs of parts, wherever they are played. */
  private highestPairs(options: readonly (readonly Option[])[]): Points {
    let sum = 0;
    forEachPair(options.length, (a, b) => {
      const first = options[a]?.find((each) => each.weighed)?.weighed;
      const second = options[b]?.find((each) => each.weighed)?.weighed;
      if (!first || !second) return;
      for (const rule of this.problem.rules.pair) {
        if (rule.applies(first.context, second.context)) sum += Math.max(0, rule.most(first.context, second.context));
      }
    });
    return sum;
  }

  /** Whether the organ has a stop for what is wanted that a part of the colour could hold, at any octave. */
  private hasFor(wanted: Wanted, colour: Colour): boolean {
    let row = this.had.get(wanted);
    if (!row) {
      row = new Map();
      this.had.set(wanted, row);
    }
    let has = row.get(colour.id);
    if (has === undefined) {
      has = this.findFor(wanted, colour);
      row.set(colour.id, has);
    }
    return has;
  }

  private findFor(wanted: Wanted, colour: Colour): boolean {
    const { instrument } = this.problem;
    return [-2, -1, 0, 1, 2].some((up) =>
      [...wantedStops(instrument, wanted, up)].some((stop) => {
        if (!isProposable(stop)) return false;
        let voices = this.tones.get(stop);
        if (!voices) {
          voices = [-1, 0, 1].flatMap((octaves) => toneOf(stop, octaves) ?? []);
          this.tones.set(stop, voices);
        }
        return voices.some((voice) => colour.admits(voice));
      }),
    );
  }

  /** What the telling part can keep of a recipe at best when it must have a colour: never too low. */
  keepsInColour(reading: number, part: string, colour: Colour): Points {
    const recipes = this.problem.readings[reading]?.recipes.get(part);
    if (!recipes) return 0;
    let lost = 0;
    for (const recipe of recipes) {
      const { must, oneOf = [] } = recipe.prescribed;
      const lists = [...must.map((wanted) => [wanted]), ...oneOf];
      for (const list of lists) {
        if (list.some((wanted) => this.hasFor(wanted, colour))) continue;
        const each = Math.floor(recipe.share / lists.length);
        const stands = this.problem.standIns
          .filter((standIn) => list.some((one) => one.kind === standIn.for.kind))
          .flatMap((standIn) => standIn.use)
          .filter(
            (use) => use.leaveOut || (use.stops.length > 0 && use.stops.every((wanted) => this.hasFor(wanted, colour))),
          );
        const kept = Math.max(0, ...stands.map((use) => Math.ceil((each * (100 - 15 * use.cost)) / 100)));
        lost += each - kept;
      }
    }
    return -lost;
  }

  /** What the recipe could earn on a keyboard at best, by which kinds the divisions have at all. */
  private reachOfRecipe(reading: number, part: string, placed: PlacedPart): Points {
    const recipes = this.problem.readings[reading]?.recipes.get(part);
    if (!recipes) return 0;
    let sum = 0;
    recipes.forEach((recipe, index) => {
      let best = 0;
      for (const { division, shift } of placed.reach) {
        const key = `${reading}|${part}|${index}|${division.name}|${placed.octave + shift}`;
        let points = this.reachable.get(key);
        if (points === undefined) {
          points = this.inDivision(recipe, division, placed.octave + shift);
          this.reachable.set(key, points);
        }
        best += points;
      }
      sum += Math.min(best, recipe.share);
    });
    return sum;
  }

  private inDivision(recipe: PartRecipe, division: Division, octaves: number): Points {
    const { must, oneOf = [], may = [], octave = 0 } = recipe.prescribed;
    const lists = [...must.map((wanted) => [wanted]), ...oneOf];
    if (lists.length === 0 && may.length > 0) lists.push([...may]);
    if (lists.length === 0) return 0;
    const up = octaves - octave;
    const has = (wanted: Wanted): boolean => {
      const wantedHere = wantedStops(this.problem.instrument, wanted, up);
      return division.stops.some((stop) => wantedHere.has(stop) && isProposable(stop));
    };
    const each = Math.ceil(recipe.share / lists.length) + lists.length;
    let points = 0;
    for (const list of lists) {
      if (list.some(has)) points += each;
      else {
        const uses = this.problem.standIns
          .filter((standIn) => list.some((one) => one.kind === standIn.for.kind))
          .flatMap((standIn) => standIn.use)
          .filter((use) => use.leaveOut || use.stops.some(has));
        points += Math.max(0, ...uses.map((use) => Math.ceil((each * (100 - 15 * use.cost)) / 100)));
      }
    }
    return points;
  }
}

/** A stop's own sound over the whole keyboard, `octaves` away from where it is written. */
function toneOf(stop: Stop, octaves: number): Voice | null {
  const [low, high] = [stop.from - 12 * octaves, stop.to - 12 * octaves];
  return voiceOf(stop, {
    zones: zonesOf(low, high, []),
    away: 12 * octaves,
    low,
    high,
    sharedRank: () => undefined,
    boxed: false,
    box: "open",
  });
}

const framesOf = new WeakMap<Problem, Frames>();
const tablesOf = (problem: Problem): Frames => {
  let frames = framesOf.get(problem);
  if (!frames) {
    frames = new Frames(problem);
    framesOf.set(problem, frames);
  }
  return frames;
};

const printed = new WeakMap<Problem, ReadonlyMap<Stop, number>>();
const placesInPrint = (problem: Problem): ReadonlyMap<Stop, number> => {
  let table = printed.get(problem);
  if (!table) {
    table = new Map(problem.stops.map((stop, index) => [stop, index]));
    printed.set(problem, table);
  }
  return table;
};

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
const placeCode = (problem: Problem, keyboard: Division, octave: number): number =>
  problem.instrument.divisions.indexOf(keyboard) * 4 + (octave === 0 ? 0 : octave === -1 ? 1 : 2);

/** The text and the printed order of a state with its placings: the same for the search and for enumeration. */
export function identify(
  problem: Problem,
  state: ConsoleState,
  placings: readonly Placing[],
): { readonly signature: string; readonly order: readonly number[] } {
  const places = placesInPrint(problem);
  const drawn = problem.stops.filter((stop) => state.drawn.has(stop.id)).map((stop) => places.get(stop) as number);
  const keyboards = problem.section.parts.map((part) => {
    const placing = placings.find((each) => each.part === part.id);
    if (!placing) return 9999;
    const keyboard = problem.instrument.divisions.find((division) => division.name === placing.keyboard) as Division;
    return placeCode(problem, keyboard, placing.octave);
  });
  const means = [
    ...[...state.tremulants].map((name) => `~${name}`),
    ...[...state.boxes].filter(([, at]) => at !== "open").map(([box, at]) => `${at} ${box}`),
  ];
  return {
    order: [...keyboards, ...drawn],
    signature: `${keyboards.join(" ")}|${drawn.join(" ")}|${[...state.couplers].sort().join("+")}|${means.sort().join("+")}`,
  };
}

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
 */
export function search(
  problem: Problem,
  wanted: number,
  colour: Colour | null = null,
  floor: Points = Number.NEGATIVE_INFINITY,
  effort: Effort = { rounds: 0, pools: 0, candidates: 0, pairs: 0, bound: Number.NEGATIVE_INFINITY, last: 0 },
  onlyReading: number | null = null,
): readonly Found[] {
  const telling = tellingPart(problem);
  const frames = tablesOf(problem);
  const readings = frames.options.flatMap((parts, reading) => {
    if (onlyReading !== null && reading !== onlyReading) return [];
    const pairs = frames.pairMost[reading] as Points;
    if (!colour) return [{ parts: parts as Option[][], pairs }];
    const id = (problem.section.parts[telling] as (typeof problem.section.parts)[number]).id;
    const kept = frames.keepsInColour(reading, id, colour);
    const others = parts.reduce((sum, options, index) => (index === telling ? sum : sum + highestOf(options)), pairs);
    const own = (parts[telling] as Option[]).flatMap((option): Option[] => {
      const { placed, weighed } = option;
      if (!placed || !weighed || Math.min(option.bound, option.loose + kept) + others < floor) return [];
      const apart = placed.reach.every((each) => each.couplers.length === 0);
      // Stops that other parts have settled may come along for nothing, so a coupled keyboard keeps its loose bound.
      const inColour = boundInColour(problem, weighed, colour);
      if (inColour === Number.NEGATIVE_INFINITY) return [];
      const bound = apart ? Math.min(option.bound, inColour) : option.loose + kept;
      return bound + others < floor ? [] : [{ placed, weighed, loose: option.loose + kept, bound, sharp: false }];
    });
    return own.length === 0
      ? []
      : [{ parts: parts.map((options, index) => (index === telling ? own : options)), pairs }];
  });
  const top = Math.max(
    Number.NEGATIVE_INFINITY,
    ...readings.map(({ parts, pairs }) => parts.reduce((sum, options) => sum + highestOf(options), pairs)),
  );
  if (!colour && onlyReading === null) effort.bound = top;
  if (!Number.isFinite(top)) return [];
  let found = new Map<string, Found>();
  let threshold = top;
  let step = 50;
  for (;;) {
    effort.rounds += 1;
    for (const { parts } of readings) for (const options of parts) options.sort((a, b) => b.bound - a.bound);
    const round = new Round(problem, frames, wanted, Math.max(threshold, floor), colour, telling, effort);
    for (const { parts, pairs } of readings) round.explore(parts, pairs);
    found = round.found;
    if (found.size >= wanted || !round.pruned || threshold <= Math.max(floor, WORST)) break;
    threshold -= step;
    step = Math.ceil(step * 1.6);
  }
  const best = [...found.values()].sort(compareFound).slice(0, wanted);
  if (!colour && onlyReading === null) effort.last = best[best.length - 1]?.score ?? 0;
  return best;
}

/** An upper bound of every state in the light of each reading, without looking for any. */
export function boundsOfReadings(problem: Problem): readonly Points[] {
  const frames = tablesOf(problem);
  return frames.options.map((parts, reading) =>
    parts.reduce((sum, options) => sum + highestOf(options), frames.pairMost[reading] as Points),
  );
}

const highestOf = (options: readonly Option[]): Points =>
  options.reduce((most, each) => Math.max(most, each.bound), Number.NEGATIVE_INFINITY);

/** Index of the part whose colour tells one proposal from another. */
function tellingPart(problem: Problem): number {
  const { parts } = problem.section;
  for (const role of ["melody", "cantus-firmus", "plenum", "voice", "accompaniment"]) {
    const index = parts.findIndex((part) => part.role === role);
    if (index >= 0) return index;
  }
  return 0;
}

/** Whether a part could share a keyboard with one before it, which then settles stops for both. */
function mayShare(problem: Problem, index: number): boolean {
  const { parts } = problem.section;
  const part = parts[index] as (typeof parts)[number];
  const manuals = problem.instrument.divisions.filter((each) => each.kind === "manual");
  const free =
    hasOneManual(problem.instrument) || manuals.some((each) => each.stops.some((stop) => stop.half !== null));
  return parts.slice(0, index).some((other) => {
    const same = keyboardsFor(problem, index).some((each) =>
      keyboardsFor(problem, parts.indexOf(other)).includes(each),
    );
    return same && (free || !mustBeApart({ part }, { part: other }));
  });
}

/** One sinking of the threshold. */
class Round {
  readonly found = new Map<string, Found>();
  pruned = false;
  private readonly problem: Problem;
  private readonly frames: Frames;
  private readonly wanted: number;
  private cut: Points;
  private readonly colour: Colour | null;
  private readonly telling: number;
  /** What is kept so far, best first. */
  private ranked: Found[] = [];
  private readonly effort: Effort;

  constructor(
    problem: Problem,
    frames: Frames,
    wanted: number,
    cut: Points,
    colour: Colour | null,
    telling: number,
    effort: Effort,
  ) {
    this.effort = effort;
    this.problem = problem;
    this.frames = frames;
    this.wanted = wanted;
    this.cut = cut;
    this.colour = colour;
    this.telling = telling;
  }

  explore(options: readonly (readonly Option[])[], pairs: Points): void {
    const loosely = options.map((_, index) => mayShare(this.problem, index));
    const highest = options.map((each, index) =>
      each.reduce((most, one) => Math.max(most, loosely[index] ? one.loose : one.bound), Number.NEGATIVE_INFINITY),
    );
    const later = (from: number) => highest.slice(from).reduce((sum, each) => sum + each, 0);
    const rest = options.map((_, index) => later(index + 1));
    const chosen: Option[] = [];
    const place = (index: number, sum: Points): void => {
      if (index === options.length) {
        this.join(chosen, pairs);
        return;
      }
      for (const option of options[index] as readonly Option[]) {
        // Nothing that this placing could draw is allowed, whatever the threshold.
        if (option.bound === Number.NEGATIVE_INFINITY) continue;
        const shares = chosen
          .slice(0, index)
          .some((each) => each.placed && each.placed.keyboard === option.placed?.keyboard);
        if (shares) {
          if (sum + option.loose + (rest[index] as number) + pairs < this.cut) {
            this.pruned = true;
            continue;
          }
          chosen[index] = option;
          place(index + 1, sum + option.loose);
          continue;
        }
        if (sum + option.bound + (rest[index] as number) + pairs < this.cut) {
          this.pruned = true;
          // The rest of the list is no better, but for bounds lowered since it was sorted and for shared keyboards.
          if (option.bound === option.loose && !loosely[index]) break;
          continue;
        }
        if (
          !option.sharp &&
          option.placed &&
          option.weighed &&
          option.placed.reach.every((each) => each.couplers.length === 0)
        ) {
          const pool = this.frames.pool(option.weighed, index === this.telling ? this.colour : null, this.effort);
          const need = this.cut - sum - (rest[index] as number) - pairs;
          const best = pool.best(need);
          if (best === null) {
            if (!pool.isExhausted) this.pruned = true;
            option.bound = pool.isExhausted ? Number.NEGATIVE_INFINITY : Math.min(option.bound, need - 1);
            continue;
          }
          option.bound = best;
          option.sharp = true;
          if (sum + best + (rest[index] as number) + pairs < this.cut) {
            this.pruned = true;
            continue;
          }
        }
        chosen[index] = option;
        place(index + 1, sum + option.bound);
      }
      chosen.length = index;
    };
    place(0, 0);
  }

  /** All sets of the parts placed so. */
  private join(options: readonly Option[], pairs: Points): void {
    const { problem } = this;
    const here = options.flatMap((option, index) => (option.placed && option.weighed ? [{ option, index }] : []));
    const order = this.orderOf(
      options,
      here.map((each) => each.option.placed as PlacedPart),
    );
    if (!order) return;
    const inOrder = order.map((at) => here[at] as (typeof here)[number]);
    const bounds = inOrder.map(({ option }, at) =>
      inOrder.slice(0, at).some((each) => each.option.placed?.keyboard === option.placed?.keyboard)
        ? option.loose
        : option.bound,
    );
    const restOf = inOrder.map((_, at) => bounds.slice(at + 1).reduce((sum, each) => sum + each, 0));
    const chosen: Candidate[] = [];
    const grow = (at: number, sum: Points, pairsLeft: Points): void => {
      if (at === inOrder.length) {
        this.keep(
          inOrder.map(({ option, index }, i) => ({ option, index, candidate: chosen[i] as Candidate })),
          sum,
        );
        return;
      }
      const { option, index } = inOrder[at] as (typeof inOrder)[number];
      const weighed = option.weighed as WeighedPart;
      const base =
        at === 0
          ? null
          : baseFor(
              problem,
              inOrder.slice(0, at).map((each, i) => ({
                placed: each.option.placed as PlacedPart,
                candidate: chosen[i] as Candidate,
              })),
              option.placed as PlacedPart,
            );
      const colour = index === this.telling ? this.colour : null;
      const pool = base ? new Pool(problem, weighed, base, colour) : this.frames.pool(weighed, colour, this.effort);
      const need = this.cut - sum - (restOf[at] as number) - pairsLeft;
      if (base && pool.bound < need) {
        if (pool.bound !== Number.NEGATIVE_INFINITY) this.pruned = true;
        return;
      }
      const candidates = pool.atLeast(need);
      if (!pool.isExhausted) this.pruned = true;
      for (const candidate of candidates) {
        const reach = sum + candidate.points + (restOf[at] as number) + pairsLeft;
        if (reach < this.cut || (reach === this.cut && this.standsBehind(options))) {
          this.pruned = true;
          break;
        }
        this.effort.candidates += 1;
        chosen[at] = candidate;
        let [now, left] = [sum + candidate.points, pairsLeft];
        let allowed = true;
        for (let i = 0; i < at && allowed; i++) {
          const other = (inOrder[i] as (typeof inOrder)[number]).option.weighed as WeighedPart;
          for (const [one, two, a, b] of [
            [other, weighed, chosen[i] as Candidate, candidate],
            [weighed, other, candidate, chosen[i] as Candidate],
          ] as const) {
            left -= this.frames.pairTable(one, two).most;
            const points = this.pair(one, two, a, b);
            if (points === null) {
              allowed = false;
              break;
            }
            now += points;
          }
        }
        if (!allowed) continue;
        if (now + (restOf[at] as number) + left < this.cut) {
          this.pruned = true;
          continue;
        }
        grow(at + 1, now, left);
      }
      chosen.length = at;
    };
    // Placed, the pairs can give no more than this; a shared keyboard often much less than anywhere.
    let placed = 0;
    forEachPair(inOrder.length, (a, b) => {
      const [one, two] = [inOrder[a]?.option.weighed, inOrder[b]?.option.weighed];
      if (one && two) placed += this.frames.pairTable(one, two).most;
    });
    const most = Math.min(pairs, placed);
    const highest = bounds.reduce((sum, each) => sum + each, 0) + most;
    if (highest < this.cut || (highest === this.cut && this.standsBehind(options))) {
      this.pruned = true;
      return;
    }
    grow(0, 0, placed);
  }

  /** The order in which the parts settle what is drawn; `null` when they cannot stand on one console. */
  private orderOf(options: readonly Option[], placed: readonly PlacedPart[]): readonly number[] | null {
    // Keyboards of their own, with nothing coupled: the common case, and nothing to find out.
    let alone = placed.length > 0;
    for (let i = 0; i < placed.length && alone; i++) {
      const one = placed[i] as PlacedPart;
      alone = one.reach.length === 1;
      for (let j = 0; j < i && alone; j++) alone = (placed[j] as PlacedPart).keyboard !== one.keyboard;
    }
    if (alone) return placed.map((_, index) => index);
    return standTogether(
      this.problem,
      options.map((each) => each.placed),
    )
      ? settlingOrder(placed)
      : null;
  }

  /** What the pair rules give two drawn parts in this order; `null` when one forbids them. */
  private pair(one: WeighedPart, two: WeighedPart, a: Candidate, b: Candidate): Points | null {
    this.effort.pairs += 1;
    const conform = a.conform && b.conform;
    let points = 0;
    for (const rule of this.frames.pairTable(one, two).rules) {
      if (rule.forbids?.(a.sound, b.sound, one.context, two.context) && !(rule.yieldsToPrescription && conform))
        return null;
      points += yielding(rule.weigh(a.sound, b.sound, one.context, two.context), rule.yieldsToPrescription, conform);
    }
    return points;
  }

  private keep(parts: readonly Piece[], score: Points): void {
    const { order, signature } = identifyParts(this.problem, parts);
    const known = this.found.get(signature);
    if (known && known.score >= score) return;
    const last = this.ranked[this.wanted - 1];
    if (last && compareFound(last, { score, order, signature }) < 0) return;
    const telling = parts.find((each) => each.index === this.telling) ?? parts[0];
    const colour = colourOf((telling as Piece).candidate.sound);
    // Many equals are found that nobody will see; the state itself is put together when it is asked for.
    let state: ConsoleState | undefined;
    const pieces = [...parts];
    const found: Found = {
      score,
      colour,
      order,
      signature,
      get state() {
        state ??= stateOf(pieces);
        return state;
      },
      get placings() {
        return [...pieces]
          .sort((a, b) => a.index - b.index)
          .map(({ option }) => placingOf(option.placed as PlacedPart));
      },
    };
    this.found.set(signature, found);
    this.ranked = [...this.ranked.filter((each) => each !== known), found].sort(compareFound);
    for (const dropped of this.ranked.splice(this.wanted)) this.found.delete(dropped.signature);
    const worst = this.ranked[this.wanted - 1];
    if (worst) this.cut = Math.max(this.cut, worst.score);
  }

  /**
   * Whether a state with these keyboards that earns no more than the cut would stand behind the last one kept: of equals
   * the earlier printed keyboards come first.
   */
  private standsBehind(options: readonly Option[]): boolean {
    const worst = this.ranked[this.wanted - 1];
    if (!worst || worst.score < this.cut) return false;
    for (let i = 0; i < options.length; i++) {
      const placed = options[i]?.placed;
      const code = placed ? placeCode(this.problem, placed.keyboard, placed.octave) : 9999;
      const difference = code - (worst.order[i] as number);
      if (difference !== 0) return difference > 0;
    }
    return false;
  }
}

interface Piece {
  readonly option: Option;
  readonly index: number;
  readonly candidate: Candidate;
}

const placingOf = (placed: PlacedPart): Placing => ({
  part: placed.part.id,
  keyboard: placed.keyboard.name,
  octave: placed.octave,
});

const stateOf = (pieces: readonly Piece[]): ConsoleState => ({
  drawn: new Set(pieces.flatMap((each) => each.candidate.stops.map((stop) => stop.id))),
  couplers: new Set(pieces.flatMap((each) => (each.option.placed?.couplers ?? []).map((coupler) => coupler.name))),
  tremulants: new Set(pieces.flatMap((each) => each.candidate.tremulants)),
  boxes: new Map(pieces.flatMap((each) => each.candidate.boxes)) as ReadonlyMap<string, BoxPosition>,
  unisonOff: new Set(),
});

/** As {@link identify}, from the parts of a state that is not put together yet. */
function identifyParts(
  problem: Problem,
  pieces: readonly Piece[],
): { readonly signature: string; readonly order: readonly number[] } {
  const places = placesInPrint(problem);
  const keyboards = problem.section.parts.map((_, index) => {
    const placed = pieces.find((each) => each.index === index)?.option.placed;
    return placed ? placeCode(problem, placed.keyboard, placed.octave) : 9999;
  });
  const drawn: number[] = [];
  const couplers = new Set<string>();
  const means: string[] = [];
  for (const { option, candidate } of pieces) {
    for (const stop of candidate.stops) drawn.push(places.get(stop) as number);
    for (const coupler of option.placed?.couplers ?? []) couplers.add(coupler.name);
    for (const name of candidate.tremulants) means.push(`~${name}`);
    for (const [box, at] of candidate.boxes) means.push(`${at} ${box}`);
  }
  drawn.sort((a, b) => a - b);
  return {
    order: [...keyboards, ...drawn],
    signature: `${keyboards.join(" ")}|${drawn.join(" ")}|${[...couplers].sort().join("+")}|${means.sort().join("+")}`,
  };
}

/** What the parts already drawn settle for the next one; `null` when they share nothing. */
function baseFor(
  problem: Problem,
  drawn: readonly { readonly placed: PlacedPart; readonly candidate: Candidate }[],
  next: PlacedPart,
): Base | null {
  const reach = new Set(next.reach.map((each) => each.division.name));
  const settled = new Set<Stop>();
  const stops = new Set<Stop>();
  const tremulants = new Set<string>();
  const divisions = new Set<string>();
  const boxes = new Map<string, BoxPosition>();
  const all = new Set(drawn.flatMap((each) => each.candidate.stops));
  const shaken = new Set(drawn.flatMap((each) => each.candidate.tremulants));
  let touches = false;
  for (const { placed, candidate } of drawn) {
    for (const { division } of placed.reach) {
      if (!reach.has(division.name)) continue;
      touches = true;
      for (const stop of division.stops) {
        const heard = isProposable(stop) && heardBy(problem, placed, stop);
        if (heard) settled.add(stop);
        if (heard && all.has(stop)) divisions.add(division.name);
      }
    }
    for (const [box, at] of candidate.boxes) boxes.set(box, at);
  }
  for (const stop of all) if (reach.has(stop.division)) stops.add(stop);
  for (const name of shaken) tremulants.add(name);
  const boxesTouched = next.reach.some(
    (each) =>
      each.division.box !== null &&
      drawn.some((one) => one.placed.reach.some((other) => other.division.box === each.division.box)),
  );
  if (boxesTouched || problem.instrument.tremulants.includes("all")) {
    touches = true;
    for (const { candidate } of drawn) for (const stop of candidate.stops) divisions.add(stop.division);
  }
  return touches ? { drawn: stops, settled, tremulants, divisions, boxes } : null;
}

const heardBy = (problem: Problem, placed: PlacedPart, stop: Stop): boolean => voicesOf(problem, placed, stop) !== null;
