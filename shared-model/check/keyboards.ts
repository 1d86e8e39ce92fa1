import type { ConsoleState, Placing } from "../console/state.ts";
import { judge, scoreOf } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import type { Points } from "../rules/rule.ts";
import type { Division } from "../stoplist/instrument.ts";
import { type Outlook, outlookOfPair, type Way, wayOf } from "./way.ts";

/**
 * Ways that are judged to the end before the best so far is taken: far above what a real console and real music come
 * to, so that a file with a dozen parts and no keyboards still ends at once.
 */
const MOST_JUDGED = 400;

/** Steps of the search, for the same end: a dozen parts on seven manuals have more beginnings than can be looked at. */
const MOST_STEPS = 20_000;

/** What is left to choose for one part. */
export interface OpenPart {
  /** Its place in the section. */
  readonly part: number;
  readonly keyboards: readonly Division[];
  readonly octave: Placing["octave"];
  /** Whether it may be left out. */
  readonly mayRest: boolean;
}

/** The keyboards found for the parts. */
export interface FoundKeyboards {
  /** One for each part that is played, in the section's order. */
  readonly placings: readonly Placing[];
  /** Whether surely no other way is better; `false` when there were too many to look at. */
  readonly sure: boolean;
}

/**
 * What it counts against a way that a division is drawn for nobody: whoever draws stops mostly means them to be heard in
 * this music, but may have set a keyboard ready for the next. A musical decision; it chooses keyboards and is no part of
 * the score.
 */
export const DRAWN_FOR_NOBODY: Points = 1000;

/** How good a way is, in this order: fewer errors, more points, its place in print. */
interface Worth {
  readonly errors: number;
  /** Its score less {@link DRAWN_FOR_NOBODY} for each division that nobody hears. */
  readonly points: Points;
  readonly order: readonly number[];
}

function isBetter(one: Worth, other: Worth | null): boolean {
  if (!other) return true;
  if (one.errors !== other.errors) return one.errors < other.errors;
  if (one.points !== other.points) return one.points > other.points;
  const at = one.order.findIndex((each, index) => each !== other.order[index]);
  return at >= 0 && (one.order[at] as number) < (other.order[at] as number);
}

/** A beginning: the ways chosen so far, and the best that they can come to by themselves. */
interface Beginning {
  readonly order: readonly number[];
  readonly most: Points;
  readonly errors: number;
  readonly heard: ReadonlySet<string>;
}

const NOTHING: Outlook = { most: 0, errors: 0 };

/** Branch and bound over the ways of all parts, one reading after another; `null` among the ways is a part that rests. */
class KeyboardSearch {
  readonly #problem: Problem;
  readonly #state: ConsoleState;
  readonly #ways: readonly (readonly (Way | null)[])[];
  /** Divisions with a drawn stop. */
  readonly #drawn: readonly string[];
  /** From each part on: divisions that some way of the parts to come would hear. */
  readonly #hearable: readonly ReadonlySet<string>[];
  readonly #judged = new Set<string>();
  #pairs = new Map<string, Outlook>();
  #rest: readonly Points[] = [];
  #steps = MOST_STEPS;
  #best: (Worth & { readonly placings: readonly Placing[] }) | null = null;

  constructor(problem: Problem, state: ConsoleState, ways: readonly (readonly (Way | null)[])[]) {
    this.#problem = problem;
    this.#state = state;
    this.#ways = ways;
    this.#drawn = problem.instrument.divisions
      .filter((division) => division.stops.some((stop) => state.drawn.has(stop.id)))
      .map((division) => division.name);
    this.#hearable = [...ways, []].map((_, at) => new Set(ways.slice(at).flatMap((each) => each.flatMap(divisionsOf))));
  }

  best(): FoundKeyboards | null {
    for (let reading = 0; reading < this.#problem.readings.length; reading++) {
      this.#pairs = new Map();
      this.#rest = this.#restOf(reading);
      this.#visit(reading, { order: [], most: 0, errors: 0, heard: new Set() });
    }
    const sure = this.#steps > 0 && this.#judged.size < MOST_JUDGED;
    return this.#best && { placings: this.#best.placings, sure };
  }

