import { describe, expect, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { editPieceFile } from "../../shared-model/files/piece-edit.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { registrationValue } from "../../shared-model/files/registration-value.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import { barsOf, beatsOf, type Registration } from "../../shared-model/music/piece.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

const ORGAN = readInstrumentFile(
  `registrant: instrument/1
name: St. Maren
divisions:
  - {name: Hauptwerk, kind: manual, keyboard: 1, stops: [Principal 8, Gedackt 8, Octave 4]}
  - {name: Oberwerk, kind: manual, keyboard: 2, enclosed: true, stops: [Gedackt 8, Nasat 2 2/3, Oboe 8]}
  - {name: Pedal, kind: pedal, stops: [Subbass 16]}
couplers: [Hauptwerk to Pedal]
tremulants: [Oberwerk]
`,
  "organ.yaml",
).instrument as Instrument;

const read = (rest: string, organ: Instrument | null = ORGAN) =>
  readPieceFile(`registrant: piece/1\n${rest}`, "p.yaml", organ);
const told = (rest: string, organ: Instrument | null = ORGAN): string[] =>
  read(rest, organ).troubles.map((trouble) => troubleLine(trouble).replace(/^p\.yaml, /, ""));

const PARTITA = `name: Partita on an evening tune
organ: St. Maren
tradition: north-german
tempo: {bpm: 72, beat: quarter}
beats-in-bar: 4
assistant: left
pistons: {generals: 4, divisionals: {Oberwerk: [2, 3]}, levels: [7]}
practised: false
pace: careful
sections:
  - name: Tune
    bars: 1-16
    texture: hymn-verse
    registration:
      keyboards: {plenum: Hauptwerk}
      drawn: {Hauptwerk: [Principal 8, Octave 4]}
    pinned: true
  - name: Verse 2
    bars: 17-32
    texture: melody-over-accompaniment
    tempo: slow
    before: {what: fermata, beats: 2, free: {left: 3}, turned-by: assistant}
    moments: [{limb: feet, beats: 8, bar: 20}]
    softer-than: Tune
    contrast-with: [Tune]
  - texture: trio
    before: attacca
    same-as: 2
`;

describe("a piece", () => {
  test("is read with what its sections take over from it", () => {
    const { piece, troubles } = read(PARTITA);
    expect(troubles.filter((trouble) => trouble.severity === "error")).toEqual([]);
    expect(piece).toMatchObject({
      name: "Partita on an evening tune",
      organ: "St. Maren",
      assistant: "left",
      pistons: { generals: [1, 2, 3, 4], divisionals: { Oberwerk: [2, 3] }, levels: [7] },
      practised: false,
      pace: "careful",
    });
    const [tune, verse, last] = piece?.sections ?? [];
    expect(tune).toMatchObject({
      section: { name: "Tune", tradition: "north-german", texture: "hymn-verse", tempo: "moderate" },
      metronome: { bpm: 72, quarters: 1 },
      beatsInBar: 4,
      before: null,
      pinned: true,
    });
    expect([...(tune?.registration?.state.drawn ?? [])]).toEqual(["Hauptwerk/Principal 8", "Hauptwerk/Octave 4"]);
    expect(tune && beatsOf(tune)).toBe(64);
    expect(verse).toMatchObject({
      section: { tempo: "slow" },
      metronome: null,
      before: { what: "fermata", beats: 2, free: { left: 3 }, turnedBy: "assistant" },
      moments: [{ limb: "feet", beats: 8, bar: "20" }],
      links: [
        { kind: "softer-than", to: 0 },
        { kind: "contrast-with", to: 0 },
      ],
      registration: null,
      pinned: false,
    });
    expect(last).toMatchObject({ before: { what: "attacca", beats: 0 }, links: [{ kind: "same-as", to: 1 }] });
  });

  test("may be a bare list of sections, or still have none", () => {
    expect(read("sections:\n  - texture: trio\n").piece).toMatchObject({
      organ: null,
      assistant: "none",
      pistons: { generals: null, divisionals: null, levels: null },
      practised: true,
      pace: "normal",
    });
    expect(read("name: A new one\nsections: []\n").piece?.sections).toEqual([]);
    expect(read("name: A new one\nsections:\n").piece?.sections).toEqual([]);
  });

  test("without an organ is read for its form only", () => {
    const { piece, troubles } = read(PARTITA.replace("Octave 4", "Octave 4, Quintade 8"), null);
    expect(troubles).toEqual([]);
    expect(piece?.sections[0]).toMatchObject({ registration: null, pinned: false });
  });

  test("of another organ keeps its registrations out of the way, with a note", () => {
    const text = PARTITA.replace("organ: St. Maren", "organ: Dom").replace("Octave 4", "Prestant 4");
    const { piece, troubles } = read(text);
    expect(piece?.sections[0]).toMatchObject({ registration: null, pinned: false });
    expect(troubles.map(troubleLine)).toEqual([
      "p.yaml, line 3, column 8: note: The registrations of this piece were made on Dom, not on St. Maren: the one in it is kept in the file and not used here.",
    ]);
  });
});

const two = (first: string, second: string): string =>
  `sections:\n  - {name: Tune, texture: hymn-verse${first}}\n  - {name: Echo, texture: trio${second}}\n`;

describe("trouble in words", () => {
  test.each<[string, string, string[]]>([
    [
      "bars that run backwards",
      two(", bars: 24-9", ""),
      [
        'line 3, column 45: note: The bars "24-9" run backwards, so nobody knows how long they last. Write the first bar first, as 9-24.',
      ],
    ],
    [
      "bars out of order",
      two(", bars: 17-24", ", bars: 9-16"),
      [
        'line 4, column 39: note: Echo has the bars "9-16", but Tune before it has "17-24". Put the sections in the order in which they are played; write again: true where bars are played once more.',
      ],
    ],
    ["bars played again", two(", bars: 17-24", ", bars: 9-16, again: true"), []],
    [
      "a stop that is not there, pinned",
      two(", pinned: true, registration: {drawn: {Oberwerk: [Nazard]}}", ""),
      ['line 3, column 87: error: No stop "Nazard"; the Oberwerk has Nasat 2 2/3.'],
    ],
    [
      "a tempo that nobody plays",
      "tempo: {bpm: 0}\nsections: []\n",
      ["line 2, column 14: error: bpm: should be beats in a minute, from 10 to 400, not 0."],
    ],
    [
      "a pin on nothing",
      two(", pinned: true", ""),
      [
        "line 3, column 47: note: Tune is pinned but has no registration, so there is nothing to keep. Add registration:, or take pinned: away.",
      ],
    ],
    [
      "a rest without beats",
      two("", ", before: rest"),
      [
        "line 4, column 41: error: How long the rest is, is not said. Add beats: with the beats in which nothing is played, such as {what: rest, beats: 2}.",
      ],
    ],
    [
      "a happening that is none",
      two("", ", before: interval"),
      [
        'line 4, column 41: error: before: does not know "interval". It takes attacca, rest, fermata, page-turn or pause.',
      ],
    ],
    [
      "a section without music",
      "sections:\n  - {name: Tune}\n",
      [
        "line 3, column 5: error: The file does not say what is played. Add texture: with an id of the catalogue, or parts:.",
      ],
    ],
    [
      "a part that the music has not",
      two(", registration: {keyboards: {melody: Oberwerk}}", ""),
      ['line 3, column 66: error: No part "melody"; this music has plenum and bass.'],
    ],
  ])("%s", (_, rest, expected) => expect(told(rest)).toEqual(expected));
});

describe("links that cannot hold", () => {
  const links = (tune: string, echo: string): string[] =>
    told(two(tune, echo)).map((line) => line.replace(/^.*?error: /, ""));
  test.each<[string, string, string, string[]]>([
    ["to nothing", "", ", softer-than: Theme", ['No section "Theme"; this piece has Tune and Echo.']],
    ["to itself", "", ", echo-of: Echo", ["Echo cannot be an echo of itself. Name another section."]],
    [
      "the same and softer",
      "",
      ", same-as: Tune, softer-than: Tune",
      ["Echo cannot be both the same as Tune and softer than it. Take one of the two away."],
    ],
    [
      "each softer than the other",
      ", softer-than: Echo",
      ", softer-than: Tune",
      ["Echo cannot be both louder than Tune and softer than it. Take one of the two away."],
    ],
    [
      "the same and in contrast, from two sides",
      ", contrast-with: Echo",
      ", same-as: 1",
      ["Tune cannot be both the same as Echo and in contrast with it. Take one of the two away."],
    ],
  ])("%s", (_, tune, echo, expected) => expect(links(tune, echo)).toEqual(expected));

  test("in a ring", () => {
    const text = "abc"
      .split("")
      .map((name, at) => `  - {name: ${name}, texture: trio, softer-than: ${"bca"[at]}}\n`)
      .join("");
    expect(told(`sections:\n${text}`)).toEqual([
      "line 3, column 43: error: Each of these sections would have to be softer than the next, all the way round: a, b and c. Take one of the links away.",
    ]);
  });

  test("by a name that two sections have", () => {
    expect(
      told(
        "sections:\n  - {name: Verse, texture: trio}\n  - {name: Verse, texture: trio}\n  - {texture: trio, same-as: verse}\n",
      ),
    ).toEqual([
      'line 5, column 30: error: "verse" is the name of 2 sections. Give each its own name, or write the number of the one that is meant: 1 or 2.',
    ]);
  });
});

test("a registration written and read again is the same", () => {
  const registration: Registration = {
    keyboards: { plenum: "Hauptwerk", bass: "Pedal" },
    octaves: { plenum: -1, bass: 0 },
    state: {
      drawn: new Set(["Pedal/Subbass 16", "Oberwerk/Nasat 2 2/3", "Hauptwerk/Gedackt 8"]),
      couplers: new Set(["Hauptwerk to Pedal"]),
      tremulants: new Set(["Oberwerk"]),
      boxes: new Map([["Oberwerk", "half"]]),
      unisonOff: new Set(),
    },
  };
  const value = registrationValue(ORGAN, registration);
  expect(JSON.stringify(value)).toBe(
    '{"keyboards":{"plenum":"Hauptwerk","bass":"Pedal"},"octaves":{"plenum":-1},"drawn":{"Hauptwerk":["Gedackt 8"],"Oberwerk":["Nasat 2 2/3"],"Pedal":["Subbass 16"]},"couplers":["Hauptwerk to Pedal"],"tremulants":["Oberwerk"],"boxes":{"Oberwerk":"half"}}',
  );
  const { text } = editPieceFile("registrant: piece/1\nsections:\n  - {name: Tune, texture: hymn-verse}\n", [
    { edit: "set-registrations", changes: [{ section: 0, registration: value }] },
  ]);
  const [tune] = readPieceFile(text ?? "", "p.yaml", ORGAN).piece?.sections ?? [];
  expect(tune?.registration).toEqual({ ...registration, octaves: { plenum: -1 } });
});

test.each([
  ["1-24", { first: 1, last: 24 }],
  ["9", { first: 9, last: 9 }],
  ["16b – 24", { first: 16, last: 24 }],
  ["bars 3-4", { first: 3, last: 4 }],
  ["the coda", null],
  [null, null],
])("bars %s", (text, expected) => expect(barsOf(text)).toEqual(expected));
