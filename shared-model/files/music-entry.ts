import type { z } from "zod";
import type { Metronome } from "../music/piece.ts";
import { type HandPart, partsFromHand } from "../music/section.ts";
import type { Dynamic, Part, Tempo, Tradition } from "../music/texture.ts";
import { type Key, keyText } from "../pitch/key.ts";
import type { KnownTextures } from "./known-textures.ts";
import { BEATS, type musicShape, partSchema, type registrationSchema, type sectionSchema } from "./music-schema.ts";
import { nearestOf } from "./nearest.ts";
import type { Reporter } from "./reporter.ts";
import { startOf, type UnknownKeys } from "./shape.ts";
import { readKey } from "./stop-entry.ts";
import type { Located, LocatedEntry } from "./yaml-text.ts";

/** What a section or a registration file says of the music; what it leaves out is `null` or empty. */
export interface WrittenMusic {
  readonly name: string | null;
  readonly bars: string | null;
  /** Id of a texture that is known; `null` when the file has parts of its own. */
  readonly texture: string | null;
  /** Written by hand, with their ids; `null` when the file names a texture. */
  readonly parts: readonly Part[] | null;
  readonly tradition: Tradition | null;
  readonly dynamic: Dynamic | null;
  readonly tempo: Tempo | null;
  /** Beats in a minute, where the file counts them, and the beat in quarters (dotted quarter: 1.5). */
  readonly metronome: Metronome | null;
  /** By part id: lowest and highest written key. */
  readonly ranges: Readonly<Record<string, readonly [Key, Key]>>;
  /** By part id. */
  readonly sounding: Readonly<Record<string, Part["sounding"]>>;
}

type Read = Pick<z.infer<typeof sectionSchema> | z.infer<typeof registrationSchema>, keyof typeof musicShape>;

/** Adagio is about 60 and Andante about 76, Moderato 96 and Allegro 126: the bounds lie between. From memory. */
export const tempoAt = (bpm: number): Tempo => (bpm < 68 ? "slow" : bpm < 111 ? "moderate" : "fast");

/** A counted tempo, its beat in quarters. */
export const metronomeOf = ({
  bpm,
  beat,
}: {
  readonly bpm: number;
  readonly beat?: keyof typeof BEATS | undefined;
}): Metronome => ({
  bpm,
  quarters: BEATS[beat ?? "quarter"],
});

function readPart(node: Located, unknown: UnknownKeys, reporter: Reporter): HandPart | null {
  unknown.look(node, Object.keys(partSchema.shape), "A part");
  const value = node.value as z.infer<typeof partSchema>;
  const low = readKey(value.low, startOf(node, "low"), reporter);
  const high = readKey(value.high, startOf(node, "high"), reporter);
  if (low === null || high === null) return null;
  if (low > high) {
    const facts = { part: value.part ?? value.role, low: keyText(low), high: keyText(high) };
    reporter.report({ code: "part-backwards", ...facts }, startOf(node, "low"));
    return null;
  }
  return { ...value, low, high };
}

function readParts(node: Located, unknown: UnknownKeys, reporter: Reporter): readonly Part[] {
  const items = node.items ?? [];
  const written = items.map((item) => readPart(item, unknown, reporter));
  if (written.includes(null)) return [];
  const parts = partsFromHand(written as readonly HandPart[]);
  parts.forEach((part, index) => {
    const item = items[index] as Located;
    const said = (item.value as z.infer<typeof partSchema>).part;
    if (said !== undefined && said !== part.id) {
      reporter.report({ code: "part-id", part: said, expected: part.id }, startOf(item, "part"));
    }
  });
  return parts;
}

/** Holds the parts that the keys of a group name against those there are; `known` is `null` when they cannot be told. */
export function reportStrangeParts(
  node: Located | undefined,
  known: readonly string[] | null,
  reporter: Reporter,
): void {
  if (!node || !known) return;
  for (const [part, { keyStart }] of node.entries ?? []) {
    if (known.includes(part)) continue;
    // With few parts a list of them all says more than the one that is spelled alike.
    const nearest = known.length <= 6 ? known : nearestOf(part, known);
    reporter.report({ code: "unknown-name", what: "part", name: part, where: "this music", nearest }, keyStart);
  }
}

function readRange(part: string, { node }: LocatedEntry, reporter: Reporter): readonly [Key, Key] | null {
  const [low, high] = (node.items ?? []).map((item) => readKey(item.value as string, item.start, reporter));
  if (low == null || high == null) return null;
  if (low <= high) return [low, high];
  reporter.report({ code: "part-backwards", part, low: keyText(low), high: keyText(high) }, node.start);
  return null;
}

/** The texture's id when it is known; an unknown one is reported. */
function readTexture(
  id: string | undefined,
  node: Located,
  textures: KnownTextures,
  reporter: Reporter,
): string | null {
  if (id === undefined || textures.knownTexture(id)) return id ?? null;
  const nearest = textures.nearest(id);
  reporter.report({ code: "unknown-name", what: "texture", name: id, where: null, nearest }, startOf(node, "texture"));
  return null;
}

/** What is played, from a file whose form is right; also the ids of its parts, `null` when they cannot be told. */
export function readMusic(
  root: Located,
  read: Read,
  textures: KnownTextures,
  reporter: Reporter,
  unknown: UnknownKeys,
): { readonly music: WrittenMusic; readonly partIds: readonly string[] | null } {
  const value = (key: string): Located | undefined => root.entries?.get(key)?.node;
  const partsNode = value("parts");
  if (read.texture === undefined && !partsNode) reporter.report({ code: "no-music" }, root.start);
  if (read.texture !== undefined && partsNode) reporter.report({ code: "music-twice" }, partsNode.start);
  const texture = readTexture(read.texture, root, textures, reporter);
  const parts = partsNode && read.texture === undefined ? readParts(partsNode, unknown, reporter) : null;
  const tradition = read.tradition ?? null;
  const partIds =
    parts?.map((part) => part.id) ?? (texture === null ? null : (textures.partsOf?.(texture, tradition) ?? null));
  const ranges: [string, readonly [Key, Key]][] = [];
  for (const [part, entry] of value("ranges")?.entries ?? []) {
    const range = readRange(part, entry, reporter);
    if (range) ranges.push([part, range]);
  }
  reportStrangeParts(value("ranges"), partIds, reporter);
  reportStrangeParts(value("sounding"), partIds, reporter);
  const tempo = read.tempo ?? null;
  const beats = typeof tempo === "object" ? tempo : null;
  const music: WrittenMusic = {
    name: read.name ?? null,
    bars: read.bars === undefined ? null : String(read.bars),
    texture,
    parts,
    tradition,
    dynamic: read.dynamic ?? null,
    tempo: typeof tempo === "string" ? tempo : beats && tempoAt(beats.bpm),
    metronome: beats && metronomeOf(beats),
    ranges: Object.fromEntries(ranges),
    sounding: read.sounding ?? {},
  };
  return { music, partIds };
}
