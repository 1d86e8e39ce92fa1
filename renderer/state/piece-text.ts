import { BEATS } from "../../shared-model/files/music-schema.ts";
import { editPieceFile, type PieceEdit, type SectionChange } from "../../shared-model/files/piece-edit.ts";
import { openPieceFile } from "../../shared-model/files/piece-file.ts";
import { type SaidSection, saidIn } from "../../shared-model/files/piece-said.ts";

import { registrationValue } from "../../shared-model/files/registration-value.ts";
import type { Trouble } from "../../shared-model/files/trouble.ts";
import type { YamlGroup, YamlValue } from "../../shared-model/files/yaml-words.ts";
import {
  type Before,
  type FreeMoment,
  LINK_KINDS,
  type PieceSection,
  type PistonsAllowed,
  type Registration,
} from "../../shared-model/music/piece.ts";
import type { Part, Tempo, Tradition } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { keyText } from "../../shared-model/pitch/key.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { drawnOf, stateOf } from "./section.ts";

import { type DeskPiece, type DeskSection, type DrawnByHand, FRESH_PIECE, type PieceBase } from "./work.ts";

/** What a piece file amounts to on the desk. */
export interface PieceOpened {
  readonly base: PieceBase | null;
  readonly troubles: readonly Trouble[];
  /** The organ that its registrations were made on, where that is another one. */
  readonly otherOrgan: string | null;
}

const ROW = <Value>(parts: readonly Part[], value: (part: Part) => Value | undefined): Record<string, Value> =>
  Object.fromEntries(
    parts.flatMap((part) => {
      const said = value(part);
      return said === undefined ? [] : [[part.id, said]];
    }),
  );

const drawnIn = ({ state, keyboards, octaves }: Registration): DrawnByHand => ({
  ...drawnOf(state, []),
  keyboards: keyboards ?? {},
  octaves,
});

function deskSection(read: PieceSection, at: number, said: SaidSection, pieceTempo: Tempo | null): DeskSection {
  const { section, before, moments, links, registration, steps, pinned } = read;
  const texture = section.texture === null ? null : textureFor(section.texture, section.tradition);
  const usual = (part: Part): Part | undefined => texture?.parts.find((each) => each.id === part.id);
  return {
    id: String(at + 1),
    name: section.name,
    bars: section.bars,
    texture: section.texture,
    parts: section.texture === null ? section.parts : null,
    tradition: section.tradition,
    dynamic: said.dynamic ?? undefined,
    tempo: said.tempo ?? undefined,
    metronome: said.metronome,
    pieceTempo,
    beatsInBar: said.beatsInBar,
    ranges: texture ? ROW(section.parts, (part) => (part.stated ? ([part.low, part.high] as const) : undefined)) : {},
    sounding: texture
      ? ROW(section.parts, (part) => (part.sounding === usual(part)?.sounding ? undefined : part.sounding))
      : {},
    before,
    moments,
    again: said.again,
    links: links.map(({ kind, to }) => ({ kind, to: String(to + 1) })),
    registration: registration && drawnIn(registration),
    steps: steps.map(drawnIn),
    pinned,
  };
}

/** Reads a piece file for the desk. */
export function openPieceText(text: string, fileName: string, instrument: Instrument | null): PieceOpened {
  const { piece, root, troubles } = openPieceFile(text, fileName, instrument);
  if (!piece || !root) return { base: null, troubles, otherOrgan: null };
  const isOther = troubles.some((each) => each.code === "other-organ");
  const said = saidIn(root);
  const { tempo, metronome, beatsInBar } = said.head;
  const sections = piece.sections.map((each, at) => deskSection(each, at, said.sections[at] as SaidSection, tempo));
  const { name, assistant, pistons, practised, pace } = piece;
  const tradition = said.head.tradition ?? "neutral";
  return {
    base: {
      text,
      piece: {
        title: name ?? "",
        assistant,
        pistons,
        practised,
        pace,
        tradition,
        tempo,
        metronome,
        beatsInBar,
        sections,
      },
    },
    troubles,
    otherOrgan: isOther ? piece.organ : null,
  };
}

/** The time before a section as a file has it: a word where that says all. */
function beforeValue({ what, beats, free, turnedBy }: Before): YamlValue {
  const more = {
    ...(beats !== null && { beats }),
    ...(free && { free: { ...free } }),
    ...(turnedBy === "assistant" && { "turned-by": turnedBy }),
  };
  return Object.keys(more).length === 0 ? what : { what, ...more };
}

/** A bar by its number is a number in the file, as people write it. */
const barValue = (bar: string): YamlValue => (/^\d{1,6}$/.test(bar) ? Number(bar) : bar);

