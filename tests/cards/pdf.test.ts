import { beforeAll, describe, expect, test } from "vitest";
import { cueCard } from "../../shared-model/cards/cue-card.ts";
import { registrationPages } from "../../shared-model/cards/pages.ts";
import { imposed } from "../../shared-model/cards/paper/impose.ts";
import type { Page, PrintedCards } from "../../shared-model/cards/paper/page.ts";
import { POINT } from "../../shared-model/cards/paper/type.ts";
import { pdfOf } from "../../shared-model/cards/pdf.ts";
import { needPoppler } from "../house/outside-programs.ts";
import { pdfFacts, pdfFonts, pdfImage, pdfStructure, pdfTexts } from "./poppler.ts";
import { registered } from "./registered.ts";
import { TYPEFACES } from "./typeset.ts";

// Installing the tools takes a while on a machine that lacks them.
beforeAll(needPoppler);

const wiekenborg = registered(
  "wiekenborg",
  `
name: Verse 2
bars: 17-32
texture: melody-over-accompaniment
keyboards: {melody: Brustwerk, accompaniment: Hauptwerk, bass: Pedal}
octaves: {melody: -1}
drawn: {Brustwerk: [Rohrflöte, Quinte 1 1/3], Hauptwerk: [Spitzflöte], Pedal: [Subbass]}
couplers: [Brustwerk to Hauptwerk]
`,
);
const CARD = cueCard(wiekenborg.problem, wiekenborg.state, wiekenborg.judgement, []);
const printed = (paper: "a6" | "a5" | "a4" | "half-letter" | "letter"): PrintedCards =>
  registrationPages(CARD, { paper, measure: TYPEFACES.measure });

describe("the PDF of a card, as other programs read it", () => {
  test("its text, with the fraction's own slash in a pitch", async () => {
    const [page] = pdfTexts(await pdfOf(printed("a5"), TYPEFACES));
    const words = (page ?? []).join(" ");
    for (const each of ["Verse 2, bars 17-32", "Quinte 1 1⁄3", "Spitzflöte 8", "Rohrflöte 4", "Subbass 16"]) {
      expect(words).toContain(each);
    }
    expect(page?.at(-1)).toBe("St. Nikolai, Wiekenborg");
  });

  test("every font is embedded and cut to what is used", async () => {
    const fonts = pdfFonts(await pdfOf(printed("a5"), TYPEFACES));
    expect(fonts.map((font) => font.name).toSorted()).toEqual([
      "SourceSans3-Regular",
      "SourceSans3-SemiBold",
      "SourceSerif4-Regular",
      "SourceSerif4-SemiBold",
    ]);
    expect(fonts.filter((font) => !font.embedded || !font.subset)).toEqual([]);
  });

  test("title, no date, tagged for reading aloud: headings, then stops in their order", async () => {
    const bytes = await pdfOf(printed("a5"), TYPEFACES);
    const facts = pdfFacts(bytes);
    expect([facts.Title, facts.Tagged, facts.CreationDate, facts.ModDate]).toEqual([
      "Verse 2, St. Nikolai, Wiekenborg",
      "yes",
      undefined,
      undefined,
    ]);
    const heard = pdfStructure(bytes);
    expect(heard.match(/^\s*(?:Document|H1|H2)\b/gm)?.map((each) => each.trim())).toEqual([
      "Document",
      "H1",
      "H2",
      "H2",
      "H2",
      "H2",
    ]);
    expect(heard.replace(/\s+/g, " ")).toMatch(/Hauptwerk left hand.*Spitzflöte 8.*Brustwerk right hand.*Quinte 1 1⁄3/);
  });

  test.each([
    ["a6", [105, 148]],
    ["a5", [148, 210]],
    ["a4", [210, 297]],
    ["half-letter", [139.7, 215.9]],
    ["letter", [215.9, 279.4]],
  ] as const)("%s has its true size in the file", async (paper, size) => {
    const facts = pdfFacts(await pdfOf(printed(paper), TYPEFACES));
    const points =
      (facts["Page size"] ?? "")
        .match(/[\d.]+/g)
        ?.slice(0, 2)
        .map(Number) ?? [];
    const millimetres = points.map((each) => each * POINT).toSorted((a, b) => a - b);
    expect(millimetres).toHaveLength(2);
    for (const [index, each] of millimetres.entries()) expect(each).toBeCloseTo(size[index] as number, 1);
  });

  test("the same card gives the same bytes, and another gives others", async () => {
    const [one, two] = [await pdfOf(printed("a5"), TYPEFACES), await pdfOf(printed("a5"), TYPEFACES)];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
    const other = registrationPages({ ...CARD, label: "Another" }, { paper: "a5", measure: TYPEFACES.measure });
    expect(Buffer.from(one).equals(Buffer.from(await pdfOf(other, TYPEFACES)))).toBe(false);
  });

  test("a title with signs of other languages of computers stays as it is", async () => {
    const cards = { ...printed("a5"), title: "Lob & Preis <eins> (Ö) ł" };
    expect(pdfFacts(await pdfOf(cards, TYPEFACES)).Title).toBe("Lob & Preis <eins> (Ö) ł");
  });
});

