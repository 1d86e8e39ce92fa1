import { join, normalize, sep } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { HostFault } from "../../electron/library/fault.ts";
import { fileNameOf, folded, freeName, isPlainName } from "../../electron/library/file-name.ts";
import { libraryId, namesOf } from "../../electron/library/place.ts";

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

/** Names as a person types them and as somebody who wants to break out would: with strokes, dots, devices, odd letters. */
const anyName = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 80 }),
  fc.string({ unit: "binary", maxLength: 80 }),
  fc
    .array(
      fc.constantFrom("..", ".", "/", "\\", "organs", "x.yaml", "con", "\u0000", ":", "~", "%2e", " ", "discarded"),
      {
        maxLength: 8,
      },
    )
    .map((parts) => parts.join("")),
);

describe("whatever is typed", () => {
  test("becomes a name that every system takes, and stays it", () => {
    fc.assert(
      fc.property(anyName, (name) => {
        const file = fileNameOf(name, "organ");
        expect(isPlainName(`${file}.yaml`)).toBe(true);
        expect(Buffer.byteLength(`${file}.yaml~`)).toBeLessThan(220);
        expect(fileNameOf(file, "organ")).toBe(file);
      }),
      { seed: 20261126, numRuns: 2000 },
    );
  });

  test("leads to a place inside the library, or nowhere", () => {
    let inside = 0;
    fc.assert(
      fc.property(anyName, (name) => {
        for (const id of [name, `library:${name}`, `library:organs/${name}.yaml`]) {
          let names: readonly string[];
          try {
            names = namesOf(id);
          } catch (error) {
            expect(error).toBeInstanceOf(HostFault);
            continue;
          }
          inside += 1;
          const path = join("/library", ...names);
          expect([path, path.startsWith(`/library${sep}`)]).toEqual([normalize(path), true]);
          expect(libraryId(names)).toBe(id);
        }
      }),
      { seed: 20261126, numRuns: 2000 },
    );
    expect(inside).toBeGreaterThan(100);
  });
});
