import { readdirSync, readFileSync } from "node:fs";
import { parse } from "yaml";
import { z } from "zod";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { DYNAMICS, ROLES, TRADITIONS } from "../../shared-model/music/texture.ts";
import { type Foot, footOf } from "../../shared-model/pitch/foot.ts";
import type { Instrument, Stop } from "../../shared-model/stoplist/instrument.ts";
import type { PublishedCase, PublishedSource } from "./published-case.ts";

const folder = new URL(".", import.meta.url);

/** An organ of the published cases. */
export interface PublishedInstrument {
  /** Name of its file without the ending. */
  readonly id: string;
  readonly text: string;
  readonly instrument: Instrument;
  readonly troubles: ReturnType<typeof readInstrumentFile>["troubles"];
  /** By division, then by the cases' word for the stop. */
  readonly stops: ReadonlyMap<string, ReadonlyMap<string, Stop>>;
}

const printedStops = z.object({
  divisions: z.array(
    z.object({
      name: z.string(),
      stops: z.array(z.union([z.string(), z.object({ "case-name": z.string().optional() })])),
    }),
  ),
});

/** The cases' words for the stops of every division, in printed order; `null` where the stop's own name serves. */
const caseNamesIn = (text: string): (string | null)[][] =>
  printedStops
    .parse(parse(text))
    .divisions.map((division) =>
      division.stops.map((stop) => (typeof stop === "string" ? null : (stop["case-name"] ?? null))),
    );

function readPublishedInstrument(id: string): PublishedInstrument {
  const text = readFileSync(new URL(`instruments/${id}.yaml`, folder), "utf8");
  const { instrument, troubles } = readInstrumentFile(text, `${id}.yaml`);
  if (instrument === null) throw new Error(`${id}.yaml cannot be read: ${JSON.stringify(troubles)}`);
  const names = caseNamesIn(text);
  const stops = new Map(
    instrument.divisions.map((division, place) => {
      const byName = new Map<string, Stop>();
      division.stops.forEach((stop, row) => {
        const name = names[place]?.[row] ?? stop.name;
        if (byName.has(name))
          throw new Error(`${id}.yaml, ${division.name}: two stops are called ${name} by the cases.`);
        byName.set(name, stop);
      });
      return [division.name, byName] as const;
    }),
  );
  return { id, text, instrument, troubles, stops };
}

let instruments: ReadonlyMap<string, PublishedInstrument> | null = null;

/** The organs of the published cases, by id. */
export function publishedInstruments(): ReadonlyMap<string, PublishedInstrument> {
  instruments ??= new Map(
    readdirSync(new URL("instruments/", folder))
      .filter((file) => file.endsWith(".yaml"))
      .sort()
      .map((file) => file.slice(0, -".yaml".length))
      .map((id) => [id, readPublishedInstrument(id)]),
  );
  return instruments;
}

const evidence = z.enum(["read", "memory"]);
const stopNames = z.array(z.string()).default([]);
const sourceEntry = z.strictObject({
  id: z.string(),
  author: z.string(),
  title: z.string(),
  year: z.number().nullable(),
  where: z.string(),
  address: z.string().nullable().default(null),
  evidence,
  note: z.string().optional(),
});
const partEntry = z.strictObject({
  division: z.string(),
  role: z.enum(ROLES),
  part: z.string().nullable().default(null),
  keyboard: z.string().optional(),
  voice: z.enum(["treble", "tenor", "bass"]).nullable().default(null),
  optional: z.boolean().default(false),
  must: stopNames,
  may: stopNames,
  mustnot: stopNames,
  "one-of": z.array(z.array(z.string()).min(1)).default([]),
  lowest: z.number().int().positive().nullable().default(null),
  note: z.string().optional(),
});
const writtenEntry = z.strictObject({
  part: z.string(),
  role: z.enum(ROLES),
  hands: z.enum(["right", "left", "both", "feet"]),
  low: z.string(),
  high: z.string(),
  sounding: z.union([z.literal(16), z.literal(8), z.literal(4), z.literal(2)]),
  octave: z.union([z.literal(-1), z.literal(0), z.literal(1)]).default(0),
});
const caseEntry = z.strictObject({
  id: z.string(),
  "texture-id": z.string().nullable(),
  dynamic: z.enum(DYNAMICS).nullable().default(null),
  tradition: z.enum(TRADITIONS),
  instrument: z.string(),
  source: z.string(),
  where: z.string(),
  evidence,
  confidence: z.enum(["high", "medium", "low"]),
  fit: z.enum(["own", "school"]),
  term: z.string(),
  plain: z.string(),
  parts: z.array(partEntry).min(1),
  written: z.array(writtenEntry).default([]),
  added: z
    .strictObject({ part: z.string(), division: z.string(), stops: z.array(z.string()).min(1) })
    .nullable()
    .default(null),
  tremulant: z.enum(["required", "forbidden", "unstated"]),
  couplers: z.array(z.string()),
  exclusions: z.enum(["stated", "implied"]),
  note: z.string().optional(),
  reading: z.string().nullable().default(null),
});
const casesFile = z.strictObject({ sources: z.array(sourceEntry), cases: z.array(caseEntry) });

function toCase(entry: z.infer<typeof caseEntry>, sources: ReadonlyMap<string, PublishedSource>): PublishedCase {
  const source = sources.get(entry.source);
  if (source === undefined) throw new Error(`${entry.id}: no source is called ${entry.source}.`);
  const organ = publishedInstruments().get(entry.instrument);
  if (organ === undefined) throw new Error(`${entry.id}: no organ is called ${entry.instrument}.`);
  const pitches = new Map(
    [...organ.stops].map(([division, stops]) => {
      return [division, new Map([...stops].map(([name, stop]): [string, Foot | null] => [name, stop.pitch]))] as const;
    }),
  );
  return {
    ...entry,
    texture: entry["texture-id"],
    source,
    pitches,
    parts: entry.parts.map((part) => ({
      ...part,
      keyboard: part.keyboard ?? part.division,
      mustNot: part.mustnot,
      oneOf: part["one-of"],
      lowest: part.lowest === null ? null : footOf(part.lowest),
    })),
  };
}

let cases: readonly PublishedCase[] | null = null;

/** The published registrations, in the order of the file. */
export function publishedCases(): readonly PublishedCase[] {
  if (cases !== null) return cases;
  const file = casesFile.parse(parse(readFileSync(new URL("cases.yaml", folder), "utf8")));
  const sources = new Map(file.sources.map((source) => [source.id, source]));
  cases = file.cases.map((entry) => toCase(entry, sources));
  return cases;
}
