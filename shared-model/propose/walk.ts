import { Blend } from "../acoustics/blend.ts";
import { addFacts, type PartSound, silence, type Voice } from "../acoustics/part-sound.ts";
import { countPitches } from "../acoustics/pitch-set.ts";
import type { BoxPosition } from "../console/state.ts";
import { type Closeness, COSTS, closenessOf, type Match } from "../judging/recipe.ts";
import { AT_BOX, type Voices, voicesOf } from "../judging/voices.ts";
import { yielding } from "../judging/weighing.ts";
import type { PartRule, Points } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";
import type { Base, Candidate, Want } from "./candidate.ts";
import type { Entry } from "./entries.ts";
import { freshNode, type Heard, hear, hearNothing, type Node, partAtMost } from "./heard.ts";
import { crowding, step } from "./node-cost.ts";
import type { Offer } from "./offer.ts";
import { addMatch, type View } from "./view.ts";
import { LISTENED_TO, spend } from "./work.ts";

const POSITIONS: readonly BoxPosition[] = ["open", "half", "closed"];

/** Where a walk may stop: after so many sets kept, or gone through. */
export interface WalkLimits {
  readonly most?: number;
  readonly sets?: number;
}

/**
 * Goes through the sets of an offer, depth first, in an order that puts what the recipe asks for first. The bound of a
 * set is what it has earned, what the entries still to come can earn for the recipe, and the most that the rules can
 * still give, less what its stops cost already; for companions likewise, to whom every stop is free.
 */
export class Walk {
  private found: Candidate[] = [];
  /** The most that any set reached. */
  best: Points | null = null;
  /** Whether something allowed was passed over for reaching too little. */
  pruned = false;
  /** Whether there were more sets than were asked for: of those that reach as much as the last one some are missing. */
  overflowed = false;
  /** Whether it was given up before its end. */
  givenUp = false;
  private readonly offer: Offer;
  private readonly base: Base;
  private readonly freeBoxes: readonly string[];
  private threshold: Points;
  private readonly want: Want;
  /** How many sets are kept, the best, of equals the first found. */
  private readonly most: number;
  /** How many sets it may still go through. */
  private left: number;
  private readonly borrowed: readonly Match[];
  private readonly borrowedDivisions: number;
  private readonly positions: Map<string, BoxPosition>;
  /** Those of the free boxes that are not open. */
  private shut: readonly string[] = [];
  /** By entry: 0 where its box is open, 1 half, 2 closed. */
  private readonly positionOf: Uint8Array;
  /** Written over by every walk of the problem: one ends before the next begins. */
  private readonly nodes: Node[];
  private readonly chosen: number[] = [];
  private readonly passedOver: Uint8Array[] = [];
  private readonly ownMatches: Match[] = [];
  private readonly otherMatches: Match[];
  private readonly counts = new Int16Array(32);
  private readonly closeness: Closeness = {
    gain: 0,
    cost: 0,
    conform: false,
    excused: false,
    satisfied: 0,
    serving: 0,
  };
  /** All that can still sound: for the part by place, and for each companion. */
  private later: readonly PartSound[] = [];
  private laterOf: readonly (readonly PartSound[])[] = [];
  private readonly all = silence();
  /** By item: how many stops one stand-in for it takes at most. */
  private readonly standInSizes: readonly number[];

  constructor(
    offer: Offer,
    base: Base,
    freeBoxes: readonly string[],
    threshold: Points,
    want: Want,
    { most = Number.POSITIVE_INFINITY, sets = Number.POSITIVE_INFINITY }: WalkLimits = {},
  ) {
    this.offer = offer;
    this.nodes = offer.work.nodesFor(offer.companions.length);
    this.base = base;
    this.freeBoxes = freeBoxes;
    this.threshold = threshold;
    this.want = want;
    this.most = most;
    this.left = sets;
    this.borrowed = base.drawn.map((stop) => offer.weighed.recipe.matchOf(stop));
    this.otherMatches = [...this.borrowed];
    this.borrowedDivisions = base.drawn.reduce((bits, stop) => bits | (offer.divisionBits.get(stop.division) ?? 0), 0);
    this.positions = new Map(base.boxes);
    this.positionOf = new Uint8Array(offer.entries.length);
    this.standInSizes = offer.own.items.map((item) =>
      item.instead.reduce((most, use) => Math.max(most, countPitches(use.bits)), 0),
    );
  }

