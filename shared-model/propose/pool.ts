import type { Colour } from "../acoustics/colour.ts";
import { addVoice, type PartSound, silence, type Voice } from "../acoustics/part-sound.ts";
import { countPitches } from "../acoustics/pitch-set.ts";
import type { BoxPosition } from "../console/state.ts";
import { heardVoice, type PlacedPart, type Seat } from "../judging/placed-part.ts";
import type { Problem, WeighedPart } from "../judging/problem.ts";
import { type Closeness, COSTS, closenessOf, type Match } from "../judging/recipe.ts";
import { yielding } from "../judging/weighing.ts";
import type { PartRule, Points } from "../rules/rule.ts";
import type { Division, Stop } from "../stoplist/instrument.ts";
import { isProposable, likeness } from "./state-space.ts";

/** What earlier parts have settled on divisions that this part hears too. */
export interface Base {
  /** Drawn stops that an earlier part hears. */
  readonly drawn: ReadonlySet<Stop>;
  /** Stops that an earlier part would hear, drawn or not. */
  readonly settled: ReadonlySet<Stop>;
  readonly tremulants: ReadonlySet<string>;
  /** Divisions of which an earlier part hears a drawn stop: their tremulant and box are settled. */
  readonly divisions: ReadonlySet<string>;
  readonly boxes: ReadonlyMap<string, BoxPosition>;
}

/** One set of stops for one part, with everything that its unary rules give it. */
export interface Candidate {
  readonly points: Points;
  readonly sound: PartSound;
  /** Own stops, in the order of the pool. */
  readonly stops: readonly Stop[];
  readonly tremulants: readonly string[];
  readonly boxes: readonly (readonly [string, BoxPosition])[];
  readonly conform: boolean;
}

interface Entry {
  /** Bit of its division among those that the part hears. */
  readonly divisionBit: number;
  readonly stop: Stop | null;
  readonly tremulant: string | null;
  readonly match: Match;
  /** Lowest that its presence can cost, whatever else is drawn. */
  readonly rank: number;
  /** Items for which it can be part of a stand-in. */
  readonly standInItems: number;
  readonly voices: readonly [Voice, Voice, Voice];
  /** Stops with the same text are alike in everything the rules read. */
  readonly likeness: string;
}

const RANK: Readonly<Record<Match["status"], number>> = { asked: 0, may: 1, stray: 4, plain: 4, against: 5 };
const POSITIONS: readonly BoxPosition[] = ["open", "half", "closed"];
const NO_MATCH: Match = { items: 0, primary: -1, status: "may", gain: 0, cost: 0, standIn: 0, coupled: false };
const TREMBLE: Voice = { ...silence(), tremulant: 1 };

const voicesOfSeat = new WeakMap<Seat, Map<Stop, readonly [Voice, Voice, Voice] | null>>();

/** What a stop adds to a placed part with its box open, half and closed; `null` when it is not heard. Reckoned once. */
export function voicesOf(problem: Problem, placed: PlacedPart, stop: Stop): readonly [Voice, Voice, Voice] | null {
  let table = voicesOfSeat.get(placed.seat);
  if (!table) {
    table = new Map();
    voicesOfSeat.set(placed.seat, table);
  }
  let voices = table.get(stop);
  if (voices === undefined) {
    const open = heardVoice(placed, stop, problem.shared, "open");
    if (!open) voices = null;
    else if (open.enclosed === 0) voices = [open, open, open];
    else {
      voices = [
        open,
        heardVoice(placed, stop, problem.shared, "half") as Voice,
        heardVoice(placed, stop, problem.shared, "closed") as Voice,
      ];
    }
    table.set(stop, voices);
  }
  return voices;
}

const entriesOfWeighed = new WeakMap<WeighedPart, readonly Entry[]>();

/** A division's bit among those that a part hears; an organ with more than 31 divisions in reach of one keyboard shares bits. */
const bitOf = (inPrint: readonly Division[], name: string): number =>
  1 <<
  Math.max(
    0,
    inPrint.findIndex((division) => division.name === name),
  );

