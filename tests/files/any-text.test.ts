import { describe, expect, test } from "vitest";
import type { InstrumentEdit } from "../../shared-model/files/instrument-change.ts";
import { editInstrumentFile } from "../../shared-model/files/instrument-edit.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { readRegistrationFile } from "../../shared-model/files/registration-file.ts";
import { readSectionFile } from "../../shared-model/files/section-file.ts";
import type { Trouble } from "../../shared-model/files/trouble.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

const INSTRUMENT = `registrant: instrument/1
name: St. Example, Sampleford
year: 1782
a4: 440
divisions:
  - name: Hauptwerk
    kind: manual
    keyboard: 1
    compass: {low: C2, high: C6, missing: [C#2]}
    divided-at: C#4
    stops:
      - Principal 8
      - Mixtur IV 1 1/3
      - {name: Cornet, ranks: 5, half: treble, strength: 4}
      - {name: Trompete, pitch: 8, off: "ciphers on F#4"}
      - {name: Bordun, pitch: 16, rank: gedackt}
  - name: Oberwerk
    kind: manual
    keyboard: 2
    enclosed: true
    stops:
      - Gedackt 8
      - name: Mixtur
        composition: {C2: [1, 2/3, 1/2], C4: [2, 1 1/3, 1]}
        kind: mixture
      - {name: Flöte, pitch: 4, from: C3, bass-from: Hauptwerk/Principal 8}
  - {name: Pedal, kind: pedal, stops: [Subbaß 16, {name: Posaune, same-as: Hauptwerk/Trompete 8}]}
ranks:
  - {id: gedackt, longest: 16, pipes: 97, kind: [stopped-flute], strength: 2}
couplers:
  - Oberwerk to Hauptwerk
  - {coupler: Hauptwerk to Pedal, fixed: true, through: true}
tremulants: [Oberwerk, all]
unison-off: [Oberwerk]
aids: {generals: 8, divisionals: {Hauptwerk: 4}, levels: 2, crescendo-pedal: true, ventils: [Pedal]}
toys: [Zimbelstern]
`;
const REGISTRATION = `registrant: registration/1
texture: melody-over-accompaniment
tradition: north-german
tempo: {bpm: 72, beat: quarter}
keyboards: {melody: Oberwerk, accompaniment: Hauptwerk, bass: Pedal}
octaves: {melody: -1}
drawn: {Oberwerk: [Gedackt 8, Mixtur], Hauptwerk: [Principal 8], Pedal: [Subbaß 16]}
couplers: [Hauptwerk to Pedal]
tremulants: [Oberwerk]
boxes: {Oberwerk: half}
ranges: {melody: [C4, A5]}
`;
const SECTION = `registrant: section/1
parts:
  - {part: melody, role: melody, hands: right, low: C4, high: A5, sounding: 4}
  - {role: bass, hands: feet, low: C2, high: D4}
tradition: neutral
dynamic: mf
sounding: {melody: 8}
`;
const PIECE = `registrant: piece/1
organ: St. Example, Sampleford
tempo: {bpm: 72, beat: quarter}
assistant: left
pistons: {generals: 4, divisionals: {Hauptwerk: [1, 2]}}
sections:
  - name: Tune
    bars: 1-16
    texture: melody-over-accompaniment
    registration:
      keyboards: {melody: Oberwerk}
      drawn: {Oberwerk: [Gedackt 8]}
    steps:
      - {drawn: {Hauptwerk: [Principal 8]}}
    pinned: true
  - {name: Echo, texture: trio, before: {what: rest, beats: 2, free: {left: 4}}, softer-than: Tune, echo-of: [1]}
`;
const organ = readInstrumentFile(INSTRUMENT, "organ.yaml").instrument as Instrument;

const READERS: readonly (readonly [string, string, (text: string) => readonly Trouble[]])[] = [
  ["instrument", INSTRUMENT, (text) => readInstrumentFile(text, "f.yaml").troubles],
  ["section", SECTION, (text) => readSectionFile(text, "f.yaml").troubles],
  ["registration", REGISTRATION, (text) => readRegistrationFile(text, "f.yaml", organ).troubles],
  ["piece", PIECE, (text) => readPieceFile(text, "f.yaml", organ).troubles],
];

