import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { SOURCES } from "../../shared-model/music/prescriptions/sources.ts";
import { TRADITIONS } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { type Expectation, isWanted } from "./scenario.ts";
import { practiceScenarios } from "./scenarios.ts";

const scenarios = practiceScenarios();
const named = scenarios.map((each) => [each.id, each] as const);
const expectations = (each: (typeof scenarios)[number]): readonly Expectation[] => [...each.some, ...each.every];

function organOf(id: string): Instrument {
  const text = readFileSync(new URL(`../../instruments/${id}.yaml`, import.meta.url), "utf8");
  const { instrument } = readInstrumentFile(text, `${id}.yaml`);
  if (instrument === null) throw new Error(`${id}.yaml cannot be read.`);
  return instrument;
}

test("there are fifty-four scenarios, at least two for every tradition", () => {
  expect(scenarios).toHaveLength(54);
  expect(new Set(scenarios.map(({ id }) => id)).size).toBe(54);
  for (const tradition of TRADITIONS) {
    expect(scenarios.filter((each) => each.tradition === tradition).length, tradition).toBeGreaterThanOrEqual(2);
  }
});

describe("a practice scenario", () => {
  test.each(named)("%s names parts of its texture, and sources that there are", (_, each) => {
    const parts = textureFor(each.texture, each.tradition)?.parts.map(({ id }) => id) ?? [];
    const asked = expectations(each).flatMap((expectation) =>
      [...expectation.parts].flatMap(([id, part]) => [id, ...part.apartFrom]),
    );
    expect(asked.filter((id) => !parts.includes(id))).toEqual([]);
    expect(each.some.length).toBeGreaterThan(0);
    expect(each.every.length).toBeGreaterThan(0);
    expect(each.source === "common practice" || each.source in SOURCES, each.source).toBe(true);
  });

  // What the organ lacks cannot be expected; a coupled keyboard may lend its stops to the feet.
  test.each(named)("%s expects only stops and couplers that its organ has", (_, each) => {
    const organ = organOf(each.organ);
    const stops = organ.divisions.flatMap((division) => division.stops);
    for (const { what, parts, couplers, noCouplers } of expectations(each)) {
      for (const [id, part] of parts) {
        for (const list of [...part.must.map((wanted) => [wanted]), ...part.oneOf]) {
          const found = list.some((wanted) => stops.some((stop) => !stop.off && isWanted(stop, wanted)));
          expect(found, `${what}, ${id}: ${JSON.stringify(list)}`).toBe(true);
        }
        if (part.shaken === true) expect(organ.tremulants).not.toEqual([]);
      }
      const known = organ.couplers.map(({ name }) => name);
      expect([...couplers, ...noCouplers].filter((name) => !known.includes(name))).toEqual([]);
    }
  });
});