describe("signs", () => {
  const SIZE = 20;
  /** Share of black in the half of the sign on one side, right, left, upper and lower. */
  async function halves(sign: "right" | "left" | "both" | "feet"): Promise<readonly number[]> {
    const mark = { kind: "sign", sign, x: 0, y: 0, size: SIZE } as const;
    const page: Page = { width: SIZE, height: SIZE, blocks: [], ornaments: [mark] };
    const { width, grey } = pdfImage(await pdfOf({ title: sign, pages: [page] }, TYPEFACES), 1, 10);
    const share = (inHalf: (x: number, y: number) => boolean): number => {
      let [dark, all] = [0, 0];
      for (const [index, value] of grey.entries()) {
        if (!inHalf((index % width) / width, Math.floor(index / width) / width)) continue;
        all += 1;
        if (value < 128) dark += 1;
      }
      return dark / all;
    };
    return [share((x) => x > 0.5), share((x) => x < 0.5), share((_, y) => y < 0.5), share((_, y) => y > 0.5)];
  }

  test.each([
    ["right", 0],
    ["left", 1],
    ["both", 2],
    ["feet", 3],
  ] as const)("%s is filled on its own side", async (sign, side) => {
    const found = await halves(sign);
    expect(found[side]).toBeGreaterThan(0.7);
    expect(found[side % 2 === 0 ? side + 1 : side - 1]).toBeLessThan(0.3);
  });
});

describe("cards cut from a larger sheet", () => {
  test("four A6 on an A4, whichever way they lie, with cutting marks that stay on the sheet", () => {
    for (const [width, height] of [
      [148, 105],
      [105, 148],
    ] as const) {
      const page: Page = {
        width,
        height,
        blocks: [],
        ornaments: [{ kind: "rule", x: 7, y: 7, width: 10, height: 1 }],
      };
      const sheets = imposed({ title: "Cards", pages: Array.from({ length: 5 }, () => page) }, "a4");
      expect(sheets?.pages.map((sheet) => [Math.min(sheet.width, sheet.height), sheet.ornaments.length])).toEqual([
        [210, 4 + 18],
        [210, 1 + 18],
      ]);
      const corners = sheets?.pages[0]?.ornaments.flatMap((mark) => (mark.kind === "rule" ? [[mark.x, mark.y]] : []));
      const [left, top] = [
        (sheets?.pages[0]?.width ?? 0) / 2 - width + 7,
        (sheets?.pages[0]?.height ?? 0) / 2 - height + 7,
      ];
      expect(corners).toEqual([
        [left, top],
        [left + width, top],
        [left, top + height],
        [left + width, top + height],
      ]);
      for (const sheet of sheets?.pages ?? []) {
        const points = sheet.ornaments.flatMap((mark) => (mark.kind === "line" ? mark.points : []));
        expect(points.filter(([x, y]) => x < 0 || y < 0 || x > sheet.width || y > sheet.height)).toEqual([]);
      }
    }
  });

  test("two half letters on a letter; two A5 do not go on a letter", () => {
    expect(imposed(printed("half-letter"), "letter")?.pages).toHaveLength(1);
    expect(imposed(printed("a5"), "letter")).toBeNull();
    expect(imposed(printed("a4"), "a4")).toBeNull();
  });
});
