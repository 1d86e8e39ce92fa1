import { describe, expect, test } from "vitest";
import { verdictOf } from "../../shared-model/plan/feasibility.ts";
import {
  type ActTimes,
  actTime,
  beatSeconds,
  handTime,
  type KnobAction,
  type KnobRow,
  legTime,
  meansTime,
  motionTime,
  type SingleMeans,
  secondsOf,
  USUAL_DISTANCES,
  type Visit,
  waitingTime,
} from "../../shared-model/plan/motion.ts";
import {
  DISTANCES,
  MOTIONS,
  type Motion,
  type MotionValue,
  MUSIC_VALUES,
  PACE_FACTORS,
  SHORT,
} from "../../shared-model/plan/motion-values.ts";

const D = USUAL_DISTANCES;

// Worked out by hand from the tables, straight lines between their points.
test.each<[Motion, number, number]>([
  ["reachA", 2.54, 2.5],
  ["reachA", 6, 4.471],
  ["reachB", 1, 2.0],
  ["reachB", 7, 4.983],
  ["reachB", 14, 8.209],
  ["reachB", 22, 10.563],
  ["reachB", 25, 11.39],
  ["reachB", 30, 12.768],
  ["reachB", 45, 17.002],
  ["reachB", 76.2, 25.8],
  ["reachB", 80, 26.847],
  ["reachB", 110, 35.115],
  ["moveA", 2.5, 2.469],
  ["moveA", 7, 4.583],
])("%s over %d cm", (motion, cm, tmu) => expect(motionTime(motion, cm)).toBeCloseTo(tmu, 3));

test.each([
  ["draw", "electric", 6.47],
  ["cancel", "electric", 2.47],
  ["draw", "mechanical", 11.06],
  ["cancel", "mechanical", 7.06],
  ["draw", "tabs", 2],
] as const)("to %s a knob, %s", (act, action, tmu) => expect(actTime(act, action, D)).toBeCloseTo(tmu, 2));

/** So many knobs of one division, of two divisions of a jamb, or of two jambs, the second with one knob. */
const row = (count: number, act: Visit["act"], second: number | null = null): Visit[] =>
  Array.from({ length: count }, (_, at): Visit => {
    if (at === 0) return { act, away: D.keysToBlock };
    return { act, away: at === 1 && second !== null ? second : D.knobPitch };
  });
const actsOf = (action: KnobAction): ActTimes => ({
  draw: actTime("draw", action, D),
  cancel: actTime("cancel", action, D),
});
/** The same knobs for one hand, those of the second division or jamb as a row of their own. */
function hand(visits: readonly Visit[], action: KnobAction, reads = false): number {
  const rows = visits.flatMap(({ act, away }, at): KnobRow[] => {
    const [draws, cancels] = act === "draw" ? [1, 0] : [0, 1];
    return at > 0 && away === D.knobPitch ? [] : [{ away, draws, cancels }];
  });
  const last = rows.at(-1) as KnobRow;
  const more = visits.length - rows.length;
  const whole = { ...last, draws: last.draws * (1 + more), cancels: last.cancels * (1 + more) };
  return secondsOf(handTime([...rows.slice(0, -1), whole], D.keysToBlock, actsOf(action), reads, D));
}

