import type { z } from "zod";
import { type Compass, type Key, keyText } from "../pitch/key.ts";
import type { Division } from "../stoplist/instrument.ts";
import { compassSchema, divisionSchema } from "./instrument-schema.ts";
import { folded } from "./nearest.ts";
import type { Reporter } from "./reporter.ts";
import { readShape, startOf, type UnknownKeys } from "./shape.ts";
import { readKey } from "./stop-entry.ts";
import type { Located } from "./yaml-text.ts";

/** A division as its file says it, without its stops. */
export interface DivisionEntry {
  readonly node: Located;
  readonly name: string;
  readonly kind: Division["kind"];
  readonly keyboard: number | null;
  readonly compass: Compass;
  /** First key of the treble half of divided stops. */
  readonly dividedAt: Key;
  readonly box: string | null;
  /** Empty when it has none. */
  readonly stops: readonly Located[];
}

/** C2 to G6 for the hands, C2 to F4 for the feet: what newer organs have. Common practice. */
const USUAL_COMPASS = { hands: { low: 36, high: 91 }, pedal: { low: 36, high: 65 } } as const;
/** C4: German and English halves meet between B3 and C4. Common practice. */
const USUAL_MEETING: Key = 60;

function compassBounds(node: Located, reporter: Reporter): { low: Key; high: Key } | null {
  if (typeof node.value === "string") {
    const parts = node.value.split(/\s*(?:-|–|—|\bto\b)\s*/);
    if (parts.length !== 2) {
      reporter.report({ code: "compass-unreadable", text: node.value }, node.start);
      return null;
    }
    const [low, high] = parts.map((part) => readKey(part, node.start, reporter));
    return low && high ? { low, high } : null;
  }
  const value = node.value as z.infer<typeof compassSchema>;
  const low = readKey(value.low, startOf(node, "low"), reporter);
  const high = readKey(value.high, startOf(node, "high"), reporter);
  return low && high ? { low, high } : null;
}

function readCompass(node: Located, division: string, reporter: Reporter, unknown: UnknownKeys): Compass | null {
  const bounds = compassBounds(node, reporter);
  if (!bounds) return null;
  const { low, high } = bounds;
  if (low > high) {
    reporter.report({ code: "compass-upside-down", low: keyText(low), high: keyText(high) }, node.start);
    return null;
  }
  unknown.look(node, Object.keys(compassSchema.shape), "A compass");
  const missing = new Set<Key>();
  for (const item of node.entries?.get("missing")?.node.items ?? []) {
    const key = readKey(item.value as string, item.start, reporter);
    if (key === null) continue;
    if (key < low || key > high) reporter.report({ code: "missing-outside", key: keyText(key), division }, item.start);
    else missing.add(key);
  }
  return { low, high, missing: [...missing].toSorted((a, b) => a - b) };
}

/** One entry of `divisions:`; `null` when it cannot be read, which is then reported. */
export function readDivisionEntry(node: Located, reporter: Reporter, unknown: UnknownKeys): DivisionEntry | null {
  const name = node.entries?.get("name")?.node.value;
  unknown.look(node, Object.keys(divisionSchema.shape), "A division");
  const read = readShape(
    divisionSchema,
    node,
    typeof name === "string" ? `The division ${name}` : "A division",
    reporter,
  );
  if (!read) return null;
  const { kind } = read;
  const compassNode = node.entries?.get("compass")?.node;
  const usual = kind === "pedal" ? USUAL_COMPASS.pedal : USUAL_COMPASS.hands;
  const compass = compassNode ? readCompass(compassNode, read.name, reporter, unknown) : { ...usual, missing: [] };
  const meeting = read["divided-at"];
  const dividedAt = meeting === undefined ? USUAL_MEETING : readKey(meeting, startOf(node, "divided-at"), reporter);
  if (!compass || dividedAt === null) return null;
  if (kind !== "manual" && read.keyboard !== undefined) {
    reporter.report({ code: "keyboard-needless", division: read.name, kind }, startOf(node, "keyboard"));
  }
  return {
    node,
    name: read.name.trim(),
    kind,
    keyboard: kind === "manual" ? (read.keyboard ?? null) : null,
    compass,
    dividedAt,
    box: read.enclosed === true ? read.name.trim() : read.enclosed || null,
    stops: node.entries?.get("stops")?.node.items ?? [],
  };
}

/** Names used once only, whatever their case and accents; a second one is reported. */
export function reportTwins(entries: readonly DivisionEntry[], reporter: Reporter): void {
  const first = new Map<string, DivisionEntry>();
  for (const entry of entries) {
    const key = folded(entry.name);
    const twin = first.get(key);
    const offset = startOf(entry.node, "name");
    if (twin) {
      const firstLine = reporter.lineOf(startOf(twin.node, "name"));
      reporter.report({ code: "division-twice", name: entry.name, firstLine }, offset);
    } else first.set(key, entry);
  }
}

/** Keyboards counted where the file leaves them out: the lowest free number, in the order of the list. */
export function countedKeyboards(entries: readonly DivisionEntry[], reporter: Reporter): readonly (number | null)[] {
  const owner = new Map<number, string>();
  for (const entry of entries) {
    if (entry.keyboard === null) continue;
    const other = owner.get(entry.keyboard);
    if (other !== undefined) {
      const facts = { division: entry.name, other, keyboard: entry.keyboard };
      reporter.report({ code: "keyboard-shared", ...facts }, startOf(entry.node, "keyboard"));
    } else owner.set(entry.keyboard, entry.name);
  }
  return entries.map((entry) => {
    if (entry.kind !== "manual" || entry.keyboard !== null) return entry.keyboard;
    let keyboard = 1;
    while (owner.has(keyboard)) keyboard += 1;
    owner.set(keyboard, entry.name);
    reporter.report({ code: "keyboard-counted", division: entry.name, keyboard }, startOf(entry.node, "name"));
    return keyboard;
  });
}
