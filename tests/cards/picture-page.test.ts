import { describe, expect, test } from "vitest";
import { cueCard } from "../../shared-model/cards/cue-card.ts";
import { piecePages, registrationPages } from "../../shared-model/cards/pages.ts";
import { PAPERS } from "../../shared-model/cards/paper/paper.ts";
import { pdfOf } from "../../shared-model/cards/pdf.ts";
import { judge } from "../../shared-model/judging/judge.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { registrationDrawing } from "../../shared-model/pictures/registration-picture.ts";
import { consoleOfExample } from "../../shared-model/rules/example.ts";
import { LANTERN } from "./piece-example.ts";
import { TYPEFACES as typefaces } from "./typeset.ts";

const { instrument, section, state, placings } = consoleOfExample({
  organ: "Swell: Oboe 8, Tierce 1 3/5 | Great: Gedackt 8, Flöte 4 | Pedal: Subbass 16, Gedackt 8",
  plays: "melody on Swell, accompaniment on Great, bass on Pedal",
});
const problem = prepare(instrument, section);
const judgement = judge(problem, state, placings);
if (!judgement) throw new RangeError("The keyboards are coupled in a ring.");
const card = cueCard(problem, state, judgement);
const drawing = registrationDrawing(problem, judgement, card.label);

describe("a registration drawn for the desk", () => {
  test.each(PAPERS)("takes one page of %s behind the card, and nothing of it leaves the page", (paper) => {
    const form = { paper, measure: typefaces.measure };
    const { pages } = registrationPages(card, form, drawing);
    expect(pages.slice(0, -1)).toEqual(registrationPages(card, form).pages);
    const page = pages.at(-1);
    const marks = [...(page?.ornaments ?? []), ...(page?.blocks.flatMap((each) => each.marks) ?? [])];
    const outside = marks.filter((mark) => {
      const ends: readonly (readonly [number, number])[] =
        "points" in mark
          ? mark.points
          : [
              [mark.x, mark.y],
              ["width" in mark ? mark.x + mark.width : mark.x, mark.y],
            ];
      return ends.some(([x, y]) => x < 0 || y < 0 || x > (page?.width ?? 0) || y > (page?.height ?? 0));
    });
    expect(outside).toEqual([]);
    expect(page?.blocks[0]).toMatchObject({ tag: "heading", marks: [{ text: card.label }] });
    const lacking = marks.flatMap((mark) => (mark.kind === "text" ? typefaces.lacks(mark.text, mark.face) : []));
    expect(lacking).toEqual([]);
  });

  test("is printed in black: lines, dashes and areas", async () => {
    const cards = registrationPages(card, { paper: "a4", measure: typefaces.measure }, drawing);
    expect((await pdfOf(cards, typefaces)).length).toBeGreaterThan(1000);
    const kinds = new Set(cards.pages.at(-1)?.ornaments.map((mark) => mark.kind));
    expect([...kinds].sort()).toEqual(["area", "line", "text"]);
  });

  test("belongs to a piece's cards only when it is asked for", () => {
    const form = { paper: "a5", measure: typefaces.measure } as const;
    const piece = { ...LANTERN, pictures: [drawing, drawing] };
    expect(piecePages(piece, form)).toEqual(piecePages(LANTERN, form));
    expect(piecePages(piece, form, ["pictures"]).pages).toHaveLength(2);
  });
});
