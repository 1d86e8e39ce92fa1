import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Foot, footOf, footText } from "../../shared-model/pitch/foot.ts";
import { isUsualPitch, oldRounding, pitchName, printPitch, readPitch } from "../../shared-model/pitch/reading.ts";
import { USUAL_PITCHES } from "../../shared-model/pitch/usual.ts";

/** Rows "length: prints that mean it, parted by bars"; every print must be read as that length. */
const printed = (table: string): [print: string, length: string][] =>
  table
    .trim()
    .split("\n")
    .flatMap((row) => {
      const [length, prints] = row.split(/: (.*)/s) as [string, string];
      return prints.split(" | ").map((print): [string, string] => [print, length.trim()]);
    });

const read = (text: string): string => {
  const { foot, doubt } = readPitch(text);
  return foot ? footText(foot) : `? ${doubt.choices.map(footText).join(" ")}`.trim();
};

describe("a length as the trade prints it", () => {
  test.each(
    printed(`
      8: 8 | 8' | 8’ | 8‘ | 8′ | 8\` | 8´ | 8 ' | 8ʹ | 8 ft | 8 ft. | 8ft | 8-ft | 8 foot | 8-foot | 8 feet | 8 Fuss
      8: 8 Fuß | 8Fuß | 8 FUSS | 8 Fuß | 8-Fuß | 8 füßig | 8 F. | 8 voet | 8 vt | 8 v. | 8 pieds | 8 p. | 8 P | 8 pies | 8 piedi
      8: 8 pi. | 13 palmos | 8.0
      16: 16 | 16' | 16 pieds | 26 palmos
      4: 4 | 4Fuß | 4 piedi | 6 1/2 palmos
      1: 1 | 1' | 1 pied | 1 piede | 1 Fuß | 1 voet
      8/3: 2 2/3 | 2 2/3' | 2 2/3’ | 2 2/3\` | 2⅔ | 2⅔′ | 2 ⅔ | 2-2/3 | 2-2/3 ft | 2–2/3 | 2.2/3 | 2. 2/3 | 2 + 2/3 | 2,66 | 2.67 | 2,667
      8/3: 2 2∕3 | 2 2⁄3 | 2 2／3 | 2²⁄₃ | 2²/₃′ | 2 2 / 3 | 2'2/3 | 2' 2/3 | 2 pieds 2/3 | 2 p. 2/3 | 2 ft. 2/3 | 2 pieds et 2/3
      16/3: 5 1/3 | 5⅓′ | 5,33 | 16/3
      32/3: 10 2/3 | 10⅔ | 10.67 | 32/3
      64/3: 21 1/3
      4/3: 1 1/3 | 1⅓' | 1.33 | 4/3
      2/3: 2/3 | ⅔ | 0,66 | 0.67 | .67
      8/5: 1 3/5 | 1⅗′ | 1-3/5 | 1 pied 3/5 | 1,6 | 1.60 | 8/5
      16/5: 3 1/5 | 3⅕ | 3.2 | 16/5
      32/5: 6 2/5 | 6⅖ | 6.4 | 32/5
      4/5: 4/5 | ⅘ | 0.8
      8/7: 1 1/7 | 1⅐ | 1.14 | 8/7
      16/7: 2 2/7 | 16/7
      32/7: 4 4/7
      8/9: 8/9 | 0.89 | 0,88
      16/9: 1 7/9 | 1.78
      1/2: ½ | 1/2 | 0.5 | 0,5 | 1/2'
      1/4: ¼ | 1/4
      3/2: 1 1/2 | 1½ | 1 ½ | 1½′ | 1,5 | 3/2 | 1 ½ Fuß
      3: 3 | 3' | 3 Fuß | 3 vt
      7: 7 | 7'
      9: 9
      5/2: 2 1/2 | 2.5
    `),
  )("%j is %s", (print, length) => expect(read(print)).toBe(length));

  test.each([
    ["22/3", "? 8/3 22/3"],
    ["51/3", "? 16/3 17"],
    ["102/3'", "? 32/3 34"],
    ["11/3", "? 4/3 11/3"],
    ["11/2", "? 3/2 11/2"],
    ["13/5", "? 8/5 13/5"],
    ["31/5", "? 16/5 31/5"],
    ["11/7", "? 8/7 11/7"],
    ["8/4", "? 8 4 2"],
    ["16/8", "? 16 8 2"],
    ["8''", "? 8"],
    ['8"', "? 8"],
    ["8″", "? 8"],
    ["2 2/3''", "? 8/3"],
    ["2.6", "? 8/3 13/5"],
    ["1.3", "? 4/3 13/10"],
    ["2 2/2", "? 8/3 16/7 2"],
    ["2 5/3", "? 8/3 16/7 2"],
    ["4f", "? 4"],
    ["5 V", "? 5"],
  ])("%j may be %s", (print, doubt) => expect(read(print)).toBe(doubt));

  test.each([
    "",
    " ",
    "2 2/3x",
    "x2 2/3",
    "8 8",
    "8 8'",
    "8x",
    "x",
    "8'x",
    "8'''",
    "8''''",
    "0",
    "0'",
    "0/3",
    "3/0",
    "2 0/3",
    "2/",
    "/3",
    "2//3",
    "2 2/3/4",
    "-8",
    "+8",
    "08",
    "8e1",
    "0x8",
    "1e3",
    "8 1000",
    "1000",
    "II",
    "II 2/3",
    "VIII",
    "8 fach",
    "8 ranks",
    "8 ft x",
    "ft",
    "'",
    "2 2 2/3",
    "2,2,2",
    "8, 4",
    "8 + 4",
    "NaN",
    "Infinity",
    "8\u0000",
    "9 palmos",
    "８",
    "٨",
    "1".repeat(1000),
    `8${" ".repeat(1000)}`,
    "8/".repeat(20),
  ])("%j is no length, and no default is taken", (print) => {
    const { foot, doubt } = readPitch(print);
    expect(foot).toBeNull();
    expect(doubt?.text).toMatch(/^(?:".*" |No pitch is printed here).*[.?)]$/su);
    expect(doubt?.text.length).toBeLessThan(200);
  });

  test("the words say what is wrong and what to do", () => {
    const words = (text: string) => readPitch(text).doubt?.text;
    expect(words("22/3")).toBe("\"22/3\" may be 2 2/3' or 7 1/3'; write the whole feet apart from the fraction.");
    expect(words("8''")).toBe("\"8''\" has the mark of inches; is it 8'?");
    expect(words("2 2/2")).toBe('"2 2/2" is not a pitch: 2/2 is not a proper fraction of a foot.');
    expect(words("8/4")).toBe("\"8/4\" may be two lengths, 8' and 4', or a misprint; write one length.");
    expect(words("2 2/3x")).toBe('"2 2/3x" is not a pitch; write it as 8, 2 2/3 or 1 3/5.');
    expect(words("4f")).toBe('"4f" may be 4\' or a number of ranks; write the one that is meant.');
    expect(words("")).toBe("No pitch is printed here; write it as 8, 2 2/3 or 1 3/5.");
  });

  test("any text gives a length or a doubt, never both and never an exception", () => {
    const signs = fc.constantFrom(
      ..."0123456789 /.,'’′\"⅔½²₃⁄-–+fVpuß".split(""),
      "ft",
      "pieds",
      "Fuß",
      "\u0000",
      "🎹",
    );
    fc.assert(
      fc.property(
        fc.array(signs, { maxLength: 12 }).map((list) => list.join("")),
        (text) => {
          const { foot, doubt } = readPitch(text);
          expect(foot === null).toBe(doubt !== null);
          for (const choice of doubt?.choices ?? []) expect(choice).toBe(footOf(choice.over, choice.under));
        },
      ),
      { seed: 2, numRuns: 3000 },
    );
  });

  const anyLength = fc
    .tuple(fc.integer({ min: 0, max: 64 }), fc.integer({ min: 1, max: 18 }), fc.integer({ min: 2, max: 19 }))
    .map(([whole, over, under]): Foot => footOf(whole * under + (over % under === 0 ? 1 : over % under), under));

  test("what is printed is read back as the same length", () => {
    fc.assert(
      fc.property(anyLength, (foot) => {
        for (const style of ["plain", "typeset"] as const) {
          expect(readPitch(printPitch(foot, style)).foot).toBe(foot);
          expect(readPitch(pitchName(foot, style)).foot).toBe(foot);
        }
      }),
      { seed: 3, numRuns: 1000 },
    );
  });

  test("a letter, a second mark or a second length behind it spoils any length", () => {
    fc.assert(
      fc.property(anyLength, fc.constantFrom("x", "''", " 8", "/", "?", "k", " ranks"), (foot, rubbish) => {
        expect(readPitch(printPitch(foot, "plain") + rubbish).foot).toBeNull();
      }),
      { seed: 4, numRuns: 1000 },
    );
  });
});

