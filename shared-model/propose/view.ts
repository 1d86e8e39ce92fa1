import type { Colour } from "../acoustics/colour.ts";
import { addFacts, type PartSound, silence } from "../acoustics/part-sound.ts";
import type { Problem, WeighedPart } from "../judging/problem.ts";
import { coupledWeight, type Item, type Match } from "../judging/recipe.ts";
import { type Voices, voicesOf } from "../judging/voices.ts";
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
}

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
  /** By item: what the best stand-in earns that this organ has here. */
  readonly instead: readonly Points[];
  /** Rules whose most is followed stop by stop, and the most that the others give together. */
  private readonly followed: readonly PartRule[];
  private readonly unfollowed: Points;
  /** Of the entries from a place on: items they satisfy, those without a coupler, and what `every` items earn. */
  private readonly itemsFrom: number[] = [];
  private readonly nearFrom: number[] = [];
  private readonly gainFrom: Points[] = [];
  /** What the part hears besides, that is in none of the entries and may be drawn by it alone. */
  private readonly besides: readonly Entry[];
  private readonly whole: boolean;
  private readonly always: readonly boolean[];
  private readonly sounds = new Map<string, readonly PartSound[]>();

  /**
   * @param others `true` when the entries are another part's: what this part hears besides may then come too.
   * @param colour a colour is shown for the sake of variety only where the recipe can be followed to the end.
   * @param always by entry: whether it may sound in the end whether or not it has been passed over.
   */
  constructor(
    problem: Problem,
    weighed: WeighedPart,
    entries: readonly Entry[],
    others: boolean,
    colour: Colour | null,
    always: readonly boolean[] = [],
  ) {
    this.weighed = weighed;
    this.always = always;
    this.items = weighed.recipe.items;
    this.whole = colour !== null;
    const { placed, recipe, partRules, context } = weighed;
    const own = entriesOf(problem, weighed);
    if (others) {
      const heard = new Map<Stop | string, Entry>(own.map((each) => [each.stop ?? (each.tremulant as string), each]));
      const seen = entries.map((each) => heard.get(each.stop ?? (each.tremulant as string)) ?? null);
      this.matches = seen.map((each) => each?.match ?? null);
      this.voices = seen.map((each) => each?.voices ?? null);
      const there = new Set(seen);
      this.besides = own.filter((each) => !there.has(each));
    } else {
      this.matches = entries.map((each) => each.match);
      this.voices = entries.map((each) => each.voices);
      this.besides = [];
    }
    this.followed = partRules.filter((rule) => rule.falling || rule.atMost);
    this.unfollowed = partRules
      .filter((rule) => !rule.falling && !rule.atMost)
      .reduce((sum, rule) => sum + rule.most(context), 0);

    let [items, near, gain] = [0, 0, 0];
    const add = (match: Match | null): void => {
      if (!match) return;
      items |= match.items;
      if (!match.coupled) near |= match.items;
      gain += match.gain;
    };
    for (const each of this.besides) add(each.match);
    for (let i = entries.length; i >= 0; i--) {
      if (i < entries.length) add(this.matches[i] as Match | null);
      this.itemsFrom[i] = items;
      this.nearFrom[i] = near;
      this.gainFrom[i] = gain;
    }

    // Stand-ins may come from stops that another part has drawn, so all that are heard count.
    let [bits, beside] = [0, 0];
    for (const division of new Set(placed.reach.map((each) => each.division))) {
      for (const stop of division.stops) {
        if (!voicesOf(problem, placed, stop)) continue;
        const match = recipe.matchOf(stop);
        bits |= match.standIn;
        if (match.items === 0) beside |= match.standIn;
      }
    }
    this.instead = this.items.map((item) => {
      let most = 0;
      for (const use of item.instead) {
        const serves = !colour && (use.bits & beside) !== 0 && (use.bits & bits) === use.bits;
        if (use.leaveOut || serves) most = Math.max(most, use.weight);
      }
      return most;
    });
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
    const sounds: PartSound[] = Array.from({ length: positions.length + 1 }, silence);
    const last = sounds[positions.length] as PartSound;
    for (const { voices } of this.besides) addFacts(last, voices[0], last);
    this.always.forEach((always, index) => {
      const voices = this.voices[index];
      if (always && voices) addFacts(last, voices[positions[index] as 0 | 1 | 2], last);
    });
    // What stands behind a box may be shut away in the end.
    if (last.enclosed > 0) last.shut = 2;
    for (let i = positions.length - 1; i >= 0; i--) {
      const [voices, next] = [this.voices[i], sounds[i + 1] as PartSound];
      if (voices && !this.always[i]) addFacts(next, voices[positions[i] as 0 | 1 | 2], sounds[i] as PartSound);
      else Object.assign(sounds[i] as PartSound, next);
    }
    return sounds;
  }

  /** The most that the recipe can earn in the end: what is there, and what the entries from a place on can add. */
  recipeAtMost({ satisfied, near, gained }: Progress, from: number): Points {
    const open = this.itemsFrom[from] as number;
    const full = near | (this.nearFrom[from] as number);
    let sum = gained + (this.gainFrom[from] as number);
    for (let i = 0; i < this.items.length; i++) {
      const bit = 1 << i;
      const item = this.items[i] as Item;
      const instead = this.instead[i] as number;
      if ((satisfied | open) & bit) {
        // Whatever is asked for in every kind is earned stop by stop.
        if (item.every) continue;
        if (full & bit) sum += item.weight;
        else sum += satisfied & bit ? coupledWeight(item) : Math.max(coupledWeight(item), instead);
      } else if (instead === 0 && this.whole) return Number.NEGATIVE_INFINITY;
      else sum += instead;
    }
    return sum;
  }

  /** Whether everything asked for is there, can still come, or has something that stands in for it. */
  canConform(satisfied: number, from: number): boolean {
    if (!this.weighed.recipe.speaks) return false;
    const open = satisfied | (this.itemsFrom[from] as number);
    for (let i = 0; i < this.items.length; i++) {
      if (!(open & (1 << i)) && (this.instead[i] as number) === 0) return false;
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
