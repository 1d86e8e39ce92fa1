import type { Foot } from "../pitch/foot.ts";
import { type Key, keyFromText } from "../pitch/key.ts";
import { pitchName, readPitch } from "../pitch/reading.ts";
import type { Brightness, Half, Strength } from "../stoplist/instrument.ts";
import type { Family, Kind } from "../stoplist/kind.ts";
import type { Row } from "./composition.ts";
import { stopSchema } from "./instrument-schema.ts";
import { canSpeak, likelyPitch } from "./pitch-text.ts";
import type { Reporter } from "./reporter.ts";
import { readShape, startOf, type UnknownKeys } from "./shape.ts";
import { partStopText, type StopText } from "./stop-text.ts";
import type { Located } from "./yaml-text.ts";

/** A stop as its file says it, before names are understood and pipes are laid out. */
export interface StopEntry {
  readonly node: Located;
  /** As a sentence names it: the text of the file. */
  readonly said: string;
  readonly name: string;
  readonly pitch: Foot | null;
  readonly ranks: number | null;
  readonly half: Half;
  readonly composition: readonly Row[] | null;
  readonly kinds: readonly Kind[] | null;
  readonly family: Family | null;
  readonly strength: Strength | null;
  readonly brightness: Brightness | null;
  readonly from: Key | null;
  readonly to: Key | null;
  readonly rank: string | null;
  readonly sameAs: string | null;
  readonly bassFrom: string | null;
  readonly tierce: boolean | null;
  readonly off: boolean;
  readonly note: string | null;
}

/** Whether a Roman numeral behind that name counts ranks: it does for compounds, and labels the first of two alike else. */
export type CountsRanks = (name: string, pitch: Foot | null, ranks: number, kinds: readonly Kind[] | null) => boolean;

/** Lowest and highest key that any organ has: C0 and C8. */
const KEYS = { low: 12, high: 108 } as const;

/** A key of the file, or `null` and an error. */
export function readKey(text: string, offset: number, reporter: Reporter): Key | null {
  const key = keyFromText(text);
  if (key !== null && key >= KEYS.low && key <= KEYS.high) return key;
  reporter.report({ code: "key-unreadable", text }, offset);
  return null;
}

/** A pitch of the file that a rank can have, or `null` and an error. `said` names the stop in the sentence. */
export function readStopPitch(value: string | number, said: string, offset: number, reporter: Reporter): Foot | null {
  const read = readPitch(String(value));
  if (!read.foot) {
    reporter.report({ code: "pitch-unreadable", stop: said, problem: read.doubt.text }, offset);
    return null;
  }
  if (canSpeak(read.foot)) return read.foot;
  const nearest = pitchName(likelyPitch(read.foot));
  reporter.report({ code: "pitch-not-a-pipe", stop: said, pitch: pitchName(read.foot), nearest }, offset);
  return null;
}

/** Offset of the `printed` end of a scalar's text where it can be told, else of the scalar. */
const offsetOfEnd = (node: Located, printed: string): number => {
  const at = node.plain && typeof node.value === "string" ? node.value.lastIndexOf(printed) : -1;
  return at > 0 ? node.start + at : node.start;
};

/** Takes ranks off a name only where they are ranks: `Mixtur IV`, but `Open Diapason I`. */
function partName(
  text: string,
  take: { half: boolean; pitch: boolean; ranks: boolean },
  kinds: readonly Kind[] | null,
  countsRanks: CountsRanks,
): StopText {
  const parted = partStopText(text, take);
  if (parted.ranks === null || countsRanks(parted.name, parted.pitch, parted.ranks, kinds)) return parted;
  return partStopText(text, { ...take, ranks: false });
}

function pitchOfText(parted: StopText, node: Located, said: string, reporter: Reporter): Foot | null {
  if (parted.printedPitch === null) return null;
  return readStopPitch(parted.printedPitch, said, offsetOfEnd(node, parted.printedPitch), reporter);
}

function shortEntry(node: Located, text: string, countsRanks: CountsRanks, reporter: Reporter): StopEntry | null {
  const parted = partName(text, { half: true, pitch: true, ranks: true }, null, countsRanks);
  if (parted.name === "") {
    reporter.report({ code: "stop-nameless" }, node.start);
    return null;
  }
  const pitch = pitchOfText(parted, node, text, reporter);
  if (parted.printedPitch !== null && !pitch) return null;
  return {
    node,
    said: text,
    name: parted.name,
    pitch,
    ranks: parted.ranks,
    half: parted.half,
    composition: null,
    kinds: null,
    family: null,
    strength: null,
    brightness: null,
    from: null,
    to: null,
    rank: null,
    sameAs: null,
    bassFrom: null,
    tierce: null,
    off: false,
    note: null,
  };
}