/** Divisions that a placed part hears, in printed order, each once. */
const divisionsInPrint = (problem: Problem, placed: PlacedPart): readonly Division[] =>
  problem.instrument.divisions.filter((division) => placed.reach.some((each) => each.division === division));

/** What a part could draw where it is placed, in the order in which the pool tries it. Reckoned once. */
function entriesOf(problem: Problem, weighed: WeighedPart): readonly Entry[] {
  const known = entriesOfWeighed.get(weighed);
  if (known) return known;
  const { recipe, placed } = weighed;
  const inPrint = divisionsInPrint(problem, placed);
  const drafts: Entry[] = [];
  for (const stop of inPrint.flatMap((division) => division.stops)) {
    if (!isProposable(stop)) continue;
    const voices = voicesOf(problem, placed, stop);
    if (!voices) continue;
    const match = recipe.matchOf(stop);
    let standInItems = 0;
    if (match.standIn !== 0) {
      recipe.items.forEach((item, index) => {
        if (item.instead.some((use) => (use.bits & match.standIn) !== 0)) standInItems |= 1 << index;
      });
    }
    const rank = match.status === "stray" && standInItems !== 0 ? 2 : RANK[match.status];
    drafts.push({
      divisionBit: bitOf(inPrint, stop.division),
      stop,
      tremulant: null,
      match,
      rank,
      standInItems,
      voices,
      likeness: likeness(stop, problem.shared),
    });
  }
  for (const tremulant of problem.instrument.tremulants) {
    if (tremulant !== "all" && !inPrint.some((division) => division.name === tremulant)) continue;
    drafts.push({
      divisionBit: bitOf(inPrint, tremulant),
      stop: null,
      tremulant,
      match: NO_MATCH,
      rank: 3,
      standInItems: 0,
      voices: [TREMBLE, TREMBLE, TREMBLE],
      likeness: `tremulant ${tremulant}`,
    });
  }
  drafts.sort((a, b) => a.rank - b.rank);
  entriesOfWeighed.set(weighed, drafts);
  return drafts;
}

/**
 * Everything that a part could draw where it is placed, and the sets of it above any threshold.
 *
 * Depth first, in an order that puts what the recipe asks for first: the bound of a set is what it has earned, what the
 * stops still to come can earn for the recipe, and the most that the rules can give, less what its stops cost already.
 * All conventions but the recipe are weighed on whole sets only, so the bound is never too low.
 */
export class Pool {
  private readonly problem: Problem;
  private readonly weighed: WeighedPart;
  private readonly colour: Colour | null;
  private readonly entries: readonly Entry[];
  private readonly twins: Int16Array;
  private readonly makes: Uint8Array;
  private readonly suffixItems: number[] = [];
  /** Least that completing the colour costs with the entries from here on, by what is there already. */
  private readonly suffixMaking: Points[][] = [];
  /** What of the colour the borrowed stops make, and all of it. */
  private readonly made: number;
  private readonly whole: number;
  private readonly fallingRules: readonly PartRule[];
  private readonly instead: readonly Points[];
  private readonly borrowed: readonly { readonly stop: Stop; readonly match: Match }[];
  private readonly base: Base | null;
  private readonly freeBoxes: readonly string[];
  private readonly paths: readonly (readonly [number, number])[];
  private readonly borrowedDivisions: number;
  private readonly boxDivisions = new Map<string, number>();
  private readonly allCouplers: number;
  private found: Candidate[] = [];
  private reachedDown = Number.POSITIVE_INFINITY;
  private exhausted = false;

