import type { Points, StepRule } from "../rules/rule.ts";
import type { Judgement } from "./judge.ts";
import type { Problem } from "./problem.ts";
import type { Reason } from "./reason.ts";

/** What the conventions of rows say of each part between an earlier and a later state; silent ones are left out. */
function* stepsBetween(problem: Problem, earlier: Judgement, later: Judgement, has: (rule: StepRule) => boolean) {
  for (const part of later.parts) {
    const before = earlier.parts.find((each) => each.placing.part === part.placing.part);
    if (!before) continue;
    const { context } = problem.weighed(part.placed, problem.readings.length - 1);
    for (const rule of problem.rules.steps) {
      if (!has(rule) || !rule.applies(context)) continue;
      const points = rule.weigh(before.sound, part.sound, context);
      if (points !== 0) yield { rule, points, before, part, context };
    }
  }
}

const any: (rule: StepRule) => boolean = () => true;

/**
 * Points of going from one state to a later one, over all parts.
 *
 * @param problem the later one's.
 * @param has which conventions have a say; default: all.
 */
export function stepPoints(problem: Problem, earlier: Judgement, later: Judgement, has = any): Points {
  let sum = 0;
  for (const { points } of stepsBetween(problem, earlier, later, has)) sum += points;
  return sum;
}

/** The same with words. */
export function stepReasons(problem: Problem, earlier: Judgement, later: Judgement, has = any): readonly Reason[] {
  return Array.from(stepsBetween(problem, earlier, later, has), ({ rule, points, before, part, context }): Reason => {
    const words = rule.words(before.sound, part.sound, context, points);
    return {
      rule: rule.id,
      points,
      text: words.text,
      source: rule.source,
      parts: [part.placing.part],
      stops: [...(words.stops ?? part.heard)],
      severity: rule.severity,
      remedy: words.remedy ?? null,
    };
  });
}
