import { beforeAll, expect, test, vi } from "vitest";
import { piecePages } from "../../shared-model/cards/pages.ts";
import { openTypefaces, pdfOf } from "../../shared-model/cards/pdf.ts";
import { needPoppler } from "../house/outside-programs.ts";
import { LANTERN } from "./piece-example.ts";
import { pdfFonts, pdfTexts } from "./poppler.ts";
import { TYPEFACES } from "./typeset.ts";

// The library in the form that a bundler gives to a browser: it finds no fonts of its own there.
vi.mock("pdfkit", () => import(new URL("../../node_modules/pdfkit/js/pdfkit.browser.mjs", import.meta.url).href));

beforeAll(needPoppler);

test("cards are printed in a browser with no font but those handed in", async () => {
  const faces = openTypefaces(TYPEFACES.bytes);
  const cards = piecePages(LANTERN, { paper: "a5", measure: faces.measure });
  const bytes = await pdfOf(cards, faces);
  expect(pdfTexts(bytes).map((page) => page[0])).toContain("Pistons to set");
  expect(pdfFonts(bytes).map((font) => font.name)).toEqual(expect.arrayContaining(["SourceSerif4-SemiBold"]));
  expect(pdfFonts(bytes).filter((font) => !font.embedded)).toEqual([]);
});
