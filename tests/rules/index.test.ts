import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { judge } from "../../shared-model/judging/judge.ts";
import { problemOf } from "../../shared-model/judging/problem.ts";
import { prescriptionsFor } from "../../shared-model/music/prescriptions/catalogue.ts";
import { SOURCES } from "../../shared-model/music/prescriptions/sources.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import { DYNAMICS, TRADITIONS } from "../../shared-model/music/texture.ts";
import { TEXTURES } from "../../shared-model/music/textures/catalogue.ts";
import { RULES } from "../../shared-model/rules/index.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { Draw } from "../instruments/seeded-random.ts";

/** Conventions of the trade, numbered from 1. */
const CONVENTIONS = 50;

const FOLDER = new URL("../../shared-model/rules/", import.meta.url);
/** The files that hold a rule, without the contract and what rules share. */
const files = readdirSync(FOLDER)
  .filter((file) => file.endsWith(".ts") && /^ {2}reads: "[a-z]+",$/m.test(readFileSync(new URL(file, FOLDER), "utf8")))
  .map((file) => file.slice(0, -3))
  .sort();

describe("the index", () => {
  test("holds every rule of the folder, alphabetically, under its file's name", () => {
    expect(RULES.map((rule) => rule.id)).toEqual(files);
  });

  test("holds every convention of the trade", () => {
    const held = new Set(RULES.flatMap((rule) => rule.conventions));
    const numbers = Array.from({ length: CONVENTIONS }, (_, index) => index + 1);
    expect(numbers.filter((number) => !held.has(number))).toEqual([]);
    expect([...held].filter((number) => !numbers.includes(number))).toEqual([]);
  });

  test.each(RULES.map((rule) => ({ id: rule.id, rule })))("$id is complete", ({ rule }) => {
    expect(rule.id).toMatch(/^[a-z]+(?:-[a-z]+)*$/);
    expect(rule.conventions.length).toBeGreaterThan(0);
    for (const sentence of [rule.statement, rule.why]) expect(sentence).toMatch(/^\S.*\.$/);
    expect(rule.source === "common practice" || rule.source in SOURCES).toBe(true);
  });
});

/** Rules whose words are their own; those of the recipe rules stand where the search reckons with them. */
const wordsOfRules = new Set(RULES.filter((rule) => rule.reads !== "recipe").map((rule) => rule.id));

describe.each([1, 2, 3, 4, 5, 6])("random sounds, seed %i", (seed) => {
  const draw = new Draw(seed * 7919);

  test("no rule gives more than its most, nor part of a point, nor twice different points, nor a gap in its words", () => {
    const faults = new Set<string>();
    let weighed = 0;
    for (let round = 0; round < 60; round++) {
      const manner = draw.one(["baroque", "romantic", "unit", "divided", "poor"] as const);
      const instrument = randomInstrument(seed * 1000 + round, { stops: draw.between(6, 24), manner });
      const texture = draw.one(TEXTURES);
      const tradition = draw.chance(0.5) ? draw.one(texture.traditions) : draw.one(TRADITIONS);
      const dynamic = draw.chance(0.3) ? draw.one(DYNAMICS) : undefined;
      const section = sectionOf(texture, {
        tradition,
        ...(dynamic && { dynamic }),
        tempo: draw.one(["slow", "fast", null] as const),
      });
      const problem = problemOf(
        instrument,
        section,
        prescriptionsFor(texture.id, tradition, section.dynamic),
        [],
        RULES,
      );
      const placings = section.parts.map((part) => {
        const fitting = instrument.divisions.filter((each) => (each.kind === "pedal") === (part.hands === "feet"));
        return {
          part: part.id,
          keyboard: draw.one(fitting.length > 0 ? fitting : instrument.divisions).name,
          octave: draw.one([-1, 0, 0, 1] as const),
        };
      });
      for (let times = 0; times < 8; times++) {
        const few = draw.between(1, 6) / 10;
        const state = {
          drawn: new Set(problem.stops.filter((stop) => !stop.off && draw.chance(few)).map((stop) => stop.id)),
          couplers: new Set(instrument.couplers.filter(() => draw.chance(0.1)).map((each) => each.name)),
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
        for (const reason of judgement.reasons) {
          if (
            wordsOfRules.has(reason.rule) &&
            /undefined|null|NaN|\[object|\bnothing\b| {2}/.test(`${reason.text} ${reason.remedy ?? ""}`)
          ) {
            faults.add(`${reason.rule} says: ${reason.text} ${reason.remedy ?? ""}`);
          }
        }
        for (let reading = 0; reading < problem.readings.length; reading++) {
          for (const part of judgement.parts) {
            const { context, partRules } = problem.weighed(part.placed, reading);
            const before = JSON.stringify(part.sound);
            for (const rule of partRules) {
              weighed += 1;
              const most = rule.most(context);
              const points = rule.weigh(part.sound, context);
              if (points > most || !Number.isInteger(points) || !Number.isInteger(most))
                faults.add(`${rule.id}: ${points} of ${most}`);
              if (rule.yieldsToPrescription && most < 0)
                faults.add(`${rule.id}: a complaint that a recipe silences gives 0, over its most ${most}`);
              if (rule.weigh(part.sound, context) !== points) faults.add(`${rule.id} is of two minds`);
            }
            if (JSON.stringify(part.sound) !== before) faults.add("a rule changed the sound that it weighs");
            for (const other of judgement.parts) {
              if (other === part) continue;
              const second = problem.weighed(other.placed, reading).context;
              for (const rule of problem.rules.pair) {
                if (!rule.applies(context, second)) continue;
                const [most, points] = [
                  rule.most(context, second),
                  rule.weigh(part.sound, other.sound, context, second),
                ];
                if (points > most || !Number.isInteger(points) || !Number.isInteger(most))
                  faults.add(`${rule.id}: ${points} of ${most}`);
              }
            }
          }
        }
      }
    }
    expect([...faults]).toEqual([]);
    expect(weighed).toBeGreaterThan(1000);
  });
});
