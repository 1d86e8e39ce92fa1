import { type Colour, colourOf } from "../acoustics/colour.ts";
import type { ConsoleState } from "../console/state.ts";
import { type PlacedPart, settlingOrder } from "../judging/placed-part.ts";
import type { Problem, WeighedPart } from "../judging/problem.ts";
import { forEachPair, yielding } from "../judging/weighing.ts";
import type { PairRule, Points } from "../rules/rule.ts";
import type { Candidate } from "./candidate.ts";
import { compareFound, type Found, groundOf, placeCode } from "./found.ts";
import type { Effort, Frames, Option, PairTable, Wish } from "./frames.ts";
import { identifyPieces, type Piece, placingOf, stateOf } from "./piece.ts";
import { Pool } from "./pool.ts";
import { baseFor, sharingFor } from "./sharing.ts";
import { standTogether } from "./state-space.ts";
import { spend, type Work, workOf } from "./work.ts";

/** What counts as one: every state, or all states together whose `drawing` is one (`found.ts`). */
export type Kept = "states" | "drawings";

/**
 * Of how many states that are as good as the last one kept the first in print are looked for. A large organ has hundreds of
 * thousands of choruses that are worth the same to the last point, and which of them is named matters to nobody.
 */
const MOST_EQUALS = 2_000;
const NOTHING: Pick<Candidate, "stops" | "tremulants" | "boxes"> = { stops: [], tremulants: [], boxes: [] };

/** One sinking of the threshold. */
export class Round {
  readonly found = new Map<string, Found>();
  pruned = false;
  private readonly problem: Problem;
  private readonly frames: Frames;
  private readonly wanted: number;
  private readonly kept: Kept;
  private cut: Points;
  private readonly colour: Colour | null;
  private readonly telling: number;
  /** What is kept so far, best first. */
  private ranked: Found[] = [];
  /** How many were looked at that could only be as good as the last one kept. */
  private equals = 0;
  private readonly effort: Effort;
  private readonly work: Work;

  constructor(
    problem: Problem,
    frames: Frames,
    { wanted, kept }: { readonly wanted: number; readonly kept: Kept },
    cut: Points,
    colour: Colour | null,
    telling: number,
    effort: Effort,
  ) {
    this.effort = effort;
    this.problem = problem;
    this.work = workOf(problem);
    this.frames = frames;
    this.wanted = wanted;
    this.kept = kept;
    this.cut = cut;
    this.colour = colour;
    this.telling = telling;
  }

