import { describe, expect, it } from "vitest";
import { addVoice, type PartSound, silence, type Voice } from "../../shared-model/acoustics/part-sound.ts";
import { heardVoice } from "../../shared-model/judging/placed-part.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { DYNAMICS, TRADITIONS } from "../../shared-model/music/texture.ts";
import { TEXTURES } from "../../shared-model/music/textures/catalogue.ts";
import { isProposable, placingsFor } from "../../shared-model/propose/state-space.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import type { PartContext, PartRule } from "../../shared-model/rules/rule.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { Draw } from "../instruments/seeded-random.ts";

const partRules = RULES.filter((rule): rule is PartRule => rule.reads === "part");
const TREMBLE: Voice = { ...silence(), tremulant: 1 };

/** Sounds that each hold the one before, by one voice more; the last holds all that is there. */
interface Row {
  readonly context: PartContext;
  readonly sounds: readonly PartSound[];
  readonly case: string;
}

/** Rows of random part sounds in random contexts, boxes in any position and tremulants among the voices. */
function* rows(seed: number, rounds: number): Generator<Row> {
  const draw = new Draw(seed);
  for (let round = 0; round < rounds; round++) {
    const instrument = randomInstrument(seed * 1000 + round, {
      stops: draw.between(6, 40),
      manuals: draw.between(1, 4),
    });
    const texture = draw.one(TEXTURES) as Texture;
    const tradition = draw.chance(0.7) ? draw.one(texture.traditions) : draw.one(TRADITIONS);
    const dynamic = draw.chance(0.4) ? draw.one(DYNAMICS) : null;
    const problem = prepare(instrument, sectionOf(texture, { tradition, ...(dynamic === null ? {} : { dynamic }) }));
    for (let part = 0; part < problem.section.parts.length; part++) {
      const placings = placingsFor(problem, part).filter((each) => each !== null);
      if (placings.length === 0) continue;
      const placed = draw.one(placings);
      const reading = draw.between(0, problem.readings.length - 1);
      const { context } = problem.weighed(placed, reading);
      const boxes = new Map(
        instrument.divisions.map((each) => [each.box, draw.one(["open", "half", "closed"] as const)]),
      );
      const voices = placed.reach
        .flatMap(({ division }) => division.stops.filter(isProposable).map((stop) => ({ division, stop })))
        .map(({ division, stop }) => heardVoice(placed, stop, problem.shared, boxes.get(division.box) ?? "open"))
        .filter((voice): voice is Voice => voice !== null);
      if (voices.length === 0) continue;
      for (let time = 0; time < 6; time++) {
        const order = [...voices, ...(context.canShake ? [TREMBLE] : [])]
          .map((voice) => ({ voice, at: draw.between(0, 1_000_000) }))
          .sort((a, b) => a.at - b.at);
        const sounds: PartSound[] = [];
        let sound = silence();
        for (const { voice } of order) {
          const next = silence();
          addVoice(sound, voice, next);
          sounds.push(next);
          sound = next;
        }
        const kinds = `${texture.id}, ${tradition}, ${placed.keyboard.name} of ${round}, reading ${reading}`;
        yield { context, sounds, case: kinds };
      }
    }
  }
}

describe("what a rule says it can give at most", () => {
  it("is never less than what it gives", () => {
    const faults = new Set<string>();
    let judged = 0;
    const draw = new Draw(11);
    for (const { context, sounds, case: where } of rows(7, 300)) {
      for (const rule of partRules) {
        if (!rule.applies(context)) continue;
        const most = rule.most(context);
        for (let time = 0; time < 6; time++) {
          const [a, b, c] = [0, 0, 0].map(() => draw.between(-1, sounds.length - 1)).sort((x, y) => x - y) as [
            number,
            number,
            number,
          ];
          if (b < 0) continue;
          const [now, sound, all] = [a < 0 ? silence() : sounds[a], sounds[b], sounds[c]] as [
            PartSound,
            PartSound,
            PartSound,
          ];
          // A tremulant alone is no sound.
          if (sound.stops === 0) continue;
          judged += 1;
          const points = rule.weigh(sound, context);
          if (points > most) faults.add(`${rule.id} gives ${points}, its most is ${most}: ${where}`);
          if (rule.falling && now.stops > 0 && points > rule.weigh(now, context)) {
            faults.add(`${rule.id} rises to ${points}: ${where}`);
          }
          if (!rule.atMost) continue;
          const bound = rule.atMost(now, all, context);
          if (bound === null) {
            if (!rule.forbids?.(sound, context)) faults.add(`${rule.id} allows what it said it forbids: ${where}`);
          } else if (points > bound) faults.add(`${rule.id} gives ${points}, at most ${bound}: ${where}`);
        }
      }
    }
    expect([...faults]).toEqual([]);
    expect(judged).toBeGreaterThan(20_000);
  });
});