describe("one hand, seconds at a normal pace for 1, 2, 3, 5 and 8 knobs", () => {
  test.each<[string, KnobAction, Visit["act"], boolean, number | null, (number | null)[]]>([
    ["electric, practised", "electric", "draw", false, null, [1.46, 1.87, 2.28, 3.11, 4.34]],
    ["electric, labels read", "electric", "draw", true, null, [1.46, 2.13, 2.81, 4.16, 6.18]],
    ["electric, cancelled", "electric", "cancel", false, null, [1.31, 1.58, 1.85, 2.39, 3.19]],
    ["electric, two divisions", "electric", "draw", false, D.blockToBlock, [null, 2.07, 2.48, 3.31, 4.54]],
    ["electric, two divisions, read", "electric", "draw", true, D.blockToBlock, [null, 2.33, 3.01, 4.36, 6.38]],
    ["electric, two jambs", "electric", "draw", false, D.jambToJamb, [null, 2.95, 3.37, 4.19, 5.43]],
    ["mechanical, practised", "mechanical", "draw", false, null, [1.62, 2.2, 2.78, 3.93, 5.66]],
    ["mechanical, labels read", "mechanical", "draw", true, null, [1.62, 2.46, 3.3, 4.98, 7.5]],
    ["mechanical, cancelled", "mechanical", "cancel", false, null, [1.48, 1.91, 2.35, 3.21, 4.51]],
    ["mechanical, two divisions", "mechanical", "draw", false, D.blockToBlock, [null, 2.4, 2.98, 4.13, 5.87]],
    ["mechanical, two jambs", "mechanical", "draw", false, D.jambToJamb, [null, 3.28, 3.86, 5.02, 6.75]],
  ])("%s", (_, action, act, reads, second, expected) => {
    const found = [1, 2, 3, 5, 8].map((count, at) =>
      expected[at] === null ? null : hand(row(count, act, second), action, reads),
    );
    for (const [at, seconds] of found.entries()) {
      if (seconds !== null) expect(Math.abs(seconds - (expected[at] as number))).toBeLessThanOrEqual(0.01);
    }
  });

  test("tabs over the top manual", () => {
    const tabs = (count: number): number =>
      secondsOf(
        handTime([{ away: D.tabs, draws: count, cancels: 0 }], D.tabs, actsOf("tabs"), false, {
          ...D,
          knobPitch: D.tabPitch,
        }),
      );
    expect([1, 2, 3, 5, 8].map((count) => Number(tabs(count).toFixed(2)))).toEqual([0.89, 1.05, 1.21, 1.54, 2.02]);
  });
});

test("an assistant whose hands wait on the first knobs", () => {
  const wait = (count: number, action: KnobAction): number => secondsOf(waitingTime(row(count, "draw"), action, D));
  expect([1, 2, 3, 5, 8].map((count) => Number(wait(count, "electric").toFixed(2)))).toEqual([
    0.16, 0.57, 0.99, 1.81, 3.05,
  ]);
  expect([1, 2, 3, 5, 8].map((count) => Number(wait(count, "mechanical").toFixed(2)))).toEqual([
    0.33, 0.9, 1.48, 2.64, 4.37,
  ]);
});

test.each<[SingleMeans, number, number]>([
  ["piston-same", 0.39, 0.23],
  ["piston-next", 0.66, 0.37],
  ["piston-far", 0.99, 0.53],
  ["toe-near", 0.82, 0.56],
  ["toe-far", 1.54, 0.92],
  ["hitch-down", 1.56, 1.12],
  ["swell-shoe", 1.0, 0.65],
])("%s: seconds until the limb is back, and until it acts", (means, whole, sound) => {
  const { whole: back, sound: acts } = meansTime(means, D);
  expect([secondsOf(back), secondsOf(acts)].map((each) => Number(each.toFixed(2)))).toEqual([whole, sound]);
});

test("what must hold for any console", () => {
  for (const action of ["electric", "mechanical", "tabs"] as const) {
    for (let count = 2; count < 20; count++) {
      expect(hand(row(count, "draw"), action)).toBeGreaterThan(hand(row(count - 1, "draw"), action));
      expect(hand(row(count, "cancel"), action)).toBeLessThanOrEqual(hand(row(count, "draw"), action));
      expect(hand(row(count, "draw"), action, true)).toBeGreaterThan(hand(row(count, "draw"), action));
      expect(hand(row(count, "draw", D.blockToBlock), action)).toBeGreaterThan(hand(row(count, "draw"), action));
      expect(hand(row(count, "draw", D.jambToJamb), action)).toBeGreaterThan(
        hand(row(count, "draw", D.blockToBlock), action),
      );
    }
    expect(actTime("draw", "electric", D)).toBeLessThan(actTime("draw", "mechanical", D));
  }
  for (const motion of Object.keys(MOTIONS) as Motion[]) {
    for (let cm = 1; cm < 150; cm++) expect(motionTime(motion, cm + 1)).toBeGreaterThanOrEqual(motionTime(motion, cm));
  }
  expect(legTime(35)).toBeGreaterThan(legTime(15));
  expect(PACE_FACTORS.brisk).toBeLessThan(PACE_FACTORS.normal);
  expect(PACE_FACTORS.normal).toBeLessThan(PACE_FACTORS.careful);
});

