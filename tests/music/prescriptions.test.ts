import { describe, expect, it } from "vitest";
import type { PrescribedPart, Prescription, Wanted } from "../../shared-model/music/prescription.ts";
import { PRESCRIPTIONS, prescriptionsFor } from "../../shared-model/music/prescriptions/catalogue.ts";
import { SOURCES } from "../../shared-model/music/prescriptions/sources.ts";
import { STAND_INS } from "../../shared-model/music/prescriptions/stand-ins.ts";
import { recipe, wanted } from "../../shared-model/music/prescriptions/wanted.ts";
import { type Part, TRADITIONS } from "../../shared-model/music/texture.ts";
import { TEXTURES, textureFor, texturesOf } from "../../shared-model/music/textures/catalogue.ts";
import { footOf, footText } from "../../shared-model/pitch/foot.ts";
import { KIND_GROUPS, KINDS } from "../../shared-model/stoplist/kind.ts";

const KIND_WORDS: readonly string[] = [...KINDS, ...Object.keys(KIND_GROUPS)];
const kindsOf = (stop: Wanted): readonly string[] =>
  stop.kind === undefined ? KINDS : (KIND_GROUPS[stop.kind as keyof typeof KIND_GROUPS] ?? [stop.kind]);
const words = (stop: Wanted): string =>
  [stop.kind, stop.pitch && footText(stop.pitch), stop.half, stop.every && "every"].filter(Boolean).join(" ");

const asked = (part: PrescribedPart): readonly Wanted[] => [...part.must, ...(part.oneOf ?? []).flat()];
const named = (part: PrescribedPart): readonly Wanted[] => [...asked(part), ...(part.may ?? []), ...(part.not ?? [])];

/** Whether every stop that `stop` can mean is also meant by `shutOut`. */
const covers = (shutOut: Wanted, stop: Wanted): boolean =>
  (shutOut.kind === undefined || kindsOf(stop).every((kind) => kindsOf(shutOut).includes(kind))) &&
  (shutOut.pitch === undefined || shutOut.pitch === stop.pitch) &&
  (shutOut.half === undefined || shutOut.half === stop.half);

interface Fitted {
  readonly prescribed: PrescribedPart;
  /** `null`: the texture has no part of that role. */
  readonly part: string | null;
  /** A further chorus of the recipe where the texture has only one. */
  readonly coupled: boolean;
}

/** A recipe laid over the parts of its texture: by role, then by place, then in order. */
function fitParts(prescription: Prescription, parts: readonly Part[]): readonly Fitted[] {
  const fitted = new Map<PrescribedPart, string>();
  const take = (prescribed: PrescribedPart, samePlace: boolean): void => {
    if (fitted.has(prescribed)) return;
    const free = parts.filter(({ id, role }) => role === prescribed.role && ![...fitted.values()].includes(id));
    const part = free.find(({ place }) => !samePlace || place === (prescribed.place ?? null));
    if (part) fitted.set(prescribed, part.id);
  };
  for (const prescribed of prescription.parts) take(prescribed, true);
  for (const prescribed of prescription.parts) take(prescribed, false);
  return prescription.parts.map((prescribed) => {
    const host = parts.find(({ role }) => role === prescribed.role);
    const own = fitted.get(prescribed);
    return { prescribed, part: own ?? host?.id ?? null, coupled: own === undefined && host !== undefined };
  });
}