  constructor(problem: Problem, weighed: WeighedPart, base: Base | null, colour: Colour | null) {
    this.problem = problem;
    this.weighed = weighed;
    this.base = base;
    this.colour = colour;
    const { placed, recipe } = weighed;
    const inPrint = divisionsInPrint(problem, placed);

    const coupler = new Map(placed.couplers.map((each, index) => [each.name, 1 << index]));
    this.allCouplers = 2 ** placed.couplers.length - 1;
    this.paths = placed.reach.map(({ division, couplers }) => [
      bitOf(inPrint, division.name),
      couplers.reduce((bits, each) => bits | (coupler.get(each.name) ?? 0), 0),
    ]);
    for (const { name, box } of inPrint) {
      if (box) this.boxDivisions.set(box, (this.boxDivisions.get(box) ?? 0) | bitOf(inPrint, name));
    }

    const borrowed: { stop: Stop; match: Match }[] = [];
    if (base) {
      for (const stop of inPrint.flatMap((division) => division.stops)) {
        if (base.drawn.has(stop) && voicesOf(problem, placed, stop))
          borrowed.push({ stop, match: recipe.matchOf(stop) });
      }
    }
    this.borrowed = borrowed;
    this.borrowedDivisions = borrowed.reduce((bits, each) => bits | bitOf(inPrint, each.stop.division), 0);
    const all = entriesOf(problem, weighed);
    this.entries =
      base || colour
        ? all.filter((each) => {
            const { stop, tremulant } = each;
            if (stop) return !base?.settled.has(stop) && !base?.drawn.has(stop) && (!colour || inColour(each, colour));
            return !(
              base &&
              (base.divisions.has(tremulant as string) || (tremulant === "all" && base.divisions.size > 0))
            );
          })
        : all;
    const { entries } = this;
    this.twins = new Int16Array(entries.length);
    this.makes = new Uint8Array(entries.length);
    const places = new Map<string, number>();
    for (let i = 0; i < entries.length; i++) {
      const { likeness: text, stop, voices } = entries[i] as Entry;
      this.twins[i] = places.get(text) ?? -1;
      places.set(text, i);
      this.makes[i] = stop !== null && colour ? colour.makes(voices[0]) : 0;
    }
    let suffix = 0;
    this.whole = colour ? 2 ** colour.makers - 1 : 0;
    const making: Points[] = Array.from({ length: colour?.makers ?? 0 }, () => Number.POSITIVE_INFINITY);
    /** By set of makers that are there: the dearest of those that are not. */
    const missing = (): Points[] =>
      Array.from({ length: this.whole + 1 }, (_, there) =>
        making.reduce((dearest, cost, at) => (there & (1 << at) ? dearest : Math.max(dearest, cost)), 0),
      );
    this.suffixItems[this.entries.length] = 0;
    this.suffixMaking[this.entries.length] = missing();
    for (let i = this.entries.length - 1; i >= 0; i--) {
      const entry = this.entries[i] as Entry;
      suffix |= entry.match.items;
      this.suffixItems[i] = suffix;
      const makes = this.makes[i] as number;
      if (makes !== 0) {
        for (let at = 0; at < making.length; at++) {
          if (makes & (1 << at)) making[at] = Math.min(making[at] as Points, leastCost(entry));
        }
        this.suffixMaking[i] = missing();
      } else this.suffixMaking[i] = this.suffixMaking[i + 1] as Points[];
    }
    this.made = borrowed.reduce(
      (bits, { stop }) =>
        bits | (colour?.makes((voicesOf(problem, placed, stop) as readonly [Voice, Voice, Voice])[0]) ?? 0),
      0,
    );
    this.fallingRules = weighed.partRules.filter((rule) => rule.falling);
    let [bits, beside] = [0, 0];
    for (const { match } of [...entries, ...borrowed]) {
      bits |= match.standIn;
      if (match.items === 0) beside |= match.standIn;
    }
    this.instead = recipe.items.map((item) => {
      let most = 0;
      for (const use of item.instead) {
        const serves = !colour && (use.bits & beside) !== 0 && (use.bits & bits) === use.bits;
        if (use.leaveOut || serves) most = Math.max(most, use.weight);
      }
      return most;
    });
    this.freeBoxes = [
      ...new Set(
        inPrint.flatMap((division) =>
          division.box !== null &&
          !problem.instrument.divisions.some((each) => each.box === division.box && base?.divisions.has(each.name))
            ? [division.box]
            : [],
        ),
      ),
    ].filter((box) => !base?.boxes.has(box));
  }

  /** Highest points of the placing and rules apart from the recipe. */
  private get ceiling(): Points {
    return (this.weighed.fix ?? Number.NEGATIVE_INFINITY) + this.weighed.most;
  }

