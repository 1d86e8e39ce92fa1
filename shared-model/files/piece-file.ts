import type { z } from "zod";
import {
  type Before,
  barsFaults,
  type FreeMoment,
  type Link,
  type Piece,
  type PieceSection,
  type PistonsAllowed,
} from "../music/piece.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { openFile } from "./file-head.ts";
import { CATALOGUE, type KnownTextures } from "./known-textures.ts";
import { readMusic, reportStrangeParts } from "./music-entry.ts";
import { folded } from "./nearest.ts";
import { linksOf, sectionWords } from "./piece-links.ts";
import {
  beforeSchema,
  consoleSchema,
  momentSchema,
  pieceHeadSchema,
  pieceSectionSchema,
  pistonsSchema,
} from "./piece-schema.ts";
import { readConsole } from "./registration-file.ts";
import type { Reporter } from "./reporter.ts";
import { readShape, startOf, UnknownKeys } from "./shape.ts";
import type { Trouble } from "./trouble.ts";
import { sectionOfMusic } from "./written-section.ts";
import type { Located } from "./yaml-text.ts";

/** What a piece file amounts to, on one instrument or on none. */
export interface PieceReading {
  /** `null` when any trouble is an error. */
  readonly piece: Piece | null;
  /** In the order of the file. */
  readonly troubles: readonly Trouble[];
}

/** A piece file and its tree, for whoever changes it. */
export interface OpenedPiece extends PieceReading {
  readonly root: Located | null;
}

type Head = z.infer<typeof pieceHeadSchema>;
type ReadSection = z.infer<typeof pieceSectionSchema>;

const beforeOf = (read: ReadSection["before"], node: Located, reporter: Reporter): Before | null => {
  if (read === undefined) return null;
  const said = typeof read === "string" ? { what: read } : read;
  if (said.beats === undefined && (said.what === "rest" || said.what === "page-turn")) {
    reporter.report({ code: "beats-missing", what: said.what }, startOf(node, "before"));
  }
  const beats = said.what === "attacca" ? 0 : (said.beats ?? (said.what === "fermata" ? 1 : null));
  const { free } = said;
  const named = Array.isArray(free) ? Object.fromEntries(free.map((limb) => [limb, beats ?? 0])) : (free ?? null);
  return { what: said.what, beats, free: named as Before["free"], turnedBy: said["turned-by"] ?? "player" };
};

const momentOf = ({ limb, beats, bar }: z.infer<typeof momentSchema>): FreeMoment => ({
  limb,
  beats,
  bar: bar === undefined ? null : String(bar),
});

/** Piston numbers: a count stands for the first so many. */
const numbersOf = (read: number | readonly number[] | undefined): readonly number[] | null =>
  read === undefined
    ? null
    : typeof read === "number"
      ? Array.from({ length: read }, (_, at) => at + 1)
      : [...new Set(read)].sort((a, b) => a - b);

function pistonsOf(read: Head["pistons"]): PistonsAllowed {
  if (read === undefined) return { generals: null, divisionals: null, levels: null };
  if (read === "none") return { generals: [], divisionals: {}, levels: null };
  const { divisionals } = read;
  return {
    generals: numbersOf(read.generals),
    divisionals:
      divisionals === undefined
        ? null
        : Object.fromEntries(Object.entries(divisionals).map(([name, each]) => [name, numbersOf(each) ?? []])),
    levels: numbersOf(read.levels),
  };
}

/** Reads the sections of one piece. */
class PieceReader {
  readonly #head: Head;
  readonly #instrument: Instrument | null;
  readonly #textures: KnownTextures;
  readonly #reporter: Reporter;
  readonly #unknown: UnknownKeys;

  constructor(
    head: Head,
    instrument: Instrument | null,
    textures: KnownTextures,
    reporter: Reporter,
    unknown: UnknownKeys,
  ) {
    this.#head = head;
    this.#instrument = instrument;
    this.#textures = textures;
    this.#reporter = reporter;
    this.#unknown = unknown;
  }

