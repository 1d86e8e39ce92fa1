import { COLOURS } from "../acoustics/colour.ts";
import { type Judgement, judge, scoreOf } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import type { Points } from "../rules/rule.ts";
import { climb } from "./climb.ts";
import { compareFound, type Found } from "./found.ts";
import type { Effort } from "./frames.ts";
import { boundsOf, boundsOfReadings, search, tellingPart } from "./search.ts";
import { PATIENCE, withPatience } from "./work.ts";

/**
 * How far behind the best a colour may fall and still go before a better twin: 15 points, a musical decision that is
 * shown to the person, not a trick of the search.
 */
export const COLOUR_WINDOW: Points = 1500;

/** Whether a registration is so far behind the best that it is no other answer, only what comes next on this organ. */
export const isFarBehind = (score: Points, best: Points): boolean => best - score > COLOUR_WINDOW;

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
  /** The raw order by score: every state, those too that differ in no more than a box. */
  readonly every?: boolean;
  /** How many sets of stops the proof may cost, default {@link PATIENCE}. */
  readonly patience?: number;
}

const freshEffort = (): Effort => ({
  rounds: 0,
  pools: 0,
  candidates: 0,
  pairs: 0,
  bound: Number.NEGATIVE_INFINITY,
  last: 0,
});

/**
 * The best states in the order in which a musician wants to see them: first the best of each colour and of each
 * published way, in order of score, then the rest in order of score. A colour or way that falls more than
 * {@link COLOUR_WINDOW} behind the best waits with the rest. What differs only in how far a box is open, or in what the
 * pedal draws for a bass, stands there once, as it is best. Where the proof would take too long (`work.ts`), the best of
 * what was found and of what single changes lead to, and `proven` is false.
 */
export function bestStates(
  problem: Problem,
  options: ProposeOptions = {},
): { readonly found: readonly Found[]; readonly effort: Effort; readonly proven: boolean } {
  const effort: Effort = { ...freshEffort(), seen: new Map() };
  const proven = withPatience(problem, options.patience ?? PATIENCE, () => provenStates(problem, options, effort));
  if (proven) return { found: proven, effort, proven: true };
  const telling = problem.section.parts[tellingPart(problem)]?.id ?? "";
  const all = new Map(effort.seen);
  for (const each of climb(problem, telling)) if (!all.has(each.signature)) all.set(each.signature, each);
  const bounds = boundsOfReadings(problem);
  const ranked = [...all.values()].map((each) => rescored(problem, each, bounds)).sort(compareFound);
  const colours = new Set<string>();
  const floor = (ranked[0]?.score ?? 0) - COLOUR_WINDOW;
  const first = ranked.filter(
    ({ colour, score }) => score >= floor && !colours.has(colour.id) && colours.add(colour.id),
  );
  const varied = options.every ? ranked : eachDrawingOnce([...first, ...ranked]);
  return { found: varied.slice(0, Math.max(1, options.count ?? USUAL_COUNT)), effort, proven: false };
}

/** @throws TooManySets where the proof would take too long. */
function provenStates(problem: Problem, options: ProposeOptions, effort: Effort): readonly Found[] {
  const count = Math.max(1, options.count ?? USUAL_COUNT);
  const kept = options.every ? "states" : "drawings";
  const raw = search(problem, count, null, Number.NEGATIVE_INFINITY, effort, null, kept);
  const [best] = raw;
  if (!best || options.every) return raw;
  const floor = best.score - COLOUR_WINDOW;
  const leaders = new Map<string, Found>();
  const bestDrawn = new Map(raw.map((each) => [each.drawing, each]));
  const lead = (found: Found): void => {
    const one = bestDrawn.get(found.drawing) ?? found;
    const known = leaders.get(one.drawing);
    if (one.score >= floor && (!known || known.score < one.score)) leaders.set(one.drawing, one);
  };
  /** A leader that would stand behind the last place is not looked for. */
  const least = (): Points => {
    const ranked = [...leaders.values()].sort(compareFound);
    return ranked.length >= count ? Math.max(floor, (ranked[count - 1] as Found).score) : floor;
  };
  const colours = new Set<string>();
  for (const one of raw) {
    if (colours.has(one.colour.id)) continue;
    colours.add(one.colour.id);
    lead(one);
  }
  const bounds = boundsOfReadings(problem);
  const ways = problem.readings.map((_, reading) => reading).slice(0, -1);
  // Promising ways first: once the list is full, the others need not be looked into.
  ways.sort((a, b) => (bounds[b] as Points) - (bounds[a] as Points));
  for (const reading of ways) {
    const floorNow = least();
    if ((bounds[reading] as Points) < floorNow) break;
    for (const found of search(problem, 1, null, floorNow, effort, reading, kept, best.score)) {
      colours.add(found.colour.id);
      lead(rescored(problem, found, bounds));
    }
  }
  for (const colour of COLOURS) {
    if (colours.has(colour.id)) continue;
    for (const found of search(problem, 1, colour, least(), effort, null, kept, best.score))
      lead(rescored(problem, found, bounds));
  }
  return eachDrawingOnce([...[...leaders.values()].sort(compareFound), ...raw]).slice(0, count);
}

/** Of each `drawing` the first. */
function eachDrawingOnce(list: readonly Found[]): readonly Found[] {
  const seen = new Set<string>();
  return list.filter(({ drawing }) => !seen.has(drawing) && seen.add(drawing));
}

/** A state found in the light of some readings, with the score that the best of all gives it. @param bounds by reading. */
function rescored(problem: Problem, found: Found, bounds: readonly Points[]): Found {
  const { state, placings } = found;
  return { ...found, state, placings, score: scoreOf(problem, state, placings, bounds)?.score ?? found.score };
}

/** Ranked registrations for a section, each with every reason for it. Empty when nothing serves. */
export function propose(
  problem: Problem,
  options: ProposeOptions = {},
): { readonly proposals: readonly Proposal[]; readonly effort: Effort; readonly proven: boolean } {
  const { found, effort, proven } = bestStates(problem, options);
  const bounds = boundsOfReadings(problem);
  const proposals = found.map((each, index): Proposal => {
    const judgement = judge(problem, each.state, each.placings, boundsOf(bounds, each));
    if (!judgement) throw new Error("A proposal's keyboards are coupled in a ring.");
    return { place: index + 1, found: each, judgement };
  });
  return { proposals, effort, proven };
}