function readComposition(node: Located, said: string, reporter: Reporter): readonly Row[] | null {
  const rows: Row[] = [];
  let sound = true;
  for (const [keyText, { keyStart, node: list }] of node.entries ?? []) {
    const from = readKey(keyText, keyStart, reporter);
    const pitches = (list.items ?? []).map((item) =>
      readStopPitch(item.value as string | number, said, item.start, reporter),
    );
    if (from === null || pitches.includes(null)) sound = false;
    else rows.push({ from, pitches: pitches as readonly Foot[] });
  }
  if (sound && (rows.length === 0 || rows.every((row) => row.pitches.length === 0))) {
    reporter.report({ code: "composition-empty", stop: said }, node.start);
    return null;
  }
  return sound ? rows.toSorted((a, b) => a.from - b.from) : null;
}

const SOURCES = ["rank", "same-as", "composition"] as const;

function longEntry(
  node: Located,
  countsRanks: CountsRanks,
  reporter: Reporter,
  unknown: UnknownKeys,
): StopEntry | null {
  const name = node.entries?.get("name")?.node;
  const of = typeof name?.value === "string" ? `The stop ${name.value}` : "The stop";
  unknown.look(node, Object.keys(stopSchema.shape), "A stop");
  const read = readShape(stopSchema, node, of, reporter);
  if (!read || !name) return null;
  const kinds = read.kind === undefined ? null : Array.isArray(read.kind) ? read.kind : [read.kind];
  const take = { half: read.half === undefined, pitch: read.pitch === undefined, ranks: read.ranks === undefined };
  const whole = partName(read.name, take, kinds, countsRanks);
  // `bass` right behind the name belongs to it (a Violon bass); a half stands behind the pitch or under its own key.
  const parted =
    whole.half !== null && whole.printedPitch === null
      ? partName(read.name, { ...take, half: false }, kinds, countsRanks)
      : whole;
  if (parted.name === "") {
    reporter.report({ code: "stop-nameless" }, name.start);
    return null;
  }
  const said = read.pitch === undefined ? read.name : `${read.name} ${read.pitch}`;
  const key = (of: "from" | "to"): Key | null | undefined => {
    const text = read[of];
    return text === undefined ? null : (readKey(text, startOf(node, of), reporter) ?? undefined);
  };
  const [from, to] = [key("from"), key("to")];
  const pitch =
    read.pitch === undefined
      ? pitchOfText(parted, name, said, reporter)
      : readStopPitch(read.pitch, said, startOf(node, "pitch"), reporter);
  const compositionNode = node.entries?.get("composition")?.node;
  const composition = compositionNode ? readComposition(compositionNode, said, reporter) : null;
  const [first, second] = SOURCES.filter((source) => read[source] !== undefined);
  if (first && second) reporter.report({ code: "pipes-twice", stop: said, first, second }, startOf(node, second));
  const broken =
    from === undefined ||
    to === undefined ||
    (compositionNode && !composition) ||
    (first && second) ||
    (!pitch && (read.pitch !== undefined || parted.printedPitch !== null));
  if (broken) return null;
  return {
    node,
    said,
    name: parted.name,
    pitch,
    ranks: read.ranks ?? parted.ranks,
    half: read.half ?? parted.half,
    composition,
    kinds,
    family: read.family ?? null,
    strength: (read.strength ?? null) as Strength | null,
    brightness: (read.brightness ?? null) as Brightness | null,
    from,
    to,
    rank: read.rank ?? null,
    sameAs: read["same-as"] ?? null,
    bassFrom: read["bass-from"] ?? null,
    tierce: read.tierce ?? null,
    off: read.off !== undefined && read.off !== false,
    note:
      [typeof read.off === "string" ? read.off : null, read.note ?? null].filter((text) => text !== null).join("; ") ||
      null,
  };
}

/** One stop of a `stops:` list, in either form; `null` when it cannot be read, which is then reported. */
export function readStopEntry(
  node: Located,
  countsRanks: CountsRanks,
  reporter: Reporter,
  unknown: UnknownKeys,
): StopEntry | null {
  if (typeof node.value === "string") return shortEntry(node, node.value, countsRanks, reporter);
  if (node.entries) return longEntry(node, countsRanks, reporter, unknown);
  reporter.report({ code: "stop-form" }, node.start);
  return null;
}
