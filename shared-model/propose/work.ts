import type { Problem } from "../judging/problem.ts";
import type { Node } from "./heard.ts";

/**
 * How many sets of stops a list of proposals may cost. What an organ serves takes a few thousand; a full chorus of a school
 * that a large organ does not serve has millions of sets that are equally poor, and no one would wait for the proof.
 */
export const PATIENCE = 400_000;

/** Thrown where a search has gone through more sets than it was given. */
class TooManySets extends Error {}

/**
 * What a search in a problem finds before it has gone through so many sets of stops; `undefined` where it would take more.
 */
export function withPatience<Answer>(problem: Problem, sets: number, search: () => Answer): Answer | undefined {
  const work = workOf(problem);
  work.left = sets;
  try {
    return search();
  } catch (error) {
    if (!(error instanceof TooManySets)) throw error;
    return undefined;
  } finally {
    work.left = Number.POSITIVE_INFINITY;
  }
}

/** What a search in a problem may still cost: counts, not time, so that the answer is the same on every machine. */
export interface Work {
  /** Sets that may still be gone through, or joined with those of other parts. */
  left: number;
  /** The nodes that walks with so many companions write on, by depth. */
  nodesFor(companions: number): Node[];
}

/** A set that is listened to costs as much time as so many others. */
export const LISTENED_TO = 10;

/**
 * Counts a set that is gone through or joined, or several.
 *
 * @throws TooManySets where it is one too many.
 */
export function spend(work: Work, sets = 1): void {
  work.left -= sets;
  if (work.left < 0) throw new TooManySets();
}

const works = new WeakMap<Problem, Work>();

/** The account of a problem; without end until a list is asked for. */
export function workOf(problem: Problem): Work {
  let work = works.get(problem);
  if (!work) {
    const nodes: Node[][] = [];
    work = {
      left: Number.POSITIVE_INFINITY,
      nodesFor: (companions) => {
        nodes[companions] ??= [];
        return nodes[companions];
      },
    };
    works.set(problem, work);
  }
  return work;
}
