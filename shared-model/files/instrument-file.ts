import type { Division, Instrument, Strength } from "../stoplist/instrument.ts";
import { readAids, readConsoleBuild, readCouplers, readNames } from "./console-entry.ts";
import { countedKeyboards, type DivisionEntry, readDivisionEntry, reportTwins } from "./division-entry.ts";
import { openFile } from "./file-head.ts";
import { organSchema, rankSchema } from "./instrument-schema.ts";
import { folded } from "./nearest.ts";
import { Ranks } from "./pipes.ts";
import type { Reporter } from "./reporter.ts";
import { readShape, startOf, UnknownKeys } from "./shape.ts";
import { readStopEntry, readStopPitch } from "./stop-entry.ts";
import { type SharedRank, StopWorkshop } from "./stop-workshop.ts";
import type { Trouble } from "./trouble.ts";
import { readVisit } from "./visit-entry.ts";
import { Names } from "./voice.ts";
import type { Located } from "./yaml-text.ts";

/** More than the largest organ has. */
const STOP_LIMIT = 2000;

/** What an instrument file amounts to. */
export interface InstrumentReading {
  /** `null` when any trouble is an error: an organ with a stop left out would give wrong answers in silence. */
  readonly instrument: Instrument | null;
  /** In the order of the file. */
  readonly troubles: readonly Trouble[];
}

function readDivisions(node: Located | undefined, reporter: Reporter, unknown: UnknownKeys): readonly DivisionEntry[] {
  const items = node?.items ?? [];
  if (node && items.length === 0) reporter.report({ code: "no-divisions" }, node.start);
  const entries = items.map((item) => readDivisionEntry(item, reporter, unknown)).filter((entry) => entry !== null);
  reportTwins(entries, reporter);
  return entries;
}

/** Boxes whose names differ in case or accents only are one, named as the division or as the first that names it. */
function sameBoxes(entries: readonly DivisionEntry[]): (box: string | null) => string | null {
  const names = new Map(entries.toReversed().flatMap(({ box }) => (box === null ? [] : [[folded(box), box] as const])));
  for (const { name } of entries) if (names.has(folded(name))) names.set(folded(name), name);
  return (box) => (box === null ? null : (names.get(folded(box)) ?? box));
}

function readRanks(
  nodes: readonly Located[],
  ranks: Ranks,
  reporter: Reporter,
  unknown: UnknownKeys,
): Map<string, SharedRank> {
  const shared = new Map<string, SharedRank>();
  const offsets = new Map<string, number>();
  for (const node of nodes) {
    if (reporter.full()) break;
    unknown.look(node, Object.keys(rankSchema.shape), "A rank");
    const read = readShape(rankSchema, node, "A rank", reporter);
    if (!read) continue;
    const offset = startOf(node, "id");
    const first = offsets.get(read.id);
    if (first !== undefined) {
      reporter.report({ code: "rank-twice", id: read.id, firstLine: reporter.lineOf(first) }, offset);
      continue;
    }
    offsets.set(read.id, offset);
    const longest = readStopPitch(read.longest, `The rank ${read.id}`, startOf(node, "longest"), reporter);
    const kinds = read.kind === undefined ? null : Array.isArray(read.kind) ? read.kind : [read.kind];
    const strength = (read.strength ?? null) as Strength | null;
    shared.set(read.id, { id: read.id, kinds, family: read.family ?? null, strength, offset });
    if (longest) ranks.add({ id: read.id, longest, pipes: read.pipes });
  }
  return shared;
}

function takeStops(
  entries: readonly DivisionEntry[],
  workshop: StopWorkshop,
  names: Names,
  reporter: Reporter,
  unknown: UnknownKeys,
): void {
  let left = STOP_LIMIT;
  for (const division of entries) {
    const countsRanks = names.countsRanks(division.kind === "pedal");
    if (division.stops.length > left) {
      reporter.report({ code: "too-many-stops", limit: STOP_LIMIT }, (division.stops[left] as Located).start);
      return;
    }
    left -= division.stops.length;
    const stops = division.stops.map((node) =>
      reporter.full() ? null : readStopEntry(node, countsRanks, reporter, unknown),
    );
    workshop.take(
      division,
      stops.filter((stop) => stop !== null),
    );
  }
}

