import { type Colour, COLOURS } from "../acoustics/colour.ts";
import { type Judgement, judge } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import type { Points } from "../rules/rule.ts";
import { compareFound, type Effort, type Found, search } from "./search.ts";

/**
 * How far behind the best a colour may fall and still go before a better twin: 15 points, a musical decision that is
 * shown to the person, not a trick of the search.
 */
export const COLOUR_WINDOW: Points = 1500;

/** Length of the list where nobody says otherwise. */
export const USUAL_COUNT = 8;

/** One ranked registration. */
export interface Proposal {
  /** Position in the list, from 1. Scores need not fall along it. */
  readonly place: number;
  readonly found: Found;
  readonly judgement: Judgement;
}

export interface ProposeOptions {
  /** How many, default 8. */
  readonly count?: number;
  /** The raw order by score, twins and all. */
  readonly every?: boolean;
}

const freshEffort = (): Effort => ({
  rounds: 0, pools: 0, candidates: 0, pairs: 0, bound: Number.NEGATIVE_INFINITY, last: 0,
});

/**
 * The best states in the order in which a musician wants to see them: first the best of each colour, in order of score,
 * then the rest in order of score. A colour that falls more than {@link COLOUR_WINDOW} behind the best waits with the rest.
 */
export function bestStates(
  problem: Problem,
  options: ProposeOptions = {},
): { readonly found: readonly Found[]; readonly effort: Effort } {
  const count = Math.max(1, options.count ?? USUAL_COUNT);
  const effort = freshEffort();
  const raw = search(problem, count, null, Number.NEGATIVE_INFINITY, effort);
  const [best] = raw;
  if (!best || options.every) return { found: raw, effort };
  const floor = best.score - COLOUR_WINDOW;
  const leaders = new Map<string, Found>();
  for (const one of raw) if (one.score >= floor && !leaders.has(one.colour.id)) leaders.set(one.colour.id, one);
  for (const colour of missingColours(leaders)) {
    const ranked = [...leaders.values()].sort(compareFound);
    // A colour that would stand behind the last place is not looked for.
    const least = ranked.length >= count ? Math.max(floor, (ranked[count - 1] as Found).score) : floor;
    const [found] = search(problem, 1, colour, least, effort);
    if (found && found.score >= floor) leaders.set(colour.id, found);
  }
  const first = [...leaders.values()].sort(compareFound);
  const taken = new Set(first.map((each) => each.signature));
  const rest = raw.filter((each) => !taken.has(each.signature));
  return { found: [...first, ...rest].slice(0, count), effort };
}

/** Colours that the list so far does not show. */
const missingColours = (shown: ReadonlyMap<string, Found>): readonly Colour[] =>
  COLOURS.filter((colour) => !shown.has(colour.id));

/** Ranked registrations for a section, each with every reason for it. Empty when nothing serves. */
export function propose(
  problem: Problem,
  options: ProposeOptions = {},
): { readonly proposals: readonly Proposal[]; readonly effort: Effort } {
  const { found, effort } = bestStates(problem, options);
  const proposals = found.map((each, index): Proposal => {
    const judgement = judge(problem, each.state, each.placings);
    if (!judgement) throw new Error("A proposal's keyboards are coupled in a ring.");
    return { place: index + 1, found: each, judgement };
  });
  return { proposals, effort };
}
