import { describe, expect, test } from "vitest";
import { type Block, Times } from "../../shared-model/plan/blocks.ts";
import type { Move } from "../../shared-model/plan/changes.ts";
import type { ConsoleLayout, Jamb } from "../../shared-model/plan/console-layout.ts";
import { type KnobAction, USUAL_DISTANCES } from "../../shared-model/plan/motion.ts";
import { type Agent, sharedOut } from "../../shared-model/plan/sharing.ts";

const layout = (action: KnobAction): ConsoleLayout => ({
  action,
  jambs: new Map(),
  stated: new Set(),
  footCouplers: false,
  distances: USUAL_DISTANCES,
  assumed: [],
});
const block = (jamb: Jamb, count: number): Block => ({
  jamb,
  division: jamb,
  moves: Array.from(
    { length: count },
    (_, at): Move => ({
      act: "draw",
      what: "stop",
      name: String(at),
      id: `${jamb}/${at}`,
      division: jamb,
      jamb,
      foot: false,
      to: null,
      heldBy: new Set(["left", "right"]),
    }),
  ),
  window: 0.5,
  early: false,
});
const HANDS: readonly Agent[] = (["left", "right"] as const).map((who) => ({
  who,
  side: who,
  free: 0.5,
  turns: false,
}));

/** Seconds until both hands are back, each with the knobs of its own jamb, the right one more where they are odd. */
function bothHands(count: number, action: KnobAction, reads: boolean): number {
  const times = new Times(layout(action), { assistant: "none", reads, pace: 1 });
  const blocks = [block("right", Math.ceil(count / 2)), block("left", Math.floor(count / 2))];
  return Math.max(...(sharedOut(blocks, HANDS, times)?.loads ?? []).map((load) => load.need));
}

describe("both hands at once, seconds at a normal pace for 2, 3, 5 and 8 knobs: eyes read for one hand after the other", () => {
  test.each<[string, KnobAction, boolean, readonly number[]]>([
    ["electric, practised", "electric", false, [1.46, 1.87, 2.28, 2.69]],
    ["electric, labels read", "electric", true, [1.72, 2.39, 3.33, 4.53]],
    ["mechanical, practised", "mechanical", false, [1.62, 2.2, 2.78, 3.35]],
    ["mechanical, labels read", "mechanical", true, [1.88, 2.73, 3.83, 5.19]],
  ])("%s", (_, action, reads, expected) => {
    const found = [2, 3, 5, 8].map((count) => bothHands(count, action, reads));
    for (const [at, seconds] of expected.entries())
      expect(Math.abs((found[at] as number) - seconds)).toBeLessThanOrEqual(0.01);
  });
});

test.each<[KnobAction, readonly number[]]>([
  ["electric", [0.16, 0.16, 0.57, 0.99, 1.4]],
  ["mechanical", [0.33, 0.33, 0.9, 1.48, 2.06]],
])("an assistant's two hands on one division, %s, for 1, 2, 3, 5 and 8 knobs", (action, expected) => {
  const times = new Times(layout(action), { assistant: "right", reads: false, pace: 1 });
  const found = [1, 2, 3, 5, 8].map((count) => Number(times.assistant([block("right", count)], "right").toFixed(2)));
  expect(found).toEqual(expected);
});

test("the most knobs that an assistant's two hands manage in 0.5, 1, 1.5, 2, 3, 4, 5 and 6 seconds, mechanical", () => {
  const times = new Times(layout("mechanical"), { assistant: "right", reads: false, pace: 1 });
  const most = [0.5, 1, 1.5, 2, 3, 4, 5, 6].map((gap) => {
    let count = 0;
    while (times.assistant([block("right", count + 1)], "right") <= gap) count += 1;
    return count;
  });
  expect(most).toEqual([2, 4, 6, 6, 10, 14, 18, 20]);
});