  explore(options: readonly (readonly Option[])[], pairs: Points): void {
    const loosely = this.frames.mayShare;
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
        if (!option.sharp && option.weighed) {
          const need = this.cut - sum - (rest[index] as number) - pairs;
          const pool = this.frames.bounding(option.weighed, index === this.telling ? this.colour : null, this.effort);
          pool.sharpen(need);
          option.bound = Math.min(option.bound, pool.bound);
          if (pool.bound < need) {
            if (option.bound > Number.NEGATIVE_INFINITY) this.pruned = true;
            continue;
          }
          option.sharp = true;
          if (sum + option.bound + (rest[index] as number) + pairs < this.cut) {
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
    const placed = inOrder.map(({ option }) => option.placed as PlacedPart);
    const weighed = inOrder.map(({ option }) => option.weighed as WeighedPart);
    const companionsOf = placed.map((_, at) => companions(placed, at));
    /** By part: the first one that draws for it, or itself. */
    const drawerOf = placed.map((_, at) => companionsOf.findIndex((list, from) => from === at || list.includes(at)));
    const expected = inOrder.map(({ option }, at) =>
      placed.findIndex((other) => other.keyboard === placed[at]?.keyboard) === at ? option.bound : option.loose,
    );
    const alone = [...expected];
    const sharing = placed.map((each, at) => (at === 0 ? null : sharingFor(problem, placed.slice(0, at), each)));
    const chosen: Candidate[] = [];
    const last = inOrder.length - 1;
    let groundsOnly: boolean | undefined;
    /** What the hands have drawn, over whatever bass: of that the best alone is wanted. */
    const drawingSoFar = (): string =>
      identifyPieces(
        problem,
        inOrder.map(({ option, index }, i) => ({
          option,
          index,
          candidate: i === last ? NOTHING : (chosen[i] as Candidate),
        })),
      ).drawing;
    const wishOf = (at: number): Wish => ({
      colour: inOrder[at]?.index === this.telling ? this.colour : null,
      companions: (companionsOf[at] as readonly number[]).map((i) => ({
        weighed: weighed[i] as WeighedPart,
        // The bound of one that must have a colour holds for that colour only, and tables outlive it.
        atMost: this.colour && inOrder[i]?.index === this.telling ? Number.POSITIVE_INFINITY : (alone[i] as Points),
      })),
    });
    const poolFor = (at: number): Pool => {
      const [own, shared, wish] = [weighed[at] as WeighedPart, sharing[at], wishOf(at)];
      if (!shared) return this.frames.pool(own, wish, this.effort);
      const offer = this.frames.offer(own, wish, placed.slice(0, at), shared.settled);
      const base = baseFor(problem, chosen.slice(0, at), own.placed, shared);
      return shared.byBoxAlone ? this.frames.poolOn(offer, base) : new Pool(offer, base);
    };
    const together: Points[] = [];
    /** The most that a part and all for whom it draws come to. */
    const groupOf = (at: number): Points => {
      const each = [at, ...(companionsOf[at] as readonly number[])].reduce((sum, i) => sum + (alone[i] as Points), 0);
      return Math.min(together[at] ?? each, each);
    };
    /** The most that those come to of whom nothing is drawn yet when a part has drawn, its companions left out. */
    const restAfter = (at: number): Points => {
      let rest = 0;
      for (let i = at + 1; i < expected.length; i++) {
        const drawer = drawerOf[i] as number;
        if (drawer === i) rest += groupOf(i);
        else if (drawer < at) rest += expected[i] as Points;
      }
      return rest;
    };
    const grow = (at: number, sum: Points, pairsLeft: Points): void => {
      if (at === inOrder.length) {
        this.keep(
          inOrder.map(({ option, index }, i) => ({ option, index, candidate: chosen[i] as Candidate })),
          sum,
        );
        return;
      }
      const companions = companionsOf[at] as readonly number[];
      const rest = pairsLeft + restAfter(at);
      const pool = poolFor(at);
      if (at === last) groundsOnly ??= this.kept === "drawings" && pool.draws(groundOf(problem));
      const drawing = at === last && groundsOnly ? drawingSoFar() : null;
      const known = (): Found | undefined => (drawing === null ? undefined : this.found.get(drawing));
      const need = (): Points => Math.max(this.cut, known()?.score ?? this.cut) - sum - rest;
      if (pool.bound < need()) {
        if (pool.bound !== Number.NEGATIVE_INFINITY && !known()) this.pruned = true;
        return;
      }
      for (const candidate of pool.descending(need)) {
        const reach = sum + candidate.reach + rest;
        if (reach < (known()?.score ?? reach)) break;
        if (reach < this.cut || (reach === this.cut && this.standsBehind(options))) {
          this.pruned = true;
          break;
        }
        this.effort.candidates += 1;
        spend(this.work);
        this.countEqual(reach);
        chosen[at] = candidate;
        companions.forEach((i, which) => {
          expected[i] = candidate.companions[which] as Points;
        });
        const pairs = this.pairs(weighed, chosen, at, reach);
        if (pairs) grow(at + 1, sum + candidate.points + pairs.points, pairsLeft - pairs.most);
      }
      // What a better bass has passed over is nothing lost.
      if (!pool.isExhausted && !known()) this.pruned = true;
      chosen.length = at;
    };
    // Placed, the pairs can give no more than this; a shared keyboard often much less than anywhere.
    let pairsHere = 0;
    forEachPair(weighed.length, (a, b) => {
      pairsHere += this.frames.pairTable(weighed[a] as WeighedPart, weighed[b] as WeighedPart).most;
    });
    const pairsAtMost = Math.min(pairs, pairsHere);
    // Of parts that hear the same stops the best of each is seldom the best of all: what they come to together bounds the rest.
    for (let at = 0; at < placed.length; at++) {
      const shared = sharing[at];
      if (drawerOf[at] !== at || companionsOf[at]?.length === 0 || (shared && !shared.byBoxAlone)) continue;
      const pool = this.frames.pool(weighed[at] as WeighedPart, wishOf(at), this.effort);
      // Whoever comes before may have shut a box already, and pays for it.
      const spared = shared ? pool.mostSpared : 0;
      const others = restAfter(-1) - groupOf(at);
      pool.sharpen(this.cut - others - pairsAtMost - spared);
      together[at] = pool.bound + spared;
    }
    const highest = restAfter(-1) + pairsAtMost;
    if (highest === Number.NEGATIVE_INFINITY) return;
    if (highest < this.cut || (highest === this.cut && this.standsBehind(options))) {
      this.pruned = true;
      return;
    }
    this.countEqual(highest);
    grow(0, 0, pairsHere);
  }

  /**
   * What the pair rules give the part drawn last with each one before it, and the most they could; `null` when one forbids,
   * or when they take so much away that the cut is out of reach.
   *
   * @param reach what the state comes to if all pair rules give their most.
   */
  private pairs(
    weighed: readonly WeighedPart[],
    chosen: readonly Candidate[],
    at: number,
    reach: Points,
  ): { readonly points: Points; readonly most: Points } | null {
    let [points, most] = [0, 0];
    for (let i = 0; i < 2 * at; i++) {
      // Each pair in both orders.
      const [from, to] = i % 2 === 0 ? [i >> 1, at] : [at, i >> 1];
      const [one, two] = [weighed[from] as WeighedPart, weighed[to] as WeighedPart];
      const table = this.frames.pairTable(one, two);
      const given = this.pair(
        table,
        one,
        two,
        chosen[from] as Candidate,
        chosen[to] as Candidate,
        reach + points - most,
      );
      if (given === null) return null;
      points += given;
      most += table.most;
    }
    return { points, most };
  }

  /** The order in which the parts settle what is drawn; `null` when they cannot stand on one console. */
  private orderOf(options: readonly Option[], placed: readonly PlacedPart[]): readonly number[] | null {
    // Keyboards of their own, with nothing coupled: the common case, and nothing to find out.
    let alone = placed.length > 0;
    for (let i = 0; i < placed.length && alone; i++) {
      const one = placed[i] as PlacedPart;
      alone = one.reach.length === 1 && one.couplers.length === 0;
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

  /** What the pair rules give two drawn parts in this order; `null` as for `pairs`. */
  private pair(
    { rules, mostOf }: PairTable,
    one: WeighedPart,
    two: WeighedPart,
    a: Candidate,
    b: Candidate,
    reach: Points,
  ): Points | null {
    this.effort.pairs += 1;
    const excused = a.excused && b.excused;
    let points = 0;
    let left = reach;
    for (let i = 0; i < rules.length; i++) {
      const rule = rules[i] as PairRule;
      if (rule.forbids?.(a.sound, b.sound, one.context, two.context) && !(rule.yieldsToPrescription && excused))
        return null;
      const given = yielding(
        rule.weigh(a.sound, b.sound, one.context, two.context),
        rule.yieldsToPrescription,
        excused,
      );
      points += given;
      left += given - (mostOf[i] as Points);
      if (left < this.cut) {
        this.pruned = true;
        return null;
      }
    }
    return points;
  }

  /** Counts what can be no better than the last one kept; after too many, nothing but what is better is looked for. */
  private countEqual(reach: Points): void {
    const worst = this.ranked[this.wanted - 1];
    if (!worst || reach > this.cut || worst.score < this.cut) return;
    this.equals += 1;
    if (this.equals > MOST_EQUALS) this.cut = worst.score + 1;
  }

  private keyOf({ signature, drawing }: Pick<Found, "signature" | "drawing">): string {
    return this.kept === "drawings" ? drawing : signature;
  }

  private keep(parts: readonly Piece[], score: Points): void {
    const { order, signature, drawing } = identifyPieces(this.problem, parts);
    const known = this.found.get(this.keyOf({ signature, drawing }));
    if (known && compareFound(known, { score, order, signature }) <= 0) return;
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
      drawing,
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
    this.found.set(this.keyOf(found), found);
    this.effort.seen?.set(signature, found);
    this.ranked = [...this.ranked.filter((each) => each !== known), found].sort(compareFound);
    for (const dropped of this.ranked.splice(this.wanted)) this.found.delete(this.keyOf(dropped));
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

/** For whom the part at a place draws: whoever comes later and hears a division that it hears. Each belongs to the first. */
function companions(placed: readonly PlacedPart[], at: number): readonly number[] {
  const drawsFor = (one: PlacedPart, other: PlacedPart): boolean =>
    one.keyboard === other.keyboard ||
    other.reach.some(
      ({ division }) => division.stops.length > 0 && one.reach.some((each) => each.division === division),
    );
  const own = placed[at] as PlacedPart;
  return placed.flatMap((other, i) =>
    i > at && drawsFor(own, other) && !placed.slice(0, at).some((earlier) => drawsFor(earlier, other)) ? [i] : [],
  );
}
