import { COSTS } from "../judging/recipe.ts";
import type { Points } from "../rules/rule.ts";
import type { Base, Candidate, Want } from "./candidate.ts";
import { placesInPrint } from "./found.ts";
import type { Offer } from "./offer.ts";
import { Walk } from "./walk.ts";

const NO_BASE: Base = { drawn: [], tremulants: new Set(), divisions: new Set(), boxes: new Map() };
const FIRST_STEP: Points = 50;
const NEXT_STEP = 2.5;
/** How many sets are looked for at first, and how many times as many where that is not enough. */
const FIRST_SETS = 256;
const MORE_SETS = 8;

/** How many sets a bound of all of them is worth. */
const SETS_FOR_A_BOUND = 2_000;

/** The sets of an offer, best first, on what earlier parts have drawn. What has been found is kept. */
export class Pool {
  private readonly offer: Offer;
  private readonly base: Base;
  private readonly freeBoxes: readonly string[];
  private highest: Points | undefined;
  private found: readonly Candidate[] = [];
  /** All that reaches more has been found; and what reaches as much, unless there was more of it than was looked for. */
  private reachedDown = Number.POSITIVE_INFINITY;
  private walkedDown = Number.POSITIVE_INFINITY;
  private overflowed = false;
  private sets = FIRST_SETS;
  private exhausted = false;
  /** Whether the bound is as low as it will be made. */
  private isSharp = false;

  constructor(offer: Offer, base: Base = NO_BASE) {
    this.offer = offer;
    this.base = base;
    const { divisions } = offer.problem.instrument;
    this.freeBoxes = [...offer.boxes.keys()].filter(
      (box) => !base.boxes.has(box) && !divisions.some((each) => each.box === box && base.divisions.has(each.name)),
    );
  }

  /** An upper bound of what any set reaches, companions included; minus infinity when no set is allowed. */
  get bound(): Points {
    if (this.highest === undefined) {
      const bound = Walk.bound(this.offer, this.base);
      this.highest = bound ?? Number.NEGATIVE_INFINITY;
      if (bound === null) this.exhausted = true;
    }
    return this.highest;
  }

  /** The most that a set would save if others had moved the boxes. */
  get mostSpared(): Points {
    return this.freeBoxes.length * COSTS.shutBox;
  }

  /** Whether there is something to draw, and all of it stands at these places in print. */
  draws(places: ReadonlySet<number>): boolean {
    const { entries, problem } = this.offer;
    const inPrint = placesInPrint(problem);
    return entries.length > 0 && entries.every(({ stop }) => stop !== null && places.has(inPrint.get(stop) as number));
  }

  /** Whether every allowed set there is has been found. */
  get isExhausted(): boolean {
    return this.exhausted;
  }

  /** Whether any set is allowed at all. */
  get isPossible(): boolean {
    if (this.found.length > 0) return true;
    if (this.exhausted || this.bound === Number.NEGATIVE_INFINITY) return false;
    const { best } = this.walk(Number.NEGATIVE_INFINITY, "any");
    if (best !== null) this.exhausted = false;
    return best !== null;
  }

  /**
   * The sets best first, found in steps, so that one who has had enough pays for little more.
   *
   * @param need asked before each step: sets that reach less are not looked for.
   */
  *descending(need: () => Points): Generator<Candidate> {
    let step = FIRST_STEP;
    for (let i = 0; ; i++) {
      while (i >= this.found.length) {
        const least = need();
        if (this.exhausted || this.reachedDown < least || (this.reachedDown === least && !this.overflowed)) return;
        if (this.overflowed) {
          this.sets *= MORE_SETS;
          this.look(Math.max(least, this.walkedDown));
          continue;
        }
        // What is left to draw on another part's stops is little, and asked for once: one look is enough.
        this.look(
          this.base.drawn.length === 0 ? Math.max(least, Math.min(this.bound, this.reachedDown) - step) : least,
        );
        step = Math.ceil(step * NEXT_STEP);
      }
      yield this.found[i] as Candidate;
    }
  }

  private look(threshold: Points): void {
    const walk = new Walk(this.offer, this.base, this.freeBoxes, threshold, "all", { most: this.sets });
    this.found = walk.run();
    this.overflowed = walk.overflowed;
    this.exhausted = !walk.pruned;
    this.walkedDown = threshold;
    this.reachedDown = walk.overflowed ? (this.found[this.found.length - 1] as Candidate).reach : threshold;
  }

  /**
   * Lowers the bound to what the best set reaches, or below `floor` where none reaches that, unless too many have to be
   * gone through to find out.
   */
  sharpen(floor: Points): void {
    if (this.isSharp || this.bound < floor) return;
    let best: Points | null = this.found[0]?.reach ?? null;
    let threshold = Math.min(this.bound, this.reachedDown);
    let step = FIRST_STEP;
    while (best === null && !this.exhausted) {
      const walk = this.walk(Math.max(floor, threshold), "best", SETS_FOR_A_BOUND);
      best = walk.best;
      if (best !== null) this.exhausted = false;
      if (walk.givenUp) {
        this.isSharp = true;
        return;
      }
      if (best !== null) break;
      this.highest = Math.max(floor, threshold) - 1;
      if (threshold <= floor) return;
      threshold -= step;
      step = Math.ceil(step * NEXT_STEP);
    }
    this.highest = best ?? Number.NEGATIVE_INFINITY;
    this.isSharp = true;
  }

  private walk(threshold: Points, want: Exclude<Want, "all">, sets?: number): Walk {
    const walk = new Walk(this.offer, this.base, this.freeBoxes, threshold, want, sets === undefined ? {} : { sets });
    walk.run();
    this.exhausted = !walk.pruned;
    return walk;
  }
}
