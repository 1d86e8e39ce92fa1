import { sparesOf } from "../../shared-model/cards/spares.ts";
import type { BoxPosition, ConsoleState } from "../../shared-model/console/state.ts";
import { stopLabel } from "../../shared-model/files/stop-name.ts";
import type { Judgement } from "../../shared-model/judging/judge.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import type { Reason } from "../../shared-model/judging/reason.ts";
import { citations } from "../../shared-model/music/prescriptions/citation.ts";
import { footText } from "../../shared-model/pitch/foot.ts";
import type { Points } from "../../shared-model/rules/rule.ts";
import type { Instrument, Stop } from "../../shared-model/stoplist/instrument.ts";
import { type HearingJson, hearingJson } from "./hearing-json.ts";

/** A stop as JSON names it; `half` stands only for a half of a divided stop. */
export interface StopJson {
  readonly division: string;
  readonly name: string;
  /** `8`, `8/3`; `null` for a compound that prints none. */
  readonly pitch: string | null;
  readonly half?: "bass" | "treble";
  /** Stops of the division that would do just as well, by the names that `drawn` takes; absent where there is none. */
  readonly or?: readonly string[];
}

/** A reason as JSON has it. */
export interface ReasonJson {
  readonly rule: string;
  readonly points: number;
  readonly text: string;
  readonly source: string;
}

/** One proposal as JSON has it: the form is a contract. */
export interface ProposalJson {
  readonly place: number;
  readonly score: number;
  readonly label: string;
  readonly parts: readonly {
    readonly part: string;
    readonly role: string;
    readonly keyboard: string;
    readonly octave: -1 | 0 | 1;
    readonly stops: readonly StopJson[];
  }[];
  readonly drawn: Readonly<Record<string, readonly string[]>>;
  readonly couplers: readonly string[];
  readonly tremulants: readonly string[];
  readonly boxes: Readonly<Record<string, BoxPosition>>;
  readonly hearing: HearingJson;
  readonly reasons: readonly ReasonJson[];
}

/** Whole hundredths as a decimal with at most two places. */
export const decimal = (points: Points): number => points / 100;

export const reasonJson = ({ rule, points, text, source }: Reason): ReasonJson => ({
  rule,
  points: decimal(points),
  text,
  source: citations(source),
});

const stopJson = ({ division, name, pitch, half }: Stop, spares: readonly Stop[] = []): StopJson => ({
  division,
  name,
  pitch: pitch && footText(pitch),
  ...(half && { half }),
  ...(spares.length > 0 && { or: spares.map(stopLabel) }),
});

/** Drawn stops by division, in printed order, by the names that a registration file takes. */
function drawnByDivision(instrument: Instrument, state: ConsoleState): Readonly<Record<string, readonly string[]>> {
  const rows = instrument.divisions.map(({ name, stops }): readonly [string, readonly string[]] => [
    name,
    stops.filter((stop) => state.drawn.has(stop.id)).map(stopLabel),
  ]);
  return Object.fromEntries(rows.filter(([, labels]) => labels.length > 0));
}

/** Positions of the boxes behind which something sounds, by the divisions in them. */
export function boxesByDivision(
  instrument: Instrument,
  state: ConsoleState,
  { parts }: Pick<Judgement, "parts">,
): Readonly<Record<string, BoxPosition>> {
  const heard = new Set(parts.flatMap((part) => part.heard));
  const rows = instrument.divisions.flatMap(({ name, box, stops }): readonly (readonly [string, BoxPosition])[] =>
    box !== null && stops.some((stop) => heard.has(stop.id)) ? [[name, state.boxes.get(box) ?? "open"]] : [],
  );
  return Object.fromEntries(rows);
}

/** Couplers that are on, in the instrument's order; fixed ones need no hand. */
export const couplersOn = (instrument: Instrument, state: ConsoleState): readonly string[] =>
  instrument.couplers.filter((each) => !each.fixed && state.couplers.has(each.name)).map((each) => each.name);

/** A judged state at its place in a list. */
export interface ListedState {
  readonly place: number;
  readonly label: string;
  readonly state: ConsoleState;
  readonly judgement: Judgement;
}

/** One proposal in the form that outside programs read. */
export function proposalJson(
  problem: Pick<Problem, "instrument" | "shared" | "stops">,
  { place, label, state, judgement }: ListedState,
): ProposalJson {
  const { instrument } = problem;
  const stops = instrument.divisions.flatMap((division) => division.stops);
  const spares = sparesOf(problem, state.drawn);
  return {
    place,
    score: decimal(judgement.score),
    label,
    parts: judgement.parts.map(({ placing, placed, heard }) => ({
      part: placing.part,
      role: placed.part.role,
      keyboard: placing.keyboard,
      octave: placing.octave,
      stops: stops.filter((stop) => heard.includes(stop.id)).map((stop) => stopJson(stop, spares.get(stop.id))),
    })),
    drawn: drawnByDivision(instrument, state),
    couplers: couplersOn(instrument, state),
    tremulants: instrument.tremulants.filter((name) => state.tremulants.has(name)),
    boxes: boxesByDivision(instrument, state, judgement),
    hearing: hearingJson(problem, judgement),
    reasons: judgement.reasons.map(reasonJson),
  };
}
