import { describe, expect, test } from "vitest";
import { checkRegistration } from "../../shared-model/check/check.ts";
import type { ConsoleState } from "../../shared-model/console/state.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture, Tradition } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { Draw } from "../instruments/seeded-random.ts";
import { bestWay, everyWay } from "./every-keyboard.ts";

const CASES: readonly (readonly [string, Tradition])[] = [
  ["melody-over-accompaniment", "neutral"],
  ["trio", "neutral"],
  ["plein-jeu", "french-classical"],
  ["two-voices", "neutral"],
  ["tierce-en-taille", "french-classical"],
  ["cornet-voluntary", "english-18c"],
];

/** Stops, couplers, tremulants and boxes set at random. */
function randomState(instrument: Instrument, seed: number): ConsoleState {
  const draw = new Draw(seed);
  const some = (names: readonly string[], share: number): ReadonlySet<string> =>
    new Set(names.filter(() => draw.chance(share)));
  const boxes = [...new Set(instrument.divisions.flatMap((division) => division.box ?? []))];
  return {
    drawn: some(
      instrument.divisions.flatMap((division) => division.stops.map((stop) => stop.id)),
      0.3,
    ),
    couplers: some(
      instrument.couplers.map((coupler) => coupler.name),
      0.25,
    ),
    tremulants: some(instrument.tremulants, 0.3),
    boxes: new Map(boxes.map((box) => [box, draw.one(["open", "half", "closed"] as const)])),
    unisonOff: new Set(),
  };
}

describe("keyboards that a file leaves open", () => {
  for (const [id, tradition] of CASES) {
    for (let seed = 1; seed <= 6; seed++) {
      test(`are the best of all ways: ${id}, random organ of seed ${seed}`, () => {
        const instrument = randomInstrument(seed * 577 + id.length, { stops: 24, manuals: 1 + (seed % 4) });
        const section = sectionOf(textureFor(id, tradition) as Texture, { tradition });
        const problem = prepare(instrument, section);
        const state = randomState(instrument, seed);
        const ways = everyWay(problem, state);
        const checked = checkRegistration(problem, { state, keyboards: null, octaves: {} });
        if ("unplayable" in checked) {
          expect(ways).toEqual([]);
          return;
        }
        const best = bestWay(ways);
        expect(checked.judgement.score).toBe(best?.score);
        expect(checked.placings).toEqual(best?.placings);
        expect(checked.sure).toBe(true);
      });
    }
  }

  test("a part that is said stays where it is, and only the others are tried", () => {
    const instrument = randomInstrument(5, { stops: 24, manuals: 3 });
    const section = sectionOf(textureFor("melody-over-accompaniment", "neutral") as Texture, {});
    const problem = prepare(instrument, section);
    const state = randomState(instrument, 3);
    for (const manual of instrument.divisions.filter((division) => division.kind === "manual")) {
      const said = { melody: manual.name };
      const checked = checkRegistration(problem, { state, keyboards: said, octaves: {} });
      if ("unplayable" in checked) throw new Error(checked.unplayable);
      const ways = everyWay(problem, state).filter((way) => way.placings[0]?.keyboard === manual.name);
      expect(checked.placings).toEqual(bestWay(ways)?.placings);
    }
  });
});
