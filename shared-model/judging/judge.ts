import type { PartSound } from "../acoustics/part-sound.ts";
import type { ConsoleState, Placing } from "../console/state.ts";
import type { Points } from "../rules/rule.ts";
import { explain } from "./explaining.ts";
import { listen } from "./listening.ts";
import type { PlacedPart } from "./placed-part.ts";
import type { Problem } from "./problem.ts";
import type { Reason } from "./reason.ts";
import { type Weight, weigh } from "./weighing.ts";

/** What one part hears in a judged state. */
export interface JudgedPart {
  readonly placing: Placing;
  readonly placed: PlacedPart;
  readonly sound: PartSound;
  /** Ids of the stops heard, in printed order. */
  readonly heard: readonly string[];
}

export interface Judgement {
  readonly score: Points;
  /** Whether a rule forbids the state. */
  readonly forbidden: boolean;
  /** The prescription in whose light the state is best, `null` for the conventions alone. */
  readonly prescription: Problem["readings"][number]["prescription"];
  readonly reading: number;
  readonly reasons: readonly Reason[];
  readonly parts: readonly JudgedPart[];
  /** Ids of drawn stops that no part hears. */
  readonly idle: readonly string[];
}

/**
 * Judges a state for a section, its parts placed as said: the best of all readings, taken apart into reasons.
 *
 * @param placings one for each part that is played; optional parts may be left out.
 * @returns `null` when the keyboards are coupled in a ring, which no player uses.
 */
export function judge(problem: Problem, state: ConsoleState, placings: readonly Placing[]): Judgement | null {
  const parts = listen(problem, state, placings);
  if (!parts) return null;
  let best: { at: number; weight: Weight } | null = null;
  for (let at = 0; at < problem.readings.length; at++) {
    const weight = weigh(problem, parts, at);
    const better =
      !best ||
      weight.forbidden < best.weight.forbidden ||
      (weight.forbidden === best.weight.forbidden && weight.score > best.weight.score);
    if (better) best = { at, weight };
  }
  const { at, weight } = best as NonNullable<typeof best>;
  const heardIds = new Set(parts.flatMap((part) => [...part.own, ...part.borrowed].map((stop) => stop.id)));
  return {
    score: weight.score,
    forbidden: weight.forbidden > 0,
    prescription: problem.readings[at]?.prescription ?? null,
    reading: at,
    reasons: explain(problem, parts, at, weight),
    parts: parts.map((part) => {
      const { placing, placed, sound } = part;
      const here = new Set([...part.own, ...part.borrowed]);
      return { placing, placed, sound, heard: problem.stops.filter((stop) => here.has(stop)).map((stop) => stop.id) };
    }),
    idle: [...state.drawn].filter((id) => !heardIds.has(id)),
  };
}

/** The score alone and whether a rule forbids the state: what enumeration compares. `null` as for {@link judge}. */
export function scoreOf(
  problem: Problem,
  state: ConsoleState,
  placings: readonly Placing[],
): { readonly score: Points; readonly forbidden: boolean } | null {
  const parts = listen(problem, state, placings);
  if (!parts) return null;
  let best: { score: Points; forbidden: boolean } | null = null;
  for (let at = 0; at < problem.readings.length; at++) {
    const { score, forbidden } = weigh(problem, parts, at);
    const allowed = forbidden === 0;
    if (!best || (allowed && best.forbidden) || (allowed !== best.forbidden && score > best.score)) {
      best = { score, forbidden: !allowed };
    }
  }
  return best;
}
