import { LIMBS, LINK_KINDS } from "../music/piece.ts";
import { type KnownKeys, nextStep } from "./deep-edit.ts";
import { openFile } from "./file-head.ts";
import { folded } from "./nearest.ts";
import { openPieceFile } from "./piece-file.ts";
import { sectionsMeant, sectionWords } from "./piece-links.ts";
import { beforeSchema, momentSchema, pieceHeadSchema, pieceSectionSchema, pistonsSchema } from "./piece-schema.ts";
import { reporterFor } from "./reporter.ts";
import { type Patch, type Patches, patched, YamlPatcher } from "./text-patch.ts";
import type { EditTrouble, Trouble } from "./trouble.ts";
import type { Located } from "./yaml-text.ts";
import { groupLines, isGroup, type YamlGroup, type YamlValue } from "./yaml-words.ts";

/** What one section's console is to say; a key left out of it stays as the file has it, `null` takes it away. */
export interface SectionChange {
  /** Place of the section, from 0. */
  readonly section: number;
  /** As `registrationValue` makes it. */
  readonly registration?: YamlGroup | null;
  readonly steps?: readonly YamlGroup[] | null;
  readonly pinned?: boolean | null;
}

/** A change to a piece file. Sections are named by their places, from 0. */
export type PieceEdit =
  /** `key`: one of the piece's own keys, not its sections; `null` takes it away. */
  | { readonly edit: "set-key"; readonly key: string; readonly value: YamlValue | null }
  /** `key`: one of a section's keys; `null` takes it away. A new name is put into the links that use the old one. */
  | {
      readonly edit: "set-section-key";
      readonly section: number;
      readonly key: string;
      readonly value: YamlValue | null;
    }
  | { readonly edit: "set-registrations"; readonly changes: readonly SectionChange[] }
  /** `section`: its keys; `at`: its place, the end when left out. */
  | { readonly edit: "add-section"; readonly section: YamlGroup; readonly at?: number }
  /** `to`: its new place, itself not counted. */
  | { readonly edit: "move-section"; readonly section: number; readonly to: number }
  /** Links to it are taken away with it. */
  | { readonly edit: "remove-section"; readonly section: number };

/** The text after the edits; `null` when it was left as it was, and the troubles say why. */
export interface EditedPiece {
  readonly text: string | null;
  readonly troubles: readonly Trouble[];
}

class Refusal {
  readonly trouble: EditTrouble;
  constructor(trouble: EditTrouble) {
    this.trouble = trouble;
  }
}

const HEAD_KEYS = Object.keys(pieceHeadSchema.shape).filter((key) => key !== "sections");
const SECTION_KEYS = Object.keys(pieceSectionSchema.shape);

/** The text of a piece on its way through an edit. */
class PieceText {
  readonly text: string;
  readonly root: Located;
  readonly patcher: YamlPatcher;

  constructor(text: string) {
    const { root } = openFile(text, "", "piece");
    if (!root) throw new Refusal({ code: "edit-by-hand", what: "This piece" });
    this.text = text;
    this.root = root;
    this.patcher = new YamlPatcher(text);
  }

  get nodes(): readonly Located[] {
    return this.root.entries?.get("sections")?.node.items ?? [];
  }

  get names(): readonly (string | null)[] {
    return this.nodes.map((node) => {
      const name = (node.value as { readonly name?: unknown } | null)?.name;
      return typeof name === "string" ? name : null;
    });
  }

  section(at: number): Located {
    const node = this.nodes[at];
    if (node) return node;
    throw new Refusal({ code: "edit-lost", what: "section", name: String(at + 1), nearest: [] });
  }

  words(at: number): string {
    return sectionWords(this.names[at] ?? null, at);
  }

  /** The text after the patches; refused when there are none because only a person can make the change. */
  after(patches: Patches, what: string): PieceText {
    if (!patches) throw new Refusal({ code: "edit-by-hand", what });
    return patches.length === 0 ? this : new PieceText(patched(this.text, patches));
  }
}

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** A group without the keys that have no value. */
const filled = (group: YamlGroup): YamlGroup =>
  Object.fromEntries(Object.entries(group).filter(([, value]) => value !== undefined));

/** Whether what stands there can be changed key by key, so that comments in it stay. */
const canGoOn = (node: Located, value: unknown, flow: boolean): value is YamlGroup =>
  isGroup(value) &&
  !flow &&
  !node.alias &&
  (node.pairs ?? []).some((pair) => pair.node.value !== null && filled(value)[pair.key] !== undefined);

