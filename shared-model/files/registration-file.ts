import type { z } from "zod";
import type { BoxPosition, ConsoleState } from "../console/state.ts";
import type { Registration } from "../music/piece.ts";
import { understandName } from "../stoplist/glossary/glossary.ts";
import type { Division, Instrument, Stop } from "../stoplist/instrument.ts";
import { namedDivision, readCoupler } from "./console-entry.ts";
import { openFile } from "./file-head.ts";
import { CATALOGUE, type KnownTextures } from "./known-textures.ts";
import { readMusic, reportStrangeParts, type WrittenMusic } from "./music-entry.ts";
import { registrationSchema, type registrationShape } from "./music-schema.ts";
import { folded, nearestOf } from "./nearest.ts";
import type { Reporter } from "./reporter.ts";
import { readShape, UnknownKeys } from "./shape.ts";
import { findStops, type StopIndex, stopIndex, stopLabel } from "./stop-name.ts";
import { partStopText } from "./stop-text.ts";
import type { Trouble } from "./trouble.ts";
import type { Located } from "./yaml-text.ts";

/** A hand-drawn registration: the music it is for and how the console stands. */
export interface WrittenRegistration extends WrittenMusic, Registration {}

/** What a registration file amounts to on one instrument. */
export interface RegistrationReading {
  /** `null` when any trouble is an error. */
  readonly registration: WrittenRegistration | null;
  /** In the order of the file. */
  readonly troubles: readonly Trouble[];
}

type Read = Pick<z.infer<typeof registrationSchema>, keyof typeof registrationShape>;

/** Reads what a file says against one instrument. */
class ConsoleReader {
  readonly #instrument: Instrument;
  readonly #divisions: readonly string[];
  readonly #root: Located;
  readonly #reporter: Reporter;

  constructor(instrument: Instrument, root: Located, reporter: Reporter) {
    this.#instrument = instrument;
    this.#divisions = instrument.divisions.map((division) => division.name);
    this.#root = root;
    this.#reporter = reporter;
  }

  #entries(key: string): readonly (readonly [string, { readonly keyStart: number; readonly node: Located }])[] {
    return [...(this.#root.entries?.get(key)?.node.entries ?? [])];
  }

  #items(key: string): readonly Located[] {
    return this.#root.entries?.get(key)?.node.items ?? [];
  }

  #division(name: string, offset: number): Division | null {
    const found = namedDivision(name, offset, this.#divisions, this.#reporter);
    return this.#instrument.divisions.find((division) => division.name === found) ?? null;
  }

  state(): ConsoleState {
    return {
      drawn: this.#drawn(),
      couplers: this.#couplers(),
      tremulants: this.#tremulants(),
      boxes: this.#boxes(),
      unisonOff: this.#unisonOff(),
    };
  }

  keyboards(read: Read): WrittenRegistration["keyboards"] {
    if (!read.keyboards) return null;
    const keyboards: [string, string][] = [];
    for (const [part, { node }] of this.#entries("keyboards")) {
      const division = this.#division(node.value as string, node.start);
      if (division?.kind === "floating")
        this.#reporter.report({ code: "no-keyboard", division: division.name }, node.start);
      else if (division) keyboards.push([part, division.name]);
    }
    return Object.fromEntries(keyboards);
  }

  #drawn(): ReadonlySet<string> {
    const drawn = new Set<string>();
    for (const [name, { keyStart, node }] of this.#entries("drawn")) {
      const division = this.#division(name, keyStart);
      if (!division) continue;
      const index = stopIndex(division.stops, division.stops.map(stopLabel));
      for (const item of node.items ?? []) {
        if (this.#reporter.full()) return drawn;
        for (const stop of this.#stops(item.value as string, item.start, division, index)) {
          if (drawn.has(stop.id)) this.#reporter.report({ code: "drawn-twice", stop: stopLabel(stop) }, item.start);
          else if (stop.off)
            this.#reporter.report({ code: "stop-off", stop: stopLabel(stop), note: stop.note }, item.start);
          drawn.add(stop.id);
        }
      }
    }
    return drawn;
  }