const momentValue = ({ limb, beats, bar }: FreeMoment): YamlValue => ({
  limb,
  beats,
  ...(bar !== null && { bar: barValue(bar) }),
});

/** A tempo as a file has it: counted, else in a word. */
function tempoValue({ tempo, metronome }: Pick<DeskSection, "tempo" | "metronome">): YamlValue | null {
  if (!metronome) return tempo ?? null;
  const [beat = "quarter"] = Object.entries(BEATS).find(([, quarters]) => quarters === metronome.quarters) ?? [];
  return { bpm: metronome.bpm, beat };
}

/** Piston numbers as a file has them: how many, where they are the first so many. */
const numbersValue = (numbers: readonly number[]): YamlValue =>
  numbers.every((number, at) => number === at + 1) ? numbers.length : numbers;

function pistonsValue({ generals, divisionals, levels }: PistonsAllowed): YamlValue | null {
  if (generals === null && divisionals === null && levels === null) return null;
  if (generals?.length === 0 && divisionals && Object.keys(divisionals).length === 0 && levels === null) return "none";
  return {
    ...(generals && { generals: numbersValue(generals) }),
    ...(divisionals && {
      divisionals: Object.fromEntries(Object.entries(divisionals).map(([name, each]) => [name, numbersValue(each)])),
    }),
    ...(levels && { levels: numbersValue(levels) }),
  };
}

/** What the piece says of itself, as keys of the file; `null` for what it does not say. */
const headOf = (piece: DeskPiece): Readonly<Record<string, YamlValue | null>> => ({
  tempo: tempoValue(piece),
  "beats-in-bar": piece.beatsInBar,
  assistant: piece.assistant === "none" ? null : piece.assistant,
  pistons: pistonsValue(piece.pistons),
  practised: piece.practised ? null : false,
  pace: piece.pace === "normal" ? null : piece.pace,
});

/** What one section says, as keys of the file; `null` for what it does not say. `usual`: the piece's own tradition. */
function keysOf(section: DeskSection, usual: Tradition): Readonly<Record<string, YamlValue | null>> {
  const rows = Object.entries(section.ranges);
  const filled = <Value extends object>(value: Value): Value | null => (Object.keys(value).length > 0 ? value : null);
  return {
    name: section.name,
    bars: section.bars,
    texture: section.texture,
    tradition: section.tradition === usual ? null : section.tradition,
    dynamic: section.dynamic ?? null,
    tempo: tempoValue(section),
    "beats-in-bar": section.beatsInBar,
    ranges: filled(Object.fromEntries(rows.map(([part, [low, high]]) => [part, [keyText(low), keyText(high)]]))),
    sounding: filled({ ...section.sounding }),
    before: section.before && beforeValue(section.before),
    moments: section.moments.length > 0 ? section.moments.map(momentValue) : null,
    again: section.again ? true : null,
  };
}

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

function drawnValue(drawn: DrawnByHand, instrument: Instrument): YamlGroup {
  const keyboards = Object.keys(drawn.keyboards).length > 0 ? drawn.keyboards : null;
  return registrationValue(instrument, { keyboards, octaves: drawn.octaves, state: stateOf(drawn) });
}

const stepsOf = ({ steps }: DeskSection, instrument: Instrument): readonly YamlGroup[] =>
  steps.map((step) => drawnValue(step, instrument));

const groupOf = (section: DeskSection, usual: Tradition, instrument: Instrument): YamlGroup => ({
  ...Object.fromEntries(Object.entries(keysOf(section, usual)).filter(([, value]) => value !== null)),
  ...(section.registration && { registration: drawnValue(section.registration, instrument) }),
  ...(section.steps.length > 0 && { steps: stepsOf(section, instrument) }),
  ...(section.pinned && { pinned: true }),
});

/** A section whose music is said: others are in no file, for a file must say what is played. */
export const isSaid = (section: DeskSection): boolean => section.texture !== null || section.parts !== null;

/** The edits that lead from one row of sections to another: removed, put in order, new ones added. */
function orderEdits(base: DeskPiece, sections: readonly DeskSection[], instrument: Instrument): readonly PieceEdit[] {
  const edits: PieceEdit[] = [];
  const row = base.sections.map((section) => section.id);
  for (let at = row.length - 1; at >= 0; at--) {
    if (sections.some((section) => section.id === row[at])) continue;
    edits.push({ edit: "remove-section", section: at });
    row.splice(at, 1);
  }
  for (const [at, section] of sections.entries()) {
    if (row[at] === section.id) continue;
    const from = row.indexOf(section.id);
    if (from >= 0) {
      edits.push({ edit: "move-section", section: from, to: at });
      row.splice(from, 1);
    } else edits.push({ edit: "add-section", section: groupOf(section, base.tradition, instrument), at });
    row.splice(at, 0, section.id);
  }
  return edits;
}

