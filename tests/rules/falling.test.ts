import { describe, expect, it } from "vitest";
import { addVoice, type PartSound, silence, type Voice } from "../../shared-model/acoustics/part-sound.ts";
import { heardVoice } from "../../shared-model/judging/placed-part.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { TEXTURES } from "../../shared-model/music/textures/catalogue.ts";
import { isProposable, placingsFor } from "../../shared-model/propose/state-space.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import type { PartContext, PartRule } from "../../shared-model/rules/rule.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { Draw } from "../instruments/seeded-random.ts";

const partRules = RULES.filter((rule): rule is PartRule => rule.reads === "part");

/** Random part sounds with one voice more, in random contexts: `[context, before, after]`. */
function* extended(seed: number, rounds: number): Generator<readonly [PartContext, PartSound, PartSound]> {
  const draw = new Draw(seed);
  for (let round = 0; round < rounds; round++) {
    const instrument = randomInstrument(seed * 1000 + round, {
      stops: draw.between(6, 40),
      manuals: draw.between(1, 4),
    });
    const texture = draw.one(TEXTURES) as Texture;
    const tradition = draw.one(texture.traditions);
    const problem = prepare(instrument, sectionOf(texture, { tradition }));
    for (let part = 0; part < problem.section.parts.length; part++) {
      const placings = placingsFor(problem, part).filter((each) => each !== null);
      if (placings.length === 0) continue;
      const placed = draw.one(placings);
      const { context } = problem.weighed(placed, problem.readings.length - 1);
      const voices = placed.reach
        .flatMap((each) => each.division.stops)
        .filter(isProposable)
        .map((stop) => heardVoice(placed, stop, problem.shared, "open"))
        .filter((voice): voice is Voice => voice !== null);
      for (let time = 0; time < 12 && voices.length > 1; time++) {
        const before = silence();
        const size = draw.between(1, Math.min(7, voices.length - 1));
        const order = [...voices].sort(() => draw.between(0, 2) - 1);
        for (const voice of order.slice(0, size)) addVoice(before, voice, before);
        const after = silence();
        addVoice(before, order[size] as Voice, after);
        yield [context, before, after];
      }
    }
  }
}

describe("rules that are followed stop by stop", () => {
  it("never give more when one more stop is drawn", () => {
    const risen = new Set<string>();
    let judged = 0;
    for (const [context, before, after] of extended(7, 400)) {
      for (const rule of partRules) {
        if (!rule.applies(context)) continue;
        judged += 1;
        if (rule.weigh(after, context) > rule.weigh(before, context)) risen.add(rule.id);
      }
    }
    expect(judged).toBeGreaterThan(10_000);
    expect(partRules.filter((rule) => rule.falling && risen.has(rule.id)).map((rule) => rule.id)).toEqual([]);
    if (process.env.LIST)
      console.log(
        "never rise:",
        partRules
          .filter((rule) => !risen.has(rule.id))
          .map((rule) => rule.id)
          .join(" "),
      );
  });
});
