import type { Colour } from "../acoustics/colour.ts";
import { addFacts, type PartSound, silence } from "../acoustics/part-sound.ts";
import { countPitches } from "../acoustics/pitch-set.ts";
import type { Problem, WeighedPart } from "../judging/problem.ts";
import { coupledWeight, type Item, type Match, worthOf } from "../judging/recipe.ts";
import type { Voices } from "../judging/voices.ts";
import { yielding } from "../judging/weighing.ts";
import type { PartRule, Points } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { type Entry, entriesOf } from "./entries.ts";

/** How far a set has come in the eyes of one part. */
export interface Progress {
  /** Items that something drawn satisfies, and those of them for which it is no coupler that brings it. */
  satisfied: number;
  near: number;
  /** What things asked for in every kind have earned. */
  gained: Points;
  /** Bits of the stand-ins that something drawn is; of them those without a coupler, and those that no item asks for. */
  standIn: number;
  nearStandIn: number;
  besideStandIn: number;
}

/** Adds what a match is to a recipe. */
export function addMatch(from: Progress, { items, gain, standIn, coupled }: Match, to: Progress): void {
  to.satisfied = from.satisfied | items;
  to.near = coupled ? from.near : from.near | items;
  to.gained = from.gained + gain;
  to.standIn = from.standIn | standIn;
  to.nearStandIn = coupled ? from.nearStandIn : from.nearStandIn | standIn;
  to.besideStandIn = items === 0 ? from.besideStandIn | standIn : from.besideStandIn;
}

/** Leaves things as they are. */
export function copyProgress(from: Progress, to: Progress): void {
  to.satisfied = from.satisfied;
  to.near = from.near;
  to.gained = from.gained;
  to.standIn = from.standIn;
  to.nearStandIn = from.nearStandIn;
  to.besideStandIn = from.besideStandIn;
}

export const noProgress = (): Progress => ({
  satisfied: 0,
  near: 0,
  gained: 0,
  standIn: 0,
  nearStandIn: 0,
  besideStandIn: 0,
});

/**
 * What one part sees of a row of things to draw: what each would be to its recipe and to its ear, and the most that
 * those from any place on could still give it. All its bounds hold whatever is drawn in the end.
 */
export class View {
  readonly weighed: WeighedPart;
  readonly items: readonly Item[];
  /** By entry; `null` where the part does not hear it. */
  readonly matches: readonly (Match | null)[];
  readonly voices: readonly (Voices | null)[];
  /** By item: the stand-ins that may serve for it here at all, those that earn most first. */
  private readonly uses: readonly Item["instead"][];
  /** Rules whose most is followed stop by stop, and the most that the others give together. */
  private readonly followed: readonly PartRule[];
  private readonly unfollowed: Points;
  /** By place: what all entries from there on would be together. */
  private readonly still: Progress[] = [];
  /** What the part hears besides, that is in none of the entries and may be drawn by it alone. */
  private readonly besides: readonly Entry[];
  private readonly whole: boolean;
  private readonly always: readonly boolean[];
  private readonly sounds = new Map<string, readonly PartSound[]>();
  /** Items that the part can satisfy besides, whatever is drawn of the entries. */
  private readonly besideItems: number;
  /** By place and item: what it costs at least that something from there on satisfies it; `null` where it costs nothing. */
  private prices: Float64Array | null = null;