describe("the catalogue of recipes", () => {
  it("has all 193 entries of the collected literature and the ways that they were split into", () => {
    expect(PRESCRIPTIONS.length).toBeGreaterThanOrEqual(193);
  });

  it("has unique ids, made of texture, tradition and number", () => {
    expect(new Set(PRESCRIPTIONS.map(({ id }) => id)).size).toBe(PRESCRIPTIONS.length);
    for (const { id, texture, tradition } of PRESCRIPTIONS) {
      expect(id).toMatch(/^[a-z0-9-]+\.[a-z0-9-]+\.[1-9]\d*$/);
      expect(id.startsWith(`${texture}.${tradition}.`)).toBe(true);
    }
  });

  it("gives ways of one texture, tradition and dynamic different names", () => {
    const ways = PRESCRIPTIONS.filter((known) => known.way).map(({ texture, tradition, dynamic, way }) =>
      [texture, tradition, dynamic, way].join(" | "),
    );
    expect(new Set(ways).size).toBe(ways.length);
  });

  it("speaks of textures in the catalogue, and every part fits one of the texture's roles", () => {
    for (const prescription of PRESCRIPTIONS) {
      const texture = textureFor(prescription.texture, prescription.tradition);
      expect(texture, prescription.id).not.toBeNull();
      const fitted = fitParts(prescription, texture?.parts ?? []);
      expect(
        fitted.filter((part) => part.part === null),
        prescription.id,
      ).toEqual([]);
      for (const part of texture?.parts ?? []) {
        if (part.optional) continue;
        expect(
          fitted.some((known) => known.part === part.id && !known.coupled),
          `${prescription.id} leaves out ${part.id}`,
        ).toBe(true);
      }
      for (const { coupled, prescribed, part } of fitted) {
        const found = texture?.parts.find((known) => known.id === part);
        if (coupled) expect(["plenum", "accompaniment"], prescription.id).toContain(prescribed.role);
        else if (prescribed.place && found?.place && prescribed.role === "voice" && found.place === "treble") {
          expect(prescribed.place, `${prescription.id} ${part}`).toBe("treble");
        }
      }
    }
  });

  it("says where a second chorus is coupled", () => {
    for (const prescription of PRESCRIPTIONS) {
      const parts = textureFor(prescription.texture, prescription.tradition)?.parts ?? [];
      for (const { coupled, prescribed } of fitParts(prescription, parts)) {
        if (!coupled) continue;
        const all = [...prescription.couplers, ...(prescription.couplersMay ?? [])];
        const either = all.some(({ from, to }) => from === prescribed.keyboard || to === prescribed.keyboard);
        expect(either || prescription.texture === "scherzo-flutes", prescription.id).toBe(true);
      }
    }
  });

  it("cites sources that exist, and marks as read only what cites a source that was read", () => {
    for (const { id, sources, evidence } of PRESCRIPTIONS) {
      expect(sources.length, id).toBeGreaterThan(0);
      for (const source of sources) {
        expect(source === "common practice" || Object.hasOwn(SOURCES, source), `${id}: ${source}`).toBe(true);
      }
      if (evidence === "read") expect(sources.some((source) => SOURCES[source]?.evidence === "read")).toBe(true);
      if (evidence === "memory")
        expect(
          sources.some((source) => source !== "common practice"),
          id,
        ).toBe(true);
    }
  });

  it("asks for kinds of stops that exist", () => {
    const stops = PRESCRIPTIONS.flatMap((known) => known.parts.flatMap(named));
    const inStandIns = STAND_INS.flatMap((known) => [known.for, ...known.use.flatMap((use) => use.stops)]);
    for (const stop of [...stops, ...inStandIns]) {
      expect(stop.kind !== undefined || stop.pitch !== undefined).toBe(true);
      if (stop.kind !== undefined) expect(KIND_WORDS).toContain(stop.kind);
    }
  });

  it("never demands or welcomes what it forbids", () => {
    for (const { id, parts } of PRESCRIPTIONS) {
      for (const part of parts) {
        for (const stop of [...asked(part), ...(part.may ?? [])]) {
          const shutOut = (part.not ?? []).filter((not) => covers(not, stop));
          expect(shutOut.map(words), `${id}: ${words(stop)}`).toEqual([]);
        }
      }
    }
  });

  it("asks every part for something, but for ladders, pull-downs and what comes by a coupler", () => {
    const silent = PRESCRIPTIONS.flatMap(({ id, parts }) =>
      parts.filter((part) => asked(part).length === 0).map((part) => `${id} ${part.role}`),
    );
    expect(silent).toEqual([
      "crescendo.neutral.1 plenum",
      "crescendo.neutral.1 bass",
      "ripieno.italian-renaissance.1 bass",
      "ricercar.italian-renaissance.1 bass",
      "terraced-crescendo.german-romantic.1 plenum",
      "terraced-crescendo.german-romantic.1 bass",
    ]);
  });

  it("lists real alternatives: at least two in every list, none twice", () => {
    for (const { id, parts } of PRESCRIPTIONS) {
      for (const list of parts.flatMap((part) => part.oneOf ?? [])) {
        expect(list.length, id).toBeGreaterThanOrEqual(2);
        expect(new Set(list.map(words)).size, id).toBe(list.length);
      }
      for (const part of parts) expect(new Set(part.must.map(words)).size, id).toBe(part.must.length);
    }
  });

  it("gives every texture of a school a recipe of its own with a source", () => {
    for (const tradition of TRADITIONS) {
      if (tradition === "neutral") continue;
      for (const texture of texturesOf(tradition)) {
        const own = prescriptionsFor(texture.id, tradition, null);
        expect(own.length, `${texture.id} ${tradition}`).toBeGreaterThan(0);
        expect(own.every((known) => known.tradition === tradition && known.sources.length > 0)).toBe(true);
      }
    }
  });

  it("writes notes as sentences or short phrases, never empty", () => {
    for (const { id, note, parts } of PRESCRIPTIONS) {
      if (note !== undefined) expect(note, id).toMatch(/^[A-Z0-9].*\.$/);
      for (const part of parts) if (part.note !== undefined) expect(part.note.length, id).toBeGreaterThan(3);
    }
  });
});

