import { describe, expect, test } from "vitest";
import { judge } from "../../shared-model/judging/judge.ts";
import { problemOf } from "../../shared-model/judging/problem.ts";
import { forEachPair } from "../../shared-model/judging/weighing.ts";
import { prescriptionsFor } from "../../shared-model/music/prescriptions/catalogue.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import { TEXTURES } from "../../shared-model/music/textures/catalogue.ts";
import { placingsFor } from "../../shared-model/propose/state-space.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import type { PairRule } from "../../shared-model/rules/rule.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { Draw } from "../instruments/seeded-random.ts";

const PAIRS = RULES.filter((rule): rule is PairRule => rule.reads === "pair");
const SOLO_TEXTURES = TEXTURES.filter((texture) => texture.parts.length > 1);
const MANNERS = ["baroque", "romantic", "unit", "divided", "poor"] as const;

/** Sections of several parts on random organs, with the recipes that serve them. */
function* problems(seed: number, count: number) {
  const draw = new Draw(seed);
  for (let round = 0; round < count; round++) {
    const instrument = randomInstrument(seed * 1000 + round, { stops: draw.between(6, 20), manner: draw.one(MANNERS) });
    const texture = draw.one(SOLO_TEXTURES);
    const tradition = draw.one(texture.traditions);
    const section = sectionOf(texture, { tradition });
    const recipes = prescriptionsFor(texture.id, tradition, section.dynamic).slice(0, 2);
    yield { draw, instrument, section, problem: problemOf(instrument, section, recipes, [], RULES) };
  }
}

describe.each([11, 12, 13])("pairs of parts, seed %i", (seed) => {
  test("whether a rule has a say, and the most it gives, hang on the parts alone, wherever they are played", () => {
    const faults = new Set<string>();
    let compared = 0;
    for (const { draw, section, problem } of problems(seed, 25)) {
      const placings = section.parts.map((_, index) => placingsFor(problem, index).filter((each) => each !== null));
      problem.readings.forEach((_, reading) => {
        forEachPair(section.parts.length, (a, b) => {
          const [firsts, seconds] = [placings[a] ?? [], placings[b] ?? []];
          if (firsts.length === 0 || seconds.length === 0) return;
          const contexts = Array.from(
            { length: 6 },
            () =>
              [
                problem.weighed(draw.one(firsts), reading).context,
                problem.weighed(draw.one(seconds), reading).context,
              ] as const,
          );
          for (const rule of PAIRS) {
            const says = new Set(
              contexts.map(([one, other]) => (rule.applies(one, other) ? `${rule.most(one, other)}` : "no")),
            );
            compared += 1;
            if (says.size > 1) faults.add(`${rule.id} of ${section.texture}: ${[...says].join(" or ")}`);
          }
        });
      });
    }
    expect([...faults]).toEqual([]);
    expect(compared).toBeGreaterThan(500);
  });

  test("no pair is given more than the most, nor part of a point, nor words with a gap", () => {
    const faults = new Set<string>();
    const spoken = new Set<string>();
    for (const { draw, instrument, section, problem } of problems(seed + 100, 40)) {
      const placings = section.parts.map((part) => {
        const fitting = instrument.divisions.filter((each) => (each.kind === "pedal") === (part.hands === "feet"));
        return {
          part: part.id,
          keyboard: draw.one(fitting.length > 0 ? fitting : instrument.divisions).name,
          octave: draw.one([-1, 0, 0, 0, 1] as const),
        };
      });
      for (let times = 0; times < 6; times++) {
        const share = draw.between(1, 5) / 10;
        const state = {
          drawn: new Set(problem.stops.filter((stop) => !stop.off && draw.chance(share)).map((stop) => stop.id)),
          couplers: new Set(instrument.couplers.filter(() => draw.chance(0.2)).map((each) => each.name)),
          tremulants: new Set(instrument.tremulants.filter(() => draw.chance(0.3))),
          boxes: new Map(
            instrument.divisions.flatMap((each) =>
              each.box ? [[each.box, draw.one(["open", "half", "closed"] as const)] as const] : [],
            ),
          ),
          unisonOff: new Set<string>(),
        };
        const judgement = judge(problem, state, placings);
        if (!judgement) continue;
        for (const { rule, text, remedy } of judgement.reasons) {
          if (!PAIRS.some((each) => each.id === rule)) continue;
          spoken.add(rule);
          if (/undefined|null|NaN|\[object|\bnothing\b| {2}/.test(`${text} ${remedy ?? ""}`))
            faults.add(`${rule} says: ${text} ${remedy ?? ""}`);
        }
        const contexts = judgement.parts.map((part) => problem.weighed(part.placed, judgement.reading).context);
        forEachPair(contexts.length, (a, b) => {
          const [first, second] = [contexts[a], contexts[b]];
          const [one, other] = [judgement.parts[a]?.sound, judgement.parts[b]?.sound];
          if (!first || !second || !one || !other) return;
          for (const rule of PAIRS) {
            if (!rule.applies(first, second)) continue;
            const [most, points] = [rule.most(first, second), rule.weigh(one, other, first, second)];
            if (points > most || !Number.isInteger(points) || !Number.isInteger(most))
              faults.add(`${rule.id}: ${points} of ${most}`);
            if (rule.weigh(one, other, first, second) !== points) faults.add(`${rule.id} is of two minds`);
          }
        });
      }
    }
    expect([...faults]).toEqual([]);
    expect(spoken.size).toBeGreaterThan(4);
  });
});