  #stops(text: string, offset: number, division: Division, index: StopIndex<Stop>): readonly Stop[] {
    const found = findStops(text, index);
    if (found.stops) return found.stops;
    if (found.why === "ambiguous") {
      this.#reporter.report({ code: "ambiguous-stop", name: text, choices: found.choices }, offset);
      return [];
    }
    const nearest = [...new Set([...alikeInSound(text, division), ...found.nearest])].slice(0, 4);
    const where = `the ${division.name}`;
    this.#reporter.report({ code: "unknown-name", what: "stop", name: text, where, nearest }, offset);
    return [];
  }

  #couplers(): ReadonlySet<string> {
    const couplers = new Set<string>();
    const names = this.#instrument.couplers.map((coupler) => coupler.name);
    for (const item of this.#items("couplers")) {
      const read = readCoupler(item.value as string, item.start, this.#divisions, this.#reporter);
      if (!read) continue;
      if (names.includes(read.name)) couplers.add(read.name);
      else {
        const nearest = names.length <= 6 ? names : nearestOf(read.name, names);
        this.#reporter.report(
          { code: "unknown-name", what: "coupler", name: read.name, where: "the organ", nearest },
          item.start,
        );
      }
    }
    return couplers;
  }

  #tremulants(): ReadonlySet<string> {
    const { tremulants } = this.#instrument;
    const on = new Set<string>();
    for (const item of this.#items("tremulants")) {
      const found = tremulants.find((name) => folded(name) === folded(item.value as string));
      if (found !== undefined) on.add(found);
      else this.#reporter.report({ code: "no-tremulant", name: item.value as string, nearest: tremulants }, item.start);
    }
    return on;
  }

  #boxes(): ReadonlyMap<string, BoxPosition> {
    const boxes = new Map<string, BoxPosition>();
    const named = [
      ...new Set(this.#instrument.divisions.map((division) => division.box).filter((box) => box !== null)),
    ];
    for (const [name, { keyStart, node }] of this.#entries("boxes")) {
      const division = this.#instrument.divisions.find((each) => folded(each.name) === folded(name));
      const box = named.find((each) => folded(each) === folded(name)) ?? division?.box ?? null;
      if (box !== null) boxes.set(box, node.value as BoxPosition);
      else if (division) this.#reporter.report({ code: "no-box", division: division.name }, keyStart);
      else {
        const nearest = nearestOf(name, [...named, ...this.#divisions]);
        this.#reporter.report({ code: "unknown-name", what: "box", name, where: null, nearest }, keyStart);
      }
    }
    return boxes;
  }

  #unisonOff(): ReadonlySet<string> {
    const off = new Set<string>();
    for (const item of this.#items("unison-off")) {
      const division = this.#division(item.value as string, item.start);
      if (!division) continue;
      if (this.#instrument.unisonOff.includes(division.name)) off.add(division.name);
      else this.#reporter.report({ code: "no-unison-off", division: division.name }, item.start);
    }
    return off;
  }
}

/** Stops of the division that are of the kind which the name means elsewhere: a Nasat for a Nazard. */
function alikeInSound(text: string, division: Division): readonly string[] {
  const { name, pitch } = partStopText(text, { half: true, pitch: true, ranks: true });
  const meant = understandName(name, { pedal: division.kind === "pedal", pitch, ranks: null });
  if (!meant.sure) return [];
  return division.stops
    .filter((stop) => stop.kinds.some((kind) => meant.kinds.includes(kind)) && (pitch === null || stop.pitch === pitch))
    .map(stopLabel);
}

/**
 * How the console stands by a group of keys whose form is right; `partIds` are those of its music, `null` when they cannot
 * be told. What the instrument does not have is reported.
 */
export function readConsole(
  root: Located,
  read: Read,
  partIds: readonly string[] | null,
  instrument: Instrument,
  reporter: Reporter,
): Registration {
  for (const key of ["keyboards", "octaves"]) reportStrangeParts(root.entries?.get(key)?.node, partIds, reporter);
  const reader = new ConsoleReader(instrument, root, reporter);
  const octaves = (read.octaves ?? {}) as Registration["octaves"];
  return { keyboards: reader.keyboards(read), octaves, state: reader.state() };
}

/**
 * Reads the text of a registration file against the instrument it was drawn on; its stops, couplers and boxes are found by
 * the instrument's own names. Never throws, whatever the text.
 */
export function readRegistrationFile(
  text: string,
  fileName: string,
  instrument: Instrument,
  textures: KnownTextures = CATALOGUE,
): RegistrationReading {
  const { root, reporter } = openFile(text, fileName, "registration");
  const unknown = new UnknownKeys();
  if (root) unknown.look(root, Object.keys(registrationSchema.shape), "A registration");
  const read = root && readShape(registrationSchema, root, "The registration", reporter);
  let registration: WrittenRegistration | null = null;
  if (root && read) {
    const { music, partIds } = readMusic(root, read, textures, reporter, unknown);
    registration = { ...music, ...readConsole(root, read, partIds, instrument, reporter) };
  }
  unknown.report(reporter);
  return { registration: reporter.hasErrors() ? null : registration, troubles: reporter.troubles() };
}
