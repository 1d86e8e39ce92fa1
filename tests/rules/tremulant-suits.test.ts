import { describe, expect, test } from "vitest";
import { judge } from "../../shared-model/judging/judge.ts";
import { problemOf } from "../../shared-model/judging/problem.ts";
import type { Prescription } from "../../shared-model/music/prescription.ts";
import { consoleOfExample } from "../../shared-model/rules/example.ts";
import type { Example } from "../../shared-model/rules/rule.ts";
import { tremulantSuits } from "../../shared-model/rules/tremulant-suits.ts";

/** A recipe that says nothing but how it wants the tremulant. */
const asking = (tremulant: Prescription["tremulant"]): Prescription => ({
  id: "example.neutral.1",
  texture: "example",
  tradition: "neutral",
  sources: ["common practice"],
  evidence: "common practice",
  parts: [],
  tremulant,
  couplers: [],
});

/** Points and most of the melody and the accompaniment, the whole organ shaken or not. */
function weighed(tremulant: Prescription["tremulant"], isOn: boolean, tempo: Example["tempo"] = "slow") {
  const { instrument, section, state, placings } = consoleOfExample({
    organ: "Positif: Voix humaine 8, Bourdon 8 | Grand-Orgue: Flûte 8",
    plays: "melody on Positif, accompaniment on Grand-Orgue",
    tremulants: ["all"],
    tempo,
  });
  const problem = problemOf(instrument, section, [asking(tremulant)], [], [tremulantSuits]);
  const stands = isOn ? state : { ...state, tremulants: new Set<string>() };
  const parts = judge(problem, stands, placings)?.parts ?? [];
  return parts.map((part) => {
    const { context } = problem.weighed(part.placed, 0);
    return [tremulantSuits.weigh(part.sound, context), tremulantSuits.most(context)];
  });
}

describe("the recipe's own word on the tremulant", () => {
  test("asked for: the tune gains by it, the accompaniment on its wind does no wrong", () => {
    expect(weighed("required", true)).toEqual([
      [300, 300],
      [0, 0],
    ]);
    expect(weighed("required", false)).toEqual([
      [0, 300],
      [0, 0],
    ]);
  });

  test("welcome and allowed: a little for the tune, a little against what it shakes besides", () => {
    expect(weighed("welcome", true)).toEqual([
      [50, 50],
      [-50, 0],
    ]);
    expect(weighed("may", true)).toEqual([
      [25, 25],
      [-50, 0],
    ]);
  });

  test("welcome in slow music is not welcome in quick notes", () => {
    expect(weighed("welcome", true, "fast")).toEqual([
      [-250, 0],
      [-50, 0],
    ]);
  });

  test("refused: the same solo is better without", () => {
    expect(weighed("no", true)).toEqual([
      [-200, 0],
      [-300, 0],
    ]);
    expect(weighed("no", false)).toEqual([
      [0, 0],
      [0, 0],
    ]);
  });
});
