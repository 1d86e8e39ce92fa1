import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { footOf } from "../../../shared-model/pitch/foot.ts";
import {
  GLOSSARY,
  intervalPitch,
  spellingsOf,
  understandName,
} from "../../../shared-model/stoplist/glossary/glossary.ts";
import { foldedSpelling, heardSpelling, plainSpelling } from "../../../shared-model/stoplist/glossary/spelling.ts";

describe("spelling", () => {
  test("plain: case, points and hyphens", () => {
    expect(plainSpelling("  Op. Diap. ")).toBe("op diap");
    expect(plainSpelling("Basson-Hautbois")).toBe("basson hautbois");
    expect(plainSpelling("VIOLÓN")).toBe("violón");
  });

  test("folded: accents, umlauts and gaps", () => {
    expect(foldedSpelling("Flöte")).toBe(foldedSpelling("Floete"));
    expect(foldedSpelling("Flûte à cheminée")).toBe("fluteacheminee");
    expect(foldedSpelling("Nacht Horn")).toBe(foldedSpelling("Nachthorn"));
    expect(foldedSpelling("Subbaß")).toBe(foldedSpelling("Subbass"));
    expect(foldedSpelling("Hulfløjte")).toBe("hulflojte");
  });

  test("heard: one thing in many prints", () => {
    for (const print of ["Waldflöht", "Waldtfloit", "Waldtflöth", "Waldfluit", "Waldflute", "Waldfleute"]) {
      expect(heardSpelling(print)).toBe(heardSpelling("Waldflöte"));
    }
    expect(heardSpelling("Zymbel")).toBe(heardSpelling("Cimbel"));
    expect(heardSpelling("Qvintadehna")).toBe(heardSpelling("Quintadena"));
    expect(heardSpelling("Octave")).toBe(heardSpelling("Oktav"));
    expect(heardSpelling("Dulciana")).not.toBe(heardSpelling("Dulcian"));
    expect(heardSpelling("Corneta")).not.toBe(heardSpelling("Cornet"));
  });

  test("every spelling of the glossary is found again, whole or in capitals", () => {
    const lost: string[] = [];
    for (const entry of GLOSSARY) {
      for (const spelling of spellingsOf(entry)) {
        for (const print of [spelling, spelling.toUpperCase()]) {
          const understanding = understandName(print, { pedal: false, pitch: null, ranks: null });
          if (!understanding.sure && understanding.why === "unknown") lost.push(print);
        }
      }
    }
    expect(lost).toEqual([]);
  });

  test("any text at all ends in an answer with at most five choices", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 60 }), fc.boolean(), (name, pedal) => {
        const understanding = understandName(name, { pedal, pitch: footOf(8), ranks: null });
        return understanding.sure || understanding.choices.length <= 5;
      }),
      { seed: 20261126, numRuns: 150 },
    );
  });
});

describe("interval names", () => {
  test("steps above a base", () => {
    const base = footOf(8);
    expect(intervalPitch(1, base)).toBe(footOf(8));
    expect(intervalPitch(5, base)).toBe(footOf(16, 3));
    expect(intervalPitch(8, base)).toBe(footOf(4));
    expect(intervalPitch(10, base)).toBe(footOf(16, 5));
    expect(intervalPitch(12, base)).toBe(footOf(8, 3));
    expect(intervalPitch(17, base)).toBe(footOf(8, 5));
    expect(intervalPitch(21, base)).toBe(footOf(8, 7));
    expect(intervalPitch(23, base)).toBe(footOf(8, 9));
    expect(intervalPitch(33, base)).toBe(footOf(1, 3));
    expect(intervalPitch(40, base)).toBe(footOf(1, 6));
    expect(intervalPitch(15, footOf(16))).toBe(footOf(4));
  });
});
