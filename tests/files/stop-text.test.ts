import { describe, expect, test } from "vitest";
import { usualBreaks, usualPitches } from "../../shared-model/files/composition.ts";
import { readCouplerText } from "../../shared-model/files/coupler-text.ts";
import { fileKindOf } from "../../shared-model/files/file-kind.ts";
import { nearestOf } from "../../shared-model/files/nearest.ts";
import { likelyPitch, pitchAtEnd } from "../../shared-model/files/pitch-text.ts";
import { partStopText, ranksFromRoman } from "../../shared-model/files/stop-text.ts";
import type { Foot } from "../../shared-model/pitch/foot.ts";
import { footFromText, footText } from "../../shared-model/pitch/foot.ts";

const foot = (text: string): Foot => footFromText(text) as Foot;

describe("the pitch at the end of a stop's text", () => {
  test.each([
    ["Principal 8", "Principal", "8"],
    ["Nasat 2 2/3", "Nasat", "8/3"],
    ["Nasat 2 2/3 ft", "Nasat", "8/3"],
    ["Quinte 1 1/3'", "Quinte", "4/3"],
    ["Flautado de 26 16", "Flautado de 26", "16"],
    ["1re Trompette 8", "1re Trompette", "8"],
    ["8", "", "8"],
  ])("%s", (text, before, pitch) => {
    const end = pitchAtEnd(text);
    expect([end?.before, end?.foot && footText(end.foot)]).toEqual([before, pitch]);
  });
  test.each(["Principal", "", "Mixtur IV", "Octave bass"])("none in %s", (text) => expect(pitchAtEnd(text)).toBeNull());
  test("a figure that is no length is told from none", () => {
    expect(pitchAtEnd("Quinte 2 2/2")).toEqual({ before: "Quinte", printed: "2 2/2", foot: null });
  });
});

test.each([
  ["7", "8"],
  ["3", "8/3"],
  ["6", "16/3"],
  ["12", "32/3"],
  ["3/2", "4/3"],
  ["15", "16"],
  ["100", "32"],
])("who writes %s' means %s'", (written, meant) => expect(footText(likelyPitch(foot(written)))).toBe(meant));

test.each([
  ["IV", 4],
  ["III-V", 5],
  ["I", 1],
  ["XX", 20],
  ["IIII", null],
  ["4", null],
  ["iv", null],
  ["I-II-III", null],
])("ranks of %s", (text, ranks) => expect(ranksFromRoman(text)).toBe(ranks));

test("what is not taken off stays in the name", () => {
  expect(partStopText("Mixtur  IV 1 1/3 bass", { half: false, pitch: true, ranks: true })).toEqual({
    name: "Mixtur IV 1 1/3 bass",
    pitch: null,
    printedPitch: null,
    ranks: null,
    half: null,
  });
});

describe("compounds whose file gives no composition", () => {
  const pitches = (
    kind: Parameters<typeof usualPitches>[0]["kind"],
    ranks: number | null,
    lowest: string | null,
    pedal = false,
    typical?: string,
  ) =>
    usualPitches({
      kind,
      ranks,
      lowest: lowest === null ? null : foot(lowest),
      pedal,
      typical: typical?.split(" ").map(foot) ?? null,
    })
      .map(footText)
      .join(" ");
  test.each([
    [pitches("mixture", 4, "4/3"), "4/3 1 2/3 1/2"],
    [pitches("mixture", 4, null), "4/3 1 2/3 1/2"],
    [pitches("mixture", 4, null, true), "8/3 2 4/3 1"],
    [pitches("mixture", null, null, false, "2 4/3 1"), "2 4/3 1"],
    [pitches("mixture", 3, "1", false, "2 4/3 1"), "1 2/3 1/2"],
    [pitches("mixture", 5, null, false, "2 4/3 1"), "2 4/3 1 2/3 1/2"],
    [pitches("cymbal", 3, null), "1/2 1/3 1/4"],
    [pitches("rauschpfeife", 2, "8/3"), "8/3 2"],
    [pitches("sesquialtera", 2, null), "8/3 8/5"],
    [pitches("sesquialtera", 2, "4/3"), "4/3 4/5"],
    [pitches("sesquialtera", 2, null, true), "16/3 16/5"],
    [pitches("cornet", 5, "8"), "8 4 8/3 2 8/5"],
    [pitches("cornet", 4, "8"), "4 8/3 2 8/5"],
    [pitches("cornet", 3, null), "8/3 2 8/5"],
    [pitches("cornet", 5, "16"), "16 8 16/3 4 16/5"],
    [pitches("mixture", 20, "1/2"), "1/2 1/3 1/4 1/6 1/8"],
  ])("%s", (found, expected) => expect(found).toBe(expected));

  test("rows with a third repeat by octaves, the others step back along octaves and fifths", () => {
    const rows = (kind: "cymbal" | "cornet", row: string) =>
      usualBreaks(kind, row.split(" ").map(foot), 36, 84).map(
        ({ from, pitches: each }) => `${from}: ${each.map(footText).join(" ")}`,
      );
    expect(rows("cymbal", "1/4 1/5 1/6")).toEqual([
      "36: 1/4 1/5 1/6",
      "48: 1/2 2/5 1/3",
      "60: 1 4/5 2/3",
      "72: 2 8/5 4/3",
      "84: 4 16/5 8/3",
    ]);
    expect(rows("cymbal", "1/2 1/3 1/4")).toEqual(["36: 1/2 1/3 1/4", "60: 1 2/3 1/2", "72: 2 4/3 1", "84: 4 8/3 2"]);
    expect(rows("cornet", "8 4 8/3 2 8/5")).toEqual(["36: 8 4 8/3 2 8/5"]);
  });
});

describe("couplers", () => {
  const divisions = ["Great", "Swell", "Manual 1", "Manual 4", "Front to Back"];
  test.each([
    ["swell to great", "Swell to Great 8"],
    ["Swell to Great 16'", "Swell to Great 16"],
    ["Manual 1 to Manual 4", "Manual 1 to Manual 4 8"],
    ["Manual 1 to Manual 4 4", "Manual 1 to Manual 4 4"],
    ["Front to Back to Great", "Front to Back to Great 8"],
  ])("%s", (text, expected) => {
    const read = readCouplerText(text, divisions);
    expect(read && "coupler" in read ? `${read.coupler.from} to ${read.coupler.to} ${read.coupler.pitch}` : read).toBe(
      expected,
    );
  });
  test("a name that no division has is told", () =>
    expect(readCouplerText("Swell to Grate 4", divisions)).toEqual({ unknown: "Grate" }));
  test("text without a joint is no coupler", () => expect(readCouplerText("Swell", divisions)).toBeNull());
});

test("near names: swapped, lost and doubled letters, accents and beginnings", () => {
  const names = ["Hauptwerk", "Oberwerk", "Récit", "Pedal"];
  expect([
    nearestOf("Huaptwerk", names),
    nearestOf("recit", names),
    nearestOf("Ped", names),
    nearestOf("zzz", names),
    nearestOf("", names),
  ]).toEqual([["Hauptwerk"], ["Récit"], ["Pedal"], [], []]);
});

test("a file says on its own what it is", () => {
  expect([
    fileKindOf("# mine\nregistrant: instrument/1\n"),
    fileKindOf('registrant: "section/9"\nx: ['),
    fileKindOf("name: registrant: piece/1"),
    fileKindOf("registrant: organ/1"),
    fileKindOf("\uFEFFregistrant: piece/1"),
    fileKindOf(""),
  ]).toEqual(["instrument", "section", null, null, "piece", null]);
});
