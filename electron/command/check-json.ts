import type { CheckedRegistration, Finding } from "../../shared-model/check/check.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import { citations } from "../../shared-model/music/prescriptions/citation.ts";
import { type HearingJson, hearingJson } from "./hearing-json.ts";
import { decimal, type ReasonJson, reasonJson } from "./proposal-json.ts";

/** What a check found as JSON has it: the form is a contract. */
export interface CheckJson {
  readonly findings: readonly Finding[];
  readonly reasons: readonly ReasonJson[];
  readonly score: number;
  readonly keyboards: Readonly<Record<string, string>>;
  readonly hearing: HearingJson;
}

/** Part to keyboard, as said or as found. */
const keyboardsOf = ({ placings }: CheckedRegistration): Readonly<Record<string, string>> =>
  Object.fromEntries(placings.map(({ part, keyboard }) => [part, keyboard]));

/** A checked registration in the form that outside programs read. */
export function checkJson(problem: Pick<Problem, "stops">, checked: CheckedRegistration): CheckJson {
  const { findings, judgement } = checked;
  return {
    findings: findings.map((finding) => ({ ...finding, source: citations(finding.source) })),
    reasons: judgement.reasons.map(reasonJson),
    score: decimal(judgement.score),
    keyboards: keyboardsOf(checked),
    hearing: hearingJson(problem, judgement),
  };
}