describe("prescriptionsFor", () => {
  const ids = (...question: Parameters<typeof prescriptionsFor>): readonly string[] =>
    prescriptionsFor(...question).map(({ id }) => id);

  it("prefers the tradition's own", () => {
    expect(ids("organo-pleno", "north-german", null)).toEqual([
      "organo-pleno.north-german.1",
      "organo-pleno.north-german.2",
    ]);
    expect(ids("organo-pleno", "central-german", null)).toEqual([
      "organo-pleno.central-german.1",
      "organo-pleno.central-german.2",
      "organo-pleno.central-german.3",
    ]);
    expect(ids("voix-humaine", "french-symphonic", null)).toEqual(["voix-humaine.french-symphonic.1"]);
  });

  it("serves a neutral texture in a school with the neutral ways", () => {
    const ways = prescriptionsFor("melody-over-accompaniment", "north-german", null);
    expect(ways.every(({ tradition }) => tradition === "neutral")).toBe(true);
    expect(ways.map(({ way }) => way)).toEqual(
      expect.arrayContaining([
        "oboe",
        "flutes 8 and 4",
        "flutes with a twelfth",
        "flutes with a nineteenth",
        "cornet",
        "Sesquialtera",
        "Cromorne or clarinet",
        "principal",
        "trumpet",
        "harmonic flute",
        "string",
      ]),
    );
  });

  it("serves a texture asked for by its name outside its school with the school's own recipes", () => {
    expect(ids("lleno", "neutral", null)).toEqual(["lleno.spanish.1"]);
  });

  it("chooses by the nearest dynamic, the softer of two as near, and everything when none is asked", () => {
    expect(ids("sustained", "german-romantic", "ppp")).toEqual([
      "sustained.german-romantic.1",
      "sustained.german-romantic.2",
    ]);
    expect(ids("sustained", "german-romantic", "mp")).toEqual(["sustained.german-romantic.3"]);
    expect(ids("sustained", "german-romantic", "fff")).toEqual(["sustained.german-romantic.6"]);
    expect(ids("sustained", "french-symphonic", "mf")).toEqual(["sustained.neutral.3"]);
    expect(ids("sustained", "neutral", null)).toHaveLength(5);
  });

  it("has recipes for every texture in every tradition and none for an unknown one", () => {
    for (const { id } of TEXTURES) {
      for (const tradition of TRADITIONS)
        expect(ids(id, tradition, "mf").length, `${id} ${tradition}`).toBeGreaterThan(0);
    }
    expect(ids("no-such-texture", "neutral", null)).toEqual([]);
  });
});

describe("the notation of recipes", () => {
  it("reads kind, pitch, half and every", () => {
    expect(wanted("principal 8 every")).toEqual({ kind: "principal", pitch: footOf(8), every: true });
    expect(wanted("nasard 2 2/3")).toEqual({ kind: "nasard", pitch: footOf(8, 3) });
    expect(wanted("principal 2/3")).toEqual({ kind: "principal", pitch: footOf(2, 3) });
    expect(wanted("quint 10 2/3").pitch).toBe(footOf(32, 3));
    expect(wanted("cornet treble")).toEqual({ kind: "cornet", half: "treble" });
    expect(wanted("16")).toEqual({ pitch: footOf(16) });
  });

  it("refuses words that mean nothing", () => {
    expect(() => wanted("" as "16")).toThrow(RangeError);
    expect(() => recipe("plein-jeu.martian.1", { sources: [], evidence: "memory", parts: [] })).toThrow(/not the id/);
  });

  it("reads couplers, octave ones too", () => {
    const { couplers, couplersMay } = recipe("full-swell.english-cathedral.9", {
      sources: ["common practice"],
      evidence: "common practice",
      parts: [],
      couplers: ["swell/pedal"],
      couplersMay: ["swell/swell-16", "any-other/main"],
    });
    expect(couplers).toEqual([{ from: "swell", to: "pedal", pitch: 8 }]);
    expect(couplersMay).toEqual([
      { from: "swell", to: "swell", pitch: 16 },
      { from: "any-other", to: "main", pitch: 8 },
    ]);
  });
});

describe("stand-ins", () => {
  it("replace each wanted stop once, for hands and feet apart, never by itself", () => {
    const wants = STAND_INS.map((known) => `${known.pedal ?? false} ${words(known.for)}`);
    expect(new Set(wants).size).toBe(wants.length);
    for (const known of STAND_INS) {
      for (const use of known.use) {
        expect([1, 2, 3, 4, 5]).toContain(use.cost);
        expect(use.stops.length > 0 || use.note !== undefined, words(known.for)).toBe(true);
        expect(use.stops.map(words)).not.toEqual([words(known.for)]);
      }
    }
  });
});

describe("sources", () => {
  it("name author, title and place; what was read has an address; years are of our era", () => {
    for (const [id, source] of Object.entries(SOURCES)) {
      expect(id).toMatch(/^[a-z0-9-]+$/);
      for (const text of [source.cited, source.author ?? source.cited, source.title, source.where])
        expect(text.trim().length, id).toBeGreaterThan(1);
      expect(source.cited, id).not.toMatch(/[()\d;]/);
      if (source.author === null) expect([source.year, source.address, id]).toEqual([null, null, id]);
      if (source.evidence === "read") expect(source.address, id).toMatch(/^https?:\/\//);
      else expect(source.address, id).toBeNull();
      if (source.year !== null) {
        expect(source.year, id).toBeGreaterThan(1500);
        expect(source.year, id).toBeLessThan(2100);
      }
    }
  });
});
