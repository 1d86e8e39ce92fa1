import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Band, type Block, bodiesOf } from "../../shared-model/cards/paper/flow.ts";
import type { Mark } from "../../shared-model/cards/paper/page.ts";

const rule = (width: number): Mark => ({ kind: "rule", x: 0, y: 0, width, height: 0.1 });

/** A block whose lines can be told apart by the width of a rule on each. */
const block = (name: number, lines: readonly number[], before = 1): Block => ({
  tag: "item",
  lines: lines.map((height, index) => ({ height, marks: [rule(name + index / 100)] })),
  before,
  ruled: null,
});

const namesOf = (bands: readonly Band[], height: number): readonly (readonly string[])[] =>
  bodiesOf(bands, 100, height).map((body) =>
    body.blocks.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === "rule" ? [mark.width.toFixed(2)] : []))),
  );

const band = (columns: number, ...groups: Band["groups"]): Band => ({ columns, before: 2, groups });

describe("columns", () => {
  const four = [1, 2, 3, 4].map((name) => block(name, [10]));

  test("end alike, and a group stays whole where that costs no page", () => {
    const filled = (height: number) =>
      bodiesOf([band(2, { head: null, headAgain: null, blocks: four })], 100, height)[0]?.filled;
    // One long column is parted, one short column is not.
    expect([filled(60), filled(100)]).toEqual([expect.closeTo(21, 0), 43]);
    expect(namesOf([band(2, { head: null, headAgain: block(8, [5]), blocks: four })], 100)[0]).toHaveLength(4);
    const pair = { head: block(9, [5]), headAgain: null, blocks: four.slice(0, 2) };
    const whole = bodiesOf([band(2, pair, pair)], 100, 60)[0]?.blocks.map(({ marks }) => (marks[0] as { x: number }).x);
    expect(whole).toEqual([0, 0, 0, 52.5, 52.5, 52.5]);
  });

  test("a head is never left alone at the foot, and stands again where its group goes on", () => {
    const group = { head: block(9, [5]), headAgain: block(8, [5]), blocks: four };
    expect(namesOf([band(1, group)], 17)).toEqual([
      ["9.00", "1.00"],
      ["8.00", "2.00"],
      ["8.00", "3.00"],
      ["8.00", "4.00"],
    ]);
  });

  test("a band that keeps goes to the next page with what follows it", () => {
    const keeping = { ...band(1, { head: null, headAgain: null, blocks: [block(7, [6])] }), keeps: true };
    const bands = [
      band(1, { head: null, headAgain: null, blocks: four.slice(0, 2) }),
      keeping,
      band(2, { head: null, headAgain: null, blocks: four.slice(2) }),
    ];
    expect(namesOf(bands, 32)).toEqual([
      ["1.00", "2.00"],
      ["7.00", "3.00", "4.00"],
    ]);
  });
});

test("whatever the height, there is an end, and every line of every block is there once, in order (seed 31)", () => {
  const height = fc.integer({ min: 1, max: 12 });
  const anyBlock = fc.array(height, { minLength: 1, maxLength: 4 });
  const anyGroup = fc.record({
    head: fc.option(anyBlock),
    again: fc.option(anyBlock),
    opens: fc.boolean(),
    blocks: fc.array(anyBlock, { maxLength: 6 }),
  });
  const anyBand = fc.record({
    columns: fc.integer({ min: 1, max: 4 }),
    keeps: fc.boolean(),
    groups: fc.array(anyGroup),
  });
  fc.assert(
    fc.property(fc.array(anyBand, { maxLength: 4 }), fc.integer({ min: 1, max: 50 }), (bands, page) => {
      let next = 1000;
      const set = bands.map(({ columns, keeps, groups }) => ({
        ...band(
          columns,
          ...groups.map(({ head, again, opens, blocks }) => ({
            head: head && block(1, head),
            headAgain: again && block(2, again),
            opens,
            blocks: blocks.map((lines) => block(next++, lines)),
          })),
        ),
        keeps,
      }));
      const wanted = set.flatMap((each) =>
        each.groups.flatMap((group) =>
          group.blocks.flatMap(({ lines }) => lines.map(({ marks }) => (marks[0] as { width: number }).width)),
        ),
      );
      const found = bodiesOf(set, 100, page).flatMap((body) =>
        body.blocks.flatMap(({ marks }) => marks.map((mark) => (mark as { width: number }).width)),
      );
      expect(found.filter((width) => width >= 1000)).toEqual(wanted);
    }),
    { seed: 31, numRuns: 300 },
  );
});
