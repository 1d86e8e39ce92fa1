import { LIMBS } from "../music/piece.ts";
import type { Division } from "../stoplist/instrument.ts";
import { type Block, blocksOf, Times } from "./blocks.ts";
import type { Difference } from "./changes.ts";
import type { ConsoleLayout, Jamb } from "./console-layout.ts";
import type { Crew, Hand, Handling, Task } from "./crew.ts";
import { meansTime, secondsOf } from "./motion.ts";
import { MUSIC_VALUES } from "./motion-values.ts";
import { type Agent, type Best, capped, IDLE, isBetter, type Load, sharedOut } from "./sharing.ts";
import type { Rest, TimeLeft } from "./time-left.ts";

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
      ...(late.length > 0 || agent.turns ? [task(late, null, agent.who === "assistant" ? load.need : load.busy)] : []),
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
    loads.push({ slack: capped(available, need), need, available, busy: need });
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
    loads.push({ slack: capped(available, need), need, available, busy: need });
    tasks.push({ who: "feet", moves: feet, seconds: need, ahead: null, turns: false });
  }
  for (const shift of difference.shifts) {
    const busy = tasks.some((task) => task.who === shift.limb && task.ahead === null && task.moves.length > 0);
    // A hand that goes to the knobs comes back to its new keyboard.
    if (busy) continue;
    const need = times.shift(shift, divisions);
    const available = time.limbs[shift.limb] + MUSIC_VALUES.leaveEarly.value;
    loads.push({ slack: capped(available, need), need, available, busy: need });
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
