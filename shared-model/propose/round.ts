import { type Colour, colourOf } from "../acoustics/colour.ts";
import type { ConsoleState } from "../console/state.ts";
import type { PlacedPart } from "../judging/placed-part.ts";
import type { Problem } from "../judging/problem.ts";
import type { Points } from "../rules/rule.ts";
import { compareFound, type Found, placeCode } from "./found.ts";
import type { Effort, Frames, Option } from "./frames.ts";
import { join } from "./joining.ts";
import { identifyPieces, type Piece, placingOf, stateOf } from "./piece.ts";
import { type Work, workOf } from "./work.ts";

/** What counts as one: every state, or all states together whose `drawing` is one (`found.ts`). */
export type Kept = "states" | "drawings";

/**
 * Of how many states that are as good as the last one kept the first in print are looked for. A large organ has hundreds of
 * thousands of choruses that are worth the same to the last point, and which of them is named matters to nobody.
 */
const MOST_EQUALS = 2_000;

/** One sinking of the threshold. */
export class Round {
  readonly found = new Map<string, Found>();
  pruned = false;
  readonly problem: Problem;
  readonly frames: Frames;
  readonly kept: Kept;
  /** What is worth less is not looked for. */
  cut: Points;
  /** What the telling part must have. */
  readonly colour: Colour | null;
  readonly telling: number;
  readonly effort: Effort;
  readonly work: Work;
  private readonly wanted: number;
  /** What is kept so far, best first. */
  private ranked: Found[] = [];
  /** How many were looked at that could only be as good as the last one kept. */
  private equals = 0;

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

  /** All that reaches the cut in the light of one reading. @param pairs the most that pair rules give there. */
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
        join(this, chosen, pairs);
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

  /** Counts what can be no better than the last one kept; after too many, nothing but what is better is looked for. */
  countEqual(reach: Points): void {
    const worst = this.ranked[this.wanted - 1];
    if (!worst || reach > this.cut || worst.score < this.cut) return;
    this.equals += 1;
    if (this.equals > MOST_EQUALS) this.cut = worst.score + 1;
  }

  private keyOf({ signature, drawing }: Pick<Found, "signature" | "drawing">): string {
    return this.kept === "drawings" ? drawing : signature;
  }

  /** Takes a state among the best, unless it stands behind them. */
  keep(parts: readonly Piece[], score: Points): void {
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
  standsBehind(options: readonly Option[]): boolean {
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