/** Replaces and removes what stands in a group: the first of two passes. Keys not named in `wanted` are left alone. */
function replaced(piece: PieceText, map: Located, wanted: Readonly<Record<string, YamlValue | null>>): Patch[] {
  const { patcher } = piece;
  return Object.entries(wanted).flatMap(([key, value]): readonly Patch[] => {
    const pair = map.pairs?.find((each) => each.key === key);
    if (!pair || (pair.node.value === null && value !== null)) return [];
    if (value === null) return patcher.removeKey(map, key) ?? byHand(key);
    const { node } = pair;
    if (same(node.value, value)) return [];
    if (!canGoOn(node, value, patcher.inBrackets(node))) return patcher.setKey(map, key, value) ?? byHand(key);
    const inner: Record<string, YamlValue | null> = {};
    for (const each of node.pairs ?? []) inner[each.key] = null;
    return replaced(piece, node, { ...inner, ...(filled(value) as Record<string, YamlValue>) });
  });
}

/** Adds what does not stand there yet: the second pass. Outer groups come first, since both may end at one place. */
function added(piece: PieceText, map: Located, wanted: Readonly<Record<string, YamlValue | null>>): Patch[] {
  const { patcher } = piece;
  const fresh = Object.entries(wanted).filter(([key, value]) => value !== null && !map.entries?.has(key));
  const empty = fresh.filter(([key]) => map.pairs?.some((pair) => pair.key === key));
  const lines = groupLines(Object.fromEntries(fresh.filter((each) => !empty.includes(each))) as YamlGroup);
  const inBrackets = patcher.inBrackets(map);
  const own = inBrackets
    ? fresh.slice(0, 1).flatMap(([key, value]) => patcher.setKey(map, key, value as YamlValue) ?? byHand(key))
    : [
        ...(lines.length > 0 ? (patcher.addLines(map, lines) ?? byHand("the section")) : []),
        ...empty.flatMap(([key, value]) => patcher.setKey(map, key, value as YamlValue) ?? byHand(key)),
      ];
  const inner = Object.entries(wanted).flatMap(([key, value]) => {
    const node = map.entries?.get(key)?.node;
    if (!node || value === null || same(node.value, value) || !canGoOn(node, value, patcher.inBrackets(node)))
      return [];
    return added(piece, node, filled(value) as Record<string, YamlValue>);
  });
  return [...own, ...inner];
}

function byHand(what: string): never {
  throw new Refusal({ code: "edit-by-hand", what });
}

/** Puts what is wanted of several sections into the text, keeping all that stays. */
function setRegistrations(start: PieceText, changes: readonly SectionChange[]): PieceText {
  const wanted = changes.map(({ section, ...keys }) => {
    const group: Record<string, YamlValue | null> = {};
    if (keys.registration !== undefined) group.registration = keys.registration && filled(keys.registration);
    if (keys.steps !== undefined) group.steps = keys.steps && keys.steps.length > 0 ? keys.steps.map(filled) : null;
    if (keys.pinned !== undefined) group.pinned = keys.pinned === true ? true : null;
    return { section, group };
  });
  const first = wanted.flatMap(({ section, group }) => replaced(start, start.section(section), group));
  let piece = start.after(first, "The piece");
  // Inside brackets one key at a time is added; with lines one round does.
  for (let round = 0; round < 3; round++) {
    const more = wanted.flatMap(({ section, group }) => added(piece, piece.section(section), group));
    if (more.length === 0) break;
    piece = piece.after(more, "The piece");
  }
  return piece;
}

/** Rewrites links: `place` gives a section's new number place, `null` where it is gone; `name` its new name, if it has one. */
function relinked(
  before: PieceText,
  after: PieceText,
  place: (at: number) => number | null,
  name: (at: number) => string | null = () => null,
): PieceText {
  const { patcher } = after;
  const oldNames = before.names;
  const patches = after.nodes.flatMap((node) =>
    LINK_KINDS.flatMap((kind): readonly Patch[] => {
      const value = node.entries?.get(kind)?.node;
      if (!value || value.alias) return [];
      const items = value.items ?? [value];
      const meant = items.map((item) => {
        const [at, ...others] = sectionsMeant(String(item.value), oldNames);
        return at === undefined || others.length > 0 ? undefined : at;
      });
      const gone = meant.map((at) => at !== undefined && place(at) === null);
      if (gone.some(Boolean)) {
        const left = items.filter((_, index) => !gone[index]).map((item) => item.value as YamlValue);
        return (left.length === 0 ? patcher.removeKey(node, kind) : patcher.setKey(node, kind, left)) ?? byHand(kind);
      }
      return items.flatMap((item, index) => {
        const at = meant[index];
        if (at === undefined) return [];
        const byNumber = !isNamed(oldNames[at] ?? null, item);
        const there = place(at) as number;
        // A section may have been given a name that is a number: then numbers alone no longer tell.
        const taken = sectionsMeant(there + 1, after.names)[0] !== there;
        const now = byNumber ? ((taken ? after.names[there] : null) ?? there + 1) : name(at);
        if (now === null || String(now) === String(item.value)) return [];
        return [patcher.replace(item, now, patcher.inBrackets(value.items ? value : node))];
      });
    }),
  );
  return after.after(patches, "A link");
}

