import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { z } from "zod";
import type { Wanted } from "../../shared-model/music/prescription.ts";
import { DYNAMICS, TRADITIONS } from "../../shared-model/music/texture.ts";
import { readPitch } from "../../shared-model/pitch/reading.ts";
import { KIND_GROUPS, KINDS, type Kind, type KindGroup } from "../../shared-model/stoplist/kind.ts";
import type { Expectation, ExpectedPart, Scenario } from "./scenario.ts";

const isKind = (text: string): text is Kind | KindGroup => text in KIND_GROUPS || KINDS.some((kind) => kind === text);

/**
 * A stop by kind and pitch: `oboe 8`, `mixture`, `16` (anything at that pitch), `trumpet 8 treble`.
 *
 * @throws Error for a kind or pitch that there is not.
 */
export function wantedFrom(text: string): Wanted {
  const words = text.trim().split(/\s+/);
  const last = words.at(-1);
  const half = last === "treble" || last === "bass" ? last : null;
  if (half !== null) words.pop();
  const kind = words[0] !== undefined && isKind(words[0]) ? words.shift() : undefined;
  const length = words.join(" ");
  const pitch = length === "" ? null : readPitch(length).foot;
  if ((length !== "" && pitch === null) || (kind === undefined && pitch === null)) {
    throw new Error(`"${text}" is no kind and pitch of stop.`);
  }
  return {
    ...(kind === undefined ? {} : { kind: kind as Kind | KindGroup }),
    ...(pitch === null ? {} : { pitch }),
    ...(half === null ? {} : { half }),
  };
}

const wanted = z.union([z.string(), z.number()]).transform((word) => wantedFrom(String(word)));
const list = z.array(wanted).default([]);
const partEntry = z.strictObject({
  must: list,
  "one-of": z.array(z.array(wanted).min(1)).default([]),
  may: list,
  mustnot: list,
  only: z.boolean().default(false),
  "at-most": z.number().int().positive().nullable().default(null),
  "apart-from": z.array(z.string()).default([]),
  shaken: z.boolean().nullable().default(null),
  octave: z
    .union([z.literal(-1), z.literal(0), z.literal(1)])
    .nullable()
    .default(null),
});
const expectationEntry = z.strictObject({
  what: z.string(),
  parts: z.record(z.string(), partEntry),
  couplers: z.array(z.string()).default([]),
  "no-couplers": z.array(z.string()).default([]),
});
const scenarioEntry = z.strictObject({
  id: z.string(),
  organ: z.string(),
  texture: z.string(),
  tradition: z.enum(TRADITIONS),
  dynamic: z.enum(DYNAMICS).nullable().default(null),
  source: z.string(),
  why: z.string(),
  among: z.number().int().min(1).max(8).default(3),
  some: z.array(expectationEntry).default([]),
  every: z.array(expectationEntry).default([]),
});
const scenariosFile = z.strictObject({ scenarios: z.array(scenarioEntry) });

const toPart = (entry: z.infer<typeof partEntry>): ExpectedPart => ({
  must: entry.must,
  oneOf: entry["one-of"],
  may: entry.may,
  mustNot: entry.mustnot,
  only: entry.only,
  atMost: entry["at-most"],
  apartFrom: entry["apart-from"],
  shaken: entry.shaken,
  octave: entry.octave,
});

const toExpectation = (entry: z.infer<typeof expectationEntry>): Expectation => ({
  what: entry.what,
  parts: new Map(Object.entries(entry.parts).map(([id, part]) => [id, toPart(part)])),
  couplers: entry.couplers,
  noCouplers: entry["no-couplers"],
});

/** The scenarios of a text in the form of `scenarios.yaml`. */
export const scenariosIn = (text: string): readonly Scenario[] =>
  scenariosFile.parse(parse(text)).scenarios.map((entry) => ({
    ...entry,
    some: entry.some.map(toExpectation),
    every: entry.every.map(toExpectation),
  }));

/** The practice scenarios: `scenarios.yaml`, then those of `solo-colours.yaml`. */
export const practiceScenarios = (): readonly Scenario[] =>
  ["scenarios.yaml", "solo-colours.yaml"].flatMap((file) =>
    scenariosIn(readFileSync(new URL(file, import.meta.url), "utf8")),
  );
