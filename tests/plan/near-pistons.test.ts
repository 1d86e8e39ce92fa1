import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type MemoryChange, type MemoryRoom, storeBest } from "../../shared-model/plan/memory.ts";

const NOBODY: ReadonlySet<string> = new Set();
const change = (content: string, hand: number, press: number, near: (other: string) => number): MemoryChange => ({
  content,
  press,
  byHand: () => hand,
  divisions: new Map(),
  levelSwitch: 1,
  near,
});
const room = (generals: number): MemoryRoom => ({ generals, levels: 1, divisionals: new Map() });

/** Every set of at most so many of the given. */
function* sets(items: readonly string[], most: number, from = 0): Generator<readonly string[]> {
  yield [];
  if (most === 0) return;
  for (let at = from; at < items.length; at++)
    for (const rest of sets(items, most - 1, at + 1)) yield [items[at] as string, ...rest];
}

// Knobs drawn of twelve, eight consoles in a row; worked out by trying all and by another program's integer optimum.
const DRAWN = "111000000000 111100000000 111110000000 000000111000 000000111100 111111111111 100000000000 100000000001";
const apart = (one: string, other: string): number =>
  [...one].reduce((sum, sign, at) => sum + (sign === other[at] ? 0 : 1), 0);

test.each([
  [1, 30],
  [2, 17],
  [3, 9],
  [4, 4],
  [8, 0],
])("%d pistons leave %d knobs to move", (generals, knobs) => {
  const changes = DRAWN.split(" ").map((content) => change(content, 100, 0, (other) => apart(content, other)));
  const choice = storeBest(changes, room(generals));
  expect([choice.cost, choice.exact]).toEqual([knobs, true]);
  const held = new Set(changes.map(({ content }, at) => choice.nearOf[at] ?? content));
  expect(held.size).toBeLessThanOrEqual(generals);
});

describe("against every way to store", () => {
  const LETTERS = "abcdef";
  const rows = fc.array(
    fc.record({
      content: fc.constantFrom(...LETTERS),
      hand: fc.nat(200),
      press: fc.integer({ min: 5, max: 60 }),
      near: fc.array(fc.nat(150), { minLength: 6, maxLength: 6 }),
    }),
    { minLength: 1, maxLength: 8 },
  );
  test("what is stored costs least, and each change says how it comes to that", () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 4 }), (all, generals) => {
        const list = all.map(({ content, hand, press, near }) =>
          change(content, hand, press, (other) => near[LETTERS.indexOf(other)] as number),
        );
        const costOf = (each: MemoryChange, stored: readonly string[]): number =>
          Math.min(
            each.byHand(NOBODY),
            ...stored.map((content) => (content === each.content ? each.press : (each.near?.(content) as number))),
          );
        const contents = [...new Set(all.map((each) => each.content))];
        let best = Number.POSITIVE_INFINITY;
        for (const stored of sets(contents, generals)) {
          const cost = list.reduce((sum, each) => sum + costOf(each, stored), 0);
          best = Math.min(best, cost);
        }
        const found = storeBest(list, room(generals));
        expect([found.cost, found.exact]).toEqual([best, true]);
        const told = list.reduce((sum, each, at) => {
          if (found.levelOf[at] === null) return sum + each.byHand(NOBODY);
          const near = found.nearOf[at];
          return sum + (near == null ? each.press : (each.near?.(near) as number));
        }, 0);
        expect(told).toBe(best);
        const pressed = new Set(
          list.flatMap((each, at) => (found.levelOf[at] === null ? [] : [found.nearOf[at] ?? each.content])),
        );
        expect(pressed.size).toBeLessThanOrEqual(generals);
      }),
      { seed: 20261126, numRuns: 400 },
    );
  });
});
