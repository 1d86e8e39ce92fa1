import { LIMBS, type Limb } from "../music/piece.ts";
import type { Division } from "../stoplist/instrument.ts";
import type { Difference, Move, Shift } from "./changes.ts";
import type { ConsoleLayout, Jamb } from "./console-layout.ts";
import { handTime, meansTime, motionTime, secondsOf, type Visit, waitingTime } from "./motion.ts";
import { MUSIC_VALUES, SHORT } from "./motion-values.ts";
import type { Rest, TimeLeft } from "./time-left.ts";

/** Who moves things. */
export type Hand = Limb | "assistant";

/** What one hand, foot or helper does for a change. */
export interface Task {
  readonly who: Hand;
  readonly moves: readonly Move[];
  /** Seconds from the first reach until the limb is back (of an assistant: until the last knob acts). */
  readonly seconds: number;
  /** Where it is done long before: a rest inside the section, or any time in it; `null`: right before the change. */
  readonly ahead: Rest | "any time" | null;
  /** Whether the page is turned by this hand as well. */
  readonly turns: boolean;
}

/** One way to make a change. */
export interface Handling {
  readonly tasks: readonly Task[];
  /** Time there is over time needed, for whoever is most pressed; at most 9.99. */
  readonly slack: number;
  /** Seconds that the most pressed needs, and has; both 0 where nobody is pressed. */
  readonly need: number;
  readonly available: number;
}

/** Who and what there is to make changes with. */
export interface Crew {
  readonly assistant: Jamb | "none";
  /** Whether every label must be read. */
  readonly reads: boolean;
  /** Factor of the pace. */
  readonly pace: number;
}

/** More slack than this is of no use and counts as this. */
const MOST_SLACK = 9.99;

/** Knobs of one division that can be moved from the same time on. */
interface Block {
  readonly jamb: Jamb;
  readonly division: string;
  readonly moves: readonly Move[];
  /** How long before the change they may be moved. */
  readonly window: number;
  /** Silent in the whole section before. */
  readonly early: boolean;
}

/** How long before the change a move may be made. */
const windowOf = (move: Move, time: TimeLeft): number => {
  let window = Math.max(time.section, time.gap);
  for (const limb of move.heldBy) window = Math.min(window, time.limbs[limb]);
  return window;
};

function blocksOf(moves: readonly Move[], time: TimeLeft): readonly Block[] {
  const blocks: { jamb: Jamb; division: string; moves: Move[]; window: number; early: boolean }[] = [];
  for (const move of moves) {
    const window = windowOf(move, time);
    const early = move.heldBy.size === 0;
    const block = blocks.find(
      (each) => each.division === move.division && each.window === window && each.early === early,
    );
    if (block) block.moves.push(move);
    else blocks.push({ jamb: move.jamb, division: move.division, moves: [move], window, early });
  }
  return blocks;
}

/** Works out the times of hands on one console at one pace. */
class Times {
  readonly #layout: ConsoleLayout;
  readonly #crew: Crew;

  constructor(layout: ConsoleLayout, crew: Crew) {
    this.#layout = layout;
    this.#crew = crew;
  }

  get crew(): Crew {
    return this.#crew;
  }

