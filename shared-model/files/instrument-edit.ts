import { type Compass, keyText } from "../pitch/key.ts";
import { understandName } from "../stoplist/glossary/glossary.ts";
import type { Division, Instrument, Stop } from "../stoplist/instrument.ts";
import { aidsPatches } from "./aids-patches.ts";
import { consolePatches, type StatedConsole } from "./console-patches.ts";
import { type CouplerText, couplerName, readCouplerText } from "./coupler-text.ts";
import { divisionMentions } from "./division-mentions.ts";
import type { InstrumentEdit } from "./instrument-change.ts";
import { openInstrumentFile } from "./instrument-file.ts";
import { folded, nearestOf } from "./nearest.ts";
import { reporterFor } from "./reporter.ts";
import { shortForm } from "./short-stop.ts";
import { findStops, stopIndex, stopLabel, stopWords } from "./stop-name.ts";
import { partStopText, type StopText } from "./stop-text.ts";
import { type Patch, type Patches, patched, YamlPatcher } from "./text-patch.ts";
import type { EditTrouble, Trouble } from "./trouble.ts";
import { visitPatches } from "./visit-entry.ts";
import { Names } from "./voice.ts";
import type { Located } from "./yaml-text.ts";
import type { YamlValue } from "./yaml-words.ts";

/** The text after the edits; `null` when it was left as it was, and the troubles say why. */
export interface EditedFile {
  readonly text: string | null;
  readonly troubles: readonly Trouble[];
}

/** Why no patches: the trouble itself. */
class Refusal {
  readonly trouble: EditTrouble;
  constructor(trouble: EditTrouble) {
    this.trouble = trouble;
  }
}

interface Place {
  readonly division: Division;
  readonly node: Located;
}
interface StopPlace extends Place {
  readonly stop: Stop;
  readonly index: number;
  readonly list: Located;
  readonly item: Located;
}

const DIVISION_HEAD = ["name", "kind", "keyboard", "compass", "divided-at", "enclosed"];
/** The pitch comes behind these keys. */
const BEFORE_PITCH = ["registrant", "name", "place", "builder", "year", "history", "note"];
/** The room comes behind these. */
const BEFORE_ROOM = [...BEFORE_PITCH, "a4", "temperament"];
/** Couplers come behind these keys. */
const BEFORE_COUPLERS = ["divisions", "ranks"];
/** Tremulants come behind these. */
const BEFORE_TREMULANTS = [...BEFORE_COUPLERS, "couplers", "through-couplers"];

/** Turns one edit into patches of one text; every method throws a {@link Refusal} when it cannot. */
class InstrumentEditor {
  readonly #instrument: Instrument;
  readonly #root: Located;
  readonly #patcher: YamlPatcher;
  readonly #names = new Names();

  constructor(text: string, root: Located, instrument: Instrument) {
    this.#root = root;
    this.#instrument = instrument;
    this.#patcher = new YamlPatcher(text);
  }

