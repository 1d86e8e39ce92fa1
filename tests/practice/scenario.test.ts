import { describe, expect, test } from "vitest";
import { footOf } from "../../shared-model/pitch/foot.ts";
import { isWanted, type Proposed, type ScenarioStop, scenarioFaults } from "./scenario.ts";
import { scenariosIn, wantedFrom } from "./scenarios.ts";

const stop = (division: string, name: string, kind: ScenarioStop["kinds"][number], pitch: number): ScenarioStop => ({
  division,
  name,
  kinds: [kind],
  pitch: footOf(pitch),
  half: null,
});
const oboe = stop("Oberwerk", "Oboe", "oboe", 8);
const gedackt = stop("Hauptwerk", "Gedackt", "stopped-flute", 8);
const bordun = stop("Hauptwerk", "Bordun", "stopped-flute", 16);
const flute = stop("Hauptwerk", "Flöte", "open-flute", 4);

const proposal = (
  melody: readonly ScenarioStop[],
  accompaniment: readonly ScenarioStop[],
  more: { keyboard?: string; octave?: -1 | 0 | 1; tremulants?: string[]; couplers?: string[] } = {},
): Proposed => ({
  parts: new Map([
    ["melody", { keyboard: "Oberwerk", octave: more.octave ?? 0, stops: melody }],
    ["accompaniment", { keyboard: more.keyboard ?? "Hauptwerk", octave: 0, stops: accompaniment }],
  ]),
  tremulants: new Set(more.tremulants),
  couplers: new Set(more.couplers),
});

const scenario = (some: string, every = "[]") => {
  const head = 'id: invented, organ: none, texture: trio, tradition: neutral, source: common practice, why: ""';
  const [only] = scenariosIn(`scenarios: [{${head}, some: ${some}, every: ${every}}]`);
  if (only === undefined) throw new Error("The invented scenario was not read.");
  return only;
};
const wish = (parts: string) => scenario(`[{what: wish, parts: ${parts}}]`);
const plain = proposal([oboe], [gedackt]);

describe("words for a stop", () => {
  test("give kind, pitch and half", () => {
    expect(wantedFrom("oboe 8")).toEqual({ kind: "oboe", pitch: footOf(8) });
    expect(wantedFrom("nasard 2 2/3")).toEqual({ kind: "nasard", pitch: footOf(8, 3) });
    expect(wantedFrom("mixture")).toEqual({ kind: "mixture" });
    expect(wantedFrom("16")).toEqual({ pitch: footOf(16) });
    expect(wantedFrom("trumpet 8 treble")).toEqual({ kind: "trumpet", pitch: footOf(8), half: "treble" });
  });
  test("are refused when there is no such kind or pitch", () => {
    expect(() => wantedFrom("oboy 8")).toThrow("oboy 8");
    expect(() => wantedFrom("")).toThrow();
  });
  test("of a group mean any of its kinds, at that pitch only", () => {
    expect(isWanted(gedackt, wantedFrom("flute 8"))).toBe(true);
    expect(isWanted(gedackt, wantedFrom("flute 4"))).toBe(false);
    expect(isWanted(oboe, wantedFrom("flue 8"))).toBe(false);
    expect(isWanted(oboe, wantedFrom("oboe 8 treble"))).toBe(false);
  });
});

describe("an expectation", () => {
  test.each([
    ["{melody: {must: [oboe 8]}}", []],
    ["{melody: {must: [flute 8]}}", ["melody: no flute 8"]],
    ["{melody: {one-of: [[flute 8, reed]]}}", []],
    ["{melody: {one-of: [[flute 8, mixture]]}}", ["melody: none of flute 8, mixture"]],
    ["{accompaniment: {mustnot: [16]}}", []],
    ["{accompaniment: {mustnot: [8]}}", ["accompaniment: has any stop 8"]],
    ["{accompaniment: {must: [stopped-flute 8], only: true}}", []],
    ["{accompaniment: {must: [8], shaken: true}}", ["accompaniment: not shaken"]],
    ["{melody: {octave: -1}}", ["melody: in another octave"]],
    ["{melody: {apart-from: [accompaniment]}}", []],
    ["{bass: {must: [16]}}", ["bass: not played"]],
  ])("%s", (parts, faults) => {
    const expected = faults.length === 0 ? [] : [`not among the first 3: wish (nearest: ${faults.join("; ")})`];
    expect(scenarioFaults(wish(parts), [plain])).toEqual(expected);
  });
  test("of nothing else sees every stop too many", () => {
    const thick = proposal([oboe], [gedackt, bordun, flute]);
    expect(
      scenarioFaults(wish("{accompaniment: {must: [stopped-flute 8], may: [flute 4], only: true}}"), [thick]),
    ).toEqual(["not among the first 3: wish (nearest: accompaniment: Bordun is too much)"]);
    expect(scenarioFaults(wish("{accompaniment: {at-most: 2}}"), [thick])).toHaveLength(1);
    expect(scenarioFaults(wish("{accompaniment: {at-most: 3}}"), [thick])).toEqual([]);
  });
  test("of two keyboards fails on one", () => {
    const shared = proposal([oboe], [gedackt], { keyboard: "Oberwerk" });
    expect(scenarioFaults(wish("{melody: {apart-from: [accompaniment]}}"), [shared])).toHaveLength(1);
  });
  test("of a tremulant looks at the divisions that the part sounds", () => {
    const solo = proposal([oboe], [gedackt], { tremulants: ["Oberwerk"] });
    const whole = proposal([oboe], [gedackt], { tremulants: ["all"] });
    const still = wish("{melody: {shaken: true}, accompaniment: {shaken: false}}");
    expect(scenarioFaults(still, [solo])).toEqual([]);
    expect(scenarioFaults(still, [whole])).toHaveLength(1);
  });
  test("of couplers asks for what must be on and off", () => {
    const coupled = proposal([oboe], [gedackt], { couplers: ["Oberwerk to Hauptwerk"] });
    const on = scenario('[{what: wish, parts: {}, couplers: ["Oberwerk to Hauptwerk"]}]');
    const off = scenario('[{what: wish, parts: {}, no-couplers: ["Oberwerk to Hauptwerk"]}]');
    expect([scenarioFaults(on, [coupled]).length, scenarioFaults(on, [plain]).length]).toEqual([0, 1]);
    expect([scenarioFaults(off, [coupled]).length, scenarioFaults(off, [plain]).length]).toEqual([1, 0]);
  });
});

describe("a scenario", () => {
  const deep = proposal([oboe], [bordun]);
  test("is content when one of the proposals looked at will do", () => {
    expect(scenarioFaults(wish("{accompaniment: {mustnot: [16]}}"), [deep, deep, plain])).toEqual([]);
  });
  test("does not look further than it says", () => {
    expect(scenarioFaults(wish("{accompaniment: {mustnot: [16]}}"), [deep, deep, deep, plain])).toHaveLength(1);
  });
  test("wants its conditions held by every proposal looked at", () => {
    const strict = scenario("[]", "[{what: no 16, parts: {accompaniment: {mustnot: [16]}}}]");
    expect(scenarioFaults(strict, [plain, deep])).toEqual([
      "proposal 2 breaks: no 16 (accompaniment: has any stop 16)",
    ]);
    expect(scenarioFaults(strict, [plain, plain, plain, deep])).toEqual([]);
  });
  test("is not content with no proposal at all", () => {
    expect(scenarioFaults(scenario("[]"), [])).toEqual(["nothing is proposed"]);
  });
});