/** Whether a link names the section, and does not count it. */
const isNamed = (name: string | null, item: Located): boolean =>
  name !== null && folded(name) === folded(String(item.value));

function moved(piece: PieceText, section: number, to: number): PieceText {
  const list = piece.root.entries?.get("sections")?.node;
  piece.section(section);
  const target = Math.max(0, Math.min(to, piece.nodes.length - 1));
  if (!list || target === section) return piece;
  const after = piece.after(
    piece.patcher.moveItem(list, section, piece.root, "sections", target),
    piece.words(section),
  );
  const order = piece.nodes.map((_, at) => at).filter((at) => at !== section);
  order.splice(target, 0, section);
  return relinked(piece, after, (at) => order.indexOf(at));
}

/** Keys inside groups of a piece file; what else stands in such a group is somebody's own. */
const KNOWN: KnownKeys = {
  before: Object.keys(beforeSchema.shape),
  free: LIMBS,
  moments: Object.keys(momentSchema.shape),
  pistons: Object.keys(pistonsSchema.shape),
  tempo: ["bpm", "beat"],
};

/** More small changes than any value of a file takes. */
const MOST_STEPS = 2000;

/** Gives a key of a group its value in small changes, so that what stands there already keeps its bytes. */
function put(
  start: PieceText,
  group: (piece: PieceText) => Located,
  key: string,
  value: YamlValue | null,
  order: readonly string[],
  what: string,
): PieceText {
  let piece = start;
  for (let count = 0; count < MOST_STEPS; count++) {
    const step = nextStep(piece.patcher, group(piece), key, value, KNOWN, keysBefore(order, key));
    if (!step) return piece;
    piece = piece.after(step.patches, what);
  }
  throw new Refusal({ code: "edit-by-hand", what });
}

function setSectionKey(piece: PieceText, section: number, key: string, value: YamlValue | null): PieceText {
  const after = put(piece, (each) => each.section(section), key, value, SECTION_KEYS, piece.words(section));
  if (key !== "name") return after;
  return relinked(
    piece,
    after,
    (at) => at,
    (at) => (at === section && typeof value === "string" ? value : null),
  );
}

/** Keys that stand before `key` in the usual order, so that a new one finds its place. */
const keysBefore = (order: readonly string[], key: string): readonly string[] =>
  order.includes(key) ? order.slice(0, order.indexOf(key)) : [];

function edited(piece: PieceText, edit: PieceEdit): PieceText {
  switch (edit.edit) {
    case "set-key":
      return put(piece, (each) => each.root, edit.key, edit.value, HEAD_KEYS, `${edit.key}:`);
    case "set-section-key":
      return setSectionKey(piece, edit.section, edit.key, edit.value);
    case "set-registrations":
      return setRegistrations(piece, edit.changes);
    case "add-section": {
      const at = Math.max(0, Math.min(edit.at ?? piece.nodes.length, piece.nodes.length));
      const value = filled(edit.section);
      const patches = piece.patcher.insertGroup(piece.root, "sections", at, groupLines(value), value, HEAD_KEYS);
      return relinked(piece, piece.after(patches, "The list of sections"), (each) => (each < at ? each : each + 1));
    }
    case "move-section":
      return moved(piece, edit.section, edit.to);
    case "remove-section": {
      const { section } = edit;
      piece.section(section);
      const list = piece.root.entries?.get("sections")?.node;
      const after = piece.after(list ? piece.patcher.removeItem(list, section) : null, piece.words(section));
      return relinked(piece, after, (at) => (at === section ? null : at > section ? at - 1 : at));
    }
  }
}

/**
 * The text of a piece file after some changes, made one after the other. Only the lines of what changes are touched:
 * comments, order, unknown keys and all else keep their bytes, and without edits the text stays as it is.
 *
 * The changes are made together or not at all. They are refused when the file has errors before or would have after them,
 * or when an entry is written in a way that only a person can change (shared through a `*name`).
 */
export function editPieceFile(text: string, edits: readonly PieceEdit[], fileName = "the piece"): EditedPiece {
  const before = openPieceFile(text, fileName, null);
  if (!before.piece) return { text: null, troubles: before.troubles };
  let current = text;
  try {
    for (const edit of edits) current = edited(new PieceText(current), edit).text;
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    const reporter = reporterFor(fileName, () => ({ line: 1, column: 1 }));
    reporter.report(refusal.trouble, 0);
    return { text: null, troubles: reporter.troubles() };
  }
  const { piece, troubles } = openPieceFile(current, fileName, null);
  return { text: piece ? current : null, troubles };
}
