import { describe, expect, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readRegistrationFile } from "../../shared-model/files/registration-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

const { instrument } = readInstrumentFile(
  `registrant: instrument/1
name: St. Example, Sampleford
divisions:
  - {name: Hauptwerk, kind: manual, keyboard: 1, stops: [Principal 8, Gedackt 8, Octave 4, Mixtur IV, Mixtur VI]}
  - name: Oberwerk
    kind: manual
    keyboard: 2
    enclosed: true
    stops: [Gedackt 8, Gedackt 4, Nasat 2 2/3, Dulzian 8 bass, Dulzian 8 treble, {name: Regal, pitch: 8, off: ciphers}]
  - {name: Echo, kind: floating, stops: [Flute 8]}
  - {name: Pedal, kind: pedal, stops: [Subbass 16, Octave 8]}
couplers: [Oberwerk to Hauptwerk, Hauptwerk to Pedal, Oberwerk to Oberwerk 4]
tremulants: [Oberwerk]
unison-off: [Oberwerk]
`,
  "organ.yaml",
);
const organ = instrument as Instrument;

const HEAD = "registrant: registration/1\ntexture: melody-over-accompaniment\n";
const read = (rest: string) => readRegistrationFile(HEAD + rest, "r.yaml", organ);
const told = (text: string): string[] =>
  readRegistrationFile(text, "r.yaml", organ).troubles.map((trouble) => troubleLine(trouble).replace(/^r\.yaml, /, ""));

test("a whole registration", () => {
  const { registration, troubles } = read(`tradition: north-german
dynamic: mf
tempo: {bpm: 72, beat: dotted quarter}
keyboards: {melody: oberwerk, accompaniment: Hauptwerk, bass: Pedal}
octaves: {melody: -1}
drawn: {Oberwerk: [Gedackt 8, Nasat], hauptwerk: [gedackt], Pedal: [Subbass]}
couplers: [Hauptwerk to Pedal]
tremulants: [Oberwerk]
boxes: {Oberwerk: half}
ranges: {melody: [C4, A5]}
bars: 1-24
`);
  expect(troubles).toEqual([]);
  expect(registration).toEqual({
    name: null,
    bars: "1-24",
    texture: "melody-over-accompaniment",
    parts: null,
    tradition: "north-german",
    dynamic: "mf",
    tempo: "moderate",
    metronome: { bpm: 72, quarters: 1.5 },
    ranges: { melody: [60, 81] },
    sounding: {},
    keyboards: { melody: "Oberwerk", accompaniment: "Hauptwerk", bass: "Pedal" },
    octaves: { melody: -1 },
    state: {
      drawn: new Set(["Oberwerk/Gedackt 8", "Oberwerk/Nasat 2 2/3", "Hauptwerk/Gedackt 8", "Pedal/Subbass 16"]),
      couplers: new Set(["Hauptwerk to Pedal"]),
      tremulants: new Set(["Oberwerk"]),
      boxes: new Map([["Oberwerk", "half"]]),
      unisonOff: new Set(),
    },
  });
});

test("a texture alone leaves everything else open", () => {
  const { registration } = read("");
  expect(registration).toMatchObject({
    keyboards: null,
    octaves: {},
    tradition: null,
    dynamic: null,
    tempo: null,
    metronome: null,
  });
  expect(registration?.state.drawn.size).toBe(0);
});

describe("how a stop is named", () => {
  const drawn = (division: string, stop: string): string[] => [
    ...(read(`drawn: {${division}: [${stop}]}\n`).registration?.state.drawn ?? []),
  ];
  test.each([
    ["Oberwerk", "Dulzian 8", ["Oberwerk/Dulzian 8 bass", "Oberwerk/Dulzian 8 treble"]],
    ["Oberwerk", "Dulzian", ["Oberwerk/Dulzian 8 bass", "Oberwerk/Dulzian 8 treble"]],
    ["Oberwerk", "Dulzian treble", ["Oberwerk/Dulzian 8 treble"]],
    ["Oberwerk", "Dulzian 8 bass", ["Oberwerk/Dulzian 8 bass"]],
    ["Oberwerk", "NASAT 2⅔", ["Oberwerk/Nasat 2 2/3"]],
    ["Hauptwerk", "Mixtur IV", ["Hauptwerk/Mixtur IV"]],
    ["Hauptwerk", "Octave", ["Hauptwerk/Octave 4"]],
  ])("%s: %s", (division, stop, expected) => expect(drawn(division, stop)).toEqual(expected));
});

