import { expect, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";

const said = (stop: string): readonly string[] =>
  readInstrumentFile(
    `registrant: instrument/1
name: St. Brannoc, Harrowmere
divisions:
  - name: Great
    kind: manual
    keyboard: 1
    stops:
      - ${stop}
`,
    "organ.yaml",
  ).troubles.map(troubleLine);

const STRENGTH = "should be 1 (very soft) to 5 (very strong), a whole number from 1 to 5";

test.each([
  ["{name: Oboe, pitch: 8, strength: -2}", `strength: ${STRENGTH}, not -2.`],
  ["{name: Oboe, pitch: 8, strength: 1.0e+99}", `strength: ${STRENGTH}, not 1e+99.`],
  ["{name: Oboe, pitch: 8, strength: 2.5}", `strength: ${STRENGTH}, not 2.5.`],
  ["{name: Mixtur, ranks: 0}", "ranks: should be the number of ranks, a whole number from 1 to 20, not 0."],
  [
    "{name: Oboe, pitch: 8, from: C9}",
    '"C9" is not a key. Write C2 for the lowest C of most keyboards, C4 for middle C, F#4 or Eb5.',
  ],
  [
    "{name: Oboe, pitch: 8, to: C8}",
    "note: Oboe 8 names the key C8, outside the keyboard of Great (C2-G6); it ends where the keyboard ends.",
  ],
])("what no pipe can be is said once, with its line: %s", (stop, words) => {
  const lines = said(stop);
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(/^organ\.yaml, line 8, column \d+: /);
  expect(lines[0]).toContain(words);
});