  /** The bound of all sets together, whatever the boxes; `null` when no set is allowed. Looks at no entry. */
  static bound(offer: Offer, base: Base): Points | null {
    const walk = new Walk(offer, base, [], Number.NEGATIVE_INFINITY, "any");
    walk.begin();
    const root = walk.nodes[0] as Node;
    const highest = (view: View, heard: Heard, sounds: readonly PartSound[], loyal: boolean): Points | null => {
      addFacts(heard.sound, sounds[0] as PartSound, walk.all);
      if (walk.base.tremulants.size > 0) walk.all.tremulant = 1;
      // Any box may be shut in the end.
      if (walk.all.enclosed > 0) walk.all.shut = 2;
      return partAtMost(view, heard, walk.all, 0, loyal);
    };
    let sum = highest(offer.own, root, walk.later, root.loyal);
    for (let i = 0; i < offer.companions.length && sum !== null; i++) {
      const others = walk.laterOf[i] as readonly PartSound[];
      const points = highest(offer.companions[i] as View, root.companions[i] as Heard, others, true);
      sum = points === null ? null : sum + Math.min(points, offer.caps[i] as Points);
    }
    return sum === null ? null : Math.floor(sum - walk.toMake(root.makes, 0) - walk.toHear(root, 0));
  }

  /** Goes through every set, in every position of the free boxes: those found, best first, of equals the first found. */
  run(): readonly Candidate[] {
    this.shade(0);
    this.keepBest();
    return this.found;
  }

  private keepBest(): void {
    this.found.sort((a, b) => b.reach - a.reach);
    if (this.found.length <= this.most) return;
    this.found.length = this.most;
    this.overflowed = true;
    this.pruned = true;
    // What reaches as much as the last one and is found later stands behind it.
    this.threshold = Math.max(this.threshold, (this.found[this.most - 1] as Candidate).reach + 1);
  }

  private shade(index: number): void {
    const box = this.freeBoxes[index];
    if (box !== undefined) {
      for (const position of POSITIONS) {
        this.positions.set(box, position);
        this.shade(index + 1);
      }
      return;
    }
    this.begin();
    if (this.isWorthGoingOn(0, 0)) this.grow(0, 0);
  }

  /** Writes the first node: what is borrowed, with the boxes as they stand. */
  private begin(): void {
    const { offer, base } = this;
    this.shut = this.freeBoxes.filter((box) => (this.positions.get(box) ?? "open") !== "open");
    for (let i = 0; i < offer.boxOf.length; i++) {
      const box = offer.boxOf[i];
      this.positionOf[i] = this.positionAt(box ?? null);
    }
    let key = "";
    for (const box of offer.boxes.keys()) key += `${this.positions.get(box) ?? "open"} `;
    this.later = offer.own.soundsFrom(this.positionOf, key);
    this.laterOf = offer.companions.map((view) => view.soundsFrom(this.positionOf, key));
    const root = this.node(0);
    hearNothing(root);
    root.cost = this.shutCost;
    root.plain = 0;
    root.makes = 0;
    root.couplers = 0;
    for (const [bit, reached] of offer.paths) if (this.borrowedDivisions & bit) root.couplers |= reached;
    root.strays = 0;
    root.strayItems = 0;
    root.strayBits = 0;
    root.strayTwice = false;
    root.companionsAtMost = 0;
    root.loyal = offer.weighed.recipe.speaks;
    this.borrow(offer.own, root);
    root.own.forEach((heard, index) => {
      root.companions[index] = heard;
      hearNothing(heard);
      this.borrow(offer.companions[index] as View, heard);
    });
    if (offer.colour) {
      for (const stop of base.drawn) {
        root.makes |= offer.colour.makes((voicesOf(offer.problem, offer.weighed.placed, stop) as Voices)[0]);
      }
    }
  }

