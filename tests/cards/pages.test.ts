import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CueCard } from "../../shared-model/cards/cue-card.ts";
import { registrationPages } from "../../shared-model/cards/pages.ts";
import { MARGIN, PAPER_FORMS, PAPERS, type Paper } from "../../shared-model/cards/paper/paper.ts";
import { SIZES } from "../../shared-model/cards/paper/type.ts";
import { anyCard } from "./any-card.ts";
import { inkFaults, inkOf, TYPEFACES, textsOf, wordsOf } from "./typeset.ts";

const { measure } = TYPEFACES;
const pagesOf = (card: CueCard, paper: Paper) => registrationPages(card, { paper, measure }).pages;

const SOLO: CueCard = {
  organ: "St. Example, Sampleford",
  section: "Verse 2",
  bars: "17-32",
  label: "Oboe over two flutes",
  hands: [
    { who: "Right hand", keyboard: "Swell", what: null, octave: 0 },
    { who: "Left hand", keyboard: "Great", what: null, octave: -1 },
    { who: "Feet", keyboard: null, what: null, octave: 0 },
  ],
  divisions: [
    { name: "Great", stops: [{ name: "Stopped Diapason 8", or: ["Clarabella 8"] }] },
    { name: "Swell", stops: [{ name: "Nasat 2 2/3", or: [] }] },
  ],
  couplers: ["Swell to Great"],
  tremulants: ["Swell"],
  unisonOff: [],
  boxes: [{ name: "Swell", position: "closed" }],
  warnings: [
    { severity: "warning", text: "A warning.", remedy: null },
    { severity: "error", text: "An error.", remedy: "What to do." },
  ],
  why: "The Oboe stands out.",
};

describe("a card on paper", () => {
  test("A5: what is wrong first, then division by division who plays and what is drawn", () => {
    expect(pagesOf(SOLO, "a5").map(wordsOf)).toEqual([
      [
        "Verse 2, bars 17-32 weigh 1",
        "Oboe over two flutes",
        "must change An error. What to do.",
        "Great left hand an octave lower than written",
        "Stopped Diapason 8",
        "or Clarabella 8",
        "Swell right hand",
        "Nasat 2 2/3",
        "Also set",
        "couple Swell to Great",
        "tremulant Swell",
        "box Swell shut",
        "feet rest",
        "weigh A warning.",
        "The Oboe stands out.",
        "St. Example, Sampleford",
      ],
    ]);
  });

  test.each(PAPERS)("%s has its size, lying or standing", (paper) => {
    const { width, height } = PAPER_FORMS[paper].tall;
    for (const page of pagesOf(SOLO, paper)) {
      expect([page.width, page.height].toSorted((a, b) => a - b)).toEqual([width, height]);
    }
  });

  test("a larger sheet is set larger", () => {
    const sizes = (paper: Paper) => pagesOf(SOLO, paper).flatMap((page) => textsOf(page).map((mark) => mark.size));
    expect(Math.max(...sizes("a4"))).toBeCloseTo(1.45 * SIZES.title);
    expect(Math.max(...sizes("a6"))).toBeLessThan(1.1 * SIZES.title);
    expect(Math.min(...sizes("a6"))).toBeGreaterThanOrEqual(SIZES.text);
  });

  test("the page that goes on says so, and so does the one on which it goes on", () => {
    const stops = Array.from({ length: 40 }, (_, index) => ({ name: `Gedackt ${index + 1}`, or: [] }));
    const pages = pagesOf({ ...SOLO, divisions: [{ name: "Great", stops }] }, "a5").map(wordsOf);
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.slice(0, -1).every((words) => words.some((line) => /goes on$/.test(line)))).toBe(true);
    expect(pages.at(-1)?.some((line) => /goes on/.test(line))).toBe(false);
    expect(pages.slice(1).every((words) => words[0] === "Verse 2, bars 17-32 continued")).toBe(true);
    expect(pages.flat().filter((line) => line === "Great continued").length).toBeGreaterThan(0);
    expect(pages.flat().filter((line) => /^Gedackt \d+$/.test(line))).toEqual(stops.map((stop) => stop.name));
  });

  test("a remark that would cost a page is left out, a warning never", () => {
    const words = (card: CueCard) => pagesOf(card, "a6").flatMap(wordsOf).join(" ");
    const why = "Sentence after sentence. ".repeat(60).trim();
    expect(words({ ...SOLO, why })).not.toContain("Sentence");
    const warnings = [{ severity: "warning" as const, text: why, remedy: null }];
    expect(words({ ...SOLO, warnings }).match(/Sentence/g)).toHaveLength(60);
  });
});

describe("any card on any paper (seed 20261)", () => {
  const set = fc
    .sample(fc.tuple(anyCard, fc.constantFrom(...PAPERS)), { seed: 20_261, numRuns: 200 })
    .map(([card, paper], number) => ({ number, card, paper, pages: pagesOf(card, paper) }));
  const faultsOf = (fault: (each: (typeof set)[number]) => readonly string[]): readonly string[] =>
    set.flatMap((each) => fault(each).map((words) => `card ${each.number}, ${each.paper}: ${words}`));

  test("there are large ones among them", () => {
    const stops = set.map(({ card }) => card.divisions.reduce((sum, division) => sum + division.stops.length, 0));
    expect(Math.max(...stops)).toBeGreaterThanOrEqual(30);
    expect(Math.max(...set.map(({ pages }) => pages.length))).toBeGreaterThan(5);
  });

  test("nothing meets anything else, nothing runs into the margin", () => {
    expect(faultsOf(({ pages }) => pages.flatMap((page) => inkFaults(page, MARGIN)))).toEqual([]);
  });

  test("every letter of every stop is there in order, at least 22 points large", () => {
    const letters = (words: readonly string[]): string => words.join("").replace(/[\s-]/g, "");
    const faults = faultsOf(({ card, pages }) => {
      const items = pages.flatMap((page) => page.blocks.filter((block) => block.tag === "item"));
      const drawn = items
        .flatMap((block) => block.marks.flatMap((mark) => (mark.kind === "text" ? [mark] : [])))
        .filter((mark) => mark.face === "serif-bold" && mark.size >= SIZES.stop);
      const wanted = letters(card.divisions.flatMap((division) => division.stops.map((stop) => stop.name)));
      return letters(drawn.map((mark) => mark.text)).includes(wanted) ? [] : ["stops are missing"];
    });
    expect(faults).toEqual([]);
  });

  test("nothing is under 15 points", () => {
    const small = faultsOf(({ pages }) =>
      pages.flatMap(textsOf).flatMap((mark) => (mark.size < SIZES.text ? [mark.text] : [])),
    );
    expect(small).toEqual([]);
  });

  test("no pitch parts from its name: no line begins with one", () => {
    const alone = /^(?:\d+(?: \d\/\d)?|\d\/\d)(?: bass)?$/;
    expect(faultsOf(({ pages }) => pages.flatMap(wordsOf).filter((line) => alone.test(line)))).toEqual([]);
  });

  test("a strip above the foot stays white for a pencil", () => {
    const faults = faultsOf(({ pages, paper }) =>
      pages.flatMap((page) => {
        const foot = page.ornaments.findLast((mark) => mark.kind === "rule");
        if (foot?.kind !== "rule") return ["there is no rule above the foot"];
        const top = foot.y - PAPER_FORMS[paper].pencil;
        const inks = textsOf(page).map(inkOf);
        return inks.filter((ink) => ink.bottom > top + 0.6 && ink.top < foot.y).map((ink) => ink.text);
      }),
    );
    expect(faults).toEqual([]);
  });
});
