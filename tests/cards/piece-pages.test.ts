import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { type PiecePart, piecePages } from "../../shared-model/cards/pages.ts";
import { imposed } from "../../shared-model/cards/paper/impose.ts";
import type { Page } from "../../shared-model/cards/paper/page.ts";
import { MARGIN, PAPERS } from "../../shared-model/cards/paper/paper.ts";
import { SIZES } from "../../shared-model/cards/paper/type.ts";
import { pdfOf } from "../../shared-model/cards/pdf.ts";
import type { ChangeCard, PieceCards } from "../../shared-model/cards/piece-card.ts";
import { needPoppler } from "../house/outside-programs.ts";
import { anyPiece } from "./any-piece.ts";
import { LANTERN } from "./piece-example.ts";
import { pdfFacts, pdfTexts } from "./poppler.ts";
import { inkFaults, TYPEFACES, textsOf, wordsOf } from "./typeset.ts";

const { measure } = TYPEFACES;
const wordsOfPart = (part: PiecePart, cards: PieceCards = LANTERN) =>
  piecePages(cards, { paper: "a5", measure }, [part]).pages.map(wordsOf);

describe("the cards of a piece, A5", () => {
  test("a change: who moves what, when it is made ready, and how the console stands then", () => {
    expect(wordsOfPart("changes")[1]).toEqual([
      "2 bar 25, fermata needs the assistant",
      "p",
      "Variation 1: Oboe with tremulant over the",
      "Stopped Diapason",
      "Alone 4.1 s, and the music leaves 1.5 s.",
      "assistant turns the page",
      "Great",
      "− Open",
      "Diapason 8",
      "− Principal 4",
      "− Fifteenth 2",
      "+ Stopped",
      "Diapason 8",
      "right hand ready: in the",
      "rest at bar 20",
      "Swell",
      "+ Oboe 8",
      "+ tremulant Swell",
      "→ box Swell half",
      "open",
      "then stands",
      "Great left hand Stopped Diapason 8",
      "Swell right hand Oboe 8",
      "Pedal feet Subbass 16",
      "Great to Pedal, tremulant Swell, box Swell",
      "half open",
      "Lantern Partita next: bar 49, easy",
    ]);
  });

  test("one hand alone: what goes in at the left, what comes out at the right, warnings above", () => {
    const words = wordsOfPart("changes")[2] ?? [];
    expect(words).toContain("weigh The Nazard is soft against the Stopped Diapason.");
    expect(words.slice(words.indexOf("left hand puts in"), words.indexOf("then stands"))).toEqual([
      "left hand puts in",
      "Swell",
      "− Oboe 8",
      "− tremulant Swell",
      "left hand draws",
      "Swell",
      "+ Nason 4",
      "+ Nazard 2 2/3",
    ]);
  });

  test("where a task goes on, who acts and on which division stands there again", () => {
    const moves = Array.from({ length: 14 }, (_, index) => ({
      act: "draw" as const,
      what: null,
      division: "Swell",
      name: `Gedackt ${index + 1}`,
    }));
    const [, second] = LANTERN.changes;
    if (!second) throw new Error("The piece has no second change.");
    const tasks = [{ who: "assistant" as const, ready: null, turnsPage: false, moves }];
    const pages = piecePages({ ...LANTERN, changes: [{ ...second, tasks }] }, { paper: "a6", measure }, [
      "changes",
    ]).pages;
    const going = pages.map(wordsOf).filter((words) => words.some((line) => line.startsWith("+ ")));
    expect(going.length).toBeGreaterThan(1);
    for (const words of going.slice(1)) {
      const at = words.findIndex((line) => line.startsWith("+ "));
      // In a narrow column it takes two lines.
      expect(words.slice(0, at).join(" ")).toMatch(/assistant draws continued: Swell$/);
    }
    const own = piecePages({ ...LANTERN, changes: [{ ...second, tasks }] }, { paper: "a6", measure }, ["assistant"]);
    expect(own.pages.slice(1).map((page) => wordsOf(page)[1])).toEqual(
      own.pages.slice(1).map(() => "2 continued: Swell"),
    );
  });

  test("the beginning, nothing to change, and a piston", () => {
    const [first, , , fourth, fifth] = wordsOfPart("changes");
    expect(first).toContain("Great both hands");
    expect(first).toContain("Fifteenth 2");
    expect(fourth).toContain("nothing changes");
    expect(fifth).toContain("press General 3 level 2");
    expect(fifth?.at(-1)).toBe("Lantern Partita");
  });

  test("the assistant has a card of the assistant's own, with nobody else's work on it", () => {
    const [words, ...more] = wordsOfPart("assistant");
    expect(more).toEqual([]);
    expect(words).toEqual([
      "Assistant",
      "Lantern Partita: you stand at",
      "the left, as the player sees it",
      "2 bar 25, fermata",
      "Great",
      "− Open Diapason 8",
      "− Principal 4",
      "− Fifteenth 2",
      "+ Stopped Diapason 8",
      "turn the page",
      "Weirside Chapel, Tarrowmere",
    ]);
  });

  test("the setting sheet asks for leave first", () => {
    const words = wordsOfPart("pistons")[0]?.join(" ") ?? "";
    expect(words).toMatch(
      /^Pistons to set Lantern Partita first Ask the keeper .* Draw what stands under a piston, then store it there\./,
    );
    expect(words).toMatch(/General 3 level 2 for change 5 Great Open Diapason 8 /);
  });

  test("the overview names every change once, in order", () => {
    const lines = (wordsOfPart("overview")[0] ?? []).filter((line) => /^\d /.test(line) && /bar/.test(line));
    expect(lines.map((line) => line.slice(0, 8))).toEqual(["1 bar 1:", "2 bar 25", "3 bar 49", "4 bar 73", "5 bar 97"]);
  });

  describe("the overview is one page", () => {
    const section = (at: number, steps: number): ChangeCard[] =>
      Array.from({ length: steps }, (_, step) => ({
        ...(LANTERN.changes[1] as ChangeCard),
        section: `Verse ${at + 1}`,
        where: step === 0 ? `bar ${at * 16 + 1}` : `bars ${at * 16 + 1}-${at * 16 + 16}`,
      }));
    /** A piece of so many sections, of which the third grows in ten steps. */
    const long = (sections: number): PieceCards => {
      const rows = Array.from({ length: sections }, (_, at) => section(at, at === 2 ? 10 : 1));
      const changes = rows.flat().map((card, at) => ({ ...card, number: at + 1 }));
      const timeLine = rows.flatMap((row, at) =>
        row.map(() => ({ section: at, length: 16 / row.length, level: at % 2 })),
      );
      return { ...LANTERN, changes, timeLine: timeLine.map((each, at) => ({ ...each, number: at + 1 })) };
    };
    test.each(PAPERS.flatMap((paper) => [5, 12, 30, 60].map((count) => [paper, count] as const)))(
      "%s, %i sections: every one of them is named, in 9 points or more",
      (paper, count) => {
        const { pages } = piecePages(long(count), { paper, measure }, ["overview"]);
        expect(pages).toHaveLength(1);
        const [page] = pages as [Page];
        expect(inkFaults(page, MARGIN)).toEqual([]);
        expect(Math.min(...textsOf(page).map((mark) => mark.size))).toBeGreaterThanOrEqual(9 - 1e-9);
        const words = wordsOf(page).join(" ");
        for (let at = 1; at <= count; at++) expect(words).toMatch(new RegExp(`\\bVerse ${at}(?!\\d)`));
      },
    );
  });

  test("without pistons and without an assistant these sheets are not there", () => {
    const plain = { ...LANTERN, pistons: [], changes: LANTERN.changes.map((card) => ({ ...card, tasks: [] })) };
    expect([wordsOfPart("pistons", plain), wordsOfPart("assistant", plain)]).toEqual([[], []]);
  });
});