describe("trouble in words", () => {
  test.each<[string, string, string[]]>([
    [
      "a stop of another name",
      "drawn: {Oberwerk: [Nazard]}\n",
      ['line 3, column 20: error: No stop "Nazard"; the Oberwerk has Nasat 2 2/3.'],
    ],
    [
      "a stop of two pitches",
      "drawn: {Oberwerk: [Gedackt]}\n",
      ['line 3, column 20: error: "Gedackt" can be Gedackt 8 or Gedackt 4. Write the one that is meant.'],
    ],
    [
      "a compound of two sizes",
      "drawn: {Hauptwerk: [Mixtur]}\n",
      ['line 3, column 21: error: "Mixtur" can be Mixtur IV or Mixtur VI. Write the one that is meant.'],
    ],
    [
      "a stop marked off",
      "drawn: {Oberwerk: [Regal]}\n",
      ["line 3, column 20: note: Regal 8 is marked off in the instrument (ciphers)."],
    ],
    [
      "a stop drawn twice",
      "drawn: {Pedal: [Subbass, Subbass 16]}\n",
      ["line 3, column 26: note: Subbass 16 is drawn twice in this list; once is enough."],
    ],
    [
      "a misspelt division",
      "drawn: {Obrewerk: [Nasat]}\n",
      ['line 3, column 9: error: There is no division "Obrewerk" here. Did you mean Oberwerk?'],
    ],
    [
      "a coupler that the organ has not",
      "couplers: [Oberwerk to Pedal]\n",
      [
        'line 3, column 12: error: No coupler "Oberwerk to Pedal"; the organ has Oberwerk to Hauptwerk, Hauptwerk to Pedal and Oberwerk to Oberwerk 4.',
      ],
    ],
    [
      "a tremulant that the organ has not",
      "tremulants: [all]\n",
      ['line 3, column 14: error: There is no tremulant for "all". Did you mean Oberwerk?'],
    ],
    [
      "a division without a box",
      "boxes: {Hauptwerk: closed}\n",
      ["line 3, column 9: error: Hauptwerk stands in no box."],
    ],
    [
      "a position that is none",
      "boxes: {Oberwerk: shut}\n",
      ['line 3, column 19: error: Oberwerk: does not know "shut". It takes open, half or closed.'],
    ],
    [
      "a floating division as keyboard",
      "keyboards: {melody: Echo}\n",
      ["line 3, column 21: error: Echo has no keyboard of its own; it is played from others through couplers."],
    ],
    [
      "a part that the texture has not",
      "keyboards: {tune: Oberwerk}\n",
      ['line 3, column 13: error: No part "tune"; this music has melody, accompaniment and bass.'],
    ],
    [
      "three octaves",
      "octaves: {melody: 3}\n",
      [
        "line 3, column 19: error: melody: should be -1 an octave lower, 0, or 1 an octave higher, a whole number from -1 to 1, not 3.",
      ],
    ],
    [
      "a range upside down",
      "ranges: {melody: [A5, C4]}\n",
      ["line 3, column 18: error: melody goes from A5 down to C4. Write the lowest key first."],
    ],
    [
      "a tradition that is none",
      "tradition: north-germany\n",
      ['line 3, column 12: error: tradition: does not know "north-germany". Did you mean north-german?'],
    ],
    [
      "a texture and parts",
      "parts: [{role: melody, hands: right, low: C4, high: A5}]\n",
      ["line 3, column 8: error: The file has both texture: and parts:. Keep one of the two."],
    ],
    [
      "a division without unison-off",
      "unison-off: [Hauptwerk]\n",
      ["line 3, column 14: error: Hauptwerk has no unison-off."],
    ],
  ])("%s", (_, rest, expected) => expect(told(HEAD + rest)).toEqual(expected));

  test("a texture that is none", () => {
    expect(told("registrant: registration/1\ntexture: melody-over-acompaniment\n")[0]).toMatch(
      /^line 2, column 10: error: There is no texture "melody-over-acompaniment" in the catalogue\. Did you mean melody-over-accompaniment/,
    );
  });

  test("no music at all", () => {
    expect(told("registrant: registration/1\n")).toEqual([
      "line 1, column 1: error: The file does not say what is played. Add texture: with an id of the catalogue, or parts:.",
    ]);
  });
});