  private borrow({ weighed }: View, heard: Heard): void {
    const { base } = this;
    const { problem } = this.offer;
    for (const stop of base.drawn) {
      const voices = voicesOf(problem, weighed.placed, stop);
      if (!voices) continue;
      hear(heard, weighed.recipe.matchOf(stop), voices[this.positionIn(stop.division)], heard);
      if (base.tremulants.has("all") || base.tremulants.has(stop.division)) heard.sound.tremulant = 1;
    }
    if (base.tremulants.has("all")) heard.sound.tremulant = 1;
  }

  private get shutCost(): Points {
    return this.offer.free ? 0 : this.shut.length * COSTS.shutBox;
  }

  private positionIn(division: string): 0 | 1 | 2 {
    return this.positionAt(this.offer.boxOfDivision.get(division) ?? null);
  }

  private positionAt(box: string | null): 0 | 1 | 2 {
    return AT_BOX[(box === null ? undefined : this.positions.get(box)) ?? "open"];
  }

  private node(depth: number): Node {
    let node = this.nodes[depth];
    if (!node) {
      node = freshNode(this.offer.companions.length);
      this.nodes[depth] = node;
    }
    return node;
  }

  /** By class of entries: whether one has been passed over at a node of this depth. */
  private passedOverAt(depth: number): Uint8Array {
    let passedOver = this.passedOver[depth];
    if (passedOver) passedOver.fill(0);
    else {
      passedOver = new Uint8Array(this.offer.classCount);
      this.passedOver[depth] = passedOver;
    }
    return passedOver;
  }

  private toMake(makes: number, from: number): Points {
    return this.offer.whole === 0 ? 0 : ((this.offer.making[from] as readonly Points[])[makes] as Points);
  }

  private toHear(node: Node, from: number): Points {
    return this.offer.toHear(node.couplers, node.near | this.offer.own.nearFrom(from), from);
  }

  /** The sound of all that may yet be drawn with a set. */
  private allFrom(heard: Heard, later: PartSound): PartSound {
    addFacts(heard.sound, later, this.all);
    // A tremulant that an earlier part has drawn may shake stops of this one too.
    if (this.base.tremulants.size > 0) this.all.tremulant = 1;
    return this.all;
  }

  /** Whether a set and what can still join it may reach the threshold. */
  private isWorthGoingOn(depth: number, from: number): boolean {
    const node = this.nodes[depth] as Node;
    const { own, cap } = this.offer;
    const most = partAtMost(own, node, this.allFrom(node, this.later[from] as PartSound), from, node.loyal);
    if (most === null) return false;
    const alone = most - node.cost - this.toMake(node.makes, from) - this.toHear(node, from);
    // What the companions make of it is dear to find out.
    if (alone + cap >= this.threshold) {
      const companions = this.companionsAtMost(node, from);
      if (companions === null) return false;
      node.companionsAtMost = companions;
      if (alone + companions >= this.threshold) return true;
    }
    this.pruned = true;
    return false;
  }

  private companionsAtMost(node: Node, from: number): Points | null {
    let sum = 0;
    for (let i = 0; i < node.companions.length; i++) {
      const view = this.offer.companions[i] as View;
      const heard = node.companions[i] as Heard;
      const all = this.allFrom(heard, (this.laterOf[i] as readonly PartSound[])[from] as PartSound);
      const points = partAtMost(view, heard, all, from, true);
      if (points === null) return null;
      sum += Math.min(points, this.offer.caps[i] as Points);
    }
    return sum;
  }

