import type { Points } from "../rules/rule.ts";
import type { PartState } from "./listening.ts";
import type { Problem, WeighedPart } from "./problem.ts";
import { type Closeness, COSTS, closenessOf, type Match } from "./recipe.ts";

const freshCloseness = (): Closeness => ({
  gain: 0,
  cost: 0,
  conform: false,
  excused: false,
  satisfied: 0,
  serving: 0,
});

/** What one reading gives a state. `forbidden` counts the rules that forbid it. */
export interface Weight {
  readonly score: Points;
  readonly forbidden: number;
  readonly weighed: readonly WeighedPart[];
  readonly closeness: readonly Closeness[];
}

/** What a part's conventions give it, a prescription that is followed to the letter silencing their complaints. */
export const yielding = (points: Points, yields: boolean, excused: boolean): Points =>
  yields && excused && points < 0 ? 0 : points;

/** The sum for one reading, without a word. */
export function weigh(problem: Problem, parts: readonly PartState[], reading: number): Weight {
  let [score, forbidden] = [0, 0];
  const weighed = parts.map((part) => problem.weighed(part.placed, reading));
  const closeness = parts.map((part, index) => {
    const { recipe } = weighed[index] as WeighedPart;
    const own: Match[] = part.own.map((stop) => recipe.matchOf(stop));
    return closenessOf(
      recipe,
      own,
      own.length,
      part.borrowed.map((stop) => recipe.matchOf(stop)),
      freshCloseness(),
    );
  });
  parts.forEach((part, index) => {
    const { context, partRules, fix } = weighed[index] as WeighedPart;
    const { gain, cost, excused } = closeness[index] as Closeness;
    score += gain - cost - COSTS.shutBox * part.shutBoxes;
    if (fix === null) forbidden += 1;
    else score += fix;
    for (const rule of partRules) {
      if (rule.forbids?.(part.sound, context) && !(rule.yieldsToPrescription && excused)) forbidden += 1;
      score += yielding(rule.weigh(part.sound, context), rule.yieldsToPrescription, excused);
    }
    if (part.sound.stops === 0) forbidden += 1;
  });
  forEachPair(parts.length, (a, b) => {
    const [first, second] = [weighed[a] as WeighedPart, weighed[b] as WeighedPart];
    const excused = (closeness[a] as Closeness).excused && (closeness[b] as Closeness).excused;
    for (const rule of problem.rules.pair) {
      if (!rule.applies(first.context, second.context)) continue;
      const [one, other] = [(parts[a] as PartState).sound, (parts[b] as PartState).sound];
      if (rule.forbids?.(one, other, first.context, second.context) && !(rule.yieldsToPrescription && excused))
        forbidden += 1;
      score += yielding(rule.weigh(one, other, first.context, second.context), rule.yieldsToPrescription, excused);
    }
  });
  return { score, forbidden, weighed, closeness };
}

/** Every ordered pair of different parts. */
export function forEachPair(count: number, visit: (first: number, second: number) => void): void {
  for (let a = 0; a < count; a++) for (let b = 0; b < count; b++) if (a !== b) visit(a, b);
}