function reportEmptiness(divisions: readonly Division[], offset: number, reporter: Reporter): void {
  const stops = divisions.flatMap((division) => division.stops);
  if (divisions.length > 0 && divisions.every((division) => division.kind === "pedal"))
    reporter.report({ code: "no-manual" }, offset);
  if (divisions.length > 0 && stops.length === 0) reporter.report({ code: "no-stops" }, offset);
  else if (stops.length > 0 && stops.every((stop) => stop.off)) reporter.report({ code: "all-off" }, offset);
}

function readOrgan(root: Located, reporter: Reporter): Instrument | null {
  const unknown = new UnknownKeys();
  unknown.look(root, Object.keys(organSchema.shape), "The organ");
  const read = readShape(organSchema, root, "The organ", reporter);
  const value = (key: string): Located | undefined => root.entries?.get(key)?.node;
  const entries = readDivisions(value("divisions"), reporter, unknown);
  const keyboards = countedKeyboards(entries, reporter);
  const [names, ranks] = [new Names(), new Ranks()];
  const shared = readRanks(value("ranks")?.items ?? [], ranks, reporter, unknown);
  const workshop = new StopWorkshop(names, ranks, shared, reporter);
  takeStops(entries, workshop, names, reporter, unknown);
  const stops = workshop.make();
  const sameBox = sameBoxes(entries);
  const divisions = entries.map((entry, index): Division => {
    const { name, kind, compass } = entry;
    const box = sameBox(entry.box);
    return { name, kind, keyboard: keyboards[index] ?? null, compass, box, stops: stops.get(entry) ?? [] };
  });
  const divisionNames = divisions.map((division) => division.name);
  const through = read?.["through-couplers"] ?? false;
  const couplers = readCouplers(value("couplers")?.items ?? [], divisionNames, through, reporter, unknown);
  const tremulants = readNames(value("tremulants"), divisionNames, reporter, ["all"]);
  const unisonOff = readNames(value("unison-off"), divisionNames, reporter);
  const aids = readAids(value("aids"), divisionNames, reporter, unknown);
  const build = readConsoleBuild(value("console"), divisionNames, reporter, unknown);
  const visit = readVisit(value("visit"), reporter, unknown);
  if (!reporter.hasErrors()) reportEmptiness(divisions, value("divisions")?.start ?? root.start, reporter);
  unknown.report(reporter);
  if (!read) return null;
  return {
    name: read.name,
    place: read.place ?? null,
    builder: read.builder ?? null,
    year: read.year ?? null,
    history: read.history ?? null,
    a4: read.a4 ?? 440,
    temperament: read.temperament ?? null,
    room: read.room ?? "medium",
    roomByEar: read.room !== undefined,
    divisions,
    ranks: ranks.all(),
    couplers,
    tremulants,
    unisonOff,
    aids,
    ...(build && { console: build }),
    toys: read.toys ?? [],
    ...(visit && { visit }),
  };
}

/** An instrument file with the tree that it was read from, for changes to its text. */
export interface OpenedInstrument extends InstrumentReading {
  readonly root: Located | null;
}

/** As {@link readInstrumentFile}, with the tree of the text. */
export function openInstrumentFile(text: string, fileName: string): OpenedInstrument {
  const { root, reporter } = openFile(text, fileName, "instrument");
  const instrument = root ? readOrgan(root, reporter) : null;
  return { root, instrument: reporter.hasErrors() ? null : instrument, troubles: reporter.troubles() };
}

/**
 * Reads the text of an instrument file. Never throws, whatever the text, and ends in bounded time and memory.
 *
 * `fileName` stands in the troubles, as the person knows the file. What is left out takes its default: the glossary says what a
 * stop is, compounds get the usual composition of their name, and what was assumed is told as a note.
 */
export function readInstrumentFile(text: string, fileName: string): InstrumentReading {
  const { instrument, troubles } = openInstrumentFile(text, fileName);
  return { instrument, troubles };
}
