import { describe, expect, it } from "vitest";
import { problemOf } from "../../shared-model/judging/problem.ts";
import { prescriptionsFor } from "../../shared-model/music/prescriptions/catalogue.ts";
import { STAND_INS } from "../../shared-model/music/prescriptions/stand-ins.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture, Tradition } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { search } from "../../shared-model/propose/search.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { enumerate } from "./enumeration.ts";

const CASES: readonly (readonly [string, Tradition])[] = [
  ["melody-over-accompaniment", "neutral"],
  ["plenum-manual", "central-german"],
  ["two-voices", "neutral"],
  ["flutes", "neutral"],
  ["ripieno", "italian-renaissance"],
  ["bass-solo", "spanish"],
  ["plein-jeu", "french-classical"],
  ["hymn-verse", "english-cathedral"],
];
const SEEDS = Number(process.env.REGISTRANT_EXHAUSTIVE ?? 3);

describe("the best eight are those of exhaustive enumeration", () => {
  for (const [id, tradition] of CASES) {
    for (let seed = 1; seed <= SEEDS; seed++) {
      it(`${id}, ${tradition}, random instrument of seed ${seed}`, { timeout: 120_000 }, () => {
        const instrument = randomInstrument(seed * 7919 + id.length, { stops: 7, manuals: 1 + (seed % 2) });
        const section = sectionOf(textureFor(id, tradition) as Texture, { tradition });
        const problem = problemOf(
          instrument,
          section,
          prescriptionsFor(id, tradition, null).slice(0, 3),
          STAND_INS,
          RULES,
        );
        const { best } = enumerate(problem);
        const found = search(problem, 8);
        expect(found.map((each) => [each.score, each.signature])).toEqual(
          best.slice(0, 8).map((each) => [each.score, each.signature]),
        );
      });
    }
  }
});