describe("printing a length", () => {
  test.each([
    [footOf(8), "8'", "8′"],
    [footOf(8, 3), "2 2/3'", "2⅔′"],
    [footOf(32, 3), "10 2/3'", "10⅔′"],
    [footOf(8, 5), "1 3/5'", "1⅗′"],
    [footOf(8, 7), "1 1/7'", "1⅐′"],
    [footOf(16, 7), "2 2/7'", "2²⁄₇′"],
    [footOf(8, 9), "8/9'", "⁸⁄₉′"],
    [footOf(1, 2), "1/2'", "½′"],
    [footOf(1, 16), "1/16'", "¹⁄₁₆′"],
  ])("%o", (foot, plain, typeset) => {
    expect(printPitch(foot, "plain")).toBe(plain);
    expect(printPitch(foot, "typeset")).toBe(typeset);
    expect(pitchName(foot)).toBe(plain.slice(0, -1));
  });
});

describe("lengths that organs have", () => {
  test("the mutations in a fixed order of the trade are all there", () => {
    const lengths = "64 32 21⅓ 16 12⅘ 10⅔ 8 6⅖ 5⅓ 4 3⅕ 2⅔ 2 1⅗ 1⅓ 1⅐ 1 8/9 4/5 2/3 4/7 1/2 1/3 1/4 1/6 1/8".split(" ");
    expect(lengths.filter((text) => !isUsualPitch(readPitch(text).foot as Foot))).toEqual([]);
  });

  test.each([3, 5, 6, 7, 9, 10, 12, 24, 128].map((feet) => footOf(feet)))("%o is none", (foot) =>
    expect(isUsualPitch(foot)).toBe(false),
  );

  test("they are listed once each, longest first", () => {
    expect(new Set(USUAL_PITCHES).size).toBe(USUAL_PITCHES.length);
    expect(USUAL_PITCHES.slice(0, 5).map((foot) => pitchName(foot))).toEqual(["64", "32", "21 1/3", "16", "12 4/5"]);
  });

  test.each([
    ["3", "8/3"],
    ["1 1/2", "4/3"],
    ["6", "16/3"],
    ["12", "32/3"],
    ["24", "64/3"],
    ["3/4", "2/3"],
  ])("a quint printed %s is %s", (print, length) =>
    expect(footText(oldRounding(readPitch(print).foot as Foot) as Foot)).toBe(length),
  );

  test("a tierce printed 13/5 is 1 3/5, and a true length is no rounding", () => {
    expect(oldRounding(footOf(13, 5))).toBe(footOf(8, 5));
    expect(USUAL_PITCHES.filter((foot) => oldRounding(foot) !== null)).toEqual([]);
  });
});
