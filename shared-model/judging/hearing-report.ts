import { type Balance, balanceOf, sonesOf, strengthOf } from "../acoustics/hearing.ts";
import type { Stop } from "../stoplist/instrument.ts";
import type { JudgedPart, Judgement } from "./judge.ts";
import type { Problem } from "./problem.ts";

/** What the rules of balance heard, in numbers. */
export interface HearingReport {
  readonly parts: readonly {
    readonly part: string;
    /** Loudness as the part plays, in sones. */
    readonly sones: number;
    /** Loudness level of the same three keys for all parts, in phon. */
    readonly phon: number;
  }[];
  /** Every part against every later one. */
  readonly pairs: readonly (Balance & { readonly first: string; readonly second: string })[];
  /** Stops heard whose strength and brightness nobody has set by ear, in printed order. */
  readonly guessed: readonly Stop[];
}

const isGuessed = ({ byEar }: Stop): boolean => !byEar.strength && !byEar.brightness;

/** Stops that are heard and whose strength and brightness are only the usual ones of their kind. */
export const guessedStops = (problem: Pick<Problem, "stops">, parts: readonly JudgedPart[]): readonly Stop[] =>
  problem.stops.filter((stop) => isGuessed(stop) && parts.some((part) => part.heard.includes(stop.id)));

/** The numbers behind a judgement's words about balance. */
export function hearingReport(problem: Pick<Problem, "stops">, { parts }: Pick<Judgement, "parts">): HearingReport {
  const sounding = parts.flatMap(({ placing, sound: { blend } }) => (blend ? [{ part: placing.part, blend }] : []));
  return {
    parts: sounding.map(({ part, blend }) => ({ part, sones: sonesOf(blend), phon: strengthOf(blend) / 100 })),
    pairs: sounding.flatMap((one, index) =>
      sounding.slice(index + 1).map((other) => ({
        first: one.part,
        second: other.part,
        ...balanceOf(one.blend, other.blend),
      })),
    ),
    guessed: guessedStops(problem, parts),
  };
}