test.each([
  [40, 2, 3],
  [60, 0.5, 0.5],
  [72, 3, 2.5],
  [80, 1, 0.75],
  [96, 4, 2.5],
  [120, 1, 0.5],
])("at %d beats a minute %d beats", (bpm, beats, seconds) => expect(beatSeconds(beats, bpm)).toBeCloseTo(seconds, 9));

// The music leaves, the change needs, both in seconds; slack is one over the other.
const READ = 7.3;
test.each([
  ["two electric draws in 2 beats at 72", 1.667, 1.869, "brisk"],
  ["three mechanical draws, labels read, in 4 beats at 60", 4.0, 3.303, "easy"],
  ["one mechanical draw in a beat at 66", 0.909, 1.622, "impossible"],
  ["a far toe stud in a beat at 72", 0.833, 1.537, "impossible"],
  ["two electric draws on opposite jambs in 3 beats at 120", 1.5, 2.954, "impossible"],
  ["one electric draw in 3 beats at 60", 3.0, 1.457, "easy"],
  ["two electric draws in 2 beats at 60", 2.0, 1.869, "brisk"],
  ["one mechanical draw in a beat at 66, held half as long again", 1.364, 1.622, "brisk"],
  ["the own piston in half a beat at 80", 0.375, 0.394, "brisk"],
  ["a page turned and an electric draw by one hand in 3 beats at 60", 3.0, 3.358, "brisk"],
  ["five mechanical draws by an assistant's two hands in 2 beats at 96", 1.25, 1.481, "brisk"],
  ["five electric draws by both hands in 2 beats at 60", 2.0, 2.281, "brisk"],
  ["five mechanical draws in two divisions of a jamb in 3 beats at 50", 3.6, 4.133, "brisk"],
] as const)("%s", (_, gap, need, verdict) => {
  expect(verdictOf(gap / need, 0)).toBe(verdict);
  expect(verdictOf(gap / need, 1)).toBe(verdict === "impossible" ? "needs-assistant" : verdict);
});

describe("needs of those changes, reckoned", () => {
  const page = MUSIC_VALUES.pageTurn.value;
  const draws = (count: number, action: KnobAction, reads = false, second: number | null = null): number =>
    hand(row(count, "draw", second), action, reads);
  const waiting = (count: number): number => secondsOf(waitingTime(row(count, "draw"), "mechanical", D));
  test.each([
    ["two electric draws", draws(2, "electric"), 1.869],
    ["three mechanical draws, labels read", draws(3, "mechanical", true), 3.303],
    ["one mechanical draw", draws(1, "mechanical"), 1.622],
    ["the own piston", secondsOf(meansTime("piston-same", D).whole), 0.394],
    ["a page and an electric draw", page + draws(1, "electric"), 3.358],
    ["an assistant's two hands, five mechanical draws", waiting(3), 1.481],
    ["both hands, five electric draws", Math.max(draws(3, "electric"), draws(2, "electric")), 2.281],
    ["a far toe stud", secondsOf(meansTime("toe-far", D).whole), 1.537],
    ["five mechanical draws in two divisions", draws(5, "mechanical", false, D.blockToBlock), 4.133],
    ["two electric draws on opposite jambs", draws(2, "electric", false, D.jambToJamb), 2.954],
    ["one electric draw", draws(1, "electric"), 1.457],
  ])("%s", (_, found, seconds) => expect(found).toBeCloseTo(seconds, 2));

  test("two divisions of a jamb, mechanical, labels read", () => {
    const found = [2, 3, 5, 8].map((count) => draws(count, "mechanical", true, D.blockToBlock));
    for (const [at, seconds] of [2.66, 3.5, 5.18, 7.7].entries())
      expect(Math.abs((found[at] as number) - seconds)).toBeLessThanOrEqual(0.01);
  });

  test("the most knobs that a hand manages in 0.5, 1, 1.5, 2, 3, 4, 5 and 6 seconds", () => {
    const most = (time: (count: number) => number): number[] =>
      [0.5, 1, 1.5, 2, 3, 4, 5, 6].map((gap) => {
        let count = 0;
        while (count < 40 && time(count + 1) <= gap) count += 1;
        return count;
      });
    const cancels = (count: number): number => hand(row(count, "cancel"), "electric");
    const both = (count: number): number => draws(Math.ceil(count / 2), "electric");
    expect(most((count) => draws(count, "electric"))).toEqual([0, 0, 1, 2, 4, 7, 9, 12]);
    expect(most((count) => draws(count, "electric", true))).toEqual([0, 0, 1, 1, 3, 4, 6, 7]);
    expect(most((count) => draws(count, "mechanical"))).toEqual([0, 0, 0, 1, 3, 5, 6, 8]);
    expect(most((count) => draws(count, "mechanical", true))).toEqual([0, 0, 0, 1, 2, 3, 5, 6]);
    expect(most(cancels)).toEqual([0, 0, 1, 3, 7, 11, 14, 18]);
    expect(most(both)).toEqual([0, 0, 2, 4, 8, 14, 18, 24]);
  });
});

