import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compareFeet, footFromText, footOf, footText, stretch } from "../../shared-model/pitch/foot.ts";

describe("a pitch length", () => {
  test("is reduced, frozen and the same object for the same length", () => {
    expect(footOf(16, 6)).toBe(footOf(8, 3));
    expect(Object.isFrozen(footOf(8, 3))).toBe(true);
    expect(footText(footOf(16, 6))).toBe("8/3");
  });

  test.each([
    [0, 1],
    [8, 0],
    [-8, 1],
    [2.5, 1],
    [Number.NaN, 1],
    [1, Number.POSITIVE_INFINITY],
    [2 ** 60, 1],
  ])("is refused for %s/%s", (over, under) => expect(() => footOf(over, under)).toThrow(RangeError));

  test.each(["", "8/", "/3", "08", "8/0", "8/3x", " 8", "8 ", "8.0", "-8", "8'", "2 2/3", "1".repeat(1000)])(
    "rational text %j is none",
    (text) => expect(footFromText(text)).toBeNull(),
  );

  test("an octave is half the length, exactly, also where floating point is not", () => {
    expect(footText(stretch(footOf(8, 3), 1, 2))).toBe("4/3");
    expect(footText(stretch(footOf(8, 5), 2))).toBe("16/5");
    // The ratio of 2 2/3' to 1 3/5' is 5/3; floating point gives 1.6666666666666665.
    expect(8 / 3 / (8 / 5)).not.toBe(5 / 3);
    expect(footText(stretch(footOf(8, 3), 5, 8))).toBe("5/3");
  });

  test("the longest comes first", () => {
    const feet = [footOf(2), footOf(8, 3), footOf(16), footOf(8, 5), footOf(8)];
    expect(feet.sort(compareFeet).map(footText)).toEqual(["16", "8", "8/3", "2", "8/5"]);
  });

  test("rational text is read back", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 1, max: 999 }), (over, under) => {
        const foot = footOf(over, under);
        expect(footFromText(footText(foot))).toBe(foot);
      }),
      { seed: 1 },
    );
  });
});