  patches(edit: InstrumentEdit): readonly Patch[] {
    switch (edit.edit) {
      case "rename-stop":
        return this.#renameStop(this.#stop(edit.stop), edit.name);
      case "rename-division":
        return this.#renameDivision(this.#division(edit.division), edit.name);
      case "mark-off":
        return this.#setStopKey(this.#stop(edit.stop), "off", edit.note ?? true);
      case "mark-on":
        return this.#removeStopKey(this.#stop(edit.stop), "off");
      case "set-strength": {
        const place = this.#stop(edit.stop);
        return edit.strength === null
          ? this.#removeStopKey(place, "strength")
          : this.#setStopKey(place, "strength", edit.strength);
      }
      case "set-brightness": {
        const place = this.#stop(edit.stop);
        return edit.brightness === null
          ? this.#removeStopKey(place, "brightness")
          : this.#setStopKey(place, "brightness", edit.brightness);
      }
      case "set-room":
        return sure(
          edit.room === null
            ? this.#patcher.removeKey(this.#root, "room")
            : this.#patcher.setKey(this.#root, "room", edit.room, BEFORE_ROOM),
          "room",
        );
      case "add-stop": {
        const { node, division } = this.#division(edit.division);
        return sure(
          this.#patcher.insertItem(node, "stops", edit.at ?? division.stops.length, edit.stop),
          division.name,
        );
      }
      case "remove-stop": {
        const { list, index, stop } = this.#stop(edit.stop);
        return sure(this.#patcher.removeItem(list, index), stop.id);
      }
      case "move-stop": {
        const { list, index, stop } = this.#stop(edit.stop);
        const { node } = this.#division(edit.division);
        return sure(this.#patcher.moveItem(list, index, node, "stops", Math.max(0, edit.at)), stop.id);
      }
      case "set-enclosed": {
        const { node, division } = this.#division(edit.division);
        const patches =
          edit.box === false
            ? this.#patcher.removeKey(node, "enclosed")
            : this.#patcher.setKey(node, "enclosed", edit.box, DIVISION_HEAD);
        return sure(patches, division.name);
      }
      case "set-compass":
        return this.#setCompass(this.#division(edit.division), edit.compass);
      case "add-coupler":
        return this.#addCoupler(edit.coupler, edit);
      case "remove-coupler":
        return this.#removeCoupler(edit.coupler);
      case "set-name":
        return sure(this.#patcher.setKey(this.#root, "name", edit.name.trim(), ["registrant"]), "name");
      case "set-tremulants":
        return sure(
          edit.tremulants.length === 0
            ? this.#patcher.removeKey(this.#root, "tremulants")
            : this.#patcher.setKey(this.#root, "tremulants", edit.tremulants, BEFORE_TREMULANTS),
          "tremulants",
        );
      case "set-same-as": {
        const place = this.#stop(edit.stop);
        return edit.lender === null
          ? this.#removeStopKey(place, "same-as")
          : this.#setStopKey(place, "same-as", edit.lender);
      }
      case "set-aids":
        return sure(aidsPatches(this.#root, this.#instrument.aids, edit.aids, this.#patcher), "aids");
      case "set-side": {
        const { division } = this.#division(edit.division);
        const stated = this.#console();
        const at = (side: "left" | "right"): readonly string[] =>
          this.#instrument.divisions
            .map(({ name }) => name)
            .filter((name) => (name === division.name ? edit.side === side : stated[side].includes(name)));
        const now = { ...stated, left: at("left"), right: at("right") };
        return sure(consolePatches(this.#root, stated, now, this.#patcher), "console");
      }
      case "set-action": {
        const stated = this.#console();
        return sure(consolePatches(this.#root, stated, { ...stated, action: edit.action }, this.#patcher), "console");
      }
      case "set-pitch":
        return sure(this.#patcher.setKey(this.#root, "a4", edit.a4, BEFORE_PITCH), "a4");
      case "set-visit":
        return sure(visitPatches(this.#root, edit.topic, edit.answer, this.#patcher), "visit");
    }
  }

  #console(): StatedConsole {
    return this.#instrument.console ?? { action: null, left: [], right: [] };
  }

  #value(key: string): Located | undefined {
    return this.#root.entries?.get(key)?.node;
  }

  #divisionNode(index: number): Located {
    const list = this.#value("divisions");
    const node = list?.items?.[index];
    if (!node || list?.alias || node.alias) throw byHand("The list of divisions");
    return node;
  }

  #division(name: string): Place {
    const names = this.#instrument.divisions.map((division) => division.name);
    const index = names.indexOf(name);
    const division = this.#instrument.divisions[index];
    if (!division) throw new Refusal({ code: "edit-lost", what: "division", name, nearest: nearestOf(name, names) });
    return { division, node: this.#divisionNode(index) };
  }

  #stop(id: string): StopPlace {
    for (const [at, division] of this.#instrument.divisions.entries()) {
      const index = division.stops.findIndex((stop) => stop.id === id);
      const stop = division.stops[index];
      if (!stop) continue;
      const node = this.#divisionNode(at);
      const list = node.entries?.get("stops")?.node;
      const item = list?.items?.[index];
      if (!list || !item || list.alias || item.alias) throw byHand(id);
      return { division, node, stop, index, list, item };
    }
    const ids = this.#instrument.divisions.flatMap((division) => division.stops.map((stop) => stop.id));
    throw new Refusal({ code: "edit-lost", what: "stop", name: id, nearest: nearestOf(id, ids) });
  }

  /** What the text of a stop says, parted as it was when the stop was read. */
  #parted({ stop, item }: StopPlace): { readonly node: Located; readonly text: StopText } {
    const node = item.entries ? item.entries.get("name")?.node : item;
    const words = node && !node.alias ? String(node.value) : "";
    const said = (key: string): boolean => item.entries?.has(key) ?? false;
    const take = { half: !said("half"), pitch: !said("pitch"), ranks: !said("ranks") };
    const tries = [
      take,
      { ...take, half: false },
      { ...take, ranks: false },
      { half: false, pitch: take.pitch, ranks: false },
    ];
    const text = tries.map((each) => partStopText(words, each)).find((each) => each.name === stop.name);
    if (!node || !text) throw byHand(stop.id);
    return { node, text };
  }

  #longForm(place: StopPlace, more: Readonly<Record<string, YamlValue | undefined>>): readonly Patch[] {
    const { text } = this.#parted(place);
    const { printedPitch } = text;
    const pitch = printedPitch === null ? undefined : /^\d+$/.test(printedPitch) ? Number(printedPitch) : printedPitch;
    const value = { name: text.name, ranks: text.ranks ?? undefined, pitch, half: text.half ?? undefined, ...more };
    return [this.#patcher.replace(place.item, value, this.#patcher.inBrackets(place.list))];
  }

  #setStopKey(place: StopPlace, key: string, value: YamlValue): readonly Patch[] {
    if (!place.item.entries) return this.#longForm(place, { [key]: value });
    return sure(this.#patcher.setKey(place.item, key, value), place.stop.id);
  }

  #removeStopKey(place: StopPlace, key: string): readonly Patch[] {
    return place.item.entries ? sure(this.#patcher.removeKey(place.item, key), place.stop.id) : [];
  }

  #renameStop(place: StopPlace, newName: string): readonly Patch[] {
    const { stop, division, item } = place;
    const { node, text } = this.#parted(place);
    const name = newName.trim();
    const pedal = division.kind === "pedal";
    const { pitch } = stop;
    const known =
      item.entries?.has("kind") ||
      item.entries?.has("rank") ||
      item.entries?.has("same-as") ||
      understandName(name, { pedal, pitch, ranks: text.ranks ?? null }).sure;
    const kind = known ? undefined : stop.kinds.length === 1 ? stop.kinds[0] : stop.kinds;
    const references = this.#references(stop, (label) => label(name));
    if (!item.entries) {
      const short = kind === undefined ? shortForm({ ...text, name }, pedal, this.#names) : null;
      const own =
        short === null
          ? this.#longForm(place, { name, kind })
          : [this.#patcher.replace(item, short, this.#patcher.inBrackets(place.list))];
      return [...own, ...references];
    }
    const words = [
      name,
      text.ranks === null ? null : stopWords({ name: "", pitch: null, half: null, ranks: text.ranks }, true).trim(),
      text.printedPitch,
      text.half,
    ]
      .filter((word) => word !== null && word !== "")
      .join(" ");
    const kindPatches = kind === undefined ? [] : sure(this.#patcher.setKey(item, "kind", kind), stop.id);
    return [this.#patcher.replace(node, words, this.#patcher.inBrackets(item)), ...kindPatches, ...references];
  }

  /** Patches for every `same-as` and `bass-from` that points to the stop; `rewrite` gets a maker of its words under a new name. */
  #references(stop: Stop, rewrite: (label: (name: string) => string) => string): readonly Patch[] {
    return this.#pointers().flatMap(({ node, map, division, prefix, text }) => {
      const index = stopIndex(division.stops, division.stops.map(stopLabel));
      const found = findStops(text, index);
      if (!found.stops?.includes(stop)) return [];
      const words = rewrite((name) => stopWords({ ...stop, name }));
      return [
        this.#patcher.replace(node, `${prefix === null ? "" : `${prefix}/`}${words}`, this.#patcher.inBrackets(map)),
      ];
    });
  }

  /** Every `same-as` and `bass-from` of the file, with the division it points into. */
  #pointers(): readonly { node: Located; map: Located; division: Division; prefix: string | null; text: string }[] {
    return this.#instrument.divisions.flatMap((own, at) =>
      (this.#divisionNode(at).entries?.get("stops")?.node.items ?? []).flatMap((item) =>
        ["same-as", "bass-from"].flatMap((key) => {
          const node = item.entries?.get(key)?.node;
          if (!node) return [];
          const words = String(node.value);
          const stroke = words.indexOf("/");
          const head = words.slice(0, Math.max(0, stroke));
          const named = this.#instrument.divisions.find((division) => folded(division.name) === folded(head));
          const prefix = named && stroke > 0 ? head : null;
          return [
            {
              node,
              map: item,
              division: named ?? own,
              prefix,
              text: (prefix === null ? words : words.slice(stroke + 1)).trim(),
            },
          ];
        }),
      ),
    );
  }

  #renameDivision({ division, node }: Place, newName: string): readonly Patch[] {
    const name = newName.trim();
    const names = this.#instrument.divisions.map((each) => each.name);
    const pointers = this.#pointers()
      .filter((pointer) => pointer.division === division && pointer.prefix !== null)
      .map(({ node: pointer, map, text }) =>
        this.#patcher.replace(pointer, `${name}/${text}`, this.#patcher.inBrackets(map)),
      );
    return [
      ...sure(this.#patcher.setKey(node, "name", name), division.name),
      ...divisionMentions(this.#root, division.name, name, names, this.#patcher),
      ...pointers,
    ];
  }

  #setCompass({ division, node }: Place, compass: Compass): readonly Patch[] {
    const [low, high] = [keyText(compass.low), keyText(compass.high)];
    const missing = compass.missing.map(keyText);
    const there = node.entries?.get("compass")?.node;
    if (!there?.entries) {
      const value = missing.length === 0 ? `${low}-${high}` : { low, high, missing };
      return sure(this.#patcher.setKey(node, "compass", value, DIVISION_HEAD.slice(0, 3)), division.name);
    }
    const lacking =
      missing.length === 0
        ? this.#patcher.removeKey(there, "missing")
        : this.#patcher.setKey(there, "missing", missing);
    const ends = (
      [
        ["low", low, division.compass.low, compass.low],
        ["high", high, division.compass.high, compass.high],
      ] as const
    ).flatMap(([key, text, before, after]) =>
      before === after ? [] : sure(this.#patcher.setKey(there, key, text), division.name),
    );
    const same = compass.missing.join() === division.compass.missing.join();
    return [...ends, ...(same ? [] : sure(lacking, division.name))];
  }

  #addCoupler(coupler: CouplerText, extra: { readonly fixed?: boolean; readonly through?: boolean }): readonly Patch[] {
    const name = couplerName(coupler);
    const long = extra.fixed !== undefined || extra.through !== undefined;
    const value: YamlValue = long ? { coupler: name, fixed: extra.fixed, through: extra.through } : name;
    const count = this.#value("couplers")?.items?.length ?? 0;
    return sure(this.#patcher.insertItem(this.#root, "couplers", count, value, BEFORE_COUPLERS), name);
  }

  #removeCoupler(name: string): readonly Patch[] {
    const names = this.#instrument.divisions.map((division) => division.name);
    const list = this.#value("couplers");
    const texts = (list?.items ?? []).map((item) => String(item.entries?.get("coupler")?.node.value ?? item.value));
    const index = texts.findIndex((text) => {
      const read = readCouplerText(text, names);
      return read !== null && "coupler" in read && couplerName(read.coupler) === name;
    });
    if (!list || index < 0) {
      const nearest = nearestOf(
        name,
        this.#instrument.couplers.map((coupler) => coupler.name),
      );
      throw new Refusal({ code: "edit-lost", what: "coupler", name, nearest });
    }
    return sure(this.#patcher.removeItem(list, index), name);
  }
}

const byHand = (what: string): Refusal => new Refusal({ code: "edit-by-hand", what });

function sure(patches: Patches, what: string): readonly Patch[] {
  if (!patches) throw byHand(what);
  return patches;
}

function patchesFor(editor: InstrumentEditor, edit: InstrumentEdit): readonly Patch[] | Refusal {
  try {
    return editor.patches(edit);
  } catch (refusal) {
    if (refusal instanceof Refusal) return refusal;
    throw refusal;
  }
}

/**
 * The text of an instrument file after some changes, made one after the other. Only the lines of the entries that change are
 * touched: comments, order, unknown keys and all else keep their bytes, and without edits the text stays as it is.
 *
 * The changes are made together or not at all. They are refused when the file has errors before or would have after them (the
 * troubles then have the places of the text as it would be), or when an entry is shared through a `*name`.
 */
export function editInstrumentFile(
  text: string,
  edits: readonly InstrumentEdit[],
  fileName = "the instrument",
): EditedFile {
  let current = text;
  for (const edit of edits) {
    const { root, instrument, troubles } = openInstrumentFile(current, fileName);
    if (!root || !instrument) return { text: null, troubles };
    const patches = patchesFor(new InstrumentEditor(current, root, instrument), edit);
    if (patches instanceof Refusal) {
      const reporter = reporterFor(fileName, () => ({ line: 1, column: 1 }));
      reporter.report(patches.trouble, 0);
      return { text: null, troubles: reporter.troubles() };
    }
    current = patched(current, patches);
  }
  const { instrument, troubles } = openInstrumentFile(current, fileName);
  return { text: instrument ? current : null, troubles };
}
