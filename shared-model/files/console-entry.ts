import type { ConsoleAids, ConsoleBuild, Coupler } from "../stoplist/instrument.ts";
import { couplerName, readCouplerText } from "./coupler-text.ts";
import { aidsSchema, consoleBuildSchema, couplerSchema } from "./instrument-schema.ts";
import { folded, nearestOf } from "./nearest.ts";
import type { Reporter } from "./reporter.ts";
import { readShape, type UnknownKeys } from "./shape.ts";
import type { Located } from "./yaml-text.ts";

/** The division that a text names, whatever its case and accents; `null` after an error. `also` are further names taken. */
export function namedDivision(
  text: string,
  offset: number,
  divisions: readonly string[],
  reporter: Reporter,
  also: readonly string[] = [],
): string | null {
  const found = [...also, ...divisions].find((name) => folded(name) === folded(text));
  if (found !== undefined) return found;
  const nearest = nearestOf(text, [...divisions, ...also]);
  reporter.report({ code: "unknown-name", what: "division", name: text, where: null, nearest, all: divisions }, offset);
  return null;
}

/** The coupler that a text names, or `null` after an error. */
export function readCoupler(
  text: string,
  offset: number,
  divisions: readonly string[],
  reporter: Reporter,
): Pick<Coupler, "name" | "from" | "to" | "pitch"> | null {
  const read = readCouplerText(text, divisions);
  if (!read) {
    reporter.report({ code: "coupler-unreadable", text }, offset);
    return null;
  }
  if ("unknown" in read) {
    const nearest = nearestOf(read.unknown, divisions);
    reporter.report(
      { code: "unknown-name", what: "division", name: read.unknown, where: null, nearest, all: divisions },
      offset,
    );
    return null;
  }
  const { coupler } = read;
  if (coupler.from === coupler.to && coupler.pitch === 8) {
    reporter.report({ code: "coupler-to-itself", division: coupler.from }, offset);
    return null;
  }
  return { name: couplerName(coupler), ...coupler };
}

/** The couplers of `couplers:`, in order; one that stands twice counts once. */
export function readCouplers(
  nodes: readonly Located[],
  divisions: readonly string[],
  throughByDefault: boolean,
  reporter: Reporter,
  unknown: UnknownKeys,
): readonly Coupler[] {
  const couplers = new Map<string, { readonly coupler: Coupler; readonly offset: number }>();
  for (const node of nodes) {
    if (reporter.full()) break;
    const short = typeof node.value === "string" ? { coupler: node.value, fixed: false, through: undefined } : null;
    if (!short) unknown.look(node, Object.keys(couplerSchema.shape), "A coupler");
    const read = short ?? readShape(couplerSchema, node, "A coupler", reporter);
    const offset = node.entries?.get("coupler")?.node.start ?? node.start;
    const named = read && readCoupler(read.coupler, offset, divisions, reporter);
    if (!read || !named) continue;
    const twin = couplers.get(named.name);
    if (twin)
      reporter.report({ code: "coupler-twice", name: named.name, firstLine: reporter.lineOf(twin.offset) }, offset);
    else {
      const coupler = { ...named, through: read.through ?? throughByDefault, fixed: read.fixed ?? false };
      couplers.set(named.name, { coupler, offset });
    }
  }
  return [...couplers.values()].map((each) => each.coupler);
}

/** A list of division names, each once; unknown ones are reported. */
export function readNames(
  node: Located | undefined,
  divisions: readonly string[],
  reporter: Reporter,
  also: readonly string[] = [],
): readonly string[] {
  // What is no text was told by the schema.
  const items = (node?.items ?? []).filter((item) => typeof item.value === "string");
  const names = items.map((item) => namedDivision(item.value as string, item.start, divisions, reporter, also));
  return [...new Set(names.filter((name) => name !== null))];
}

/** What a console without aids has. */
const NO_AIDS: ConsoleAids = { generals: 0, divisionals: {}, levels: 0, crescendoPedal: false, ventils: [] };

/** The value of `aids:`. */
export function readAids(
  node: Located | undefined,
  divisions: readonly string[],
  reporter: Reporter,
  unknown: UnknownKeys,
): ConsoleAids {
  if (!node) return NO_AIDS;
  unknown.look(node, Object.keys(aidsSchema.shape), "aids");
  const read = readShape(aidsSchema, node, "aids", reporter);
  if (!read) return NO_AIDS;
  const divisionals: [string, number][] = [];
  for (const [name, entry] of node.entries?.get("divisionals")?.node.entries ?? []) {
    const division = namedDivision(name, entry.keyStart, divisions, reporter);
    if (division !== null) divisionals.push([division, entry.node.value as number]);
  }
  return {
    generals: read.generals ?? 0,
    divisionals: Object.fromEntries(divisionals),
    levels: read.levels ?? 0,
    crescendoPedal: read["crescendo-pedal"] ?? false,
    ventils: readNames(node.entries?.get("ventils")?.node, divisions, reporter),
  };
}

/** The value of `console:`; `null` where nothing is stated. */
export function readConsoleBuild(
  node: Located | undefined,
  divisions: readonly string[],
  reporter: Reporter,
  unknown: UnknownKeys,
): ConsoleBuild | null {
  if (!node) return null;
  unknown.look(node, Object.keys(consoleBuildSchema.shape), "console");
  const read = readShape(consoleBuildSchema, node, "console", reporter);
  if (!read) return null;
  return {
    action: read.action ?? null,
    left: readNames(node.entries?.get("left")?.node, divisions, reporter),
    right: readNames(node.entries?.get("right")?.node, divisions, reporter),
    distances: {
      keysToBlock: read["keys-to-knobs"],
      knobPitch: read["knob-to-knob"],
      blockToBlock: read["division-to-division"],
      jambToJamb: read["jamb-to-jamb"],
    },
  };
}
