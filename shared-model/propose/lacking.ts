import type { Judgement } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import { wantedStops, wantedText } from "../judging/wanted-stops.ts";
import type { Wanted } from "../music/prescription.ts";
import { partName } from "../rules/balance.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { isProposable } from "./state-space.ts";

/** A recipe asks a part for something that the organ does not have. */
export interface Lacking {
  /** The part as a musician calls it. */
  readonly who: string;
  /** `trumpet 8 or cromorne 8`. */
  readonly what: string;
  /** `oboe 8 with principal 8`: what the organ has that stands in for it; `null` where nothing does. */
  readonly way: string | null;
}

/** The same in words, with the usual way round where there is one. */
export interface Lack {
  readonly rule: string;
  readonly text: string;
}

/** The recipe in whose light something is looked at. */
export type Light = Pick<Judgement, "prescription" | "reading">;

/** The octaves at which stops may serve: at the written keys first, then a part played an octave away from them. */
const OCTAVES = [0, -1, 1] as const;
type Octaves = readonly (typeof OCTAVES)[number][];

/**
 * Octaves at which stops serve together. A part is played at one octave, so a principal 4 is no principal 2 beside a principal 8;
 * an octave coupler gives several at once.
 */
const togetherOn = ({ couplers }: Instrument): readonly Octaves[] =>
  couplers.some(({ pitch }) => pitch !== 8) ? [OCTAVES] : OCTAVES.map((up) => [up]);

/**
 * What the organ lacks of a recipe: for each part, played at the octave where it lacks least, each thing that no stop is,
 * and what stands in for it. Empty when nothing is lacking, or when no recipe speaks.
 */
export function lackingOf(problem: Problem, { prescription, reading }: Light): readonly Lacking[] {
  const recipes = problem.readings[reading]?.recipes;
  if (!prescription || !recipes) return [];
  const hasAt = (octaves: Octaves, wanted: Wanted): boolean =>
    octaves.some((up) => {
      for (const stop of wantedStops(problem.instrument, wanted, up)) if (isProposable(stop)) return true;
      return false;
    });
  const lacks = new Map<string, Lacking>();
  for (const part of problem.section.parts) {
    for (const { prescribed } of recipes.get(part.id) ?? []) {
      if (prescribed.optional) continue;
      const lists = [...prescribed.must.map((wanted) => [wanted]), ...(prescribed.oneOf ?? [])];
      const missedOn = (octaves: Octaves): number =>
        lists.filter((list) => !list.some((wanted) => hasAt(octaves, wanted))).length;
      const [octaves = OCTAVES] = togetherOn(problem.instrument).toSorted((a, b) => missedOn(a) - missedOn(b));
      const has = (wanted: Wanted): boolean => hasAt(octaves, wanted);
      for (const list of lists) {
        if (list.some(has)) continue;
        const [who, what] = [partName({ part }), list.map(wantedText).slice(0, 3).join(" or ")];
        const ways = problem.standIns
          .filter((standIn) =>
            list.some(
              (one) => one.kind === standIn.for.kind && (!standIn.for.pitch || standIn.for.pitch === one.pitch),
            ),
          )
          .flatMap((standIn) => standIn.use)
          .filter((use) => use.stops.length > 0 && use.stops.every(has));
        lacks.set(`${who}|${what}`, { who, what, way: ways[0]?.stops.map(wantedText).join(" with ") ?? null });
      }
    }
  }
  return [...lacks.values()];
}

/** What the organ lacks of the recipe that its best registration follows, in words; as {@link lackingOf}. */
export const lackingFor = (problem: Problem, light: Light): readonly Lack[] =>
  lackingOf(problem, light).map(({ who, what, way }) => ({
    rule: "close-to-prescription",
    text: `The recipe asks the ${who} for ${what}; the organ has none.${way === null ? "" : ` ${way} can stand in for it.`}`,
  }));
