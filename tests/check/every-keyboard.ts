import type { ConsoleState, Placing } from "../../shared-model/console/state.ts";
import { judge } from "../../shared-model/judging/judge.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";

/** One way of giving the parts keyboards, judged. */
export interface JudgedWay {
  readonly placings: readonly Placing[];
  readonly errors: number;
  readonly score: number;
}

/** Every way of giving the parts keyboards on which something sounds for them (any keyboard where nothing does), judged whole. */
export function everyWay(problem: Problem, state: ConsoleState): readonly JudgedWay[] {
  const { divisions } = problem.instrument;
  const hasPedal = divisions.some((division) => division.kind === "pedal");
  const choices = problem.section.parts.map((part): readonly Placing[] => {
    const kind = part.hands === "feet" && hasPedal ? "pedal" : "manual";
    const all = divisions
      .filter((division) => division.kind === kind)
      .map((division): Placing => ({ part: part.id, keyboard: division.name, octave: 0 }));
    const sounding = all.filter((placing) => (judge(problem, state, [placing])?.parts[0]?.heard.length ?? 0) > 0);
    return sounding.length > 0 ? sounding : all;
  });
  const ways = choices.reduce<readonly (readonly Placing[])[]>(
    (some, placings) => some.flatMap((way) => placings.map((placing) => [...way, placing])),
    [[]],
  );
  return ways.flatMap((placings): readonly JudgedWay[] => {
    const judgement = judge(problem, state, placings);
    if (!judgement) return [];
    const errors = judgement.reasons.filter((reason) => reason.severity === "error").length;
    return [{ placings, errors, score: judgement.score }];
  });
}