  /** The way over the knobs of blocks: those of the own jamb first. */
  #way(blocks: readonly Block[], side: Jamb): { readonly visits: Visit[]; readonly back: number } {
    const { distances } = this.#layout;
    const fromKeys = (jamb: Jamb): number => distances.keysToBlock + (jamb === side ? 0 : distances.farJamb);
    const visits: Visit[] = [];
    let last: Block | null = null;
    for (const own of [true, false]) {
      for (const block of blocks) {
        if ((block.jamb === side) !== own) continue;
        for (const { act } of block.moves) {
          const away =
            last === null
              ? fromKeys(block.jamb)
              : last === block
                ? distances.knobPitch
                : last.jamb === block.jamb
                  ? distances.blockToBlock
                  : distances.jambToJamb;
          visits.push({ act, away });
          last = block;
        }
      }
    }
    return { visits, back: last === null ? 0 : fromKeys(last.jamb) };
  }

  /** Seconds until a hand is back at the keys. */
  hand(blocks: readonly Block[], side: Jamb): number {
    const { action, distances } = this.#layout;
    const { visits, back } = this.#way(blocks, side);
    return secondsOf(handTime(visits, back, action, this.#crew.reads, distances), this.#crew.pace);
  }

  /** Seconds until the last knob acts under the two waiting hands of an assistant: the best place to part the row is taken. */
  assistant(blocks: readonly Block[], side: Jamb): number {
    const { action, distances } = this.#layout;
    const { visits } = this.#way(blocks, side);
    let best = Number.POSITIVE_INFINITY;
    for (let at = Math.ceil(visits.length / 2); at <= visits.length; at++) {
      const looks = this.#crew.reads ? Math.max(0, visits.length - 2) * SHORT.look.value : 0;
      const [one, other] = [visits.slice(0, at), visits.slice(at)];
      best = Math.min(
        best,
        Math.max(waitingTime(one, action, distances), waitingTime(other, action, distances)) + looks,
      );
    }
    return visits.length === 0 ? 0 : secondsOf(best, this.#crew.pace);
  }

  foot(moves: readonly Move[]): number {
    const tmu = moves.reduce(
      (sum, move) => sum + meansTime(move.what === "box" ? "swell-shoe" : "hitch-down", this.#layout.distances).whole,
      0,
    );
    return secondsOf(tmu, this.#crew.pace);
  }

  shift({ from, to }: Shift, divisions: readonly Division[]): number {
    const { distances } = this.#layout;
    const [one, other] = [from[0], to[0]];
    if (!one || !other) return 0;
    const manual = (name: string): number => divisions.find((each) => each.name === name)?.keyboard ?? 0;
    const manuals = Math.abs(manual(one.keyboard) - manual(other.keyboard));
    const octaves = Math.abs(one.octave - other.octave);
    const away = Math.hypot(manuals * distances.manualUp, manuals * distances.manualBack, octaves * distances.octave);
    return away === 0 ? 0 : secondsOf(motionTime("reachA", away), this.#crew.pace);
  }
}

/** One who takes part, with how long before the change he is free. */
interface Agent {
  readonly who: Hand;
  readonly side: Jamb;
  readonly free: number;
  readonly turns: boolean;
}

interface Load {
  readonly slack: number;
  readonly need: number;
  readonly available: number;
}

const IDLE: Load = { slack: MOST_SLACK, need: 0, available: 0 };

const capped = (available: number, need: number): number =>
  need === 0 ? MOST_SLACK : Math.min(MOST_SLACK, available / need);

/** How pressed one is by his blocks: those that may be moved last must fit into their own time alone. */
function loadOf(agent: Agent, blocks: readonly Block[], times: Times): Load {
  if (blocks.length === 0 && !agent.turns) return IDLE;
  const turn = agent.turns ? MUSIC_VALUES.pageTurn.value * times.crew.pace : 0;
  let worst: Load = IDLE;
  const note = (need: number, available: number): void => {
    const slack = capped(available, need);
    if (slack < worst.slack) worst = { slack, need, available };
  };
  const late = agent.who === "assistant" ? blocks.filter((block) => !block.early) : blocks;
  const early = blocks.filter((block) => !late.includes(block));
  if (early.length > 0) {
    // Done before, in good time: to the other jamb the assistant goes round and comes back.
    const round = early.some((block) => block.jamb !== agent.side) ? 2 * MUSIC_VALUES.walkRound.value : 0;
    note(round + times.assistant(early, agent.side), Math.min(...early.map((block) => block.window)));
  }
  const windows = new Set(late.map((block) => block.window));
  if (agent.turns) windows.add(agent.free);
  for (const window of windows) {
    const within = late.filter((block) => block.window <= window);
    if (agent.who === "assistant") {
      const available = Math.max(MUSIC_VALUES.assistantEarly.value, Math.min(agent.free, window));
      note(turn + times.assistant(within, agent.side), available);
    } else note(turn + times.hand(within, agent.side), Math.min(agent.free, window));
  }
  return worst;
}

interface Best {
  readonly loads: readonly Load[];
  readonly shares: readonly (readonly Block[])[];
  readonly slack: number;
  readonly work: number;
}

/** Compares at hundredths, so that the order does not hang on the last digit; above comfort slack counts no more. */
function isBetter(one: Pick<Best, "slack" | "work">, other: Pick<Best, "slack" | "work"> | null): boolean {
  if (!other) return true;
  const comfort = MUSIC_VALUES.comfortable.value;
  const [a, b] = [Math.min(one.slack, comfort), Math.min(other.slack, comfort)].map((each) => Math.round(each * 100));
  return (a as number) !== (b as number) ? (a as number) > (b as number) : one.work < other.work - 1e-9;
}

const reaches = (agent: Agent, block: Block): boolean =>
  agent.who !== "assistant" || agent.side === block.jamb || block.early;

/** Every block with the hand on whose side it stands: what a player does without thinking; `null` when one is not free. */
function asTheyStand(blocks: readonly Block[], agents: readonly Agent[], times: Times): Best | null {
  const shares = agents.map((agent) =>
    blocks.filter((block) => agent.who !== "assistant" && agent.side === block.jamb),
  );
  if (shares.reduce((sum, share) => sum + share.length, 0) < blocks.length) return null;
  const loads = agents.map((agent, index) => loadOf(agent, shares[index] as readonly Block[], times));
  return { loads, shares, slack: leastOf(loads), work: workOfShares(shares, loads) };
}

const leastOf = (loads: readonly Load[]): number => Math.min(MOST_SLACK, ...loads.map((load) => load.slack));
const workOfShares = (shares: readonly (readonly Block[])[], loads: readonly Load[]): number =>
  shares.reduce((sum, share, index) => sum + (share.length > 0 ? 1 + (loads[index] as Load).need : 0), 0);

/** The best of all ways to give whole blocks to those who take part; `null` when nobody reaches one of them. */
function shared(blocks: readonly Block[], agents: readonly Agent[], times: Times): Best | null {
  let best = asTheyStand(blocks, agents, times);
  if (best && best.slack >= MUSIC_VALUES.comfortable.value) return best;
  const shares: Block[][] = agents.map(() => []);
  const loads: Load[] = agents.map((agent) => loadOf(agent, [], times));
  const give = (at: number): void => {
    const slack = leastOf(loads);
    // One more block never leaves anybody more time.
    if (best && !isBetter({ slack, work: Number.NEGATIVE_INFINITY }, best)) return;
    if (at === blocks.length) {
      const work = workOfShares(shares, loads);
      if (isBetter({ slack, work }, best))
        best = { loads: [...loads], shares: shares.map((share) => [...share]), slack, work };
      return;
    }
    const block = blocks[at] as Block;
    for (const [index, agent] of agents.entries()) {
      if (!reaches(agent, block)) continue;
      const [share, before] = [shares[index] as Block[], loads[index] as Load];
      share.push(block);
      loads[index] = loadOf(agent, share, times);
      give(at + 1);
      share.pop();
      loads[index] = before;
    }
  };
  give(0);
  return best;
}

/** As {@link shared}, or with one block parted between two where that is better. */
function sharedOut(blocks: readonly Block[], agents: readonly Agent[], times: Times): Best | null {
  let best = shared(blocks, agents, times);
  if (agents.length < 2 || (best && best.slack >= MUSIC_VALUES.comfortable.value)) return best;
  for (const [index, block] of blocks.entries()) {
    for (let at = 1; at < block.moves.length; at++) {
      const parted = [
        ...blocks.slice(0, index),
        { ...block, moves: block.moves.slice(0, at) },
        { ...block, moves: block.moves.slice(at) },
        ...blocks.slice(index + 1),
      ];
      const found = shared(parted, agents, times);
      if (found && isBetter(found, best)) best = found;
    }
  }
  return best;
}

const SIDES: Readonly<Record<"left" | "right", Jamb>> = { left: "left", right: "right" };

/** Shortest time in which a hand gets anything done: one with less is left out. */
const LEAST_FREE = 0.5;

/** Who takes part: hands with time, an assistant where one stands; `turner`: whose page it is. */
function agentsFor(time: TimeLeft, assistant: Jamb | "none", turner: Hand | null): readonly Agent[] {
  const hands = (["left", "right"] as const)
    .filter((hand) => time.limbs[hand] >= LEAST_FREE || turner === hand)
    .map((hand): Agent => ({ who: hand, side: SIDES[hand], free: time.limbs[hand], turns: turner === hand }));
  if (assistant === "none") return hands;
  const free = Number.POSITIVE_INFINITY;
  return [...hands, { who: "assistant", side: assistant, free, turns: turner === "assistant" }];
}

function tasksOf(best: Best, agents: readonly Agent[]): readonly Task[] {
  return agents.flatMap((agent, index): readonly Task[] => {
    const share = best.shares[index] ?? [];
    const load = best.loads[index] as Load;
    const early = agent.who === "assistant" ? share.filter((each) => each.early) : [];
    const late = share.filter((each) => !early.includes(each));
    const task = (blocks: readonly Block[], ahead: Task["ahead"], seconds: number): Task => ({
      who: agent.who,
      moves: blocks.flatMap((block) => block.moves),
      seconds,
      ahead,
      turns: agent.turns && ahead === null,
    });
    return [
      ...(early.length > 0 ? [task(early, "any time", 0)] : []),
      ...(late.length > 0 || agent.turns ? [task(late, null, load.need)] : []),
    ];
  });
}

/** Puts what can be moved at any time in the section into rests of a hand there, as much as fits with room to spare. */
function packed(
  blocks: readonly Block[],
  rests: readonly Rest[],
  times: Times,
): { readonly left: readonly Block[]; readonly tasks: readonly Task[] } {
  let left = [...blocks];
  const tasks: Task[] = [];
  for (const rest of rests) {
    if (rest.limb === "feet") continue;
    const taken: Block[] = [];
    for (const block of left) {
      if (!block.early) continue;
      let count = block.moves.length;
      const fits = (n: number): boolean =>
        times.hand([...taken, { ...block, moves: block.moves.slice(0, n) }], SIDES[rest.limb as "left" | "right"]) *
          MUSIC_VALUES.easy.value <=
        rest.seconds;
      while (count > 0 && !fits(count)) count -= 1;
      if (count > 0) taken.push({ ...block, moves: block.moves.slice(0, count) });
    }
    if (taken.length === 0) continue;
    const moves = new Set(taken.flatMap((block) => block.moves));
    const seconds = times.hand(taken, SIDES[rest.limb as "left" | "right"]);
    tasks.push({ who: rest.limb, moves: [...moves], seconds, ahead: rest, turns: false });
    left = left
      .map((block) => ({ ...block, moves: block.moves.filter((move) => !moves.has(move)) }))
      .filter((block) => block.moves.length > 0);
  }
  return { left, tasks };
}

/** The best way to make a change with the hands and helpers given. */
export function handle(
  difference: Difference,
  time: TimeLeft,
  layout: ConsoleLayout,
  crew: Crew,
  divisions: readonly Division[],
): Handling {
  const times = new Times(layout, crew);
  const turners: readonly (Hand | null)[] =
    time.turn === null
      ? [null]
      : time.turn === "assistant" && crew.assistant !== "none"
        ? ["assistant"]
        : ["left", "right"];
  const all = blocksOf(
    difference.needed.filter((move) => !move.foot),
    time,
  );
  let best: Handling | null = null;
  for (const turner of turners) {
    const plain = completed(all, [], turner, difference, time, times, divisions);
    if (isBetterHandling(plain, best)) best = plain;
    if (plain.slack >= MUSIC_VALUES.easy.value || time.rests.length === 0) continue;
    const { left, tasks } = packed(all, time.rests, times);
    if (tasks.length === 0) continue;
    const prepared = completed(left, tasks, turner, difference, time, times, divisions);
    if (isBetterHandling(prepared, best)) best = prepared;
  }
  return best as Handling;
}

const workOf = ({ tasks }: Handling): number => tasks.reduce((sum, task) => sum + 1 + task.seconds, 0);
const isBetterHandling = (one: Handling, other: Handling | null): boolean =>
  isBetter({ slack: one.slack, work: workOf(one) }, other && { slack: other.slack, work: workOf(other) });

/** A handling with the knobs of `blocks` shared out, and with what feet and going elsewhere take. */
function completed(
  blocks: readonly Block[],
  ahead: readonly Task[],
  turner: Hand | null,
  difference: Difference,
  time: TimeLeft,
  times: Times,
  divisions: readonly Division[],
): Handling {
  const agents = agentsFor(time, times.crew.assistant, turner);
  const best = sharedOut(blocks, agents, times);
  const loads: Load[] = [];
  const tasks: Task[] = [...ahead];
  if (best) {
    loads.push(...best.loads);
    tasks.push(...tasksOf(best, agents));
  } else if (blocks.length > 0) {
    // Nobody is free: the better hand would need so long.
    const need = Math.min(times.hand(blocks, "left"), times.hand(blocks, "right"));
    const available = Math.max(time.limbs.left, time.limbs.right, 0);
    loads.push({ slack: capped(available, need), need, available });
    tasks.push({
      who: "right",
      moves: blocks.flatMap((block) => block.moves),
      seconds: need,
      ahead: null,
      turns: false,
    });
  }
  const feet = difference.needed.filter((move) => move.foot);
  if (feet.length > 0) {
    const need = times.foot(feet);
    // One foot goes while the other plays on; a box or a coupler may also come in while its division sounds.
    const available = time.limbs.feet + time.foot;
    loads.push({ slack: capped(available, need), need, available });
    tasks.push({ who: "feet", moves: feet, seconds: need, ahead: null, turns: false });
  }
  for (const shift of difference.shifts) {
    const busy = tasks.some((task) => task.who === shift.limb && task.ahead === null && task.moves.length > 0);
    // A hand that goes to the knobs comes back to its new keyboard.
    if (busy) continue;
    const need = times.shift(shift, divisions);
    const available = time.limbs[shift.limb] + MUSIC_VALUES.leaveEarly.value;
    loads.push({ slack: capped(available, need), need, available });
  }
  const worst = loads.reduce((low, load) => (load.slack < low.slack ? load : low), IDLE);
  return { tasks, slack: worst.slack, need: worst.need, available: worst.available };
}

/** Pressing a piston with a thumb, or with a foot that does not play: the better of the two. */
export function pressing(time: TimeLeft, layout: ConsoleLayout, crew: Crew): Handling {
  const options = LIMBS.map((limb): Handling => {
    const means = limb === "feet" ? "toe-near" : "piston-next";
    const need = secondsOf(meansTime(means, layout.distances).whole, crew.pace);
    const available = time.limbs[limb] + (limb === "feet" ? time.foot : time.thumb);
    return {
      tasks: [{ who: limb, moves: [], seconds: need, ahead: null, turns: false }],
      slack: capped(available, need),
      need,
      available,
    };
  });
  // Not every console has studs for the toes: a thumb first.
  const thumb = options.find((each) => each.tasks[0]?.who !== "feet" && each.slack >= MUSIC_VALUES.easy.value);
  return thumb ?? options.reduce((best, each) => (isBetterHandling(each, best) ? each : best));
}