  private grow(start: number, depth: number): void {
    const { offer, chosen, counts } = this;
    const { entries, own, free, whole } = offer;
    spend(offer.work);
    this.left -= 1;
    if (this.left < 0) {
      this.givenUp = true;
      this.pruned = true;
      this.threshold = Number.POSITIVE_INFINITY;
      return;
    }
    const node = this.nodes[depth] as Node;
    const next = this.node(depth + 1);
    const ceiling = (offer.weighed.fix as number) + offer.weighed.most;
    const passedOver = this.passedOverAt(depth);
    this.weigh(node);
    for (let i = start; i < entries.length; i++) {
      const entry = entries[i] as Entry;
      const { match } = entry;
      // What is alike to the recipe reaches no more if it comes later.
      if (passedOver[offer.classes[i] as number]) continue;
      if (entry.tremulant !== null && this.isSettled(entry.tremulant)) continue;
      const isFree = free && entry.foreign;
      if (isFree && !this.bringsAnything(node, i)) continue;
      step(node, entry, isFree, this.isAgain(match), next);
      next.makes = node.makes | (offer.makes[i] as number);
      next.couplers = node.couplers | (offer.couplersOf[i] as number);
      addMatch(node, match, next);
      // What is drawn now is paid for in the cost of the set, and no more by what it brings the companions.
      const companionsAtMost = node.companionsAtMost + (offer.costs[i] as number);
      const most =
        ceiling +
        own.recipeAtMost(next, i + 1) +
        companionsAtMost -
        next.cost -
        this.toMake(next.makes, i + 1) -
        this.toHear(next, i + 1);
      if (most - crowding(next, this.standInSizes) < this.threshold) {
        this.pruned = true;
        passedOver[offer.classes[i] as number] = 1;
        // Later strays cost no less and leave no more to come, unless a companion pays for one or a coupler needs it.
        const isDearest =
          ((offer.costs[i] as number) > 0 || i >= offer.lastPaid) && (offer.allCouplers & ~node.couplers) === 0;
        if (!free && entry.rank >= 4 && match.status !== "plain" && node.makes === whole && isDearest) break;
        continue;
      }
      const twin = offer.twins[i] as number;
      if (twin >= 0 && !chosen.includes(twin)) continue;
      this.hearNext(node, i, next);
      if (!this.isWorthGoingOn(depth + 1, i + 1)) continue;
      chosen.push(i);
      const matches = isFree ? this.otherMatches : this.ownMatches;
      if (entry.stop) matches.push(match);
      if (!isFree && match.primary >= 0) counts[match.primary] = (counts[match.primary] as number) + 1;
      this.grow(i + 1, depth + 1);
      if (!isFree && match.primary >= 0) counts[match.primary] = (counts[match.primary] as number) - 1;
      if (entry.stop) matches.pop();
      chosen.pop();
    }
  }

  /**
   * Whether something that costs nothing brings the recipe anything new. What does not is never drawn where couplers are
   * free: whole sets are weighed there as if any of it might sound.
   */
  private bringsAnything(node: Node, index: number): boolean {
    const { match, standInItems } = this.offer.entries[index] as Entry;
    const known = match.coupled ? node.satisfied : node.near;
    return (
      (match.items & ~known) !== 0 ||
      (standInItems & ~node.satisfied) !== 0 ||
      match.gain !== 0 ||
      ((this.offer.makes[index] as number) & ~node.makes) !== 0
    );
  }

  /** Whether something drawn counts for the same item already, of which one is asked for. */
  private isAgain({ primary }: Match): boolean {
    return primary >= 0 && (this.counts[primary] as number) > 0 && !this.offer.own.items[primary]?.every;
  }

  private isSettled(tremulant: string): boolean {
    const { divisions } = this.base;
    return divisions.has(tremulant) || (tremulant === "all" && divisions.size > 0);
  }

  /** Lets the part and its companions hear one entry more. */
  private hearNext(node: Node, index: number, next: Node): void {
    const { own, companions, entries } = this.offer;
    const at = this.positionOf[index] as 0 | 1 | 2;
    const { stop } = entries[index] as Entry;
    const shaken = stop !== null && this.base.tremulants.has(stop.division);
    addFacts(node.sound, (own.voices[index] as Voices)[at], next.sound);
    if (shaken) next.sound.tremulant = 1;
    for (let i = 0; i < companions.length; i++) {
      const view = companions[i] as View;
      const [before, after] = [node.companions[i] as Heard, next.own[i] as Heard];
      const voices = view.voices[index];
      next.companions[i] = voices ? after : before;
      if (!voices) continue;
      hear(before, view.matches[index] as Match, voices[at], after);
      if (shaken) after.sound.tremulant = 1;
    }
  }

