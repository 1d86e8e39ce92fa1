import { stepPoints } from "../judging/steps.ts";
import type { Piece } from "../music/piece.ts";
import type { StepRule } from "../rules/rule.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import type { Alternative, Candidates } from "./candidates.ts";
import { type Difference, differenceOf, type Shift } from "./changes.ts";
import type { ConsoleLayout } from "./console-layout.ts";
import type { Crew } from "./crew.ts";
import { type Feasibility, feasibilityOf, pressFeasibility, type Verdict } from "./feasibility.ts";
import type { ChangeCost } from "./row.ts";
import type { TimeLeft } from "./time-left.ts";
import { type PlanWeights, TIERS } from "./weights.ts";

/** All that a change is reckoned from. */
export interface ChangeSetting {
  readonly instrument: Instrument;
  readonly layout: ConsoleLayout;
  readonly crew: Crew;
  readonly weights: PlanWeights;
}

/** Conventions of the steps inside one section: between sections a part may well sound on as it was. */
const INSIDE: readonly string[] = ["steps-audible", "crescendo-order"];

/** One text for all differences that hands manage alike. */
function workKey({ needed, shifts }: Difference): string {
  const counts = new Map<string, number>();
  for (const { act, what, division, foot, heldBy } of needed) {
    const kind = what === "box" ? "box" : foot ? "foot" : act;
    const key = `${division}/${kind}/${[...heldBy].sort().join("")}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const seats = (shift: Shift): string =>
    [...shift.from, ...shift.to].map((seat) => `${seat.keyboard}${seat.octave}`).join(">");
  return `${[...counts].map(([key, count]) => key + count).join(" ")}|${shifts.map((each) => each.limb + seats(each)).join(" ")}`;
}

/** What changes cost on one console, worked out once for all that are alike. */
export class ChangeCosts {
  readonly #setting: ChangeSetting;
  readonly #known = new Map<string, Feasibility>();
  readonly #conventions = new Map<Alternative, ReadonlySet<StepRule>>();

  constructor(setting: ChangeSetting) {
    this.#setting = setting;
  }

  /** Whether and how a change can be made by hand. `place` tells times apart. */
  byHand(difference: Difference, time: TimeLeft, place: number): Feasibility {
    const { layout, crew, instrument } = this.#setting;
    const key = `${place}|${workKey(difference)}`;
    const known = this.#known.get(key);
    if (known) return known;
    const found = feasibilityOf(difference, time, layout, crew, instrument.divisions);
    this.#known.set(key, found);
    return found;
  }

  /** Whether and how it can be made by a piston, which moves everything but boxes. */
  byPress(difference: Difference, time: TimeLeft, place: number): Feasibility {
    const { layout, crew, instrument } = this.#setting;
    const boxes = difference.needed.filter((move) => move.what === "box");
    const key = `press ${place}|${workKey({ needed: boxes, later: [], shifts: difference.shifts })}`;
    const known = this.#known.get(key);
    if (known) return known;
    const found = pressFeasibility(difference, time, layout, crew, instrument.divisions);
    this.#known.set(key, found);
    return found;
  }

  /** What a verdict costs. */
  ofVerdict(verdict: Verdict): number {
    const { crew, weights } = this.#setting;
    switch (verdict) {
      case "easy":
        return 0;
      case "brisk":
        return weights.brisk;
      case "needs-assistant":
        return crew.assistant === "none" ? TIERS.absent : weights.assistant;
      case "impossible":
        return TIERS.impossible;
    }
  }

  #shiftCost(shifts: readonly Shift[]): number {
    const { weights } = this.#setting;
    return shifts.reduce((sum, { from, to }) => {
      const octave = from[0]?.octave !== to[0]?.octave;
      const keyboard = from[0]?.keyboard !== to[0]?.keyboard;
      return sum + (keyboard ? weights.shift : 0) + (octave ? weights.octave : 0);
    }, 0);
  }

  /** The cost of a change by each means. `mayPress`: whether a piston may be used at all. */
  cost(difference: Difference, time: TimeLeft, place: number, mayPress: boolean): ChangeCost {
    const { weights } = this.#setting;
    const going = this.#shiftCost(difference.shifts);
    const moves = difference.needed.length + difference.later.length;
    const hand =
      going +
      difference.needed.length * weights.knob +
      difference.later.length * weights.leisure +
      this.ofVerdict(this.byHand(difference, time, place).verdict);
    if (!mayPress || moves === 0) return { hand, press: null };
    return { hand, press: going + weights.press + this.ofVerdict(this.byPress(difference, time, place).verdict) };
  }

  difference(earlier: Alternative, later: Alternative): Difference {
    const { instrument, layout } = this.#setting;
    return differenceOf(instrument, layout, earlier.exit, later.entry);
  }

  /** Conventions of rows that have a say about a registration of a section. */
  #conventionsOf({ problem }: Candidates, one: Alternative): ReadonlySet<StepRule> {
    let rules = this.#conventions.get(one);
    if (!rules) {
      const contexts = one.judgement.parts.map(
        (part) => problem.weighed(part.placed, problem.readings.length - 1).context,
      );
      rules = new Set(problem.rules.steps.filter((rule) => contexts.some((context) => rule.applies(context))));
      this.#conventions.set(one, rules);
    }
    return rules;
  }

  /** Which conventions of rows speak of going from one section to the next: those that hold for both. */
  conventions(before: Candidates, earlier: Alternative): (rule: StepRule) => boolean {
    const own = this.#conventionsOf(before, earlier);
    return (rule) => own.has(rule) && !INSIDE.includes(rule.id);
  }

  /** Points that the conventions of rows take off for going from one registration to the next; 0 or more. */
  ofRow(before: Candidates, earlier: Alternative, after: Candidates, later: Alternative): number {
    if (this.#conventionsOf(before, earlier).size === 0) return 0;
    const has = this.conventions(before, earlier);
    return Math.max(0, -stepPoints(after.problem, earlier.judgement, later.judgement, has));
  }
}

/** Numbers of pistons and levels that the player may use on this organ. */
export function pistonsOn(
  instrument: Instrument,
  { pistons }: Pick<Piece, "pistons">,
): {
  readonly generals: readonly number[];
  readonly levels: readonly number[];
  readonly divisionals: ReadonlyMap<string, readonly number[]>;
} {
  const { aids } = instrument;
  const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => at + 1);
  const within = (asked: readonly number[] | null, count: number): readonly number[] =>
    asked === null ? upTo(count) : asked.filter((number) => number <= count);
  const divisionals = new Map<string, readonly number[]>();
  for (const [name, count] of Object.entries(aids.divisionals)) {
    const asked = pistons.divisionals === null ? null : (pistons.divisionals[name] ?? []);
    const numbers = within(asked, count);
    if (numbers.length > 0) divisionals.set(name, numbers);
  }
  const generals = within(pistons.generals, aids.generals);
  // An organ with pistons has one memory at least.
  return { generals, levels: within(pistons.levels, Math.max(1, aids.levels)), divisionals };
}
