import { strengthOf } from "../acoustics/hearing.ts";
import type { BoxPosition, ConsoleState, Placing } from "../console/state.ts";
import { type Judgement, judge } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import type { Reason } from "../judging/reason.ts";
import { stepPoints, stepReasons } from "../judging/steps.ts";
import { textureById } from "../music/textures/catalogue.ts";
import type { Points } from "../rules/rule.ts";
import type { Coupler, Division, Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";
import { isProposable } from "./state-space.ts";

/** A ladder has at most this many steps: what a player can prepare and a listener can follow. */
const MOST_STEPS = 12;
/** How many steps are taken where several numbers serve equally well. */
const USUAL_STEPS = 10;

/** One step of a crescendo: a state with its own reasons, and what leads to it from the step before. */
export interface LadderStep {
  /** From 1, softest first. */
  readonly place: number;
  readonly state: ConsoleState;
  readonly placings: readonly Placing[];
  readonly judgement: Judgement;
  /** What the conventions of a row of registrations say of the change into this step. */
  readonly change: readonly Reason[];
}

/** Whether a section asks for a ladder of steps instead of alternatives. */
export const isLadder = ({ section }: Pick<Problem, "section">): boolean =>
  section.texture !== null && textureById(section.texture)?.ladder === true;

/** What joins a growing sound: a stop, or the opening of a box. */
type Means = { readonly stop: Stop; readonly turn: number } | { readonly box: string; readonly turn: number };

const has = (stop: Stop, kinds: readonly Kind[]): boolean => stop.kinds.some((kind) => kinds.includes(kind));
const COMPOUNDS: readonly Kind[] = ["mixture", "cymbal", "rauschpfeife", "sesquialtera", "tertian"];
const SOFT_REEDS: readonly Kind[] = ["oboe", "clarinet", "bassoon", "horn"];
const LOUD_REEDS: readonly Kind[] = ["trumpet", "horizontal-trumpet", "tuba"];
const NEVER: readonly Kind[] = [
  "celeste",
  "voix-humaine",
  "regal",
  "cromorne",
  "schalmei",
  "musette",
  "dulcian",
  "cornett",
  "tierce",
  "septieme",
  "none",
  "nasard",
  "larigot",
];

/**
 * When a stop's turn comes in a crescendo (convention 19): softest flues, 8s, 4s, 16s once something lies above them,
 * 2 and twelfth, reeds in their box, mixtures, open reeds; the German roller has all reeds last. `null`: never.
 */
function turnOf(stop: Stop, division: Division, german: boolean): number | null {
  const feet = stop.pitch ? stop.pitch.over / stop.pitch.under : null;
  if (has(stop, NEVER) && !has(stop, ["principal"])) return null;
  const pedal = division.kind === "pedal";
  if (has(stop, COMPOUNDS)) return 10;
  if (has(stop, ["cornet"])) return feet === null || feet >= 8 ? 10.5 : null;
  if (feet === null) return null;
  const deep = pedal ? 16 : 8;
  if (has(stop, LOUD_REEDS)) {
    const boxed = division.box !== null && !german;
    return (boxed ? 8 : 11) + (feet > deep ? 0.9 : feet < deep ? 0.5 : 0) + (has(stop, ["tuba"]) ? 0.95 : 0);
  }
  if (has(stop, SOFT_REEDS)) return german ? 10.8 : feet > deep ? 6.5 : 5;
  if (!has(stop, KIND_GROUPS.foundation) && !has(stop, ["twelfth", "quint"])) return null;
  if (has(stop, ["quint"])) return pedal ? 9.5 : null;
  if (has(stop, ["twelfth"])) return 7.2;
  const principal = has(stop, ["principal"]);
  if (feet > deep) return pedal ? 9.8 : principal ? 6.4 : 6;
  if (feet === deep) return principal ? 2 : stop.strength <= 2 ? 0 : 1;
  if (feet * 2 === deep) return pedal ? (principal ? 2.1 : 0.1) : principal ? 4 : 3;
  return feet * 4 === deep ? 7 + (principal ? 0.1 : 0) : 7.5;
}

/** Everything that joins, in the order of its turns; equals softest first, then as printed. */
function meansInOrder(problem: Problem, main: Division, supplied: readonly Division[]): readonly Means[] {
  const { tradition } = problem.section;
  const german = tradition === "german-romantic";
  const means: Means[] = [];
  for (const division of supplied) {
    for (const stop of division.stops) {
      const turn = isProposable(stop) ? turnOf(stop, division, german) : null;
      if (turn !== null)
        means.push({ stop, turn: division === main || division.kind === "pedal" ? turn : turn + 0.01 });
    }
  }
  if (startsShut(problem)) {
    for (const box of new Set(supplied.flatMap((division) => division.box ?? []))) means.push({ box, turn: 9 });
  }
  const strength = (one: Means): number => ("stop" in one ? one.stop.strength : 0);
  return means.sort((a, b) => a.turn - b.turn || strength(a) - strength(b));
}

/** Schools that start with the box shut and open it as a step of its own. */
const startsShut = (problem: Problem): boolean =>
  ["french-symphonic", "english-cathedral"].includes(problem.section.tradition);

/** The couplers that bring the other manuals to the main one, at the unison, and the main one to the pedal where that lacks an 8. */
function bringing(problem: Problem, main: Division): readonly Coupler[] {
  const { couplers, divisions } = problem.instrument;
  const manual = (name: string): boolean => divisions.some((each) => each.name === name && each.kind !== "pedal");
  return couplers.filter(
    (each) => each.to === main.name && each.from !== main.name && each.pitch === 8 && manual(each.from),
  );
}

/**
 * A crescendo from the softest stop to the full organ, as a row of states that each contain the one before. Stops join
 * in the order of the trade; where the steps are cut is found exactly: of all ways to cut the row into at most
 * {@link MOST_STEPS} steps, the one that the conventions of rows like best, the usual number of steps where several are
 * liked equally. Empty when the organ has no manual stop to begin with.
 */
export function ladder(problem: Problem): readonly LadderStep[] {
  const { instrument, section } = problem;
  const manuals = instrument.divisions.filter((division) => division.kind === "manual");
  const main = manuals.find((division) => problem.kindsOf.get(division.name)?.has("main")) ?? manuals[0];
  if (!main) return [];
  const pedal = instrument.divisions.find((division) => division.kind === "pedal");
  const couplers = bringing(problem, main);
  const supplied = instrument.divisions.filter(
    (division) => division === main || division === pedal || couplers.some((each) => each.from === division.name),
  );
  const means = meansInOrder(problem, main, supplied);
  const needsCoupler =
    pedal !== undefined && !means.some((each) => "stop" in each && each.stop.division === pedal.name);
  const placings = section.parts
    .filter((part) => part.hands !== "feet" || pedal || !part.optional)
    .map(
      (part): Placing => ({ part: part.id, keyboard: (part.hands === "feet" && pedal ? pedal : main).name, octave: 0 }),
    );
  const boxes = new Set(supplied.flatMap((division) => division.box ?? []));

  const stateAt = (count: number): ConsoleState => {
    const taken = means.slice(0, count);
    const stops = taken.flatMap((each) => ("stop" in each ? each.stop : []));
    const heard = new Set(stops.map((stop) => stop.division));
    const opened = new Set(taken.flatMap((each) => ("box" in each ? each.box : [])));
    const shut = startsShut(problem)
      ? [...boxes].filter(
          (box) => !opened.has(box) && supplied.some((each) => each.box === box && heard.has(each.name)),
        )
      : [];
    const on = couplers.filter((each) => heard.has(each.from)).map((each) => each.name);
    const toPedal = instrument.couplers.find(
      (each) => each.from === main.name && each.to === pedal?.name && each.pitch === 8,
    );
    if (needsCoupler && toPedal) on.push(toPedal.name);
    return {
      drawn: new Set(stops.map((stop) => stop.id)),
      couplers: new Set(on),
      tremulants: new Set(),
      boxes: new Map(shut.map((box): [string, BoxPosition] => [box, "closed"])),
      unisonOff: new Set(),
    };
  };

  const judged: Rung[] = [];
  for (let count = 1; count <= means.length; count++) {
    const state = stateAt(count);
    const judgement = judge(problem, state, placings);
    const sounds = judgement?.parts.every((part) => part.sound.stops > 0 || part.placed.part.hands === "feet");
    if (judgement && sounds) judged.push({ state, judgement, turn: (means[count - 1] as Means).turn });
  }
  // The softest step has its bass already: everything whose turn is the first joins it only as far as feet and hands need.
  const first = judged.findIndex(({ judgement }) => judgement.parts.every((part) => part.sound.stops > 0));
  const row = judged.slice(Math.max(0, first));
  return cut(problem, row).map((at, index, all): LadderStep => {
    const { state, judgement } = row[at] as (typeof row)[number];
    const before = index > 0 ? (row[all[index - 1] as number] as (typeof row)[number]).judgement : null;
    return {
      place: index + 1,
      state,
      placings,
      judgement,
      change: before ? stepReasons(problem, before, judgement) : [],
    };
  });
}

/** A state that the growing row passes through, and whose turn came last in it. */
interface Rung {
  readonly state: ConsoleState;
  readonly judgement: Judgement;
  readonly turn: number;
}

/** How large a step is, in level (phon) and in turns of the trade's order, squared: even steps have the least sum. */
function unevenness(earlier: Rung, later: Rung): number {
  const level = (rung: Rung): number =>
    rung.judgement.parts.reduce((most, part) => Math.max(most, strengthOf(part.sound.blend)), 0) / 100;
  return (level(later) - level(earlier)) ** 2 + (later.turn - earlier.turn) ** 2;
}

/**
 * Where to cut the row of growing states into steps: indices of the states kept, first and last among them. The points
 * of the conventions decide; among equals the usual number of steps, and among those the evenest.
 */
function cut(problem: Problem, row: readonly Rung[]): readonly number[] {
  const last = row.length - 1;
  if (last <= 0) return row.map((_, index) => index);
  // best[k][j]: the most that k changes can earn from the first state to the jth, evenest first, and the state before.
  const most = Math.min(MOST_STEPS - 1, last);
  const steps = row.map((later, j) =>
    row.slice(0, j).map((earlier) => ({
      points: stepPoints(problem, earlier.judgement, later.judgement),
      uneven: unevenness(earlier, later),
    })),
  );
  const best: ({ points: Points; uneven: number; from: number } | undefined)[][] = [
    [{ points: 0, uneven: 0, from: -1 }],
  ];
  for (let k = 1; k <= most; k++) {
    const level: ({ points: Points; uneven: number; from: number } | undefined)[] = [];
    for (let j = k; j <= last; j++) {
      for (let i = k - 1; i < j; i++) {
        const before = best[k - 1]?.[i];
        const step = steps[j]?.[i];
        if (!before || !step) continue;
        const [points, uneven] = [before.points + step.points, before.uneven + step.uneven];
        const known = level[j];
        if (!known || points > known.points || (points === known.points && uneven < known.uneven)) {
          level[j] = { points, uneven, from: i };
        }
      }
    }
    best.push(level);
  }
  let chosen = 1;
  for (let k = 1; k <= most; k++) {
    const [now, held] = [best[k]?.[last], best[chosen]?.[last]];
    if (!now || !held) continue;
    const nearer = Math.abs(k + 1 - USUAL_STEPS) < Math.abs(chosen + 1 - USUAL_STEPS);
    if (now.points > held.points || (now.points === held.points && nearer)) chosen = k;
  }
  const kept = [last];
  for (let k = chosen; k > 0; k--) kept.unshift(best[k]?.[kept[0] as number]?.from ?? 0);
  return kept;
}