  /** Weighs a whole set and keeps it when it reaches the threshold. */
  private weigh(node: Node): void {
    const { offer, closeness, ownMatches } = this;
    const { sound } = node;
    const { recipe, context, partRules, fix, most } = offer.weighed;
    // Where couplers are free, what is not drawn may sound all the same.
    if (!offer.free && (sound.stops === 0 || !offer.isNormal(this.chosen, this.borrowedDivisions, this.shut))) return;
    if (!offer.free && offer.colour && !offer.colour.is(sound)) return;
    closenessOf(recipe, ownMatches, ownMatches.length, this.otherMatches, closeness);
    // Whatever stands in for something else belongs to its way, not to a colour of its own.
    if (offer.colour && recipe.speaks && (!closeness.conform || closeness.serving !== 0)) return;
    let points = closeness.gain - closeness.cost - this.shutCost + (fix as number);
    if (points + most + node.companionsAtMost < this.threshold) {
      this.pruned = true;
      return;
    }
    if (offer.free) {
      const all = this.allFrom(node, this.later[offer.entries.length] as PartSound);
      const rules = all.stops === 0 ? null : offer.own.rulesAtMost(sound, all, closeness.excused);
      if (rules === null) return;
      points += rules;
    }
    const { excused } = closeness;
    // What listens is dear: at first it counts with the most that it can give.
    let unheard: Points = 0;
    for (let i = 0; i < partRules.length && !offer.free; i++) {
      const rule = partRules[i] as PartRule;
      if (rule.forbids?.(sound, context) && !(rule.yieldsToPrescription && excused)) return;
      const listens = rule.listens?.(context);
      const given = listens ? (rule.atMost?.(sound, sound, context) ?? rule.most(context)) : rule.weigh(sound, context);
      const counts = yielding(given, rule.yieldsToPrescription, excused);
      points += counts;
      if (listens) unheard += counts;
    }
    const companions: Points[] = [];
    let reach = points;
    for (let i = 0; i < node.companions.length; i++) {
      const heard = node.companions[i] as Heard;
      const later = this.laterOf[i] as readonly PartSound[];
      const last = later.length - 1;
      const all = this.allFrom(heard, later[last] as PartSound);
      const reached = partAtMost(offer.companions[i] as View, heard, all, last, true);
      if (reached === null) return;
      const most = Math.min(reached, offer.caps[i] as Points);
      companions.push(most);
      reach += most;
    }
    let kept: PartSound | null = null;
    if (!offer.free && offer.listens && reach >= this.threshold) {
      spend(offer.work, LISTENED_TO);
      kept = this.soundOf(sound);
      for (const rule of partRules) {
        if (rule.listens?.(context)) unheard -= yielding(rule.weigh(kept, context), rule.yieldsToPrescription, excused);
      }
      points -= unheard;
      reach -= unheard;
    }
    if (reach < this.threshold) {
      this.pruned = true;
      return;
    }
    if (this.best === null || reach > this.best) this.best = reach;
    if (this.want !== "all") {
      this.threshold = this.want === "any" ? Number.POSITIVE_INFINITY : Math.max(this.threshold, reach + 1);
      return;
    }
    this.found.push({
      points,
      companions,
      reach,
      sound: kept ?? this.soundOf(sound),
      ...this.drawn(),
      boxes: this.freeBoxes.flatMap((box) => {
        const at = this.positions.get(box);
        return at && at !== "open" ? [[box, at] as const] : [];
      }),
      excused,
    });
    if (this.found.length >= 2 * this.most) this.keepBest();
  }

  private drawn(): Pick<Candidate, "stops" | "tremulants"> {
    const stops: Stop[] = [];
    const tremulants: string[] = [];
    for (const index of this.chosen) {
      const { stop, tremulant } = this.offer.entries[index] as Entry;
      if (stop) stops.push(stop);
      else if (tremulant !== null) tremulants.push(tremulant);
    }
    return { stops, tremulants };
  }

  /** The sound to keep: with what it blends into, which the sums on the way do without. */
  private soundOf(sound: PartSound): PartSound {
    const { offer, base } = this;
    const blends: Blend[] = [];
    const add = ({ blend }: Voice): void => {
      if (blend) blends.push(blend);
    };
    for (const stop of base.drawn) {
      add((voicesOf(offer.problem, offer.weighed.placed, stop) as Voices)[this.positionIn(stop.division)]);
    }
    for (const index of this.chosen) {
      add((offer.own.voices[index] as Voices)[this.positionOf[index] as 0 | 1 | 2]);
    }
    return { ...sound, blend: Blend.of(blends) };
  }
}
