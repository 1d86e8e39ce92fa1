import { type Balance, balanceOf } from "../../shared-model/acoustics/hearing.ts";
import type { PartSound } from "../../shared-model/acoustics/part-sound.ts";
import { judge } from "../../shared-model/judging/judge.ts";
import { problemOf } from "../../shared-model/judging/problem.ts";
import { consoleOfExample } from "../../shared-model/rules/example.ts";
import type { Example } from "../../shared-model/rules/rule.ts";

/** What each part of an example sounds like, in the order of `plays`. */
export function soundsOf(example: Example): readonly PartSound[] {
  const { instrument, section, state, placings } = consoleOfExample(example);
  const judgement = judge(problemOf(instrument, section, [], [], []), state, placings);
  if (!judgement) throw new RangeError(`The keyboards of "${example.organ}" are coupled in a ring.`);
  return placings.map(({ part }) => {
    const found = judgement.parts.find((each) => each.placing.part === part);
    if (!found) throw new RangeError(`No ${part} in "${example.organ}".`);
    return found.sound;
  });
}

/** The balance of the first part of an example against its second. */
export function balanceIn(example: Example): Balance {
  const [first, second] = soundsOf(example);
  return balanceOf(first?.blend ?? null, second?.blend ?? null);
}
