import { describe, expect, it } from "vitest";
import { COLOURS } from "../../shared-model/acoustics/colour.ts";
import { type Problem, problemOf } from "../../shared-model/judging/problem.ts";
import { prescriptionsFor } from "../../shared-model/music/prescriptions/catalogue.ts";
import { STAND_INS } from "../../shared-model/music/prescriptions/stand-ins.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Dynamic, Part, Texture, Tradition } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { search, tellingPart } from "../../shared-model/propose/search.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { bestOfColours, type Enumerated, enumerate } from "./enumeration.ts";
import { TINY_ORGANS, tinyInstrument } from "./tiny-organs.ts";

/** Texture, tradition, stops, mark: a third part multiplies the states, so it gets fewer stops. */
const CASES: readonly (readonly [string, Tradition, number, Dynamic?])[] = [
  ["melody-over-accompaniment", "neutral", 6],
  ["plenum-manual", "central-german", 11],
  ["two-voices", "neutral", 7],
  ["flutes", "neutral", 8],
  ["ripieno", "italian-renaissance", 8],
  ["bass-solo", "spanish", 8],
  ["plein-jeu", "french-classical", 8],
  ["hymn-verse", "english-cathedral", 7],
  // Where rules ask how loud a set is, which the search knows between bounds only until the set is kept.
  ["sustained", "german-romantic", 8, "p"],
  ["sustained", "german-romantic", 8, "f"],
  ["melody-over-accompaniment", "neutral", 6, "mf"],
  ["choir-accompaniment", "neutral", 8],
];
const SEEDS = Number(process.env.REGISTRANT_EXHAUSTIVE ?? 3);
/** Seeds on which the search once differed, by texture. */
const FAILED_ONCE: Readonly<Record<string, readonly number[]>> = {
  "choir-accompaniment": [20],
  "plenum-manual": [21],
};

function problemFor(instrument: Instrument, id: string, tradition: Tradition, dynamic?: Dynamic): Problem {
  const section = sectionOf(textureFor(id, tradition) as Texture, { tradition, ...(dynamic ? { dynamic } : {}) });
  const recipes = prescriptionsFor(id, tradition, dynamic ?? null);
  return problemOf(instrument, section, recipes.slice(0, 3), STAND_INS, RULES);
}

const textOf = ({ score, signature }: Pick<Enumerated, "score" | "signature">): readonly [number, string] => [
  score,
  signature,
];

/** Compares the best eight states, and the best eight of those that differ in more than a box; how many there were. */
function compare(problem: Problem): number {
  const { best, states } = enumerate(problem);
  expect(search(problem, 8).map(textOf)).toEqual(best.slice(0, 8).map(textOf));
  const drawings = new Map<string, Enumerated>();
  for (const each of best) if (!drawings.has(each.drawing)) drawings.set(each.drawing, each);
  const fresh = { rounds: 0, pools: 0, candidates: 0, pairs: 0, bound: 0, last: 0 };
  const found = search(problem, 8, null, Number.NEGATIVE_INFINITY, fresh, null, "drawings");
  expect(found.map(textOf)).toEqual([...drawings.values()].slice(0, 8).map(textOf));
  return states;
}

describe("the best eight are those of exhaustive enumeration, on a tiny organ with", () => {
  it.each(TINY_ORGANS.map((tiny) => [tiny.what, tiny] as const))("%s", { timeout: 120_000 }, (_, tiny) => {
    const states = compare(problemFor(tinyInstrument(tiny), tiny.texture, tiny.tradition));
    expect(states).toBeGreaterThan(1000);
  });
});

describe("the best of each colour is that of exhaustive enumeration, on a tiny organ with", () => {
  it.each(TINY_ORGANS.map((tiny) => [tiny.what, tiny] as const))("%s", { timeout: 120_000 }, (_, tiny) => {
    const problem = problemFor(tinyInstrument(tiny), tiny.texture, tiny.tradition);
    const telling = (problem.section.parts[tellingPart(problem)] as Part).id;
    const all = bestOfColours(problem, telling);
    const found = COLOURS.flatMap((colour) =>
      search(problem, 1, colour).map((each): [string, number] => [colour.id, each.score]),
    );
    expect(new Map(found)).toEqual(new Map(all));
    expect(all.size).toBeGreaterThan(1);
  });
});

describe("the best eight are those of exhaustive enumeration, on a random organ", () => {
  for (const [id, tradition, stops, mark] of CASES) {
    const seeds = new Set([...Array.from({ length: SEEDS }, (_, index) => index + 1), ...(FAILED_ONCE[id] ?? [])]);
    for (const seed of seeds) {
      it(`${id}, ${tradition}${mark ? `, ${mark}` : ""}, seed ${seed}`, { timeout: 120_000 }, () => {
        const manuals = 1 + (seed % 2);
        const states = compare(
          problemFor(randomInstrument(seed * 7919 + id.length, { stops, manuals }), id, tradition, mark),
        );
        expect(states).toBeGreaterThan(0);
      });
    }
  }
});
