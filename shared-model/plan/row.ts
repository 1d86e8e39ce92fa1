/** What one change costs, by its means; `null` where that means is not there. Whole numbers, 0 or more. */
export interface ChangeCost {
  readonly hand: number;
  readonly press: number | null;
}

/** A link between two sections, `earlier < later`: what the pair of choices costs. */
export interface RowLink {
  readonly earlier: number;
  readonly later: number;
  cost(earlierChoice: number, laterChoice: number): number;
}

/** A row of choices to be made: which alternative in each section, and which changes by a piston. */
export interface RowProblem {
  /** How many alternatives each section has, at least one. */
  readonly counts: readonly number[];
  /** What an alternative costs by itself. */
  own(section: number, choice: number): number;
  /** What the change into `section` (1 or later) costs. */
  change(section: number, before: number, choice: number): ChangeCost;
  readonly links: readonly RowLink[];
  /** How many changes may be made by piston; `Infinity` where there is no end to them. */
  readonly presses: number;
  /** Choices that must be the same: for each section the earlier section it copies, or `null`. */
  readonly copies: readonly (number | null)[];
}

/** The cheapest row. */
export interface Row {
  readonly cost: number;
  readonly choices: readonly number[];
  /** For each section whether the change into it is made by a piston; never for the first. */
  readonly pressed: readonly boolean[];
}

/** More ways at once than are followed: only pieces with very many links open at a time have so many. */
const MOST_WAYS = 60_000;

interface Way {
  readonly cost: number;
  readonly choice: number;
  readonly pressed: boolean;
  readonly presses: number;
  /** Choices of earlier sections that later ones still ask about. */
  readonly open: readonly number[];
  readonly before: Way | null;
}

/** For each section, which sections up to it are still asked about by later ones, in order. */
function openAfter(problem: RowProblem): readonly (readonly number[])[] {
  const asked = [
    ...problem.links.map(({ earlier, later }) => ({ earlier, later })),
    ...problem.copies.flatMap((earlier, later) => (earlier === null ? [] : [{ earlier, later }])),
  ];
  return problem.counts.map((_, at) =>
    [...new Set(asked.filter(({ earlier, later }) => earlier <= at && later > at).map(({ earlier }) => earlier))].sort(
      (a, b) => a - b,
    ),
  );
}

/**
 * The row of choices with the least cost, exactly, by dynamic programming: from section to section, for every choice there
 * the cheapest way to it, and one for each combination of earlier choices that a later link asks about (and, where pistons
 * are few, for each number of them used). Of equally cheap rows, the one whose choices come first in their lists.
 *
 * `null` when there are more than {@link MOST_WAYS} ways to be followed at once.
 */
export function bestRow(problem: RowProblem): Row | null {
  const { counts } = problem;
  if (counts.length === 0) return { cost: 0, choices: [], pressed: [] };
  const open = openAfter(problem);
  const limited = Number.isFinite(problem.presses);
  let ways: readonly Way[] = [];
  for (const [at, count] of counts.entries()) {
    const known = new Map<string, Way>();
    const before = open[at - 1] ?? [];
    const after = open[at] as readonly number[];
    const links = problem.links.filter((link) => link.later === at);
    const copied = problem.copies[at] ?? null;
    const offer = (cost: number, choice: number, pressed: boolean, from: Way | null): void => {
      const presses = (from?.presses ?? 0) + (pressed && limited ? 1 : 0);
      if (presses > problem.presses) return;
      const kept = after.map((section) =>
        section === at ? choice : section === at - 1 && from ? from.choice : (from?.open[before.indexOf(section)] ?? 0),
      );
      const key = `${choice}|${kept.join(",")}|${presses}`;
      const other = known.get(key);
      if (!other || cost < other.cost) known.set(key, { cost, choice, pressed, presses, open: kept, before: from });
    };
    const choiceOf = (way: Way, section: number): number =>
      section === at - 1 ? way.choice : (way.open[before.indexOf(section)] as number);
    if (at === 0) {
      for (let choice = 0; choice < count; choice++) offer(problem.own(0, choice), choice, false, null);
    }
    for (const way of ways) {
      if (known.size > MOST_WAYS) return null;
      const only = copied === null ? null : choiceOf(way, copied);
      for (let choice = only ?? 0; choice <= (only ?? count - 1); choice++) {
        let cost = way.cost + problem.own(at, choice);
        for (const link of links) cost += link.cost(choiceOf(way, link.earlier), choice);
        const change = problem.change(at, way.choice, choice);
        offer(cost + change.hand, choice, false, way);
        if (change.press !== null && (limited || change.press < change.hand)) {
          offer(cost + change.press, choice, true, way);
        }
      }
    }
    ways = [...known.values()];
  }
  const best = ways.reduce((one, other) => (other.cost < one.cost ? other : one));
  const path: Way[] = [];
  for (let way: Way | null = best; way; way = way.before) path.unshift(way);
  return {
    cost: best.cost,
    choices: path.map((way) => way.choice),
    pressed: path.map((way) => way.pressed),
  };
}
