import { type Judgement, judge } from "../../shared-model/judging/judge.ts";
import { type Problem, problemOf } from "../../shared-model/judging/problem.ts";
import { consoleOfExample, type ExampleConsole } from "../../shared-model/rules/example.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import type { Example } from "../../shared-model/rules/rule.ts";

/** A registration in the notation of the rules' examples, judged by the conventions alone. */
export function judgedExample(example: Example): ExampleConsole & { problem: Problem; judgement: Judgement } {
  const console = consoleOfExample(example);
  const problem = problemOf(console.instrument, console.section, [], [], RULES);
  const judgement = judge(problem, console.state, console.placings);
  if (!judgement) throw new RangeError(`The keyboards of "${example.organ}" are coupled in a ring.`);
  return { ...console, problem, judgement };
}
