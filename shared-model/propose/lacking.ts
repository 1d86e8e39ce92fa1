import type { Judgement } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import { wantedStops, wantedText } from "../judging/wanted-stops.ts";
import type { Wanted } from "../music/prescription.ts";
import { partName } from "../rules/balance.ts";
import { isProposable } from "./state-space.ts";

/** Something that the recipe asks for and the organ does not have, with the usual way round where there is one. */
export interface Lack {
  readonly rule: string;
  readonly text: string;
}

/** The octaves at which a stop may serve when a part is played away from the written keys or through an octave coupler. */
const OCTAVES = [0, -1, 1] as const;

/**
 * What the organ lacks of the recipe that its best registration follows: each thing that no stop of it is, at any octave
 * that can be played, and what stands in for it. Empty when nothing is lacking, or when no recipe speaks.
 */
export function lackingFor(problem: Problem, { prescription, reading }: Judgement): readonly Lack[] {
  const recipes = problem.readings[reading]?.recipes;
  if (!prescription || !recipes) return [];
  const has = (wanted: Wanted): boolean =>
    OCTAVES.some((up) => [...wantedStops(problem.instrument, wanted, up)].some(isProposable));
  const lacks = new Map<string, Lack>();
  for (const part of problem.section.parts) {
    for (const { prescribed } of recipes.get(part.id) ?? []) {
      if (prescribed.optional) continue;
      for (const list of [...prescribed.must.map((wanted) => [wanted]), ...(prescribed.oneOf ?? [])]) {
        if (list.some(has)) continue;
        const what = list.map(wantedText).slice(0, 3).join(" or ");
        const ways = problem.standIns
          .filter((standIn) =>
            list.some(
              (one) => one.kind === standIn.for.kind && (!standIn.for.pitch || standIn.for.pitch === one.pitch),
            ),
          )
          .flatMap((standIn) => standIn.use)
          .filter((use) => use.stops.length > 0 && use.stops.every(has));
        const way = ways[0] ? ` ${ways[0].stops.map(wantedText).join(" with ")} stands in for it.` : "";
        const text = `The recipe asks the ${partName({ part })} for ${what}; the organ has none.${way}`;
        lacks.set(text, { rule: "close-to-prescription", text });
      }
    }
  }
  return [...lacks.values()];
}
