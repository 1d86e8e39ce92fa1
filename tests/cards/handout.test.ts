import { describe, expect, test } from "vitest";
import { type Handout, handoutPages } from "../../shared-model/cards/handout.ts";
import { labelOf } from "../../shared-model/cards/label.ts";
import { MARGIN } from "../../shared-model/cards/paper/paper.ts";
import { pdfOf } from "../../shared-model/cards/pdf.ts";
import { surveyHandout } from "../../shared-model/cards/survey-handout.ts";
import { surveyOrgan } from "../../shared-model/carry/organ-survey.ts";
import { TRADITIONS } from "../../shared-model/music/texture.ts";
import { organFrom } from "../../shared-model/rules/example-organ.ts";
import { needPoppler } from "../house/outside-programs.ts";
import { demoOrgan } from "../instruments/demo-organs.ts";
import { pdfTexts } from "./poppler.ts";
import { inkFaults, TYPEFACES, textsOf } from "./typeset.ts";

const { measure } = TYPEFACES;

describe("a survey on paper", () => {
  test("of a village organ and all schools is one page of A4, and of letter, with nothing lost or set into each other", async () => {
    needPoppler();
    const survey = surveyOrgan(demoOrgan("sallowby"), { traditions: TRADITIONS, labelOf });
    for (const paper of ["a4", "letter"] as const) {
      const printed = handoutPages(surveyHandout(survey), { paper, measure });
      expect(printed.pages).toHaveLength(1);
      expect(printed.pages.flatMap((page) => inkFaults(page, MARGIN))).toEqual([]);
      const [page] = pdfTexts(await pdfOf(printed, TYPEFACES));
      const words = page?.join(" ") ?? "";
      expect(words).toContain(`What ${survey.instrument.name} can do`);
      expect(words).toContain("School by school");
      expect(words).toContain("Hear it before you rely on it");
    }
  });

  test("of one school names every texture under its level, with what is missing and the nearest way round", () => {
    const survey = surveyOrgan(demoOrgan("sallowby"), { traditions: ["english-18c"], labelOf });
    const { parts } = surveyHandout(survey);
    expect(parts.map(({ head }) => head)).toContain("English, 18th century: not possible");
    const told = parts.flatMap(({ items }) => items.map(({ lead, text }) => `${lead ?? ""} ${text}`));
    for (const { texture } of survey.schools[0]?.textures ?? [])
      expect(told.filter((each) => each.startsWith(`${texture.title}: `))).toHaveLength(1);
    expect(told.find((each) => each.startsWith("Trumpet"))).toMatch(/ No trumpet 8 for the .*\. Nearest: /);
  });

  test("says sentences and halves of them as sentences, each ended once", () => {
    const { instrument } = organFrom("Manual: Open Diapason 8, Principal 4", [], []);
    const { parts } = surveyHandout(surveyOrgan(instrument, { traditions: ["neutral"], labelOf }));
    const told = parts.flatMap(({ items }) => items.map(({ lead, text }) => `${lead ?? ""} ${text}`));
    expect(told).toContain("Fugue: Principals 8 4. There is no pedal: the left hand plays the bass on the Manual.");
    expect(told.filter((each) => /\.[.;]/.test(each))).toEqual([]);
  });
});

test("a handout that cannot go on one page goes on, marked, in the smallest type, and leaves no item out", () => {
  const items = Array.from({ length: 200 }, (_, at) => ({
    lead: null,
    text: `Remark ${at + 1} of a long sheet.`,
    white: 1,
  }));
  const long: Handout = { title: "Long", label: null, parts: [{ head: "Remarks", items }], foot: "Nowhere" };
  const { pages } = handoutPages(long, { paper: "a4", measure });
  expect(pages.length).toBeGreaterThan(1);
  expect(pages.flatMap((page) => inkFaults(page, MARGIN))).toEqual([]);
  const words = pages.flatMap(textsOf).map(({ text }) => text);
  expect(words.filter((text) => text.endsWith("sheet."))).toHaveLength(200);
  expect(words).toContain("goes on");
});
