import { judge } from "../judging/judge.ts";
import type { Limb } from "../music/piece.ts";
import { joined } from "../rules/rule.ts";
import type { Alternative } from "./candidates.ts";
import type { Difference, Move } from "./changes.ts";
import type { Handling } from "./crew.ts";
import { type Feasibility, type Verdict, WOULD } from "./feasibility.ts";
import { handle } from "./hands.ts";
import { MUSIC_VALUES } from "./motion-values.ts";
import type { Station } from "./path.ts";
import type { ChosenRow } from "./plan.ts";
import type { TimeLeft } from "./time-left.ts";

/** Whether a change can be made with whoever is there. */
const isGood = (verdict: Verdict, { crew }: ChosenRow): boolean =>
  verdict === "easy" || verdict === "brisk" || (verdict === "needs-assistant" && crew.assistant !== "none");

const oneDigit = (value: number): string => value.toFixed(1);

/** A move in a sentence: `Oboe 8 on the Swell`, `Swell to Great`. */
const moveName = (move: Move): string => (move.what === "stop" ? `${move.name} (${move.division})` : move.name);

/** How it goes with whoever is there, when some moves are left out. */
const slackOf = ({ layout, crew, instrument }: ChosenRow, difference: Difference, time: TimeLeft): number =>
  handle(difference, time, layout, crew, instrument.divisions).slack;

const without = (difference: Difference, moves: readonly Move[]): Difference => ({
  ...difference,
  needed: difference.needed.filter((move) => !moves.includes(move)),
});

/** Made ready before: what is silent until then, and how long a free hand it would take. */
function earlier(row: ChosenRow, difference: Difference, time: TimeLeft): string | null {
  const silent = difference.needed.filter((move) => move.heldBy.size === 0 && !move.foot);
  if (silent.length === 0) return null;
  if (slackOf(row, without(difference, silent), time) < MUSIC_VALUES.brisk.value) return null;
  const { layout, crew, instrument } = row;
  const hands: Readonly<Record<Limb, number>> = { left: 1e6, right: 1e6, feet: 1e6 };
  const open: TimeLeft = { ...time, gap: 1e6, limbs: hands, turn: null, rests: [], section: 1e6 };
  const ready = handle(
    { ...difference, needed: silent, shifts: [] },
    open,
    layout,
    { ...crew, assistant: "none" },
    instrument.divisions,
  );
  const need = ready.tasks.reduce((most, task) => Math.max(most, task.seconds), 0);
  const beats = Math.ceil((need * MUSIC_VALUES.easy.value) / time.beat);
  const draws = silent.filter((move) => move.act === "draw");
  const what = draws.length > 0 ? `draw ${joined(draws.map(moveName))}` : `take off ${joined(silent.map(moveName))}`;
  return `Prepare earlier: where a hand is free for ${beats} beats in the section before, ${what}; nothing sounds there until then.`;
}

/** Played elsewhere: the best other registration of the section for which the change into it goes well. */
function otherKeyboard(row: ChosenRow, station: Station, time: TimeLeft): string | null {
  const at = station.section;
  const [before, now] = [row.chosen[at - 1], row.chosen[at]];
  if (station.step > 0 || !before || !now || now.origin === "pinned") return null;
  const seats = (one: Alternative): string =>
    one.entry.placings.map((each) => `${each.part} ${each.keyboard}`).join("; ");
  const fits = (row.candidates[at]?.list ?? []).filter((one) => {
    if (seats(one) === seats(now) || one.steps.length > 0) return false;
    return isGood(row.costs.byHand(row.costs.difference(before, one), time, 30_000 + at).verdict, row);
  });
  const [first] = fits.toSorted((a, b) => b.score - a.score);
  if (!first) return null;
  const where = first.entry.placings.map((each) => `${each.part} on the ${each.keyboard}`);
  return `Play elsewhere: ${joined(where)}, registered in ${first.place === null ? "another way of the list" : `the way of proposal ${first.place}`}; the change ${WOULD[row.costs.byHand(row.costs.difference(before, first), time, 30_000 + at).verdict]}.`;
}

