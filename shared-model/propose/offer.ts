import type { Colour } from "../acoustics/colour.ts";
import { countPitches } from "../acoustics/pitch-set.ts";
import type { Problem, WeighedPart } from "../judging/problem.ts";
import { COSTS, coupledWeight } from "../judging/recipe.ts";
import type { Points } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";
import {
  bitOf,
  divisionsInPrint,
  type Entry,
  entriesOf,
  inColour,
  leastCost,
  numberFor,
  STANDS_IN,
} from "./entries.ts";
import { View } from "./view.ts";
import { type Work, workOf } from "./work.ts";

/** A part that hears what another draws, and what it comes to at most, whatever that is. */
export interface Companion {
  readonly weighed: WeighedPart;
  readonly atMost: Points;
}

export interface OfferOptions {
  /** Stops that other parts have settled, drawn or not: they are not offered. */
  readonly settled?: ReadonlySet<Stop>;
  /** Only sets of this colour. */
  readonly colour?: Colour | null;
  /** What comes by a coupler costs nothing, as if another part had drawn it. */
  readonly free?: boolean;
  /** Parts that come later and will hear of what is drawn. */
  readonly companions?: readonly Companion[];
}

/** All that a part could draw where it is placed, made ready to be gone through set by set. */
export class Offer {
  readonly problem: Problem;
  readonly weighed: WeighedPart;
  readonly colour: Colour | null;
  readonly free: boolean;
  readonly work: Work;
  readonly entries: readonly Entry[];
  readonly own: View;
  readonly companions: readonly View[];
  /** What each companion comes to at most, and all of them. */
  readonly caps: readonly Points[];
  readonly cap: Points;
  /** By entry: what it costs at least, where that is set against what it brings the companions. */
  readonly costs: readonly Points[];
  /** The last entry of which that is so; -1 for none. */
  readonly lastPaid: number;
  /** By entry: the one before it that is alike in everything and must be drawn first; -1 for none. */
  readonly twins: Int16Array;
  /** By entry: a number for all that the recipe looks at alike; and how many there are. */
  readonly classes: Uint16Array;
  readonly classCount: number;
  /** By entry: what of the colour it makes, as bits, and the box it stands in. */
  readonly makes: Uint8Array;
  readonly boxOf: readonly (string | null)[];
  readonly boxOfDivision: ReadonlyMap<string, string | null>;
  /** Whether a rule about the part asks how loud it is. */
  readonly listens: boolean;
  /** All that makes the colour. */
  readonly whole: number;
  /** Least that completing the colour costs with the entries from a place on, by what is there already. */
  readonly making: readonly (readonly Points[])[];
  /** Boxes of the divisions heard, with their divisions' bits. */
  readonly boxes: ReadonlyMap<string, number>;
  /** Each division's bit with the couplers it comes by, and all couplers by which something comes. */
  readonly paths: readonly (readonly [number, number])[];
  readonly allCouplers: number;
  readonly divisionBits: ReadonlyMap<string, number>;
  /** By entry: the couplers by which it comes, as bits. */
  readonly couplersOf: readonly number[];
  /** Items of which the second that is drawn costs something, and only a nearer one earns all. */
  private readonly nearer: number;
  /**
   * By place and coupler: what it costs at least that something from there on comes by it, whatever is drawn, and where all
   * that is asked for comes from nearer; `null` where nothing has to.
   */
  private readonly hearing: readonly [Float64Array, Float64Array] | null;