describe("against laws of pointing, from memory, which only bound the model", () => {
  const hand45 = 0.0128 + 0.0947 * Math.log2((2 * 45) / 3);
  const foot35 = 0.1874 + 0.0854 * Math.log2(35 / (3.5 + 9) + 0.5);
  test("a hand and a foot are a little slower here", () => {
    expect([hand45, foot35].map((each) => Number(each.toFixed(3)))).toEqual([0.477, 0.334]);
    expect(secondsOf(motionTime("reachB", 45))).toBeCloseTo(0.612, 3);
    expect(secondsOf(legTime(35))).toBeCloseTo(0.616, 3);
    // A practised player is nearer the brisk pace.
    expect(secondsOf(motionTime("reachB", 45), PACE_FACTORS.brisk)).toBeGreaterThan(hand45);
  });
});

test("short motions and distances are those of the sources", () => {
  const values = (all: Readonly<Record<string, MotionValue>>): Record<string, number> =>
    Object.fromEntries(Object.entries(all).map(([name, each]) => [name, each.value]));
  expect(values(SHORT)).toMatchObject({
    grasp: 2,
    release: 2,
    look: READ,
    ankle: 8.5,
    heavyFoot: 19.1,
    leg: 7.1,
    legFurther: 0.5,
    turn: 18.6,
    bodyTurn: 37.2,
    pace: 15,
    loadFactor: 1.06,
    loadConstant: 2.2,
  });
  expect(values(DISTANCES)).toMatchObject({
    keysToBlock: 45,
    knobPitch: 7,
    blockToBlock: 22,
    jambToJamb: 110,
    travelElectric: 2.5,
    travelMechanical: 7,
    pistonSame: 6,
    pistonNext: 14,
    pistonFar: 30,
    toeNear: 15,
    toeFar: 35,
    tabs: 25,
    tabPitch: 2.5,
    manualUp: 6.35,
    manualBack: 10.8,
  });
  expect([PACE_FACTORS.brisk, PACE_FACTORS.normal, PACE_FACTORS.careful]).toEqual([0.8, 1, 1.25]);
  expect([MUSIC_VALUES.pageTurn.value, MUSIC_VALUES.walkRound.value]).toEqual([1.9, 5.92]);
});

test("every value says where it comes from", () => {
  const values: readonly MotionValue[] = [SHORT, DISTANCES, MUSIC_VALUES].flatMap((each) => Object.values(each));
  expect(values.length).toBeGreaterThan(35);
  for (const { origin, note, value } of values) {
    expect(note.length).toBeGreaterThan(5);
    expect(["read", "memory", "own"]).toContain(origin);
    expect(value).toBeGreaterThan(0);
  }
});
