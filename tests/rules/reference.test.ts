import { describe, expect, test } from "vitest";
import { SOURCES } from "../../shared-model/music/prescriptions/sources.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import { rulesReference } from "../../shared-model/rules/reference.ts";

const lines = rulesReference().split("\n");
/** The lines of one rule, from its heading to the next. */
const linesOf = (id: string): readonly string[] => {
  const start = lines.indexOf(`### ${id}`);
  const end = lines.findIndex((line, at) => at > start && line.startsWith("#"));
  return lines.slice(start, end < 0 ? undefined : end);
};

describe("the reference of the rules", () => {
  test("has every rule once, under the number of its first convention, and numbers in order", () => {
    expect(
      lines
        .filter((line) => line.startsWith("### "))
        .map((line) => line.slice(4))
        .sort(),
    ).toEqual(RULES.map((rule) => rule.id).sort());
    const numbers = lines.flatMap((line) => /^## Convention (\d+)$/.exec(line)?.[1] ?? []).map(Number);
    expect(numbers).toEqual([...new Set(numbers)].sort((a, b) => a - b));
    for (const rule of RULES) {
      const above = lines
        .slice(0, lines.indexOf(`### ${rule.id}`))
        .filter((line) => line.startsWith("## "))
        .at(-1);
      expect([rule.id, above]).toEqual([rule.id, `## Convention ${rule.conventions[0]}`]);
    }
  });

  test.each(RULES.map((rule) => ({ id: rule.id, rule })))("$id stands there whole", ({ rule }) => {
    const own = linesOf(rule.id);
    expect(own).toContain(rule.statement);
    expect(own).toContain(rule.why);
    const source = own.find((line) => line.startsWith("- Source: "))?.slice("- Source: ".length) ?? "";
    expect(source).toContain(SOURCES[rule.source]?.title ?? "common practice");
    for (const example of [...rule.examples.speaks, ...rule.examples.silent]) {
      const line = own.find(
        (each) => each.startsWith(`  - \`${example.organ}\` (${example.plays}`) && each.includes(example.says ?? ")"),
      );
      expect([example.organ, line !== undefined]).toEqual([example.organ, true]);
    }
    expect(own.filter((line) => line.startsWith("  - ")).length).toBe(
      rule.examples.speaks.length + rule.examples.silent.length,
    );
  });

  test("has no gaps", () => {
    expect(lines.filter((line) => /undefined|null|\[object|\(\)|: $/.test(line))).toEqual([]);
    expect(lines.filter((line) => /^- Source: *$/.test(line))).toEqual([]);
  });
});
