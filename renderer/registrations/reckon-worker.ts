import { type ImproveAsk, waysFor } from "../by-hand/ways.ts";
import { type PlanAsk, planFor } from "../piece/planning.ts";
import { answerTo, type ProposeAsk } from "./proposed.ts";

type Ask =
  | ({ readonly wants: "proposals" } & ProposeAsk)
  | ({ readonly wants: "ways" } & ImproveAsk)
  | ({ readonly wants: "plan" } & PlanAsk);

function answer(ask: Ask): unknown {
  switch (ask.wants) {
    case "proposals":
      return answerTo(ask);
    case "ways":
      return waysFor(ask);
    case "plan":
      return planFor(ask);
  }
}

/** Runs in a worker of its own, so that the window answers while the organ is searched, and the search can be given up. */
addEventListener("message", ({ data }: MessageEvent<{ readonly number: number; readonly ask: Ask }>) => {
  const { number, ask } = data;
  try {
    postMessage({ number, answer: answer(ask) });
  } catch (thrown) {
    postMessage({ number, fault: thrown instanceof Error ? thrown.message : String(thrown) });
  }
});
