/** Passes that a climb makes at most; it seldom needs more than five. */
const MOST_PASSES = 20;

/** What a climb moves, and what it moves towards. */
export interface Slope<Standing, Move> {
  /** Every single step from here that may be tried. The same step must mean something after other steps as well. */
  movesFrom(standing: Standing): readonly Move[];
  /** `null` where the step cannot be made from there. */
  made(standing: Standing, move: Move): Standing | null;
  /** What a standing is worth; minus infinity for nothing. */
  worthOf(standing: Standing): number;
}

/**
 * Climbs by single steps as long as one makes the standing worth more. All steps are weighed once, and those that help are
 * made in order, the most helpful first, each only if it still helps after those before it: nearly as good as weighing all of
 * them anew after each, in a tenth of the time. Not the best that there is: no single step betters it.
 */
export function climbBySteps<Standing, Move>(start: Standing, slope: Slope<Standing, Move>): Standing {
  let here = start;
  let worth = slope.worthOf(here);
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const helpful = slope
      .movesFrom(here)
      .map((move) => ({ move, worth: worthAfter(slope, here, move) }))
      .filter((each) => each.worth > worth)
      .sort((a, b) => b.worth - a.worth);
    if (helpful.length === 0) break;
    for (const { move } of helpful) {
      const next = slope.made(here, move);
      const there = next === null ? Number.NEGATIVE_INFINITY : slope.worthOf(next);
      if (next === null || there <= worth) continue;
      here = next;
      worth = there;
    }
  }
  return here;
}

function worthAfter<Standing, Move>(slope: Slope<Standing, Move>, standing: Standing, move: Move): number {
  const next = slope.made(standing, move);
  return next === null ? Number.NEGATIVE_INFINITY : slope.worthOf(next);
}
