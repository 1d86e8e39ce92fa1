import { describe, expect, test } from "vitest";
import { dividingKey, inItsHalf, pedalsFor } from "../../shared-model/console/range.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { keyFromText, keyText } from "../../shared-model/pitch/key.ts";
import type { Division, Instrument } from "../../shared-model/stoplist/instrument.ts";

const organWith = (stops: string, pedal: string): Instrument =>
  readInstrumentFile(
    `
registrant: instrument/1
name: Chapel organ, Vallemora
divisions:
  - {name: Órgano, kind: manual, keyboard: 1, compass: C2-C6, divided-at: C#4, stops: [${stops}]}
  - {name: Contras, kind: pedal, compass: ${pedal}, stops: [Contras 16]}
`,
    "vallemora.yaml",
  ).instrument as Instrument;

const DIVIDED = "{name: Violón, pitch: 8, half: bass}, {name: Violón, pitch: 8, half: treble}";
const range = (text: string): { low: number; high: number } => {
  const [low, high] = text.split("-").map((each) => keyFromText(each) as number) as [number, number];
  return { low, high };
};

test.each([
  ["C2-C4", "C2-C4", true],
  // 17 of 25 keys, and 16.
  ["C2-E3", "C2-C4", true],
  ["C2-D#3", "C2-C4", false],
  ["C2-B2", "C2-C4", false],
])("a pedal of %s serves a bass of %s: %s", (pedal, bass, serves) => {
  expect(pedalsFor(organWith(DIVIDED, pedal), range(bass))).toHaveLength(serves ? 1 : 0);
});

describe("a divided keyboard", () => {
  const keyboard = (stops: string): Division => organWith(stops, "C2-C4").divisions[0] as Division;

  test("divides where its treble halves begin", () => {
    expect(dividingKey(keyboard(DIVIDED))).toBe(keyFromText("C#4"));
  });

  test.each([["Violón 8"], ["Violón 8, {name: Corneta, ranks: 5, half: treble}"]])(
    "does not divide with %s",
    (stops) => {
      expect(dividingKey(keyboard(stops))).toBeNull();
    },
  );

  test.each([
    // Within its half.
    ["left", "C3-B3", "C3-B3"],
    ["right", "D4-A5", "D4-A5"],
    // A third of it or less lies across: left out.
    ["right", "C4-A5", "C#4-A5"],
    ["left", "C2-E4", "C2-C4"],
    // More than that: played lower, or higher.
    ["left", "G3-G4", "C3-C4"],
    ["right", "G3-A4", "C#4-Eb5"],
  ] as const)("leaves the %s hand of %s the keys %s", (hand, keys, kept) => {
    const { low, high } = inItsHalf(range(keys), hand, keyFromText("C#4") as number);
    expect(`${keyText(low)}-${keyText(high)}`).toBe(kept);
  });
});
