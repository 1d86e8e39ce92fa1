import { guessedStops } from "../../shared-model/judging/hearing-report.ts";
import type { JudgedPart } from "../../shared-model/judging/judge.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import { wrapped } from "./plain-text.ts";

/** Says that balance rests on guesses, where something is heard to which nobody has listened. */
export function guessWords(problem: Problem, parts: readonly JudgedPart[]): readonly string[] {
  if (guessedStops(problem, parts).length === 0) return [];
  return wrapped(
    "Balance is a guess from the names of the stops, since their strength was not set by ear: " +
      "instruments/README.md says how to listen.",
  );
}
