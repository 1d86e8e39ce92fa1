import { labelsOf } from "../../shared-model/cards/labels.ts";
import type { ConsoleState, Placing } from "../../shared-model/console/state.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import type { Judgement } from "../../shared-model/judging/judge.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import type { Reason } from "../../shared-model/judging/reason.ts";
import type { Hands, Role, Section } from "../../shared-model/music/texture.ts";
import { type Lack, lackingFor } from "../../shared-model/propose/lacking.ts";
import { isLadder, ladder } from "../../shared-model/propose/ladder.ts";
import { missingMeans } from "../../shared-model/propose/missing.ts";
import { propose } from "../../shared-model/propose/propose.ts";
import { drawnOf } from "../state/section.ts";
import type { DrawnByHand } from "../state/work.ts";

/** What a part sounds, in plain values. */
export interface ProposedPart {
  readonly part: string;
  readonly role: Role;
  readonly hands: Hands;
  readonly keyboard: string;
  readonly octave: Placing["octave"];
  /** Ids of the stops heard, in printed order. */
  readonly heard: readonly string[];
  readonly tremulant: boolean;
}

/** A ranked registration in plain values, so that it can cross from the worker to the page. */
export interface Proposed {
  readonly place: number;
  /** Whole hundredths. */
  readonly score: number;
  readonly label: string;
  readonly drawn: DrawnByHand;
  readonly parts: readonly ProposedPart[];
  readonly reasons: readonly Reason[];
}

/** What is asked of the worker. */
export interface ProposeAsk {
  readonly organ: string;
  readonly section: Section;
  readonly count: number;
  /** The plain order by score, twins and all. */
  readonly every: boolean;
}

/** What comes of it. */
export interface Answer {
  readonly proposals: readonly Proposed[];
  /** Steps of a crescendo, softest first, instead of alternatives. */
  readonly ladder: boolean;
  /** What the organ lacks for this music. */
  readonly lacks: readonly Lack[];
}

interface Listed {
  readonly place: number;
  readonly state: ConsoleState;
  readonly placings: readonly Placing[];
  readonly judgement: Judgement;
}

/** Parts of a judgement in plain values. */
export const plainParts = ({ parts }: Pick<Judgement, "parts">): readonly ProposedPart[] =>
  parts.map(({ placing, placed, heard, sound }) => ({
    part: placing.part,
    role: placed.part.role,
    hands: placed.part.hands,
    keyboard: placing.keyboard,
    octave: placing.octave,
    heard: [...heard],
    tremulant: sound.tremulant === 1,
  }));

function listOf(problem: Problem, { count, every }: Pick<ProposeAsk, "count" | "every">): readonly Listed[] {
  if (isLadder(problem)) return ladder(problem);
  return propose(problem, { count, every }).proposals.map(({ place, found, judgement }) => ({
    place,
    state: found.state,
    placings: found.placings,
    judgement,
  }));
}

/** The latest problem made ready, so that asking for more of the same music is quick. */
let last: { readonly key: string; readonly problem: Problem } | null = null;

/** A section made ready to be judged on the organ of a file's text; `null` when the text has errors. */
export function problemOf({ organ, section }: Pick<ProposeAsk, "organ" | "section">): Problem | null {
  const key = JSON.stringify([organ, section]);
  if (last?.key === key) return last.problem;
  const { instrument } = readInstrumentFile(organ, "the organ");
  if (!instrument) return null;
  last = { key, problem: prepare(instrument, section) };
  return last.problem;
}

/** Ranked registrations for a section on the organ of a file's text. Takes its time: for the worker. */
export function answerTo(ask: ProposeAsk): Answer {
  const problem = problemOf(ask);
  if (!problem) return { proposals: [], ladder: false, lacks: [] };
  const list = listOf(problem, ask);
  const labels = labelsOf(
    problem,
    list.map((each) => each.judgement.parts),
  );
  const isRow = isLadder(problem);
  const [best] = list;
  return {
    proposals: list.map(({ place, state, placings, judgement }, index) => ({
      place,
      score: judgement.score,
      label: labels[index] ?? "",
      drawn: drawnOf(state, placings),
      parts: plainParts(judgement),
      reasons: judgement.reasons,
    })),
    ladder: isRow,
    lacks: best ? (isRow ? [] : lackingFor(problem, best.judgement)) : missingMeans(problem),
  };
}