/** Stops left as they are: the fewest moves whose leaving makes the change good, the cheapest for the sound among them. */
function leftOut(row: ChosenRow, station: Station, difference: Difference, time: TimeLeft): string | null {
  const one = row.chosen[station.section];
  const problem = row.candidates[station.section]?.problem;
  if (!one || !problem || one.steps.length > 0) return null;
  const scoreWithout = (moves: readonly Move[]): number => {
    const drawn = new Set(station.stand.state.drawn);
    const couplers = new Set(station.stand.state.couplers);
    for (const { act, what, id } of moves) {
      const set = what === "stop" ? drawn : couplers;
      if (act === "draw") set.delete(id);
      else set.add(id);
    }
    const judgement = judge(problem, { ...station.stand.state, drawn, couplers }, station.stand.placings);
    return !judgement || judgement.forbidden ? Number.NEGATIVE_INFINITY : judgement.score;
  };
  const movable = difference.needed.filter((move) => move.what === "stop" || move.what === "coupler");
  let left: readonly Move[] = [];
  // One by one, always that which harms least: with many knobs all sets cannot be tried.
  while (left.length < Math.min(3, movable.length)) {
    const next = movable
      .filter((move) => !left.includes(move))
      .map((move) => ({ move, score: scoreWithout([...left, move]) }))
      .toSorted((a, b) => b.score - a.score)[0];
    if (!next || next.score === Number.NEGATIVE_INFINITY) return null;
    left = [...left, next.move];
    if (slackOf(row, without(difference, left), time) < MUSIC_VALUES.brisk.value) continue;
    const [kept, undrawn] = [left.filter((move) => move.act === "cancel"), left.filter((move) => move.act === "draw")];
    const words = [
      undrawn.length > 0 ? `do without ${joined(undrawn.map(moveName))}` : "",
      kept.length > 0 ? `let ${joined(kept.map(moveName))} stand` : "",
    ].filter((each) => each !== "");
    const loss = one.score - next.score;
    const price = loss > 0 ? ` (${loss / 100} points less)` : "";
    return `Leave a stop: ${words.join(" and ")}${price}; the rest can be done.`;
  }
  return null;
}

/** A breath, or what a fermata would have to give. */
function breath({ need, available }: Handling, time: TimeLeft): string | null {
  const missing = need * MUSIC_VALUES.brisk.value - available;
  if (missing <= 0) return null;
  const beats = Math.ceil((missing / time.beat) * 2) / 2;
  const long = `${oneDigit(missing)} s (about ${beats} ${beats === 1 ? "beat" : "beats"})`;
  return time.what === "fermata"
    ? `Take a breath: after the fermata, let go and rest for ${long}.`
    : `Take a breath here: another ${long} would do.`;
}

/**
 * Other ways to make a change that needs an assistant who is not there, or that cannot be made as written: prepare earlier,
 * play elsewhere, leave a stop, take a breath. Empty for changes that go well.
 */
export function adviceFor(
  row: ChosenRow,
  station: Station,
  difference: Difference,
  found: Feasibility,
  time: TimeLeft,
): readonly string[] {
  const { verdict } = found;
  if (isGood(verdict, row)) return [];
  const { layout, crew, instrument } = row;
  const now = handle(difference, time, layout, crew, instrument.divisions);
  const roller =
    station.step === 1 && instrument.aids.crescendoPedal
      ? "The crescendo pedal can take this and the following steps; its order is the builder's own, so hear it first."
      : null;
  return [
    roller,
    station.step === 0 ? earlier(row, difference, time) : null,
    otherKeyboard(row, station, time),
    leftOut(row, station, difference, time),
    station.step === 0 ? breath(now, time) : null,
  ].filter((each) => each !== null);
}