/** mulberry32, a public-domain generator: the same numbers on every machine. */
function numbers(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * below);
  };
}

const SPLINTERS = [
  "\n",
  "  ",
  "- ",
  ": ",
  "[",
  "]",
  "{",
  "}",
  ",",
  "#",
  '"',
  "'",
  "*a",
  "&a ",
  "!x ",
  "|\n",
  "7",
  "-3",
  "null",
  "\t",
  "\r",
  "é",
  "\u{1F3B9}",
  "__proto__: 1\n",
  "C9",
  "to",
  "4 to 4",
  "? ",
  "---\n",
  "%",
  "0",
  "1e9",
  "true",
  "\uFEFF",
  "\u0000",
  "off: ",
  "same-as: ",
  "II",
  "from: C4, ",
  "a".repeat(300),
  "<<: ",
  "2 2/3 ",
  "registrant: ",
];

function mutated(text: string, next: (below: number) => number, most = 4): string {
  let result = text;
  for (let turns = 1 + next(most); turns > 0; turns -= 1) {
    const at = next(result.length + 1);
    const length = next(3) === 0 ? next(40) : next(4);
    const from = next(result.length);
    const inserted =
      next(4) === 0
        ? result.slice(from, from + next(60))
        : next(3) === 0
          ? ""
          : (SPLINTERS[next(SPLINTERS.length)] as string);
    result = result.slice(0, at) + inserted + result.slice(at + length);
  }
  return result;
}

/** Faults of the troubles themselves: places outside the text, words that are none. */
function faultsOf(text: string, troubles: readonly Trouble[]): string[] {
  const lines = text.split("\n");
  return troubles.flatMap((trouble) => {
    const line = lines[trouble.line - 1];
    const inside = line !== undefined && trouble.column >= 1 && trouble.column <= line.length + 1;
    const words = troubleLine(trouble);
    const fit = /[.?)]$/.test(words) && !/undefined|\[object|Invalid|NaN|\n/.test(words) && words.length < 1000;
    return inside && fit ? [] : [words];
  });
}

describe.each(READERS)("any text read as %s", (_, valid, read) => {
  test("the text that the mutations start from is sound", () => {
    expect(
      read(valid)
        .filter((trouble) => trouble.severity === "error")
        .map(troubleLine),
    ).toEqual([]);
  });

  test.each(Array.from({ length: 5 }, (_, seed) => seed + 1))(
    "150 mutations, seed %d: read or told where it fails",
    (seed) => {
      const next = numbers(seed);
      for (let turn = 0; turn < 150; turn += 1) {
        const text = mutated(valid, next);
        expect([text, faultsOf(text, read(text))]).toEqual([text, []]);
      }
    },
  );

  test.each([1, 2, 3])("100 texts of random signs, seed %d", (seed) => {
    const next = numbers(seed * 1000);
    for (let turn = 0; turn < 100; turn += 1) {
      const bytes = Uint8Array.from({ length: next(400) }, () => next(turn % 2 === 0 ? 256 : 128));
      const text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
      const troubles = read(text);
      expect([text, faultsOf(text, troubles)]).toEqual([text, []]);
      expect([text, troubles.some((trouble) => trouble.severity === "error")]).toEqual([text, true]);
    }
  });
});

