import { type ImproveAsk, waysFor } from "../by-hand/ways.ts";
import { answerTo, type ProposeAsk } from "./proposed.ts";

type Ask = ({ readonly wants: "proposals" } & ProposeAsk) | ({ readonly wants: "ways" } & ImproveAsk);

/** Runs in a worker of its own, so that the window answers while the organ is searched, and the search can be given up. */
addEventListener("message", ({ data }: MessageEvent<{ readonly number: number; readonly ask: Ask }>) => {
  const { number, ask } = data;
  try {
    postMessage({ number, answer: ask.wants === "proposals" ? answerTo(ask) : waysFor(ask) });
  } catch (thrown) {
    postMessage({ number, fault: thrown instanceof Error ? thrown.message : String(thrown) });
  }
});
