import { describe, expect, test } from "vitest";
import { consoleOfExample, stepsOfExample } from "../../shared-model/rules/example.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import type { Example, Rule } from "../../shared-model/rules/rule.ts";
import { saidBy } from "./judged-example.ts";

const FEWEST = 2;

/** What is wrong with a rule's examples as such, before any of them is judged. */
function sloppiness(rule: Rule): readonly string[] {
  const { speaks, silent } = rule.examples;
  const faults: string[] = [];
  if (speaks.length < FEWEST)
    faults.push(`${rule.id} has ${speaks.length} examples on which it speaks; give ${FEWEST}.`);
  if (silent.length < FEWEST)
    faults.push(`${rule.id} has ${silent.length} examples on which it is silent; give ${FEWEST}.`);
  const seen = new Set<string>();
  for (const { says: _sentence, ...console } of [...speaks, ...silent]) {
    const text = JSON.stringify(Object.entries(console).sort());
    if (seen.has(text)) faults.push(`${rule.id} has the same example twice: ${console.organ}.`);
    seen.add(text);
  }
  for (const each of speaks) if (!each.says) faults.push(`${rule.id} does not say what it says of: ${each.organ}.`);
  for (const each of silent) if (each.says) faults.push(`${rule.id} is to be silent of: ${each.organ}.`);
  return faults;
}

/** Gaps that a sentence must not have: a name that was not found, a number that is none, a doubled blank. */
const GAP = /undefined|null|NaN|\[object|\$\{|\bnothing\b| {2}|\.\.|\s[.,;:]/;

const named = (example: Example): string =>
  [example.organ, example.plays, example.texture, example.tradition, example.dynamic, example.tempo]
    .filter(Boolean)
    .join("; ");

describe.each(RULES.map((rule) => ({ id: rule.id, rule })))("$id", ({ rule }) => {
  test("has examples enough, each once", () => {
    expect(sloppiness(rule)).toEqual([]);
  });

  test.each(rule.examples.speaks.map((example) => ({ example, name: named(example) })))(
    "speaks of $name",
    ({ example }) => {
      const said = saidBy(rule, example);
      expect(said.map(({ text }) => text)).toEqual([example.says]);
      const consoles = rule.reads === "steps" ? stepsOfExample(example) : [consoleOfExample(example)];
      const stops = new Set(
        consoles.flatMap(({ instrument }) => instrument.divisions.flatMap((each) => each.stops.map((stop) => stop.id))),
      );
      for (const { text, remedy, stops: concerned } of said) {
        expect(`${text} ${remedy ?? ""}`).not.toMatch(GAP);
        expect(text).toMatch(/^[A-ZÀ-Ý].*\.$/u);
        expect(remedy ?? "Done.").toMatch(/^[A-ZÀ-Ý].*\.$/u);
        expect(concerned.filter((id) => !stops.has(id))).toEqual([]);
      }
    },
  );

  test.each(rule.examples.silent.map((example) => ({ example, name: named(example) })))(
    "is silent about $name",
    ({ example }) => {
      expect(saidBy(rule, example)).toEqual([]);
    },
  );
});

describe("the refusal of sloppy examples", () => {
  const [first] = RULES;
  const example: Example = { organ: "Great: Principal 4", plays: "plenum on Great" };
  const withExamples = (speaks: readonly Example[], silent: readonly Example[]): Rule => ({
    ...(first as Rule),
    id: "a-rule",
    examples: { speaks, silent },
  });

  test("too few, twice the same, no sentence, a sentence too many", () => {
    expect(sloppiness(withExamples([{ ...example, says: "One." }], [{ ...example, says: "Two." }]))).toEqual([
      "a-rule has 1 examples on which it speaks; give 2.",
      "a-rule has 1 examples on which it is silent; give 2.",
      "a-rule has the same example twice: Great: Principal 4.",
      "a-rule is to be silent of: Great: Principal 4.",
    ]);
    const other: Example = { organ: "Great: Fifteenth 2", plays: "plenum on Great" };
    expect(
      sloppiness(
        withExamples(
          [example, other],
          [
            { ...example, tempo: "slow" },
            { ...other, tempo: "slow" },
          ],
        ),
      ),
    ).toEqual([
      "a-rule does not say what it says of: Great: Principal 4.",
      "a-rule does not say what it says of: Great: Fifteenth 2.",
    ]);
  });
});
