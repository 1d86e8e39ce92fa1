import { describe, expect, test } from "vitest";
import { fileNameOf, folded, freeName, isPlainName } from "../../electron/library/file-name.ts";

describe("a file name from what people call a thing", () => {
  test.each([
    ["St. Maren, große Orgel", "st-maren-grosse-orgel"],
    ["Hüttenlohe", "huettenlohe"],
    ["Hu\u0308ttenlohe", "huettenlohe"],
    ["Notre-Dame-des-Phares", "notre-dame-des-phares"],
    ["L'Île-aux-Mûriers", "lile-aux-muriers"],
    ["Órgano de la Peña", "organo-de-la-pena"],
    ["Łódka, Ærø, Þing", "lodka-aero-thing"],
    ["Прелюдия", "прелюдия"],
    ["聖堂", "聖堂"],
    ["8' + 2⅔'", "8-22-3"],
    ["../../etc/passwd", "etc-passwd"],
    ["C:\\organ.yaml", "c-organ-yaml"],
    ["CON", "con-organ"],
    ["lpt1", "lpt1-organ"],
    ["Com²", "com2-organ"],
    ["  . ", "organ"],
    ["", "organ"],
    ["\u0000\u001F", "organ"],
    ["...x...", "x"],
    ["a".repeat(300), "a".repeat(60)],
    ["聖".repeat(300), "聖".repeat(60)],
    ["\u{1D11E}", "organ"],
  ])("%j", (name, file) => {
    expect(fileNameOf(name, "organ")).toBe(file);
    expect(isPlainName(`${fileNameOf(name, "organ")}.yaml`)).toBe(true);
  });

  test("is never that of another file, whatever the disk makes of its letters", () => {
    const taken = new Set(["MAREN.YAML", "maren-2.yaml", "H\u00E9lie.yaml"].map(folded));
    expect(freeName("maren", ".yaml", taken)).toBe("maren-3.yaml");
    expect(freeName("he\u0301lie", ".yaml", taken)).toBe("he\u0301lie-2.yaml");
  });
});

test.each(["", ".", "..", ".x", "x.", "x ", "x~", "a/b", "a\\b", "a:b", "nul.yaml", "Aux", "a\u0000", "a*", "x.part"])(
  "%j is no plain name",
  (name) => expect(isPlainName(name)).toBe(false),
);
