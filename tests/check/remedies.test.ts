import { describe, expect, test } from "vitest";
import { type CheckedRegistration, checkRegistration, type Finding } from "../../shared-model/check/check.ts";
import { stopLabel } from "../../shared-model/judging/listening.ts";
import { problemOf } from "../../shared-model/judging/problem.ts";
import { STAND_INS } from "../../shared-model/music/prescriptions/stand-ins.ts";
import { consoleOfExample, type ExampleConsole } from "../../shared-model/rules/example.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import { after, deedOf } from "./remedy.ts";

function checked({ instrument, section, state, placings }: ExampleConsole): CheckedRegistration {
  const result = checkRegistration(problemOf(instrument, section, [], STAND_INS, RULES), {
    state,
    keyboards: Object.fromEntries(placings.map((placing) => [placing.part, placing.keyboard])),
    octaves: Object.fromEntries(placings.map((placing) => [placing.part, placing.octave])),
  });
  if ("unplayable" in result) throw new RangeError(result.unplayable);
  return result;
}

/** The complaint whatever stops it names: `# has no 4' under it on the Hauptwerk.` */
function complaint({ rule, parts, text }: Finding, { instrument }: ExampleConsole): string {
  const labels = instrument.divisions.flatMap((division) => division.stops.map(stopLabel));
  const bare = labels
    .sort((a, b) => b.length - a.length)
    .reduce((sentence, label) => sentence.replaceAll(label, "#"), text)
    .replace(/#(?:(?:, | and )#)*/g, "#")
    .replace(/# (?:is|are|has|have|does|do|lacks?|needs?|stands?) /, "# ");
  return `${rule} ${parts.join()}: ${bare}`;
}

interface Remedied {
  readonly name: string;
  readonly example: ExampleConsole;
  readonly finding: Finding;
}

/** Everything that the check says of the examples of all rules, with a remedy that is a plain deed. */
const remedied = RULES.filter((rule) => rule.reads !== "steps").flatMap((rule) =>
  [...rule.examples.speaks, ...rule.examples.silent].flatMap((each) => {
    const example = consoleOfExample(each);
    return checked(example)
      .findings.filter((finding) => deedOf(finding, example) !== null)
      .map((finding): Remedied => {
        return { name: `${finding.rule}: ${finding.remedy} On ${each.organ}; ${each.plays}`, example, finding };
      });
  }),
);

describe("a remedy that is a plain deed makes its finding vanish", () => {
  test.each(remedied)("$name", ({ example, finding }) => {
    const heard = new Set<string>();
    let [now, spoken]: [ExampleConsole, Finding | undefined] = [example, finding];
    // A rule may have more to ask once the first thing is done: an 8, and then a 4. It must not ask in a circle.
    for (let deed = deedOf(finding, now); deed && spoken; deed = spoken ? deedOf(spoken, now) : null) {
      expect(heard).not.toContain(complaint(spoken, now));
      heard.add(complaint(spoken, now));
      now = after(deed, now);
      const { rule, parts } = finding;
      const left = checked(now).findings.filter((each) => each.rule === rule && each.parts.join() === parts.join());
      for (const each of left) expect(heard).not.toContain(complaint(each, now));
      [spoken] = left;
    }
  });

  test("there are enough of them, of enough rules", () => {
    expect(remedied.length).toBeGreaterThan(80);
    expect(new Set(remedied.map((each) => each.finding.rule)).size).toBeGreaterThan(20);
  });
});
