import { type Change, changeWords } from "../../shared-model/check/change.ts";
import { improvements } from "../../shared-model/check/improve.ts";
import type { Placing } from "../../shared-model/console/state.ts";
import type { Section } from "../../shared-model/music/texture.ts";
import { problemOf } from "../registrations/proposed.ts";
import { drawnOf, stateOf } from "../state/section.ts";
import type { DrawnByHand } from "../state/work.ts";

/** What is asked of the worker: what would improve this? */
export interface ImproveAsk {
  readonly organ: string;
  readonly section: Section;
  readonly drawn: DrawnByHand;
  /** Where the parts are played, as found or as said. */
  readonly placings: readonly Placing[];
}

/** A better registration, one change away, in plain values. */
export interface Way {
  readonly change: Change;
  /** As one says it at the bench. */
  readonly words: string;
  readonly drawn: DrawnByHand;
  /** Whole hundredths of a point. */
  readonly score: number;
  readonly gain: number;
  readonly errorsLess: number;
}

/** The best few single changes that improve a registration. Takes its time on a large organ: for the worker. */
export function waysFor(ask: ImproveAsk): readonly Way[] {
  const problem = problemOf(ask);
  if (!problem) return [];
  return improvements(problem, { state: stateOf(ask.drawn), placings: ask.placings }).map(
    ({ change, standing, score, gain, errorsLess }) => ({
      change,
      words: changeWords(problem, change),
      drawn: drawnOf(standing.state, standing.placings),
      score,
      gain,
      errorsLess,
    }),
  );
}