  /** An upper bound of every set in the pool. */
  get bound(): Points {
    let possible = 0;
    const borrowedItems = this.borrowed.reduce((bits, each) => bits | each.match.items, 0);
    this.weighed.recipe.items.forEach((item, index) => {
      if (((this.suffixItems[0] ?? 0) | borrowedItems) & (1 << index)) possible += item.weight;
      else possible += this.instead[index] as number;
    });
    return this.ceiling + possible - ((this.suffixMaking[0] as Points[])[this.made] as Points);
  }

  /** Whether the last look found every allowed set there is. */
  get isExhausted(): boolean {
    return this.exhausted;
  }

  /** Every set worth at least `threshold`, best first. */
  atLeast(threshold: Points): readonly Candidate[] {
    if (threshold < this.reachedDown && !this.exhausted) {
      this.found = [];
      this.exhausted = true;
      this.gather(threshold);
      this.found.sort((a, b) => b.points - a.points);
      this.reachedDown = threshold;
    }
    return this.found;
  }

  /** The best points that any set earns, `null` when no set is allowed; never looks below `floor`. */
  best(floor: Points): Points | null {
    let threshold = this.bound;
    let step = 50;
    for (;;) {
      const [first] = this.atLeast(Math.max(floor, threshold));
      if (first) return first.points;
      if (threshold <= floor || this.exhausted) return null;
      threshold -= step;
      step = Math.ceil(step * 1.6);
    }
  }

