import { DRAWN_FOR_NOBODY } from "../../shared-model/check/keyboards.ts";
import type { ConsoleState, Placing } from "../../shared-model/console/state.ts";
import { judge } from "../../shared-model/judging/judge.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";

/** One way of giving the parts keyboards, judged. */
export interface JudgedWay {
  readonly placings: readonly Placing[];
  /** Divisions of which a stop is drawn and none is heard. */
  readonly unheard: number;
  readonly errors: number;
  readonly score: number;
}

/**
 * Every way of giving the parts keyboards on which something sounds for them (any keyboard where nothing does), optional
 * ones also none, judged whole. In the order of print.
 */
export function everyWay(problem: Problem, state: ConsoleState): readonly JudgedWay[] {
  const { divisions } = problem.instrument;
  const choices = problem.section.parts.map((part): readonly (Placing | null)[] => {
    // A pedal that lacks more than a third of the part's keys is none for it.
    const hasPedal = divisions.some(({ kind, compass }) => {
      const there = Math.min(part.high, compass.high) - Math.max(part.low, compass.low) + 1;
      return kind === "pedal" && there * 3 >= (part.high - part.low + 1) * 2;
    });
    const kind = part.hands === "feet" && hasPedal ? "pedal" : "manual";
    const all = divisions
      .filter((division) => division.kind === kind)
      .map((division): Placing => ({ part: part.id, keyboard: division.name, octave: 0 }));
    const sounding = all.filter((placing) => (judge(problem, state, [placing])?.parts[0]?.heard.length ?? 0) > 0);
    if (part.optional) return [...sounding, null];
    return sounding.length > 0 ? sounding : all;
  });
  const ways = choices.reduce<readonly (readonly Placing[])[]>(
    (some, placings) => some.flatMap((way) => placings.map((placing) => (placing ? [...way, placing] : way))),
    [[]],
  );
  return ways.flatMap((placings): readonly JudgedWay[] => {
    const judgement = placings.length > 0 ? judge(problem, state, placings) : null;
    if (!judgement) return [];
    const heard = judgement.parts.flatMap((part) => part.heard);
    const unheard = divisions.filter(
      ({ stops }) => stops.some((stop) => state.drawn.has(stop.id)) && !stops.some((stop) => heard.includes(stop.id)),
    ).length;
    const errors = judgement.reasons.filter((reason) => reason.severity === "error").length;
    return [{ placings, unheard, errors, score: judgement.score }];
  });
}

/** The first of the ways that have the fewest errors and score highest, with what an unheard division counts against them. */
export function bestWay(ways: readonly JudgedWay[]): JudgedWay | undefined {
  const worth = ({ score, unheard }: JudgedWay): number => score - DRAWN_FOR_NOBODY * unheard;
  return ways.toSorted((a, b) => a.errors - b.errors || worth(b) - worth(a))[0];
}
