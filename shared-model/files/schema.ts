import * as z from "zod";
import { instrumentSchema } from "./instrument-schema.ts";
import { registrationSchema, sectionSchema } from "./music-schema.ts";
import { pieceSchema } from "./piece-schema.ts";

const SCHEMAS = {
  instrument: instrumentSchema,
  section: sectionSchema,
  registration: registrationSchema,
  piece: pieceSchema,
} as const;
/** Kinds of files that a schema can be printed for. */
export type SchemaKind = keyof typeof SCHEMAS;

const TITLES: Readonly<Record<SchemaKind, string>> = {
  instrument: "An organ: divisions, stops, couplers and what else its console has",
  section: "A section of music that is to be registered",
  registration: "A registration drawn by hand, to be checked",
  piece: "A piece: sections in order, the time between them, links, and how the console stands for each",
};

/** The JSON Schema (draft 2020-12) of a kind of file, for editors that complete and check YAML while one types. */
export function jsonSchema(kind: SchemaKind): Readonly<Record<string, unknown>> {
  const schema = z.toJSONSchema(SCHEMAS[kind], { io: "input", reused: "inline" });
  return { ...schema, title: TITLES[kind] };
}