  private gather(threshold: Points): void {
    const { weighed, entries, freeBoxes } = this;
    const { recipe, context, partRules } = weighed;
    const { items } = recipe;
    const ceiling = this.ceiling;
    const chosen: number[] = [];
    const ownMatches: Match[] = [];
    const counts = new Int16Array(32);
    const closeness: Closeness = { gain: 0, cost: 0, conform: false, satisfied: 0, serving: 0 };
    const positions = new Map<string, BoxPosition>(this.base?.boxes ?? []);
    const borrowedMatches = this.borrowed.map((each) => each.match);
    const borrowedItems = borrowedMatches.reduce((all, each) => all | each.items, 0);
    const sounds: PartSound[] = Array.from({ length: entries.length + 1 }, silence);
    const boxOfDivision = new Map(this.problem.instrument.divisions.map((each) => [each.name, each.box]));

    /** A colour is shown for the sake of variety only where the recipe can be followed to the end. */
    const whole = this.colour !== null;
    const potential = (satisfied: number, from: number): Points => {
      const open = this.suffixItems[from] as number;
      let sum = 0;
      for (let i = 0; i < items.length; i++) {
        const bit = 1 << i;
        const instead = this.instead[i] as number;
        if ((satisfied | open) & bit) sum += (items[i] as (typeof items)[number]).weight;
        else if (instead === 0 && whole) return Number.NEGATIVE_INFINITY;
        else sum += instead;
      }
      return sum;
    };

    const positionOf = (entry: Entry): number => {
      const box = entry.stop ? boxOfDivision.get(entry.stop.division) : null;
      return box ? POSITIONS.indexOf(positions.get(box) ?? "open") : 0;
    };

    const leaf = (sound: PartSound, shutCost: Points): void => {
      if (sound.stops === 0 || !this.isNormal(chosen, positions)) return;
      if (this.colour && !this.colour.is(sound)) return;
      closenessOf(recipe, ownMatches, ownMatches.length, borrowedMatches, closeness);
      if (this.colour && recipe.speaks && !closeness.conform) return;
      let points = closeness.gain - closeness.cost - shutCost + (weighed.fix as number);
      if (points + weighed.most < threshold) {
        this.exhausted = false;
        return;
      }
      for (let i = 0; i < partRules.length; i++) {
        const rule = partRules[i] as PartRule;
        if (rule.forbids?.(sound, context) && !(rule.yieldsToPrescription && closeness.conform)) return;
        points += yielding(rule.weigh(sound, context), rule.yieldsToPrescription, closeness.conform);
      }
      if (points < threshold) {
        this.exhausted = false;
        return;
      }
      this.found.push({
        points,
        sound: { ...sound },
        stops: chosen.flatMap((index) => (entries[index] as Entry).stop ?? []),
        tremulants: chosen.flatMap((index) => (entries[index] as Entry).tremulant ?? []),
        boxes: freeBoxes.flatMap((box) => {
          const at = positions.get(box);
          return at && at !== "open" ? [[box, at] as const] : [];
        }),
        conform: closeness.conform,
      });
    };

    /** By item: all bits of its stand-ins. No more strays than there are bits can serve, one for each. */
    const standInBits = items.map((item) => item.instead.reduce((all, use) => all | use.bits, 0));
    const crowded = (strays: number, satisfied: number): Points => {
      if (strays === 0) return 0;
      let open = 0;
      for (let i = 0; i < items.length; i++) if (!(satisfied & (1 << i))) open |= standInBits[i] as number;
      return COSTS.again * Math.max(0, strays - countPitches(open));
    };

    const grow = (
      start: number,
      depth: number,
      satisfied: number,
      cost: Points,
      plain: number,
      shutCost: Points,
      made: number,
      loyal: boolean,
      strays: number,
    ): void => {
      const sound = sounds[depth] as PartSound;
      leaf(sound, shutCost);
      for (let i = start; i < entries.length; i++) {
        const entry = entries[i] as Entry;
        const { match } = entry;
        let more = cost;
        let nowPlain = plain;
        if (match.status === "asked") {
          if ((counts[match.primary] as number) > 0 && !items[match.primary]?.every) more += COSTS.may;
        } else if (match.status === "plain") {
          nowPlain += 1;
          if (nowPlain > 1) more += match.cost;
        } else if (entry.tremulant === null && !(match.status === "stray" && (entry.standInItems & ~satisfied) !== 0)) {
          more += match.cost;
        }
        const now = satisfied | match.items;
        const makes = made | (this.makes[i] as number);
        const toMake = (this.suffixMaking[i + 1] as Points[])[makes] as Points;
        // One that no open item can use has paid for itself already.
        const nowStrays = entry.rank === 2 && (entry.standInItems & ~satisfied) !== 0 ? strays + 1 : strays;
        if (ceiling + potential(now, i + 1) - more - toMake - crowded(nowStrays, now) < threshold) {
          this.exhausted = false;
          // Later strays cost no less and leave no more to come.
          if (entry.rank >= 4 && match.status !== "plain" && made === this.whole) break;
          continue;
        }
        const twin = this.twins[i] as number;
        if (twin >= 0 && !chosen.includes(twin)) continue;
        chosen.push(i);
        if (entry.stop) ownMatches.push(match);
        if (match.primary >= 0) counts[match.primary] = (counts[match.primary] as number) + 1;
        const next = sounds[depth + 1] as PartSound;
        addVoice(sound, entry.voices[positionOf(entry)] as Voice, next);
        if (entry.stop && this.base?.tremulants.has(entry.stop.division)) next.tremulant = 1;
        const stillLoyal =
          loyal && match.status !== "against" && !(match.status === "stray" && entry.standInItems === 0);
        const fallen = this.fallen(next, stillLoyal);
        if (ceiling + potential(now, i + 1) - more - fallen - toMake >= threshold) {
          grow(i + 1, depth + 1, now, more, nowPlain, shutCost, makes, stillLoyal, nowStrays);
        } else this.exhausted = false;
        if (match.primary >= 0) counts[match.primary] = (counts[match.primary] as number) - 1;
        if (entry.stop) ownMatches.pop();
        chosen.pop();
      }
    };

    const withBoxes = (index: number, shutCost: Points): void => {
      if (index < freeBoxes.length) {
        const box = freeBoxes[index] as string;
        for (const position of POSITIONS) {
          positions.set(box, position);
          withBoxes(index + 1, shutCost + (position === "open" ? 0 : COSTS.shutBox));
        }
        return;
      }
      if (ceiling + potential(borrowedItems, 0) - shutCost < threshold) {
        this.exhausted = false;
        return;
      }
      const start = sounds[0] as PartSound;
      Object.assign(start, silence());
      for (const { stop } of this.borrowed) {
        const voices = voicesOf(this.problem, weighed.placed, stop) as readonly [Voice, Voice, Voice];
        const box = boxOfDivision.get(stop.division);
        addVoice(start, voices[box ? POSITIONS.indexOf(positions.get(box) ?? "open") : 0] as Voice, start);
        if (this.base?.tremulants.has("all") || this.base?.tremulants.has(stop.division)) start.tremulant = 1;
      }
      if (this.base?.tremulants.has("all")) start.tremulant = 1;
      grow(0, 0, borrowedItems, shutCost, 0, shutCost, this.made, recipe.speaks, 0);
    };
    if (weighed.fix !== null) withBoxes(0, 0);
  }

