import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bestRow, type Row, type RowProblem } from "../../shared-model/plan/row.ts";
import { costOfRow, leastCost } from "./exhaustive.ts";

const NEVER = 1e12;

const plain = (own: number[][], change: number[][][]): RowProblem => ({
  counts: own.map((row) => row.length),
  own: (at, choice) => own[at]?.[choice] as number,
  change: (at, before, choice) => ({ hand: change[at - 1]?.[before]?.[choice] as number, press: null }),
  links: [],
  presses: 0,
  copies: own.map(() => null),
});

test("four sections of three alternatives, some changes impossible", () => {
  const x = NEVER;
  const problem = plain(
    [
      [0, 2, 1],
      [1, 0, 3],
      [4, 1, 0],
      [0, 2, 2],
    ],
    [
      [
        [0, x, 3],
        [2, 0, 1],
        [x, 4, 0],
      ],
      [
        [0, x, x],
        [1, 2, x],
        [0, x, 0],
      ],
      [
        [0, 5, x],
        [3, 0, 6],
        [x, 1, 0],
      ],
    ],
  );
  expect(bestRow(problem)).toMatchObject({ cost: 5, choices: [0, 0, 0, 0] });
});

const small = fc.nat(9);
const problems = fc
  .record({
    counts: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 5 }),
    numbers: fc.array(small, { minLength: 400, maxLength: 400 }),
    links: fc.array(fc.tuple(fc.nat(4), fc.nat(4)), { maxLength: 3 }),
    presses: fc.oneof(fc.nat(3), fc.constant(Number.POSITIVE_INFINITY)),
    mayPress: fc.boolean(),
    copy: fc.option(fc.tuple(fc.nat(4), fc.nat(4)), { nil: null }),
  })
  .map(({ counts, numbers, links, presses, mayPress, copy }): RowProblem => {
    const sizes = [...counts];
    const copies: (number | null)[] = counts.map(() => null);
    if (copy && Math.max(...copy) < counts.length && copy[0] !== copy[1]) {
      const [from, to] = [Math.min(...copy), Math.max(...copy)];
      copies[to] = from;
      sizes[to] = sizes[from] as number;
    }
    const number = (...at: number[]): number =>
      numbers[at.reduce((sum, each) => sum * 5 + each + 1, 7) % 400] as number;
    return {
      counts: sizes,
      own: (at, choice) => number(1, at, choice),
      change: (at, before, choice) => ({
        hand: number(2, at, before, choice) * 3,
        press: mayPress ? number(3, at, before, choice) : null,
      }),
      links: links
        .filter(([one, other]) => one !== other && Math.max(one, other) < sizes.length)
        .map(([one, other]) => ({
          earlier: Math.min(one, other),
          later: Math.max(one, other),
          cost: (a, b) => number(4, one, other, a, b),
        })),
      presses,
      copies,
    };
  });

describe("against every row there is", () => {
  test("random rows with links, copies and few or many pistons", () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const row = bestRow(problem) as Row;
        expect(row.cost).toBe(leastCost(problem));
        expect(costOfRow(problem, row.choices, row.pressed)).toBe(row.cost);
      }),
      { seed: 20261126, numRuns: 400 },
    );
  });
});

test("more ways at once than are followed are given up, not cut", () => {
  const counts = Array.from({ length: 14 }, () => 8);
  const problem: RowProblem = {
    counts,
    own: (at, choice) => (at * 7 + choice * 3) % 5,
    change: () => ({ hand: 0, press: null }),
    links: counts.slice(0, 7).map((_, at) => ({ earlier: at, later: at + 7, cost: (a, b) => (a + b) % 3 })),
    presses: 0,
    copies: counts.map(() => null),
  };
  expect(bestRow(problem)).toBeNull();
});
