import type { RowProblem } from "../../shared-model/plan/row.ts";

/** What a row costs, added up from its choices alone; `null` when it is not allowed. */
export function costOfRow(problem: RowProblem, choices: readonly number[], pressed: readonly boolean[]): number | null {
  let cost = 0;
  for (const [at, choice] of choices.entries()) {
    cost += problem.own(at, choice);
    const copied = problem.copies[at];
    if (copied != null && choices[copied] !== choice) return null;
    if (at === 0) continue;
    const change = problem.change(at, choices[at - 1] as number, choice);
    const part = pressed[at] ? change.press : change.hand;
    if (part === null) return null;
    cost += part;
  }
  if (pressed.filter(Boolean).length > problem.presses) return null;
  return problem.links.reduce(
    (sum, link) => sum + link.cost(choices[link.earlier] as number, choices[link.later] as number),
    cost,
  );
}

/** Every way to choose, one after the other. */
function* everyChoice(counts: readonly number[]): Generator<readonly number[]> {
  const [first, ...rest] = counts;
  if (first === undefined) {
    yield [];
    return;
  }
  for (let choice = 0; choice < first; choice++) for (const others of everyChoice(rest)) yield [choice, ...others];
}

/** The least that any row costs, found by trying all. */
export function leastCost(problem: RowProblem): number {
  let best = Number.POSITIVE_INFINITY;
  const presses = [...everyChoice(problem.counts.map((_, at) => (at === 0 ? 1 : 2)))].map((each) =>
    each.map((press) => press === 1),
  );
  for (const choices of everyChoice(problem.counts)) {
    for (const pressed of presses) {
      const cost = costOfRow(problem, choices, pressed);
      if (cost !== null && cost < best) best = cost;
    }
  }
  return best;
}