/** The edits within sections that were there before. */
function contentEdits(base: DeskPiece, sections: readonly DeskSection[], instrument: Instrument): readonly PieceEdit[] {
  const changes: SectionChange[] = [];
  const keys = sections.flatMap((section, at): readonly PieceEdit[] => {
    const before = base.sections.find((each) => each.id === section.id);
    if (!before || before === section) return [];
    const old = keysOf(before, base.tradition);
    const registration = same(before.registration, section.registration)
      ? {}
      : { registration: section.registration && drawnValue(section.registration, instrument) };
    const steps = same(before.steps, section.steps) ? {} : { steps: stepsOf(section, instrument) };
    const pinned = before.pinned === section.pinned ? {} : { pinned: section.pinned };
    const change = { section: at, ...registration, ...steps, ...pinned };
    if (Object.keys(change).length > 1) changes.push(change);
    return Object.entries(keysOf(section, base.tradition))
      .filter(([key, value]) => !same(old[key] ?? null, value))
      .map(([key, value]): PieceEdit => ({ edit: "set-section-key", section: at, key, value }));
  });
  // All together, for each edit reads the whole text.
  return changes.length > 0 ? [...keys, { edit: "set-registrations", changes }] : keys;
}

/** How links name a section: by its name where that is the only one of its kind, else by its number. */
function linkName(sections: readonly DeskSection[], id: string): string | number {
  const at = sections.findIndex((section) => section.id === id);
  const name = sections[at]?.name?.trim().toLowerCase();
  const alike = sections.filter((section) => section.name?.trim().toLowerCase() === name);
  return name && alike.length === 1 ? (sections[at]?.name as string) : at + 1;
}

/** The edits of links, after all others: sections that went have taken theirs with them, names have been followed. */
function linkEdits(base: DeskPiece, sections: readonly DeskSection[]): readonly PieceEdit[] {
  const isThere = (id: string): boolean => sections.some((section) => section.id === id);
  const wasThere = (id: string): boolean => isThere(id) && base.sections.some((section) => section.id === id);
  return sections.flatMap((section, at) => {
    const before = base.sections.find((each) => each.id === section.id)?.links ?? [];
    return LINK_KINDS.flatMap((kind): readonly PieceEdit[] => {
      const old = before.filter((link) => link.kind === kind && wasThere(link.to)).map((link) => link.to);
      const now = section.links.filter((link) => link.kind === kind && isThere(link.to)).map((link) => link.to);
      if (same(old, now)) return [];
      const names = now.map((id) => linkName(sections, id));
      const value = names.length > 1 ? names : (names[0] ?? null);
      return [{ edit: "set-section-key", section: at, key: kind, value }];
    });
  });
}

/** What a piece is called while nobody has named it. */
const untitled = (instrument: Instrument): string => `Untitled, ${instrument.name}`.slice(0, 190);

/**
 * The text of the piece's file as the desk has it now. Only what differs from `base` is touched: comments, order and
 * keys that the desk knows nothing of keep their bytes. `null` with the troubles when it cannot be written so.
 *
 * @param base the file as it came from outside; `null` for a piece that is in no file yet.
 */
export function pieceTextAfter(
  base: PieceBase | null,
  piece: DeskPiece,
  instrument: Instrument,
): { readonly text: string | null; readonly troubles: readonly Trouble[] } {
  const sections = piece.sections.filter(isSaid);
  const start: PieceBase = base ?? {
    text: "registrant: piece/1\n",
    piece: FRESH_PIECE,
  };
  const title = piece.title.trim() === "" ? null : piece.title.trim();
  const named: readonly PieceEdit[] =
    base && start.piece.title === piece.title
      ? []
      : [{ edit: "set-key", key: "name", value: title ?? untitled(instrument) }];
  const oldHead = headOf(start.piece);
  const helped: readonly PieceEdit[] = Object.entries(headOf(piece))
    .filter(([key, value]) => !same(oldHead[key], value))
    .map(([key, value]) => ({ edit: "set-key", key, value }));
  const edits: readonly PieceEdit[] = [
    ...named,
    ...helped,
    ...(base ? [] : [{ edit: "set-key", key: "organ", value: instrument.name } as const]),
    ...orderEdits(start.piece, sections, instrument),
    ...contentEdits(start.piece, sections, instrument),
    ...linkEdits(start.piece, sections),
  ];
  if (edits.length === 0) return { text: start.text, troubles: [] };
  return editPieceFile(start.text, edits);
}
