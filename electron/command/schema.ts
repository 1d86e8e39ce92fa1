import { jsonSchema, type SchemaKind } from "../../shared-model/files/schema.ts";
import { oneOf, readOptions, type Usage } from "./options.ts";
import { DONE, line, type Terminal } from "./terminal.ts";

const KINDS: readonly SchemaKind[] = ["instrument", "section", "registration", "piece"];

export const SCHEMA: Usage = {
  command: "schema",
  line: "registrant schema instrument|section|registration|piece",
  does: "Prints the JSON Schema of a kind of file, for editors.",
  options: { json: "flag" },
  operands: ["instrument, section, registration or piece"],
};

/** `registrant schema`. */
export function schemaCommand(words: readonly string[], terminal: Terminal): number {
  const [kind = ""] = readOptions(SCHEMA, words).operands;
  terminal.stdout.write(line(JSON.stringify(jsonSchema(oneOf("kind of file", kind, KINDS)), null, 2)));
  return DONE;
}
