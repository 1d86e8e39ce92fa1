import { type ImproveAsk, waysFor } from "../by-hand/ways.ts";
import { cardsFor } from "../cards/cards-answer.ts";
import type { CardsAsk, HandoutAsk } from "../cards/cards-ask.ts";
import { type CarryAsk, type CarryFileAsk, carriedFileFor, carryFor } from "../carry/carrying.ts";
import { type SuitsAsk, suitsFor } from "../carry/suiting.ts";
import { type CompareAsk, compareFor } from "../piece/comparing.ts";
import { type PlanAsk, planFor } from "../piece/planning.ts";
import { type SurveyAsk, surveySteps } from "../survey/survey-steps.ts";
import { answerTo, type ProposeAsk } from "./proposed.ts";

type Ask =
  | ({ readonly wants: "proposals" } & ProposeAsk)
  | ({ readonly wants: "ways" } & ImproveAsk)
  | ({ readonly wants: "plan" } & PlanAsk)
  | ({ readonly wants: "compare" } & CompareAsk)
  | ({ readonly wants: "survey" } & SurveyAsk)
  | ({ readonly wants: "carry" } & CarryAsk)
  | ({ readonly wants: "carried-file" } & CarryFileAsk)
  | ({ readonly wants: "suits" } & SuitsAsk)
  | HandoutAsk
  | CardsAsk;

/** The answer to a question. A survey tells of each step before it is done. */
function answer(ask: Ask, tell: (step: unknown) => void): unknown {
  switch (ask.wants) {
    case "proposals":
      return answerTo(ask);
    case "ways":
      return waysFor(ask);
    case "plan":
      return planFor(ask);
    case "compare":
      return compareFor(ask);
    case "carry":
      return carryFor(ask);
    case "carried-file":
      return carriedFileFor(ask);
    case "suits":
      return suitsFor(ask);
    case "survey":
      for (const step of surveySteps(ask)) tell(step);
      return true;
    case "handout":
      // The library that sets type and writes PDF is large, and wanted only here.
      return import("../cards/printing.ts").then(({ handoutBytes }) => handoutBytes(ask.handout, ask.paper));
    case "cards":
    case "pages":
    case "pdf":
      return cardsFor(ask);
  }
}

/**
 * Runs in workers of its own, so that the window answers while the organ is searched, and the search can be given up. One
 * script for all of them: the model in it is large, and is loaded from one file.
 */
addEventListener("message", async ({ data }: MessageEvent<{ readonly number: number; readonly ask: Ask }>) => {
  const { number, ask } = data;
  try {
    postMessage({ number, answer: await answer(ask, (step) => postMessage({ number, step })) });
  } catch (thrown) {
    postMessage({ number, fault: thrown instanceof Error ? thrown.message : String(thrown) });
  }
});
