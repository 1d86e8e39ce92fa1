import { expect, test } from "vitest";
import { judge } from "../../shared-model/judging/judge.ts";
import { problemOf } from "../../shared-model/judging/problem.ts";
import { keyFromText } from "../../shared-model/pitch/key.ts";
import { consoleOfExample, type ExampleConsole } from "../../shared-model/rules/example.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import type { Example } from "../../shared-model/rules/rule.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

/** What a rule says of an organ that the notation of examples cannot write down. */
function said(rule: string, example: Example, change: (instrument: Instrument) => Instrument) {
  const { instrument, section, state, placings }: ExampleConsole = consoleOfExample(example);
  const judgement = judge(problemOf(change(instrument), section, [], [], RULES), state, placings);
  return judgement?.reasons.filter((reason) => reason.rule === rule).map(({ text, remedy }) => `${text} ${remedy}`);
}

const keys = (...texts: readonly string[]): readonly number[] => texts.map((text) => keyFromText(text) ?? 0);
/** The bass octave without C#, D#, F# and G#. */
const shortOctave = keys("C#2", "D#2", "F#2", "G#2");
const shortened =
  (...names: readonly string[]) =>
  (instrument: Instrument): Instrument => ({
    ...instrument,
    divisions: instrument.divisions.map((each) =>
      names.includes(each.name) ? { ...each, compass: { ...each.compass, missing: shortOctave } } : each,
    ),
  });

test("old-compass names the notes of a short octave, and a keyboard that has them", () => {
  const example: Example = { organ: "Organo: Principale 8", plays: "plenum on Organo", ranges: { plenum: "C2-C5" } };
  expect(said("old-compass", example, shortened("Organo"))).toEqual([
    "The Organo has no key for C#2, Eb2, F#2 and G#2 of the chorus. Play these notes an octave higher, on a 16 if the organ has one.",
  ]);
  const two = { ...example, organ: "Organo: Principale 8 | Positivo: Flauto 8" };
  expect(said("old-compass", two, shortened("Organo"))).toEqual([
    "The Organo has no key for C#2, Eb2, F#2 and G#2 of the chorus. Play these notes on the Positivo.",
  ]);
  expect(said("old-compass", two, shortened("Organo", "Positivo"))).toEqual([
    "The Organo has no key for C#2, Eb2, F#2 and G#2 of the chorus. Play these notes an octave higher, on a 16 if the organ has one.",
  ]);
  expect(said("old-compass", { ...example, ranges: { plenum: "A2-C5" } }, shortened("Organo"))).toEqual([]);
});

test("old-compass leaves a default range alone, which asks for no note in particular", () => {
  expect(
    said("old-compass", { organ: "Organo: Principale 8", plays: "plenum on Organo" }, shortened("Organo")),
  ).toEqual([]);
});

test("wind-for-many-basses is sooner anxious about an old organ", () => {
  const example: Example = { organ: "Pedal: Principal 16, Subbass 16, Posaune 16, Oktave 8", plays: "bass on Pedal" };
  const builtIn =
    (year: number) =>
    (instrument: Instrument): Instrument => ({ ...instrument, year });
  expect(said("wind-for-many-basses", example, builtIn(1699))).toEqual([
    "Principal 16, Subbass 16 and Posaune 16 together take much wind. Hold a full chord and listen whether the pitch sinks; if it does, take one of them off.",
  ]);
  expect(said("wind-for-many-basses", example, builtIn(1930))).toEqual([]);
});