  constructor(problem: Problem, weighed: WeighedPart, options: OfferOptions = {}) {
    const { settled, colour = null, free = false, companions = [] } = options;
    this.problem = problem;
    this.weighed = weighed;
    this.colour = colour;
    this.free = free;
    this.work = workOf(problem);
    this.listens = weighed.partRules.some((rule) => rule.listens?.(weighed.context));
    const { placed } = weighed;
    const inPrint = divisionsInPrint(problem, placed);
    const coupler = new Map(placed.couplers.map((each, index) => [each.name, 1 << index]));
    this.paths = placed.reach.map(({ division, couplers }) => [
      bitOf(inPrint, division.name),
      couplers.reduce((bits, each) => bits | (coupler.get(each.name) ?? 0), 0),
    ]);
    this.allCouplers = this.paths.reduce((all, [, couplers]) => all | couplers, 0);
    const boxes = new Map<string, number>();
    for (const { name, box } of inPrint) if (box) boxes.set(box, (boxes.get(box) ?? 0) | bitOf(inPrint, name));
    this.boxes = boxes;
    this.divisionBits = new Map(inPrint.map((each) => [each.name, bitOf(inPrint, each.name)]));

    const all = entriesOf(problem, weighed);
    this.entries =
      settled || colour
        ? all.filter((each) => !each.stop || (!settled?.has(each.stop) && (!colour || inColour(each, colour))))
        : all;
    const { entries } = this;
    this.boxOfDivision = new Map(inPrint.map((each) => [each.name, each.box]));
    this.boxOf = entries.map((each) => (each.stop ? (this.boxOfDivision.get(each.division) ?? null) : null));
    this.own = new View(problem, weighed, entries, null, colour, free ? entries.map((each) => each.foreign) : []);
    this.twins = new Int16Array(entries.length);
    this.makes = new Uint8Array(entries.length);
    const places = new Map<string, number>();
    entries.forEach(({ likeness, stop, voices }, index) => {
      this.twins[index] = places.get(likeness) ?? -1;
      places.set(likeness, index);
      this.makes[index] = stop && colour ? colour.makes(voices[0]) : 0;
    });
    const views = companions.map((each) => new View(problem, each.weighed, entries, weighed, null));
    // What makes the colour has its cost reckoned already (`making`), and must not have it reckoned twice.
    this.costs = entries.map((each, index) =>
      each.stop && !this.makes[index] && views.some((view) => view.brings(index)) ? leastCost(each) : 0,
    );
    this.lastPaid = this.costs.findLastIndex((cost) => cost > 0);
    const shares = this.costs.map((cost) => cost / companions.length);
    for (const view of views) view.charge(shares);
    this.companions = views;
    this.caps = companions.map((each) => each.atMost);
    this.cap = this.caps.reduce((sum, each) => sum + each, 0);
    this.whole = colour ? 2 ** colour.makers - 1 : 0;
    this.making = this.costsOfMaking();
    this.couplersOf = entries.map(({ stop, divisionBit }) =>
      stop && !free ? this.paths.reduce((bits, [bit, reached]) => (bit === divisionBit ? bits | reached : bits), 0) : 0,
    );
    // What another part has drawn already would make the second cost nothing.
    this.nearer = settled && settled.size > 0 ? 0 : this.nearerItems();
    this.hearing = free || this.allCouplers === 0 ? null : [this.costsOfHearing(false), this.costsOfHearing(true)];
    const numbers = new Map<number | string, number>();
    const alike = colour === null && this.allCouplers === 0 && this.lastPaid < 0;
    this.classes = Uint16Array.from(entries, ({ kind }, index) =>
      numberFor(numbers, alike ? kind : `${kind} ${this.makes[index]} ${this.costs[index]} ${this.couplersOf[index]}`),
    );
    this.classCount = numbers.size;
  }

  /**
   * Whether every coupler by which something comes brings a drawn stop, and every tremulant and shut box reaches one.
   *
   * @param chosen places of the entries drawn.
   * @param borrowed bits of the divisions of which a stop is drawn already.
   * @param shut boxes that are not open.
   */
  isNormal(chosen: readonly number[], borrowed: number, shut: readonly string[]): boolean {
    let heard = borrowed;
    let shaken = 0;
    for (const index of chosen) {
      const { divisionBit, tremulant } = this.entries[index] as Entry;
      if (tremulant === null) heard |= divisionBit;
      else if (tremulant !== "all") shaken |= divisionBit;
    }
    if ((shaken & ~heard) !== 0) return false;
    if (this.allCouplers !== 0) {
      let couplers = 0;
      for (const [bit, reached] of this.paths) if (heard & bit) couplers |= reached;
      if (couplers !== this.allCouplers) return false;
    }
    return shut.every((box) => ((this.boxes.get(box) ?? 0) & heard) !== 0);
  }

