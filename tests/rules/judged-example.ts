import { type Judgement, judge } from "../../shared-model/judging/judge.ts";
import { stopLabel } from "../../shared-model/judging/listening.ts";
import { problemOf } from "../../shared-model/judging/problem.ts";
import type { Reason } from "../../shared-model/judging/reason.ts";
import { prescriptionsFor } from "../../shared-model/music/prescriptions/catalogue.ts";
import { STAND_INS } from "../../shared-model/music/prescriptions/stand-ins.ts";
import { consoleOfExample, stepsOfExample } from "../../shared-model/rules/example.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import { idleWords, nothingIdle } from "../../shared-model/rules/nothing-idle.ts";
import type { Example, Rule, Words } from "../../shared-model/rules/rule.ts";

/** What one rule says of an example. */
export interface Said {
  readonly text: string;
  readonly remedy: string | null;
  readonly stops: readonly string[];
}

function judged(example: Example, withRecipes: boolean): Judgement {
  const { instrument, section, state, placings } = consoleOfExample(example);
  const recipes =
    withRecipes && section.texture ? prescriptionsFor(section.texture, section.tradition, section.dynamic) : [];
  const judgement = judge(problemOf(instrument, section, recipes, STAND_INS, RULES), state, placings);
  if (!judgement) throw new RangeError(`The keyboards of "${example.organ}" are coupled in a ring.`);
  return judgement;
}

const saidOf = (reason: Reason): Said => ({ text: reason.text, remedy: reason.remedy, stops: reason.stops });

/** Two sounds of one part, the earlier judged against the later by each rule about steps. */
function saidOfSteps(rule: Extract<Rule, { reads: "steps" }>, example: Example): readonly Said[] {
  const [earlier, later] = stepsOfExample(example).map((each) => {
    const problem = problemOf(each.instrument, each.section, [], [], RULES);
    return { problem, parts: judge(problem, each.state, each.placings)?.parts ?? [] };
  });
  const said: Said[] = [];
  earlier?.parts.forEach((part, index) => {
    const other = later?.parts[index];
    if (!other) return;
    const { context } = earlier.problem.weighed(part.placed, earlier.problem.readings.length - 1);
    if (!rule.applies(context)) return;
    const points = rule.weigh(part.sound, other.sound, context);
    if (points === 0) return;
    const words: Words = rule.words(part.sound, other.sound, context, points);
    said.push({ text: words.text, remedy: words.remedy ?? null, stops: words.stops ?? [] });
  });
  return said;
}

/** The stops of an example that no part hears: known to the judging, put into words by the rule, not weighed. */
function saidOfIdle(example: Example): readonly Said[] {
  const { instrument } = consoleOfExample(example);
  const { idle } = judged(example, false);
  const stops = instrument.divisions
    .flatMap((division) => division.stops)
    .filter((stop) => idle.includes(stop.id))
    .map((stop) => ({ stop, label: stopLabel(stop), silent: [] }));
  return idleWords({ stops, couplers: [], tremulants: [], boxes: [], unisonOff: [], silenced: [] }).map((words) => ({
    text: words.text,
    remedy: words.remedy ?? null,
    stops: words.stops ?? [],
  }));
}

/**
 * All that a rule says of an example, judged by the conventions alone; a rule about recipes with the recipes of the
 * example's texture.
 */
export function saidBy(rule: Rule, example: Example): readonly Said[] {
  if (rule.reads === "steps") return saidOfSteps(rule, example);
  if (rule === nothingIdle) return saidOfIdle(example);
  return judged(example, rule.reads === "recipe")
    .reasons.filter((reason) => reason.rule === rule.id)
    .map(saidOf);
}
