import { type PlacedPart, settlingOrder } from "../judging/placed-part.ts";
import type { WeighedPart } from "../judging/problem.ts";
import { forEachPair, yielding } from "../judging/weighing.ts";
import type { PairRule, Points } from "../rules/rule.ts";
import type { Candidate } from "./candidate.ts";
import { type Found, groundOf } from "./found.ts";
import type { Option, PairTable, Wish } from "./frames.ts";
import type { Offer } from "./offer.ts";
import { identifyPieces, type Piece } from "./piece.ts";
import { Pool } from "./pool.ts";
import type { Round } from "./round.ts";
import { baseFor, type Sharing, sharingFor } from "./sharing.ts";
import { standTogether } from "./state-space.ts";
import { spend } from "./work.ts";

const NOTHING: Pick<Candidate, "stops" | "tremulants" | "boxes"> = { stops: [], tremulants: [], boxes: [] };

/** Hands a round all states of the parts placed so that reach its cut. @param pairs the most that pair rules give anywhere. */
export function join(round: Round, options: readonly Option[], pairs: Points): void {
  const here = options.flatMap((option, index): Seated[] => {
    const { placed, weighed } = option;
    return placed && weighed ? [{ option, index, placed, weighed }] : [];
  });
  const order = orderOf(
    round,
    options,
    here.map((each) => each.placed),
  );
  if (!order) return;
  const seated = order.map((at) => here[at] as Seated);
  new Joining(round, options, seated).run(pairs);
}

/** A part that is played, with its place in the section. */
interface Seated {
  readonly option: Option;
  readonly index: number;
  readonly placed: PlacedPart;
  readonly weighed: WeighedPart;
}

