import { jsonSchema, type SchemaKind } from "../../shared-model/files/schema.ts";
import { oneOf, readOptions, type Usage } from "./options.ts";
import { DONE, line, Refusal, type Terminal } from "./terminal.ts";

const KINDS: readonly SchemaKind[] = ["instrument", "section", "registration"];

export const SCHEMA: Usage = {
  command: "schema",
  line: "registrant schema instrument|section|registration",
  does: "Prints the JSON Schema of a kind of file, for editors.",
  options: { json: "flag" },
  operands: ["instrument, section or registration"],
};

/** `registrant schema`. */
export function schemaCommand(words: readonly string[], terminal: Terminal): number {
  const [kind = ""] = readOptions(SCHEMA, words).operands;
  if (kind === "piece") throw new Refusal("Piece files come with a later version, and their schema with them.");
  terminal.stdout.write(line(JSON.stringify(jsonSchema(oneOf("kind of file", kind, KINDS)), null, 2)));
  return DONE;
}