  /**
   * What it costs at least that something comes by each coupler that brings nothing yet, with the entries from a place on;
   * infinite where nothing can.
   *
   * @param couplers by which something comes already, as bits.
   * @param near items that something nearer than a coupler satisfies or can still satisfy.
   */
  toHear(couplers: number, near: number, from: number): Points {
    const missing = this.allCouplers & ~couplers;
    if (missing === 0 || !this.hearing) return 0;
    const table = this.hearing[(near & this.nearer) === this.nearer ? 1 : 0];
    const count = this.weighed.placed.couplers.length;
    let sum = 0;
    for (let i = 0; i < count; i++) if (missing & (1 << i)) sum += table[from * count + i] as number;
    return sum;
  }

  /**
   * The table of `toHear`. What comes by several couplers pays in equal shares for each, so that nothing is paid for twice.
   *
   * @param besideNearer whether something nearer satisfies all that anything nearer can.
   */
  private costsOfHearing(besideNearer: boolean): Float64Array {
    const { entries, couplersOf } = this;
    const count = this.weighed.placed.couplers.length;
    const table = new Float64Array((entries.length + 1) * count).fill(Number.POSITIVE_INFINITY);
    for (let at = entries.length - 1; at >= 0; at--) {
      const bits = couplersOf[at] as number;
      const share = this.leastCostByCoupler(at, besideNearer) / Math.max(1, countPitches(bits));
      for (let i = 0; i < count; i++) {
        const later = table[(at + 1) * count + i] as number;
        table[at * count + i] = bits & (1 << i) ? Math.min(share, later) : later;
      }
    }
    return table;
  }

  /** What an entry that comes by a coupler costs at least, beyond what is set against what it brings the companions. */
  private leastCostByCoupler(at: number, besideNearer: boolean): Points {
    const entry = this.entries[at] as Entry;
    const { match, rank, standInItems } = entry;
    if (this.makes[at]) return 0;
    if (match.status === "asked") {
      // Either something nearer satisfies the same, and this is the second of its kind, or it is worth less than that would be.
      const item = this.own.items[match.primary];
      const bit = 1 << match.primary;
      const isSecond = besideNearer && match.coupled && match.items === bit && (this.nearer & bit) !== 0;
      return item && isSecond && !item.every ? Math.min(COSTS.may, item.weight - coupledWeight(item)) : 0;
    }
    if (rank !== STANDS_IN) return leastCost(entry) - (this.costs[at] as Points);
    if (!besideNearer || (standInItems & ~this.nearer) !== 0) return 0;
    // What stands in for something that could be had earns less than that, and one stand-in may take several stops.
    let least: Points = COSTS.stray;
    this.own.items.forEach(({ weight, instead }, index) => {
      if (!(standInItems & (1 << index))) return;
      for (const { bits, weight: worth } of instead) {
        if (bits !== 0) least = Math.min(least, Math.floor((weight - worth) / countPitches(bits)));
      }
    });
    return least;
  }

  /** Items that something nearer than a coupler satisfies, and that all that does so counts for. */
  private nearerItems(): number {
    let [nearer, besides] = [0, 0];
    for (const { match } of this.entries) {
      if (match.coupled || match.primary < 0) continue;
      const counted = 1 << match.primary;
      nearer |= counted;
      besides |= match.items & ~counted;
    }
    return nearer & ~besides;
  }

  private costsOfMaking(): Points[][] {
    const { entries, makes, whole, free, colour } = this;
    const cheapest: Points[] = Array.from({ length: colour?.makers ?? 0 }, () => Number.POSITIVE_INFINITY);
    /** By set of makers that are there: the dearest of those that are not. */
    const missing = (): Points[] =>
      Array.from({ length: whole + 1 }, (_, there) =>
        cheapest.reduce((dearest, cost, at) => (there & (1 << at) ? dearest : Math.max(dearest, cost)), 0),
      );
    const table: Points[][] = [];
    table[entries.length] = missing();
    for (let i = entries.length - 1; i >= 0; i--) {
      const [entry, bits] = [entries[i] as Entry, makes[i] as number];
      for (let at = 0; at < cheapest.length; at++) {
        if (bits & (1 << at)) {
          cheapest[at] = Math.min(cheapest[at] as Points, free && entry.foreign ? 0 : leastCost(entry));
        }
      }
      table[i] = bits === 0 ? (table[i + 1] as Points[]) : missing();
    }
    return table;
  }
}
