import { describe, expect, test } from "vitest";
import { readSectionFile } from "../../shared-model/files/section-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";

const told = (rest: string): string[] =>
  readSectionFile(`registrant: section/1\n${rest}`, "s.yaml").troubles.map((trouble) =>
    troubleLine(trouble).replace(/^s\.yaml, /, ""),
  );

test("a section with a texture", () => {
  const { section, troubles } = readSectionFile(
    "registrant: section/1\ntexture: trio\ntempo: slow\nsounding: {bass: 16}\nname: Verse 2\nbars: 12\n",
    "s.yaml",
  );
  expect(troubles).toEqual([]);
  expect(section).toEqual({
    name: "Verse 2",
    bars: "12",
    texture: "trio",
    parts: null,
    tradition: null,
    dynamic: null,
    tempo: "slow",
    metronome: null,
    ranges: {},
    sounding: { bass: 16 },
  });
});

test("a section with parts of its own", () => {
  const { section } = readSectionFile(
    `registrant: section/1
parts:
  - {part: voice-1, role: voice, hands: right, low: G3, high: C6}
  - {role: voice, hands: left, low: C3, high: C5, sounding: 4}
  - {part: bass, role: bass, hands: feet, low: C2, high: D4}
`,
    "s.yaml",
  );
  expect(section?.texture).toBeNull();
  expect(section?.parts?.map((part) => [part.id, part.hands, part.low, part.high, part.sounding, part.stated])).toEqual(
    [
      ["voice-1", "right", 55, 84, 8, true],
      ["voice-2", "left", 48, 72, 4, true],
      ["bass", "feet", 36, 62, 8, true],
    ],
  );
});

test("textures come from whoever reads, when given", () => {
  const own = { knownTexture: (id: string) => id === "carillon", nearest: () => ["carillon"] };
  expect(
    readSectionFile("registrant: section/1\ntexture: carillon\nranges: {anything: [C4, C5]}\n", "s.yaml", own).section,
  ).toMatchObject({ texture: "carillon", ranges: { anything: [60, 72] } });
  expect(readSectionFile("registrant: section/1\ntexture: trio\n", "s.yaml", own).troubles.map(troubleLine)).toEqual([
    's.yaml, line 2, column 10: error: There is no texture "trio" in the catalogue. Did you mean carillon?',
  ]);
});

test.each([
  [30, "slow"],
  [67, "slow"],
  [68, "moderate"],
  [110, "moderate"],
  [111, "fast"],
])("%d quarters a minute are %s", (bpm, tempo) => {
  expect(
    readSectionFile(`registrant: section/1\ntexture: trio\ntempo: {bpm: ${bpm}}\n`, "s.yaml").section,
  ).toMatchObject({
    tempo,
    metronome: { bpm, quarters: 1 },
  });
});

describe("trouble in words", () => {
  test.each<[string, string, string[]]>([
    [
      "a part named otherwise than its role",
      "parts: [{part: tune, role: melody, hands: right, low: C4, high: A5}]\n",
      [
        'line 2, column 16: error: This part is named by its role, melody (with -1, -2 in order where a role occurs twice), not "tune".',
      ],
    ],
    [
      "a part from above to below",
      "parts: [{role: melody, hands: right, low: A5, high: C4}]\n",
      ["line 2, column 43: error: melody goes from A5 down to C4. Write the lowest key first."],
    ],
    [
      "a role that is none",
      "parts: [{role: tune, hands: right, low: C4, high: C5}]\n",
      [
        'line 2, column 16: error: role: does not know "tune". It takes melody, accompaniment, bass, plenum, cantus-firmus, voice or echo.',
      ],
    ],
    [
      "a part without hands",
      "parts: [{role: melody, low: C4, high: C5}]\n",
      [
        "line 2, column 9: error: An entry of parts: lacks hands: (right, left, both or feet). Add a line hands: with it.",
      ],
    ],
    [
      "a pitch at which no part sounds",
      "texture: trio\nsounding: {bass: 3}\n",
      ["line 3, column 18: error: bass: should be 16, 8, 4 or 2, the pitch in feet at which the part sounds, not 3."],
    ],
    [
      "a tempo that is none",
      "texture: trio\ntempo: allegro\n",
      ['line 3, column 8: error: tempo: does not know "allegro". It takes slow, moderate or fast.'],
    ],
    [
      "a misspelt key",
      "texture: trio\ndynamics: mf\n",
      ['line 3, column 1: note: A section has no key "dynamics"; it is kept and not used. Did you mean dynamic?'],
    ],
  ])("%s", (_, rest, expected) => expect(told(rest)).toEqual(expected));
});
