import { listen } from "../judging/listening.ts";
import type { Problem } from "../judging/problem.ts";
import { weigh } from "../judging/weighing.ts";
import type { Points } from "../rules/rule.ts";
import { type Change, changed, changesFrom, type Standing } from "./change.ts";

/** A state that is better and one change away. */
export interface Improvement {
  readonly change: Change;
  readonly standing: Standing;
  /** What it scores, in whole hundredths of a point. */
  readonly score: Points;
  /** How much more that is; may be negative where an error goes. */
  readonly gain: Points;
  /** How many of the errors go. */
  readonly errorsLess: number;
}

/** Length of the list where nobody says otherwise. */
const USUAL_COUNT = 5;

/** How good a registration is, in this order: fewer errors, more points, fewer stops drawn for nobody. */
interface Worth {
  readonly errors: number;
  readonly score: Points;
  readonly idle: number;
}

const betterBy = (one: Worth, other: Worth): number =>
  other.errors - one.errors || one.score - other.score || other.idle - one.idle;

/** The best of all readings, as a judgement takes it; `null` when the keyboards are coupled in a ring. */
function worthOf(problem: Problem, { state, placings }: Standing): Worth | null {
  const parts = listen(problem, state, placings);
  if (!parts) return null;
  let best: { errors: number; score: Points } | null = null;
  for (let at = 0; at < problem.readings.length; at++) {
    const { forbidden, score } = weigh(problem, parts, at);
    if (!best || forbidden < best.errors || (forbidden === best.errors && score > best.score)) {
      best = { errors: forbidden, score };
    }
  }
  if (!best) return null;
  const heard = new Set(parts.flatMap((part) => [...part.own, ...part.borrowed].map((stop) => stop.id)));
  const idle = problem.stops.filter((stop) => state.drawn.has(stop.id) && !heard.has(stop.id));
  // A stop that is off sounds or ciphers whether a part hears it or not.
  const dead = idle.filter((stop) => stop.off).length;
  return { errors: best.errors + dead, score: best.score, idle: idle.length };
}

/**
 * What would improve a registration: every single change is judged by the rules that judge the registration itself, and
 * the best few that are really better come first, those that take an error away before those that only add points.
 * Equals stand in the order of print. Empty when no single change is better.
 *
 * @param standing the console, and the keyboards that the parts are played on.
 * @param count how many at most, default 5.
 */
export function improvements(
  problem: Problem,
  standing: Standing,
  count: number = USUAL_COUNT,
): readonly Improvement[] {
  const now = worthOf(problem, standing);
  if (!now) return [];
  const better: { readonly improvement: Improvement; readonly worth: Worth }[] = [];
  for (const change of changesFrom(problem, standing)) {
    const next = changed(problem, standing, change);
    const worth = worthOf(problem, next);
    if (!worth || betterBy(worth, now) <= 0) continue;
    const { score } = worth;
    better.push({
      improvement: {
        change,
        standing: next,
        score,
        gain: score - now.score,
        errorsLess: now.errors - worth.errors,
      },
      worth,
    });
  }
  return better
    .sort((a, b) => betterBy(b.worth, a.worth))
    .slice(0, Math.max(0, count))
    .map((each) => each.improvement);
}