  /**
   * @param drawer whoever draws the entries, where it is another part: what that one does not hear may then come besides.
   * @param colour a colour is shown for the sake of variety only where the recipe can be followed to the end.
   * @param always by entry: whether it may sound in the end whether or not it has been passed over.
   */
  constructor(
    problem: Problem,
    weighed: WeighedPart,
    entries: readonly Entry[],
    drawer: WeighedPart | null,
    colour: Colour | null,
    always: readonly boolean[] = [],
  ) {
    this.weighed = weighed;
    this.always = always;
    this.items = weighed.recipe.items;
    this.whole = colour !== null;
    const { partRules, context } = weighed;
    const own = entriesOf(problem, weighed);
    if (drawer) {
      const heard = new Map<Stop | string, Entry>(own.map((each) => [each.stop ?? (each.tremulant as string), each]));
      const seen = entries.map((each) => heard.get(each.stop ?? (each.tremulant as string)) ?? null);
      this.matches = seen.map((each) => each?.match ?? null);
      this.voices = seen.map((each) => each?.voices ?? null);
      // What the other hears and is not among the entries is drawn already, or may not be.
      const offered = new Set(entries);
      const settled = new Set(
        entriesOf(problem, drawer).flatMap((each) => (each.stop && !offered.has(each) ? each.stop : [])),
      );
      const there = new Set(seen);
      this.besides = own.filter((each) => !there.has(each) && !(each.stop && settled.has(each.stop)));
    } else {
      this.matches = entries.map((each) => each.match);
      this.voices = entries.map((each) => each.voices);
      this.besides = [];
    }
    this.followed = partRules.filter((rule) => rule.falling || rule.atMost);
    this.unfollowed = partRules
      .filter((rule) => !rule.falling && !rule.atMost)
      .reduce((sum, rule) => sum + rule.most(context), 0);

    let all = noProgress();
    for (const { match } of this.besides) addMatch(all, match, all);
    this.besideItems = all.satisfied;
    this.still[entries.length] = all;
    for (let i = entries.length - 1; i >= 0; i--) {
      const match = this.matches[i];
      if (match) {
        const more = noProgress();
        addMatch(all, match, more);
        all = more;
      }
      this.still[i] = all;
    }
    // A colour that something stands in for is none of its own, so there only what may be left out serves.
    this.uses = this.items.map(({ instead }) => (colour ? instead.filter((use) => use.leaveOut) : instead));
  }

  /** Items that something nearer than a coupler satisfies among the entries from a place on. */
  nearFrom(from: number): number {
    return (this.still[from] as Progress).near;
  }

  /** Whether an entry brings the part something that it has not besides. */
  brings(entry: number): boolean {
    return ((this.matches[entry]?.items ?? 0) & ~this.besideItems) !== 0;
  }

  /** Sets what the entries bring against what they cost. @param costs by entry: its least cost, this part's share. */
  charge(costs: readonly number[]): void {
    this.prices = costs.some((each) => each > 0) ? this.pricesFrom(costs) : null;
  }

  /**
   * By place: all that the entries from there on sound together, and what the part hears besides.
   *
   * @param positions by entry: 0 with the box open, 1 half, 2 closed.
   * @param key a text for the positions of all boxes: what was reckoned for it once serves again.
   */
  soundsFrom(positions: Uint8Array, key: string): readonly PartSound[] {
    let sounds = this.sounds.get(key);
    if (!sounds) {
      sounds = this.soundsAt(positions);
      this.sounds.set(key, sounds);
    }
    return sounds;
  }

  private soundsAt(positions: Uint8Array): readonly PartSound[] {
    const last = silence();
    for (const { voices } of this.besides) addFacts(last, voices[0], last);
    this.always.forEach((always, index) => {
      const voices = this.voices[index];
      if (always && voices) addFacts(last, voices[positions[index] as 0 | 1 | 2], last);
    });
    // What stands behind a box may be shut away in the end.
    if (last.enclosed > 0) last.shut = 2;
    const sounds: PartSound[] = [];
    sounds[positions.length] = last;
    for (let i = positions.length - 1; i >= 0; i--) {
      const [voices, next] = [this.voices[i], sounds[i + 1] as PartSound];
      sounds[i] = next;
      if (!voices || this.always[i]) continue;
      const more = silence();
      addFacts(next, voices[positions[i] as 0 | 1 | 2], more);
      sounds[i] = more;
    }
    return sounds;
  }

