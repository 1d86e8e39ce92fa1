import fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { behindKey, onLine } from "../../shared-model/files/yaml-words.ts";

const LONG = "The key hangs in the vestry, behind the second surplice.\n\n  Ask before ten.\nNot on Mondays: choir.  ";

const texts = fc.oneof(
  fc.string({ unit: "binary", maxLength: 60 }),
  fc
    .array(
      fc.constantFrom(LONG, "a", "# b", "- c", "d: e", "'", '"', "  ", "\n", "\r\n", "\t", "|-", "> f", ",", "]"),
      {
        maxLength: 8,
      },
    )
    .map((parts) => parts.join("")),
);

test("a text of any lines stands on one, and is read as it was, at any depth and inside brackets", () => {
  fc.assert(
    fc.property(texts, (text) => {
      for (const words of [behindKey(text), onLine(text)]) {
        expect(words).not.toMatch(/[\r\n]/);
        expect(parse(`a:\n    b: ${words}   # remark\n    c: 1\n`)).toEqual({ a: { b: text, c: 1 } });
      }
      expect(parse(`- {b: ${onLine(text)}, c: 1}`)).toEqual([{ b: text, c: 1 }]);
      expect(parse(`- ${onLine([text, { d: text }])}`)).toEqual([[text, { d: text }]]);
    }),
    { seed: 20261126, numRuns: 2000 },
  );
});

test("what needs no quotes has none", () => {
  expect([behindKey("Principal 8, open"), onLine("Principal 8"), behindKey("one\ntwo")]).toEqual([
    "Principal 8, open",
    "Principal 8",
    '"one\\ntwo"',
  ]);
});
