import { type CheckedRegistration, checkRegistration, type Unplayable } from "../../shared-model/check/check.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import { stateOf } from "../state/section.ts";
import type { DrawnByHand } from "../state/work.ts";

type Checked = CheckedRegistration | Unplayable;

/** Registrations remembered of a problem: those just drawn, for the way back, and one that a finger is about to draw. */
const KEPT = 24;

const known = new WeakMap<Problem, Map<string, Checked>>();

/**
 * What is to be said of a registration drawn by hand, or why it cannot be judged. Remembered: what was reckoned while a
 * finger was going down is there when it lifts, and undo need not ask again.
 */
export function checkedFor(problem: Problem, drawn: DrawnByHand): Checked {
  const own = known.get(problem) ?? new Map<string, Checked>();
  known.set(problem, own);
  const key = JSON.stringify(drawn);
  const old = own.get(key);
  if (old !== undefined) return old;
  const checked = checkRegistration(problem, {
    state: stateOf(drawn),
    keyboards: Object.keys(drawn.keyboards).length > 0 ? drawn.keyboards : null,
    octaves: drawn.octaves,
  });
  own.set(key, checked);
  const [oldest] = own.keys();
  if (own.size > KEPT && oldest !== undefined) own.delete(oldest);
  return checked;
}