  /** How far rules that never recover have fallen below the most they can give. */
  private fallen(sound: PartSound, loyal: boolean): Points {
    const { context } = this.weighed;
    let sum = 0;
    for (let i = 0; i < this.fallingRules.length; i++) {
      const rule = this.fallingRules[i] as PartRule;
      sum += rule.most(context) - yielding(rule.weigh(sound, context), rule.yieldsToPrescription, loyal);
    }
    return sum;
  }

  /** Whether every coupler brings a drawn stop, and every tremulant and shut box reaches one. */
  private isNormal(chosen: readonly number[], positions: ReadonlyMap<string, BoxPosition>): boolean {
    let heard = this.borrowedDivisions;
    let shaken = 0;
    for (let i = 0; i < chosen.length; i++) {
      const { divisionBit, tremulant } = this.entries[chosen[i] as number] as Entry;
      if (tremulant === null) heard |= divisionBit;
      else if (tremulant !== "all") shaken |= divisionBit;
    }
    if ((shaken & ~heard) !== 0) return false;
    if (this.allCouplers !== 0) {
      let couplers = 0;
      for (const [bit, paths] of this.paths) if (heard & bit) couplers |= paths;
      if (couplers !== this.allCouplers) return false;
    }
    for (const box of this.freeBoxes) {
      const at = positions.get(box);
      if (at !== undefined && at !== "open" && ((this.boxDivisions.get(box) ?? 0) & heard) === 0) return false;
    }
    return true;
  }
}

/**
 * An upper bound of the sets of a colour that a placed part could draw, from its entries alone: what the admitted stops
 * can earn for the recipe, less the least that a stop making the colour costs.
 */
export function boundInColour(problem: Problem, weighed: WeighedPart, colour: Colour): Points {
  let items = 0;
  const making: Points[] = Array.from({ length: colour.makers }, () => Number.POSITIVE_INFINITY);
  for (const entry of entriesOf(problem, weighed)) {
    if (!entry.stop || !inColour(entry, colour)) continue;
    items |= entry.match.items;
    const makes = colour.makes(entry.voices[0]);
    for (let at = 0; at < making.length; at++) {
      if (makes & (1 << at)) making[at] = Math.min(making[at] as Points, leastCost(entry));
    }
  }
  let sum = (weighed.fix ?? Number.NEGATIVE_INFINITY) + weighed.most - Math.max(0, ...making);
  weighed.recipe.items.forEach((item, index) => {
    const without = item.instead.find((use) => use.leaveOut)?.weight ?? Number.NEGATIVE_INFINITY;
    sum += items & (1 << index) ? item.weight : without;
  });
  return sum;
}

/**
 * Whether a stop can be part of a colour that is shown for variety: the colour admits it, and the recipe does not shut
 * it out. A colour got by straying from the recipe, or by leaving it half done, would be a mistake, not another answer;
 * stand-ins serve the way itself.
 */
const inColour = ({ match, voices }: Entry, colour: Colour): boolean =>
  match.status !== "against" && match.status !== "stray" && colour.admits(voices[0]);

/** What an entry costs at least, whatever else is drawn. */
function leastCost({ match, tremulant, standInItems }: Entry): Points {
  if (tremulant !== null || match.status === "asked" || match.status === "plain") return 0;
  return match.status === "stray" && standInItems !== 0 ? 0 : match.cost;
}
