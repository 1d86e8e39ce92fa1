import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type MemoryChange, type MemoryRoom, numbered, storeBest } from "../../shared-model/plan/memory.ts";

const change = (content: string, hand: number, press = 66, more: Partial<MemoryChange> = {}): MemoryChange => ({
  content,
  press,
  byHand: () => hand,
  divisions: new Map(),
  levelSwitch: 1,
  ...more,
});
const room = (generals: number, levels = 1, divisionals: [string, number][] = []): MemoryRoom => ({
  generals,
  levels,
  divisionals: new Map(divisionals),
});

describe("eight registrations in a row, r1 r2 r3 r2 r4 r1 r5 r3, hundredths of a second", () => {
  const contents = ["r2", "r3", "r2", "r4", "r1", "r5", "r3"];
  const hand = [310, 190, 190, 230, 430, 330, 150];
  const changes = contents.map((content, at) => change(content, hand[at] as number));
  test.each([
    [0, 1830, []],
    [1, 1462, ["r2"]],
    [2, 1098, ["r1", "r2"]],
    [3, 834, ["r1", "r2", "r5"]],
  ])("with %d generals", (generals, cost, stored) => {
    const choice = storeBest(changes, room(generals));
    expect(choice.cost).toBe(cost);
    expect([...new Set(contents.filter((_, at) => choice.levelOf[at] !== null))].sort()).toEqual(stored);
    expect(choice.exact).toBe(true);
  });
});

describe("levels, where more is wanted than one holds", () => {
  const order = ["1", "2", "3", "1", "4", "5", "2", "6", "6", "7", "1", "8", "3"];
  test.each([
    [2, 6],
    [3, 4],
    [4, 3],
    [5, 2],
    [8, 1],
  ])("%d generals need %d levels", (generals, levels) => {
    const choice = storeBest(
      order.map((content) => change(content, 1000)),
      room(generals, 20),
    );
    expect(choice.levelOf.every((level) => level !== null)).toBe(true);
    expect(new Set(choice.levelOf).size).toBe(levels);
  });

  test("a level is left where there is time for it", () => {
    const order = ["a", "b", "c", "d"].map((content, at) =>
      change(content, 1000, 66, { levelSwitch: at === 2 ? 132 : 100_000 }),
    );
    expect(storeBest(order, room(2, 9)).levelOf).toEqual([0, 0, 1, 1]);
  });
});

/** Every set of at most so many of the given. */
function* sets<T>(items: readonly T[], most: number, from = 0): Generator<readonly T[]> {
  yield [];
  if (most === 0) return;
  for (let at = from; at < items.length; at++)
    for (const rest of sets(items, most - 1, at + 1)) yield [items[at] as T, ...rest];
}

test("generals with divisionals, against every way to store", () => {
  const DIVISIONS = ["Great", "Swell"];
  const changes = fc.array(
    fc.record({
      content: fc.constantFrom("a", "b", "c", "d"),
      press: fc.integer({ min: 10, max: 60 }),
      own: fc.tuple(fc.nat(120), fc.nat(120), fc.nat(60)),
      sets: fc.tuple(fc.constantFrom("x", "y"), fc.constantFrom("p", "q", "r")),
    }),
    { minLength: 1, maxLength: 5 },
  );
  fc.assert(
    fc.property(changes, fc.nat(2), fc.nat(2), fc.nat(2), (rows, generals, great, swell) => {
      const list = rows.map(
        ({ content, press, own, sets: [one, other] }): MemoryChange => ({
          content,
          press,
          // Divisions change only where there is something to do; two pressed at once save less than each alone.
          divisions: new Map([
            ["Great", one],
            ["Swell", other],
          ]),
          levelSwitch: 1,
          byHand: (pressed) => Math.max(pressed.has("Great") ? 0 : own[0], pressed.has("Swell") ? 0 : own[1]) + own[2],
        }),
      );
      const found = storeBest(
        list,
        room(generals, 1, [
          ["Great", great],
          ["Swell", swell],
        ]),
      );
      let best = Number.POSITIVE_INFINITY;
      const contents = [...new Set(rows.map((each) => each.content))];
      for (const stored of sets(contents, generals)) {
        for (const one of sets(["x", "y"], great)) {
          for (const other of sets(["p", "q", "r"], swell)) {
            const cost = list.reduce((sum, each) => {
              const pressed = new Set(
                DIVISIONS.filter((division) =>
                  (division === "Great" ? one : other).includes(each.divisions.get(division) ?? ""),
                ),
              );
              const hand = each.byHand(pressed);
              return sum + ((stored as readonly string[]).includes(each.content) ? Math.min(hand, each.press) : hand);
            }, 0);
            best = Math.min(best, cost);
          }
        }
      }
      expect(found.cost).toBe(best);
      expect(found.exact).toBe(true);
    }),
    { seed: 20261126, numRuns: 300 },
  );
});

test("numbers rise with the piece, and only those allowed are used", () => {
  expect([...numbered(["b", "a", "b", "c"], [2, 5, 7])]).toEqual([
    ["b", 2],
    ["a", 5],
    ["c", 7],
  ]);
});