  /** The sections whose form is right, with their places in the text. */
  sections(nodes: readonly Located[]): readonly { readonly read: ReadSection; readonly node: Located }[] {
    return nodes.flatMap((node, at) => {
      if (this.#reporter.full()) return [];
      this.#unknown.look(node, Object.keys(pieceSectionSchema.shape), "A section");
      const read = readShape(pieceSectionSchema, node, `Section ${at + 1}`, this.#reporter);
      return read ? [{ read, node }] : [];
    });
  }

  section(read: ReadSection, node: Located, at: number, links: readonly Link[]): () => PieceSection {
    const { tradition, tempo } = this.#head;
    const inherited = { ...read, tradition: read.tradition ?? tradition, tempo: read.tempo ?? tempo };
    const { music, partIds } = readMusic(node, inherited, this.#textures, this.#reporter, this.#unknown);
    const before = beforeOf(read.before, node, this.#reporter);
    this.#look(node.entries?.get("before")?.node, Object.keys(beforeSchema.shape), "before");
    for (const item of node.entries?.get("moments")?.node.items ?? [])
      this.#look(item, Object.keys(momentSchema.shape), "A free moment");
    const first = node.entries?.get("registration")?.node;
    const registration = first ? this.#console(first, partIds) : null;
    const steps = (node.entries?.get("steps")?.node.items ?? []).map((item) => this.#console(item, partIds));
    if (read.pinned && !first) {
      this.#reporter.report({ code: "pin-empty", section: sectionWords(music.name, at) }, startOf(node, "pinned"));
    }
    return () => ({
      section: sectionOfMusic(music),
      metronome: music.metronome,
      beatsInBar: read["beats-in-bar"] ?? this.#head["beats-in-bar"] ?? null,
      before,
      moments: (read.moments ?? []).map(momentOf),
      links,
      registration,
      steps: registration ? steps.filter((step) => step !== null) : [],
      pinned: (read.pinned ?? false) && registration !== null,
    });
  }

  #look(node: Located | undefined, known: readonly string[], of: string): void {
    if (node?.entries) this.#unknown.look(node, known, of);
  }

  #console(node: Located, partIds: readonly string[] | null) {
    this.#look(node, Object.keys(consoleSchema.shape), "A registration");
    const value = node.value as z.infer<typeof consoleSchema>;
    if (this.#instrument) return readConsole(node, value, partIds, this.#instrument, this.#reporter);
    for (const key of ["keyboards", "octaves"])
      reportStrangeParts(node.entries?.get(key)?.node, partIds, this.#reporter);
    return null;
  }
}

/** Notes on bars that run backwards, and on sections that begin before the one above them: the piece can be used all the same. */
function reportBars(sections: readonly { read: ReadSection; node: Located }[], reporter: Reporter): void {
  const barsText = (at: number): string => String(sections[at]?.read.bars ?? "");
  const words = (at: number): string => sectionWords(sections[at]?.read.name ?? null, at);
  const rows = sections.map(({ read }) => ({
    bars: read.bars === undefined ? null : String(read.bars),
    again: read.again ?? false,
  }));
  for (const each of barsFaults(rows)) {
    const { section: at } = each;
    const place = startOf(sections[at]?.node as Located, "bars");
    if (each.fault === "backwards") reporter.report({ code: "bars-backwards", bars: barsText(at) }, place);
    else {
      const facts = { section: words(at), before: words(each.before), barsBefore: barsText(each.before) };
      reporter.report({ code: "bars-out-of-order", bars: barsText(at), ...facts }, place);
    }
  }
}

/** How many sections have a registration. */
const registered = (sections: readonly { read: ReadSection }[]): number =>
  sections.filter(({ read }) => read.registration !== undefined).length;

function readPiece(
  root: Located,
  instrument: Instrument | null,
  textures: KnownTextures,
  reporter: Reporter,
  unknown: UnknownKeys,
): Piece | null {
  const head = readShape(pieceHeadSchema, root, "The piece", reporter);
  if (!head) return null;
  const pistons = root.entries?.get("pistons")?.node;
  if (pistons?.entries) unknown.look(pistons, Object.keys(pistonsSchema.shape), "pistons");
  const other = instrument !== null && head.organ !== undefined && folded(head.organ) !== folded(instrument.name);
  const reader = new PieceReader(head, other ? null : instrument, textures, reporter, unknown);
  const nodes = root.entries?.get("sections")?.node.items ?? [];
  const read = reader.sections(nodes);
  const count = registered(read);
  if (other && head.organ !== undefined && count > 0) {
    const facts = { organ: head.organ, here: instrument.name, registered: count };
    reporter.report({ code: "other-organ", ...facts }, startOf(root, "organ"));
  }
  // A link by number counts every section, those too whose form is wrong: then links are looked at once that is mended.
  const links =
    read.length === nodes.length
      ? linksOf(
          nodes,
          read.map((each) => each.read.name ?? null),
          reporter,
        )
      : [];
  reportBars(read, reporter);
  const made = read.map(({ read: section, node }, at) => reader.section(section, node, at, links[at] ?? []));
  if (reporter.hasErrors()) return null;
  return {
    name: head.name ?? null,
    organ: head.organ ?? null,
    assistant: head.assistant ?? "none",
    pistons: pistonsOf(head.pistons),
    practised: head.practised ?? true,
    pace: head.pace ?? "normal",
    sections: made.map((make) => make()),
  };
}

/** As {@link readPieceFile}, with the tree of the text for whoever changes it. */
export function openPieceFile(
  text: string,
  fileName: string,
  instrument: Instrument | null,
  textures: KnownTextures = CATALOGUE,
): OpenedPiece {
  const { root, reporter } = openFile(text, fileName, "piece");
  const unknown = new UnknownKeys();
  if (root) unknown.look(root, Object.keys(pieceHeadSchema.shape), "A piece");
  const piece = root ? readPiece(root, instrument, textures, reporter, unknown) : null;
  unknown.report(reporter);
  return { root, piece: reporter.hasErrors() ? null : piece, troubles: reporter.troubles() };
}

/**
 * Reads the text of a piece file. With an instrument its registrations are found by that organ's own names; those made on
 * another organ (by the file's `organ:`) are left alone, with a note. Without an instrument they are looked at for their
 * form only, and `registration` is `null` everywhere. Never throws, whatever the text.
 */
export function readPieceFile(
  text: string,
  fileName: string,
  instrument: Instrument | null,
  textures: KnownTextures = CATALOGUE,
): PieceReading {
  const { piece, troubles } = openPieceFile(text, fileName, instrument, textures);
  return { piece, troubles };
}
