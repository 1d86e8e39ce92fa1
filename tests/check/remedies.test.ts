import { describe, expect, test } from "vitest";
import { type CheckedRegistration, checkRegistration, type Finding } from "../../shared-model/check/check.ts";
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

const isSame = (one: Finding, other: Finding): boolean => one.rule === other.rule && one.parts.join() === other.parts.join();

/** Everything that the check says of the examples of all rules, with a remedy that is a plain deed. */
const deeds = RULES.filter((rule) => rule.reads !== "steps").flatMap((rule) =>
  [...rule.examples.speaks, ...rule.examples.silent].flatMap((example) => {
    const console = consoleOfExample(example);
    return checked(console).findings.flatMap((finding) => {
      const deed = deedOf(finding, console);
      return deed ? [{ name: `${finding.remedy} of ${finding.rule}, on ${example.organ}; ${example.plays}`, console, finding, deed }] : [];
    });
  }),
);

describe("a remedy that is a plain deed makes its finding vanish", () => {
  test.each(deeds)("$name", ({ console, finding, deed }) => {
    const left = checked(after(deed, console)).findings.filter((each) => isSame(each, finding));
    expect(left).toEqual([]);
  });

  test("there are enough of them, of enough rules", () => {
    expect(deeds.length).toBeGreaterThan(150);
    expect(new Set(deeds.map((each) => each.finding.rule)).size).toBeGreaterThan(20);
  });
});