  /**
   * Whoever draws a stop pays for it; what it costs falls in equal shares to all the items that it satisfies, so that the
   * shares of different items are never more together than what is paid.
   */
  private pricesFrom(costs: readonly number[]): Float64Array {
    const { items, matches } = this;
    const prices = new Float64Array((costs.length + 1) * items.length).fill(Number.POSITIVE_INFINITY);
    for (let i = 0; i < items.length; i++) {
      if (this.besideItems & (1 << i)) prices[costs.length * items.length + i] = 0;
    }
    for (let at = costs.length - 1; at >= 0; at--) {
      const satisfied = matches[at]?.items ?? 0;
      const share = (costs[at] as number) / Math.max(1, countPitches(satisfied));
      for (let i = 0; i < items.length; i++) {
        const later = prices[(at + 1) * items.length + i] as number;
        prices[at * items.length + i] = satisfied & (1 << i) ? Math.min(share, later) : later;
      }
    }
    return prices;
  }

  /** The most that the recipe can earn in the end: what is there, and what the entries from a place on can add. */
  recipeAtMost(now: Progress, from: number): Points {
    const still = this.still[from] as Progress;
    const open = now.satisfied | still.satisfied;
    const full = now.near | still.near;
    let sum = now.gained + still.gained;
    for (let i = 0; i < this.items.length; i++) {
      const bit = 1 << i;
      const item = this.items[i] as Item;
      if (open & bit) {
        // Whatever is asked for in every kind is earned stop by stop.
        if (item.every) continue;
        const price =
          this.prices === null || now.near & bit ? 0 : (this.prices[from * this.items.length + i] as number);
        if (price > 0) {
          const there = now.satisfied & bit ? coupledWeight(item) : this.insteadAtMost(i, now, still);
          sum += Math.max(there, Math.floor((full & bit ? item.weight : coupledWeight(item)) - price));
        } else if (full & bit) sum += item.weight;
        else if (now.satisfied & bit) sum += coupledWeight(item);
        else sum += Math.max(coupledWeight(item), this.insteadAtMost(i, now, still));
      } else {
        const instead = this.insteadAtMost(i, now, still);
        if (instead === 0 && this.whole) return Number.NEGATIVE_INFINITY;
        sum += instead;
      }
    }
    return sum;
  }

  /** The most that something standing in for an item can earn, by what is there and what can still come. */
  private insteadAtMost(item: number, now: Progress, still: Progress): Points {
    const uses = this.uses[item] as Item["instead"];
    if (uses.length === 0) return 0;
    const missing = ~(now.standIn | still.standIn);
    const beside = now.besideStandIn | still.besideStandIn;
    const near = now.nearStandIn | still.nearStandIn;
    let most = 0;
    for (let i = 0; i < uses.length; i++) {
      const use = uses[i] as Item["instead"][number];
      if (use.weight <= most) break;
      if (use.leaveOut || ((use.bits & beside) !== 0 && (use.bits & missing) === 0)) {
        most = Math.max(most, worthOf(use, near));
      }
    }
    return most;
  }

  /** Whether everything asked for is there, can still come, or has something that stands in for it. */
  canConform(now: Progress, from: number): boolean {
    if (!this.weighed.recipe.speaks) return false;
    const still = this.still[from] as Progress;
    const open = now.satisfied | still.satisfied;
    for (let i = 0; i < this.items.length; i++) {
      if (!(open & (1 << i)) && this.insteadAtMost(i, now, still) === 0) return false;
    }
    return true;
  }

  /**
   * The most that the rules give any sound between `now` and `all`; `null` when they forbid them all.
   *
   * @param conformable whether the stops may yet be as the recipe says, which silences conventions.
   */
  rulesAtMost(now: PartSound, all: PartSound, conformable: boolean): Points | null {
    const { context } = this.weighed;
    let sum = this.unfollowed;
    for (let i = 0; i < this.followed.length; i++) {
      const rule = this.followed[i] as PartRule;
      const points = rule.atMost ? rule.atMost(now, all, context) : rule.weigh(now, context);
      if (points === null) {
        if (!(rule.yieldsToPrescription && conformable)) return null;
        continue;
      }
      sum += yielding(points, rule.yieldsToPrescription, conformable);
    }
    return sum;
  }
}
