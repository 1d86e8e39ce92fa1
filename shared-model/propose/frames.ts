import type { Colour } from "../acoustics/colour.ts";
import type { PlacedPart } from "../judging/placed-part.ts";
import { keyboardsFor, type Problem, type WeighedPart } from "../judging/problem.ts";
import { forEachPair } from "../judging/weighing.ts";
import { hasOneManual, mustBeApart } from "../rules/balance.ts";
import type { PairRule, Points } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";
import type { Base } from "./candidate.ts";
import { numberFor } from "./entries.ts";
import type { Found } from "./found.ts";
import { madeIn } from "./made.ts";
import { type Companion, Offer } from "./offer.ts";
import { Pool } from "./pool.ts";
import { RecipeReach } from "./recipe-reach.ts";
import { meansText } from "./sharing.ts";
import { placingsFor } from "./state-space.ts";

/** How much work a search did, for the bench. */
export interface Effort {
  rounds: number;
  pools: number;
  candidates: number;
  pairs: number;
  /** Highest bound of all, and the score of the last state kept: the gap between them decides the work. */
  bound: Points;
  last: Points;
  /** States kept on the way, for one who has to stop before the end. */
  seen?: Map<string, Found>;
}

/** One way to place a part in the light of a reading. */
export interface Option {
  /** `null` when the part is left out. */
  readonly placed: PlacedPart | null;
  readonly weighed: WeighedPart | null;
  /** What the recipe could find at best; holds also when other parts have settled some of the stops. */
  readonly loose: Points;
  /** The best set of its own, where nothing is settled by others; starts as the loose bound. */
  bound: Points;
  sharp: boolean;
}

/** The pair rules that have a say about two placed parts, and the most they can give. */
export interface PairTable {
  /** Those that cost least first. */
  readonly rules: readonly PairRule[];
  /** By rule. */
  readonly mostOf: readonly Points[];
  readonly most: Points;
}

/** What a part takes a keyboard with: the colour it must have, and who comes after it on the same keys. */
export interface Wish {
  readonly colour: Colour | null;
  readonly companions: readonly Companion[];
}

/** Tables of a problem that every search in it uses: pools once made, bounds once sharpened. */
export class Frames {
  readonly problem: Problem;
  readonly recipes: RecipeReach;
  private readonly playable: (boolean | undefined)[] = [];
  private readonly offers = new Map<string, Offer>();
  private readonly pools = new Map<string, Pool>();
  private readonly poolsOn = new Map<Offer, Map<string, Pool>>();
  private readonly numbers = new Map<WeighedPart | PlacedPart, number>();
  /** By reading, by part: every placing with its bound, whatever the colour. */
  readonly options: readonly (readonly Option[][])[];
  readonly pairMost: readonly Points[];
  /** By part: whether it could share a keyboard with one before it. */
  readonly mayShare: readonly boolean[];
  private readonly pairTables = new Map<WeighedPart, Map<WeighedPart, PairTable>>();

  constructor(problem: Problem) {
    this.problem = problem;
    this.recipes = new RecipeReach(problem);
    this.mayShare = problem.section.parts.map((_, index) => mayShare(problem, index));
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
            const bound = weighed.fix + weighed.most + this.recipes.on(reading, part.id, placed);
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
      const asked = this.problem.rules.pair.filter((rule) => rule.applies(first.context, second.context));
      const rules = [...asked.filter((rule) => !rule.listens), ...asked.filter((rule) => rule.listens)];
      const mostOf = rules.map(
        (rule) =>
          rule.mostHere?.(first.context, second.context) ?? Math.max(0, rule.most(first.context, second.context)),
      );
      table = { rules, mostOf, most: mostOf.reduce((sum, each) => sum + each, 0) };
      row.set(second, table);
    }
    return table;
  }

  /**
   * Whether every part of a reading can be played somewhere, in some way that the rules allow. Asked before anything
   * else, fewest placings first: what no pedal can play need not be looked for on every manual.
   */
  canBePlayed(reading: number, effort: Effort): boolean {
    const known = this.playable[reading];
    if (known !== undefined) return known;
    const parts = [...(this.options[reading] as readonly Option[][])].sort((a, b) => a.length - b.length);
    const can = parts.every((options) =>
      [...options]
        .sort((a, b) => b.bound - a.bound)
        .some((option) => {
          if (!option.weighed || option.sharp) return option.bound > Number.NEGATIVE_INFINITY;
          const possible = this.bounding(option.weighed, null, effort).isPossible;
          if (!possible) option.bound = Number.NEGATIVE_INFINITY;
          return possible;
        }),
    );
    this.playable[reading] = can;
    return can;
  }

  /** A pool in which nothing is settled by others. */
  pool(weighed: WeighedPart, { colour, companions }: Wish, effort: Effort): Pool {
    const key = `${this.keyOf([weighed, ...companions.map((each) => each.weighed)])} ${colour?.id ?? ""}`;
    return this.kept(key, effort, () => new Offer(this.problem, weighed, { colour, companions }));
  }

  /** The pool whose best no set of a placed part exceeds, whatever other parts have drawn on the keyboards coupled to it. */
  bounding(weighed: WeighedPart, colour: Colour | null, effort: Effort): Pool {
    const alone = weighed.placed.reach.every((each) => each.couplers.length === 0);
    if (alone) return this.pool(weighed, { colour, companions: [] }, effort);
    const key = `${this.keyOf([weighed])} ${colour?.id ?? ""} free`;
    return this.kept(key, effort, () => new Offer(this.problem, weighed, { colour, free: true }));
  }

  /** What a part could draw besides what the parts placed before it have settled. */
  offer(
    weighed: WeighedPart,
    { colour, companions }: Wish,
    earlier: readonly PlacedPart[],
    settled: ReadonlySet<Stop>,
  ): Offer {
    const heard = companions.map((each) => each.weighed);
    const key = `${this.keyOf([weighed, ...heard])} ${colour?.id ?? ""} after ${this.keyOf(earlier)}`;
    return madeIn(this.offers, key, () => new Offer(this.problem, weighed, { settled, colour, companions }));
  }

  /** The pool of an offer on what earlier parts have drawn, where no division is shared: most bases are alike to it. */
  poolOn(offer: Offer, base: Base): Pool {
    const pools = madeIn(this.poolsOn, offer, () => new Map());
    return madeIn(pools, meansText(this.problem, offer.weighed.placed, base), () => new Pool(offer, base));
  }

  private kept(key: string, effort: Effort, make: () => Offer): Pool {
    return madeIn(this.pools, key, () => {
      effort.pools += 1;
      return new Pool(make());
    });
  }

  private keyOf(parts: readonly (WeighedPart | PlacedPart)[]): string {
    return parts.map((part) => numberFor(this.numbers, part)).join(",");
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
}

const framesOf = new WeakMap<Problem, Frames>();
/** The tables of a problem, made once. */
export const tablesOf = (problem: Problem): Frames => madeIn(framesOf, problem, () => new Frames(problem));

/** The highest bound among the ways to place a part. */
export const highestOf = (options: readonly Option[], loosely = false): Points =>
  options.reduce((most, each) => Math.max(most, loosely ? each.loose : each.bound), Number.NEGATIVE_INFINITY);

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