/** The order in which the parts settle what is drawn; `null` when they cannot stand on one console. */
function orderOf(
  { problem }: Round,
  options: readonly Option[],
  placed: readonly PlacedPart[],
): readonly number[] | null {
  // Keyboards of their own, with nothing coupled: the common case, and nothing to find out.
  let alone = placed.length > 0;
  for (let i = 0; i < placed.length && alone; i++) {
    const one = placed[i] as PlacedPart;
    alone = one.reach.length === 1 && one.couplers.length === 0;
    for (let j = 0; j < i && alone; j++) alone = (placed[j] as PlacedPart).keyboard !== one.keyboard;
  }
  if (alone) return placed.map((_, index) => index);
  const stands = standTogether(
    problem,
    options.map((each) => each.placed),
  );
  return stands ? settlingOrder(placed) : null;
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

/** Parts on their keyboards, in the order in which they settle what is drawn, to be given one set of stops after another. */
class Joining {
  private readonly round: Round;
  private readonly options: readonly Option[];
  private readonly seated: readonly Seated[];
  private readonly companionsOf: readonly (readonly number[])[];
  /** By part: the first one that draws for it, or itself. */
  private readonly drawerOf: readonly number[];
  private readonly sharing: readonly (Sharing | null)[];
  /** By part: the most that it comes to, whatever the others draw; and the same after what has been drawn for it. */
  private readonly alone: readonly Points[];
  private readonly expected: Points[];
  /** By part that draws for others: the most that all of them come to together. */
  private readonly together: Points[] = [];
  private readonly chosen: Candidate[] = [];
  private readonly pools: Pool[] = [];
  private readonly offers: Offer[] = [];
  private groundsOnly: boolean | undefined;

  constructor(round: Round, options: readonly Option[], seated: readonly Seated[]) {
    this.round = round;
    this.options = options;
    this.seated = seated;
    const placed = seated.map((each) => each.placed);
    this.companionsOf = placed.map((_, at) => companions(placed, at));
    this.drawerOf = placed.map((_, at) =>
      this.companionsOf.findIndex((list, from) => from === at || list.includes(at)),
    );
    this.sharing = placed.map((each, at) => (at === 0 ? null : sharingFor(round.problem, placed.slice(0, at), each)));
    this.alone = seated.map(({ option }, at) =>
      placed.findIndex((other) => other.keyboard === placed[at]?.keyboard) === at ? option.bound : option.loose,
    );
    this.expected = [...this.alone];
  }

  run(pairs: Points): void {
    const { round, seated } = this;
    // Placed, the pairs can give no more than this; a shared keyboard often much less than anywhere.
    let pairsHere = 0;
    forEachPair(seated.length, (a, b) => {
      const [one, two] = [seated[a] as Seated, seated[b] as Seated];
      pairsHere += round.frames.pairTable(one.weighed, two.weighed).most;
    });
    const pairsAtMost = Math.min(pairs, pairsHere);
    this.boundTogether(pairsAtMost);
    const highest = this.restAfter(-1) + pairsAtMost;
    if (highest === Number.NEGATIVE_INFINITY) return;
    if (highest < round.cut || (highest === round.cut && round.standsBehind(this.options))) {
      round.pruned = true;
      return;
    }
    round.countEqual(highest);
    this.grow(0, 0, pairsHere);
  }

  /** Of parts that hear the same stops the best of each is seldom the best of all. */
  private boundTogether(pairsAtMost: Points): void {
    const { round } = this;
    for (let at = 0; at < this.seated.length; at++) {
      const shared = this.sharing[at];
      if (this.drawerOf[at] !== at || this.companionsOf[at]?.length === 0 || (shared && !shared.byBoxAlone)) continue;
      const pool = this.poolAlone(at);
      // Whoever comes before may have shut a box already, and pays for it.
      const spared = shared ? pool.mostSpared : 0;
      const others = this.restAfter(-1) - this.groupOf(at);
      pool.sharpen(round.cut - others - pairsAtMost - spared);
      this.together[at] = pool.bound + spared;
    }
  }

  /** The most that a part and all for whom it draws come to. */
  private groupOf(at: number): Points {
    let each = this.alone[at] as Points;
    for (const i of this.companionsOf[at] as readonly number[]) each += this.alone[i] as Points;
    return Math.min(this.together[at] ?? each, each);
  }

  /** The most that those come to of whom nothing is drawn yet when a part has drawn, its companions left out. */
  private restAfter(at: number): Points {
    let rest = 0;
    for (let i = at + 1; i < this.seated.length; i++) {
      const drawer = this.drawerOf[i] as number;
      if (drawer === i) rest += this.groupOf(i);
      else if (drawer < at) rest += this.expected[i] as Points;
    }
    return rest;
  }

  private wishOf(at: number): Wish {
    const { colour, telling } = this.round;
    const tells = (i: number): boolean => this.seated[i]?.index === telling;
    return {
      colour: tells(at) ? colour : null,
      companions: (this.companionsOf[at] as readonly number[]).map((i) => ({
        weighed: (this.seated[i] as Seated).weighed,
        // The bound of one that must have a colour holds for that colour only, and tables outlive it.
        atMost: colour && tells(i) ? Number.POSITIVE_INFINITY : (this.alone[i] as Points),
      })),
    };
  }

  /** What a part can draw after what has been drawn. */
  private poolFor(at: number): Pool {
    const { problem, frames } = this.round;
    const shared = this.sharing[at];
    if (!shared) return this.poolAlone(at);
    const { weighed, placed } = this.seated[at] as Seated;
    let offer = this.offers[at];
    if (!offer) {
      const earlier = this.seated.slice(0, at).map((each) => each.placed);
      offer = frames.offer(weighed, this.wishOf(at), earlier, shared.settled);
      this.offers[at] = offer;
    }
    const base = baseFor(problem, this.chosen.slice(0, at), placed, shared);
    return shared.byBoxAlone ? frames.poolOn(offer, base) : new Pool(offer, base);
  }

  /** What a part can draw where nothing is drawn yet. */
  private poolAlone(at: number): Pool {
    const { frames, effort } = this.round;
    const pool = this.pools[at] ?? frames.pool((this.seated[at] as Seated).weighed, this.wishOf(at), effort);
    this.pools[at] = pool;
    return pool;
  }

  /** The state as far as it is drawn: its drawing where the last part, a bass on stops of its own, is still to come. */
  private drawingSoFar(last: number): string {
    const pieces = this.seated.map(({ option, index }, i) => ({
      option,
      index,
      candidate: i === last ? NOTHING : (this.chosen[i] as Candidate),
    }));
    return identifyPieces(this.round.problem, pieces).drawing;
  }

  private grow(at: number, sum: Points, pairsLeft: Points): void {
    const { round, seated, chosen } = this;
    if (at === seated.length) {
      const pieces = seated.map(
        ({ option, index }, i): Piece => ({ option, index, candidate: chosen[i] as Candidate }),
      );
      round.keep(pieces, sum);
      return;
    }
    const last = seated.length - 1;
    const companions = this.companionsOf[at] as readonly number[];
    const rest = pairsLeft + this.restAfter(at);
    const pool = this.poolFor(at);
    if (at === last) this.groundsOnly ??= round.kept === "drawings" && pool.draws(groundOf(round.problem));
    // What the hands have drawn, over whatever bass: of that the best alone is wanted.
    const drawing = at === last && this.groundsOnly ? this.drawingSoFar(last) : null;
    const known = (): Found | undefined => (drawing === null ? undefined : round.found.get(drawing));
    const need = (): Points => Math.max(round.cut, known()?.score ?? round.cut) - sum - rest;
    if (pool.bound < need()) {
      if (pool.bound !== Number.NEGATIVE_INFINITY && !known()) round.pruned = true;
      return;
    }
    for (const candidate of pool.descending(need)) {
      const reach = sum + candidate.reach + rest;
      if (reach < (known()?.score ?? reach)) break;
      if (reach < round.cut || (reach === round.cut && round.standsBehind(this.options))) {
        round.pruned = true;
        break;
      }
      round.effort.candidates += 1;
      spend(round.work);
      round.countEqual(reach);
      chosen[at] = candidate;
      companions.forEach((i, which) => {
        this.expected[i] = candidate.companions[which] as Points;
      });
      const pairs = this.pairs(at, reach);
      if (pairs) this.grow(at + 1, sum + candidate.points + pairs.points, pairsLeft - pairs.most);
    }
    // What a better bass has passed over is nothing lost.
    if (!pool.isExhausted && !known()) round.pruned = true;
    chosen.length = at;
  }

  /**
   * What the pair rules give the part drawn last with each one before it, and the most they could; `null` when one forbids,
   * or when they take so much away that the cut is out of reach.
   *
   * @param reach what the state comes to if all pair rules give their most.
   */
  private pairs(at: number, reach: Points): { readonly points: Points; readonly most: Points } | null {
    let [points, most] = [0, 0];
    for (let i = 0; i < 2 * at; i++) {
      // Each pair in both orders.
      const [from, to] = i % 2 === 0 ? [i >> 1, at] : [at, i >> 1];
      const [one, two] = [(this.seated[from] as Seated).weighed, (this.seated[to] as Seated).weighed];
      const table = this.round.frames.pairTable(one, two);
      const [a, b] = [this.chosen[from] as Candidate, this.chosen[to] as Candidate];
      const given = this.pair(table, one, two, a, b, reach + points - most);
      if (given === null) return null;
      points += given;
      most += table.most;
    }
    return { points, most };
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
    this.round.effort.pairs += 1;
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
      if (left < this.round.cut) {
        this.round.pruned = true;
        return null;
      }
    }
    return points;
  }
}