  #pair(reading: number, a: number, i: number, b: number, j: number): Outlook {
    const [one, other] = [this.#ways[a]?.[i], this.#ways[b]?.[j]];
    if (!one || !other) return NOTHING;
    const key = `${a} ${i} ${b} ${j}`;
    let known = this.#pairs.get(key);
    if (!known) {
      known = outlookOfPair(this.#problem, reading, one, other);
      this.#pairs.set(key, known);
    }
    return known;
  }

  /** The most that the parts from each place on can come to, with one another and with those before them. */
  #restOf(reading: number): readonly Points[] {
    const rest: Points[] = [0];
    for (let b = this.#ways.length - 1; b >= 0; b--) {
      const choices = this.#ways[b] ?? [];
      let most = Math.max(...choices.map((way) => way?.byReading[reading]?.most ?? 0));
      for (let a = 0; a < b; a++) {
        const others = this.#ways[a] ?? [];
        most += Math.max(...others.flatMap((_, i) => choices.map((__, j) => this.#pair(reading, a, i, b, j).most)));
      }
      rest.unshift(most + (rest[0] as Points));
    }
    return rest;
  }

  /** What the divisions cost that nobody hears, whatever the parts from `at` on do. */
  #unheardCost(heard: ReadonlySet<string>, at: number): Points {
    const unheard = this.#drawn.filter((name) => !heard.has(name) && !this.#hearable[at]?.has(name));
    return DRAWN_FOR_NOBODY * unheard.length;
  }

  /** Whether the beginning cannot come to anything better than what is known. */
  #isHopeless({ order, most, errors, heard }: Beginning): boolean {
    const known = this.#best;
    if (!known) return false;
    if (errors !== known.errors) return errors > known.errors;
    const at = order.length;
    return most + (this.#rest[at] as Points) - this.#unheardCost(heard, at) < known.points;
  }

  #visit(reading: number, beginning: Beginning): void {
    if (this.#isHopeless(beginning)) return;
    const { order } = beginning;
    const at = order.length;
    if (at === this.#ways.length) {
      this.#judge(beginning);
      return;
    }
    this.#steps -= 1;
    if (this.#steps <= 0) return;
    const next = (this.#ways[at] ?? []).map((way, index): Beginning & { readonly index: number } => {
      const own = way?.byReading[reading] ?? NOTHING;
      let [most, errors] = [beginning.most + own.most, beginning.errors + own.errors];
      for (const [before, choice] of order.entries()) {
        const both = this.#pair(reading, before, choice, at, index);
        most += both.most;
        errors += both.errors;
      }
      return {
        order: [...order, index],
        most,
        errors,
        heard: new Set([...beginning.heard, ...divisionsOf(way)]),
        index,
      };
    });
    // The most promising first: the sooner a good way is known, the sooner others are given up.
    next.sort(
      (a, b) =>
        a.errors - b.errors ||
        b.most - this.#unheardCost(b.heard, at + 1) - a.most + this.#unheardCost(a.heard, at + 1) ||
        a.index - b.index,
    );
    for (const each of next) this.#visit(reading, each);
  }

  #judge({ order, heard }: Beginning): void {
    const key = order.join(" ");
    if (this.#judged.has(key) || this.#judged.size >= MOST_JUDGED) return;
    this.#judged.add(key);
    const placings = order.flatMap((choice, index) => this.#ways[index]?.[choice]?.placing ?? []);
    const result = placings.length > 0 ? scoreOf(this.#problem, this.#state, placings) : null;
    if (!result) return;
    let [errors, score] = [0, result.score];
    if (result.forbidden) {
      const judgement = judge(this.#problem, this.#state, placings);
      errors = judgement?.reasons.filter((reason) => reason.severity === "error").length ?? 0;
      score = judgement?.score ?? score;
    }
    const worth: Worth = { errors, points: score - this.#unheardCost(heard, order.length), order };
    if (isBetter(worth, this.#best)) this.#best = { ...worth, placings };
  }
}

const divisionsOf = (way: Way | null): readonly string[] => way?.divisions ?? [];

/**
 * The keyboards that serve a drawn console best, of all ways of giving the parts keyboards on which something sounds for
 * them: the one with the fewest errors and then the highest score, by the judge's own word, where a division that is drawn
 * for nobody counts {@link DRAWN_FOR_NOBODY} against it; of equal ones the first in print. An optional part rests where
 * that is better.
 *
 * @returns `null` when every way has two keyboards coupled to each other, which cannot be judged.
 */
export function bestKeyboards(problem: Problem, state: ConsoleState, open: readonly OpenPart[]): FoundKeyboards | null {
  const said = open.flatMap(({ part, keyboards, octave, mayRest }) => {
    const [keyboard] = keyboards;
    const id = problem.section.parts[part]?.id ?? "";
    return keyboard && keyboards.length === 1 && !mayRest ? [{ part: id, keyboard: keyboard.name, octave }] : [];
  });
  if (said.length === open.length) return { placings: said, sure: true };

  const all = open.map(({ part, keyboards, octave }) =>
    keyboards.map((keyboard) => wayOf(problem, state, part, keyboard, octave)),
  );
  const sounding = all.map((each) => each.filter((way) => way.sound.stops > 0));
  const isSilent = sounding.every((each) => each.length === 0);
  const ways = sounding.map((each, index): readonly (Way | null)[] => {
    const rest = open[index]?.mayRest && !isSilent ? [null] : [];
    return each.length === 0 && rest.length === 0 ? (all[index] ?? []) : [...each, ...rest];
  });
  return new KeyboardSearch(problem, state, ways).best();
}
