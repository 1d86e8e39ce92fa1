import { hearingReport } from "../../shared-model/judging/hearing-report.ts";
import type { Judgement } from "../../shared-model/judging/judge.ts";
import { stopLabel } from "../../shared-model/judging/listening.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";

/** What was heard as JSON has it. Levels are computed for comparison, not measured; see shared-model/acoustics/HEARING.md. */
export interface HearingJson {
  readonly parts: readonly { readonly part: string; readonly sones: number; readonly phon: number }[];
  readonly pairs: readonly {
    readonly first: string;
    readonly second: string;
    /** Phon by which the first is louder than the second, each by itself: 10 are twice as loud. */
    readonly lead: number;
    /** Phon by which more is left of the first than of the second when both sound. */
    readonly prominence: number;
    /** Share of the loudness of each that is left beside the other, 0 to 1. */
    readonly kept: readonly [number, number];
    /** dB by which the first rises over what the second hides, where it rises most. */
    readonly margin: number;
    /** Phon by which the first is louder than the second above 1500 Hz, each by itself. */
    readonly shine: number;
    /** dB between the two colours. */
    readonly colour: number;
  }[];
  /** Stops whose strength and brightness are guessed from their names. */
  readonly guessed: readonly string[];
}

const places = (value: number): number => Math.round(value * 100) / 100;

/** The numbers behind the words about balance. */
export function hearingJson(problem: Pick<Problem, "stops">, judgement: Pick<Judgement, "parts">): HearingJson {
  const { parts, pairs, guessed } = hearingReport(problem, judgement);
  return {
    parts: parts.map(({ part, sones, phon }) => ({ part, sones: places(sones), phon })),
    pairs: pairs.map(({ first, second, lead, prominence, kept, otherKept, margin, shine, colour }) => ({
      first,
      second,
      lead: lead / 100,
      prominence: prominence / 100,
      kept: [kept / 100, otherKept / 100],
      margin: margin / 100,
      shine: shine / 100,
      colour: colour / 100,
    })),
    guessed: guessed.map((stop) => `${stop.division}: ${stopLabel(stop)}`),
  };
}
