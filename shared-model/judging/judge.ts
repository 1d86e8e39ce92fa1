import type { PartSound } from "../acoustics/part-sound.ts";
import type { ConsoleState, Placing } from "../console/state.ts";
import type { Points } from "../rules/rule.ts";
import { explain } from "./explaining.ts";
import { listen, type PartState } from "./listening.ts";
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
 * @param bounds by reading: what no state exceeds in its light, where that is known. Spares weighing what cannot be best.
 * @returns `null` when the keyboards are coupled in a ring, which no player uses.
 */
export function judge(
  problem: Problem,
  state: ConsoleState,
  placings: readonly Placing[],
  bounds: readonly Points[] = [],
): Judgement | null {
  const parts = listen(problem, state, placings);
  if (!parts) return null;
  const { at, weight } = bestReading(problem, parts, bounds);
  // Putting reasons into words takes longer than the rest, and a survey or a plan seldom asks for them.
  let reasons: readonly Reason[] | undefined;
  const heardIds = new Set(parts.flatMap((part) => [...part.own, ...part.borrowed].map((stop) => stop.id)));
  return {
    score: weight.score,
    forbidden: weight.forbidden > 0,
    prescription: problem.readings[at]?.prescription ?? null,
    reading: at,
    get reasons() {
      reasons ??= explain(problem, parts, at, weight);
      return reasons;
    },
    parts: parts.map((part) => {
      const { placing, placed, sound } = part;
      const here = new Set([...part.own, ...part.borrowed]);
      return { placing, placed, sound, heard: problem.stops.filter((stop) => here.has(stop)).map((stop) => stop.id) };
    }),
    idle: [...state.drawn].filter((id) => !heardIds.has(id)),
  };
}

/** The reading in whose light a state is best: allowed before forbidden, then by score; of equals the first. */
function bestReading(
  problem: Problem,
  parts: readonly PartState[],
  bounds: readonly Points[],
): { readonly at: number; readonly weight: Weight } {
  let best: { readonly at: number; readonly weight: Weight } | null = null;
  for (let at = 0; at < problem.readings.length; at++) {
    if (best?.weight.forbidden === 0 && (bounds[at] ?? Number.POSITIVE_INFINITY) <= best.weight.score) continue;
    const weight = weigh(problem, parts, at);
    const better =
      !best ||
      weight.forbidden < best.weight.forbidden ||
      (weight.forbidden === best.weight.forbidden && weight.score > best.weight.score);
    if (better) best = { at, weight };
  }
  return best as NonNullable<typeof best>;
}

/** The score alone and whether a rule forbids the state: what enumeration compares. `null` and bounds as for {@link judge}. */
export function scoreOf(
  problem: Problem,
  state: ConsoleState,
  placings: readonly Placing[],
  bounds: readonly Points[] = [],
): { readonly score: Points; readonly forbidden: boolean } | null {
  const parts = listen(problem, state, placings);
  if (!parts) return null;
  const { weight } = bestReading(problem, parts, bounds);
  return { score: weight.score, forbidden: weight.forbidden > 0 };
}

/** The score in the light of one reading alone. `null` as for {@link judge}. */
export function scoreInLight(
  problem: Problem,
  state: ConsoleState,
  placings: readonly Placing[],
  reading: number,
): Points | null {
  const parts = listen(problem, state, placings);
  return parts && weigh(problem, parts, reading).score;
}
