import { expect, test } from "vitest";
import { jsonSchema } from "../../shared-model/files/schema.ts";

type Node = { readonly [key: string]: Node } & { readonly description?: string };
const at = (schema: unknown, ...path: string[]): unknown => path.reduce((node, key) => (node as Node)[key], schema);

test("the schema of an instrument tells an editor what a stop is", () => {
  const schema = jsonSchema("instrument");
  expect([at(schema, "$schema"), at(schema, "type")]).toEqual([
    "https://json-schema.org/draft/2020-12/schema",
    "object",
  ]);
  expect(at(schema, "required")).toEqual(["registrant", "name", "divisions"]);
  expect(at(schema, "properties", "registrant", "const")).toBe("instrument/1");
  const stop = at(schema, "properties", "divisions", "items", "properties", "stops", "items", "anyOf", "1");
  expect(at(stop, "required")).toEqual(["name"]);
  expect(at(stop, "properties", "half")).toMatchObject({
    enum: ["bass", "treble"],
    description: "Which half of a divided stop.",
  });
  expect(at(stop, "properties", "strength")).toMatchObject({ type: "integer", minimum: 1, maximum: 5 });
});

test.each(["section", "registration", "piece"] as const)(
  "the schema of a %s names its version line and its traditions",
  (kind) => {
    const schema = jsonSchema(kind);
    expect(at(schema, "properties", "registrant", "const")).toBe(`${kind}/1`);
    expect(at(schema, "properties", "tradition", "enum")).toContain("french-classical");
  },
);

test("keys that the schema does not know are allowed, as they are in files", () => {
  for (const kind of ["instrument", "section", "registration", "piece"] as const) {
    expect(at(jsonSchema(kind), "additionalProperties")).not.toBe(false);
  }
});