describe("any piece on any paper (seed 4711)", () => {
  const set = fc
    .sample(fc.tuple(anyPiece, fc.constantFrom(...PAPERS)), { seed: 4711, numRuns: 40 })
    .map(([cards, paper], number) => ({ number, cards, paper, ...piecePages(cards, { paper, measure }) }));
  const faultsOf = (fault: (each: (typeof set)[number]) => readonly string[]): readonly string[] =>
    set.flatMap((each) => fault(each).map((words) => `piece ${each.number}, ${each.paper}: ${words}`));

  test("nothing meets anything else, nothing runs into the margin", () => {
    expect(faultsOf(({ pages }) => pages.flatMap((page) => inkFaults(page, MARGIN)))).toEqual([]);
  });

  test("nothing is under 15 points, and every move is there", () => {
    const letters = (words: readonly string[]): string => words.join("").replace(/[\s-]/g, "");
    const faults = faultsOf(({ cards, paper, pages }) => {
      const overview = piecePages(cards, { paper, measure }, ["overview"]).pages.length;
      const marks = pages.slice(overview).flatMap(textsOf);
      const small = marks.filter((mark) => mark.size < SIZES.text).map((mark) => mark.text);
      const count = (texts: readonly string[], name: string): number =>
        letters(texts).split(letters([name])).length - 1;
      const moves = cards.changes
        .filter((card) => card.verdict !== null)
        .flatMap((card) => [...card.tasks.flatMap((task) => task.moves), ...card.whenTime]);
      const large = marks.filter((mark) => mark.size >= SIZES.stop).map((mark) => mark.text);
      const missing = ["Quinte 1 1/3", "Mixtur III-V"].filter(
        (name) => count(large, name) < moves.filter((move) => move.name === name).length,
      );
      return [...small, ...missing];
    });
    expect(faults).toEqual([]);
  });
});

describe("the PDF of a piece", () => {
  beforeAll(needPoppler);

  test("another program reads its cards in playing order", async () => {
    const cards = piecePages(LANTERN, { paper: "a5", measure });
    const bytes = await pdfOf(cards, TYPEFACES);
    const heads = pdfTexts(bytes).map((page) => page[0]);
    expect(pdfFacts(bytes).Title).toBe("Lantern Partita, Weirside Chapel, Tarrowmere");
    expect(heads).toEqual([
      "Lantern Partita",
      "Pistons to set",
      expect.stringMatching(/^1 bar 1/),
      expect.stringMatching(/^2 bar 25, fermata/),
      expect.stringMatching(/^3 bar 49, rest of 2 beats/),
      expect.stringMatching(/^4 bar 73, attacca/),
      expect.stringMatching(/^5 bar 97, page turn/),
      "Assistant",
    ]);
  });
});

test("cards that lie and cards that stand are cut from sheets of their own", () => {
  const page = (width: number, height: number): Page => ({ width, height, blocks: [], ornaments: [] });
  const pages = [page(148, 105), page(148, 105), page(105, 148), page(105, 148), page(148, 105)];
  expect(imposed({ title: "Cards", pages }, "a4")?.pages.map((sheet) => sheet.width)).toEqual([297, 210, 297]);
});