test.each([1, 2, 3, 4])(
  "200 mutated instruments that can be read: pipes lie within their ranks, ids are unique; seed %d",
  (seed) => {
    const next = numbers(seed * 77);
    let sound = 0;
    for (let turn = 0; turn < 200; turn += 1) {
      const text = mutated(INSTRUMENT, next, 1);
      const { instrument } = readInstrumentFile(text, "f.yaml");
      if (!instrument) continue;
      sound += 1;
      const ranks = new Map(instrument.ranks.map((rank) => [rank.id, rank]));
      const stops = instrument.divisions.flatMap((division) => division.stops);
      expect([text, new Set(stops.map((stop) => stop.id)).size]).toEqual([text, stops.length]);
      for (const stop of stops) {
        for (const use of stop.uses) {
          const rank = ranks.get(use.rank);
          const lowest = rank
            ? Math.round(12 * Math.log2((rank.longest.over * use.pitch.under) / (rank.longest.under * use.pitch.over)))
            : -999;
          const fits =
            use.from <= use.to &&
            stop.from <= use.from &&
            use.to <= stop.to &&
            lowest + use.from - 36 >= 0 &&
            lowest + use.to - 36 < (rank?.pipes ?? 0);
          expect([text, stop.id, use, fits]).toEqual([text, stop.id, use, true]);
        }
      }
    }
    expect(sound).toBeGreaterThan(20);
  },
);

const IDS = organ.divisions.flatMap((division) => division.stops.map((stop) => stop.id));

/** An edit that could be asked for, some of them impossible. */
function someEdit(next: (below: number) => number): InstrumentEdit {
  const stop = IDS[next(IDS.length)] as string;
  const division = organ.divisions[next(organ.divisions.length)]?.name ?? "";
  const edits: readonly InstrumentEdit[] = [
    { edit: "rename-stop", stop, name: ["Bordun", "Xyzzq", "Flöte: alt", "Octave 2", "Viola bass"][next(5)] as string },
    { edit: "rename-division", division, name: ["Werk, A", "Great", "#1", "Pedal"][next(4)] as string },
    { edit: "mark-off", stop, note: next(2) === 0 ? null : "dead: [x]" },
    { edit: "mark-on", stop },
    { edit: "set-strength", stop, strength: next(2) === 0 ? null : 5 },
    { edit: "set-brightness", stop, brightness: next(2) === 0 ? null : 1 },
    { edit: "set-room", room: next(2) === 0 ? null : "live" },
    {
      edit: "add-stop",
      division,
      stop: next(2) === 0 ? "Salicional 8" : { name: "Zz, a", kind: "string", pitch: "2 2/3" },
      at: next(6),
    },
    { edit: "remove-stop", stop },
    { edit: "move-stop", stop, division, at: next(6) },
    { edit: "set-enclosed", division, box: [true, false, "north: 1"][next(3)] as boolean | string },
    {
      edit: "set-compass",
      division,
      compass: { low: 36, high: 80 + next(12), missing: next(2) === 0 ? [] : [37, 39] },
    },
    { edit: "add-coupler", coupler: { from: division, to: "Oberwerk", pitch: 4 }, fixed: next(2) === 0 },
    { edit: "remove-coupler", coupler: organ.couplers[next(2)]?.name ?? "" },
    { edit: "set-side", division, side: (["left", "right", null] as const)[next(3)] ?? null },
    { edit: "set-action", action: (["electric", "tabs", null] as const)[next(3)] ?? null },
    {
      edit: "set-aids",
      aids: { generals: next(9), divisionals: { [division]: 3 }, levels: next(3), crescendoPedal: false, ventils: [] },
    },
  ];
  return edits[next(edits.length)] as InstrumentEdit;
}

test.each([1, 2, 3, 4])(
  "75 rows of edits, seed %d: the file is sound after them, or as it was with a reason",
  (seed) => {
    const next = numbers(seed * 501);
    let made = 0;
    for (let turn = 0; turn < 75; turn += 1) {
      const edits = Array.from({ length: 1 + next(3) }, () => someEdit(next));
      const { text, troubles } = editInstrumentFile(INSTRUMENT, edits);
      const errors = troubles.filter((trouble) => trouble.severity === "error");
      expect([edits, text === null]).toEqual([edits, errors.length > 0]);
      if (text === null) continue;
      made += 1;
      // What no edit touched is still there, line by line.
      for (const line of [
        "name: St. Example, Sampleford",
        "  - {id: gedackt, longest: 16, pipes: 97, kind: [stopped-flute], strength: 2}",
        "toys: [Zimbelstern]",
      ]) {
        expect([edits, text.split("\n").includes(line)]).toEqual([edits, true]);
      }
    }
    expect(made).toBeGreaterThan(30);
  },
);
