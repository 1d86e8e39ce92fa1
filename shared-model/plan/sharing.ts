import type { Block, Times } from "./blocks.ts";
import type { Jamb } from "./console-layout.ts";
import type { Hand } from "./crew.ts";
import { secondsOf } from "./motion.ts";
import { MUSIC_VALUES, SHORT } from "./motion-values.ts";

/** More slack than this is of no use and counts as this. */
const MOST_SLACK = 9.99;

/** One who takes part, with how long before the change he is free. */
export interface Agent {
  readonly who: Hand;
  readonly side: Jamb;
  readonly free: number;
  readonly turns: boolean;
}

export interface Load {
  readonly slack: number;
  readonly need: number;
  readonly available: number;
  /** Seconds of all that he does. */
  readonly busy: number;
}

export const IDLE: Load = { slack: MOST_SLACK, need: 0, available: 0, busy: 0 };

export const capped = (available: number, need: number): number =>
  need === 0 ? MOST_SLACK : Math.min(MOST_SLACK, available / need);

/** How pressed one is by his blocks: those that may be moved last must fit into their own time alone. */
function loadOf(agent: Agent, blocks: readonly Block[], times: Times): Load {
  if (blocks.length === 0 && !agent.turns) return IDLE;
  const turn = agent.turns ? MUSIC_VALUES.pageTurn.value * times.crew.pace : 0;
  let worst: Load = IDLE;
  let busy = 0;
  let whole = 0;
  const note = (need: number, available: number): void => {
    const slack = capped(available, need);
    if (slack < worst.slack) worst = { slack, need, available, busy: 0 };
  };
  const late = agent.who === "assistant" ? blocks.filter((block) => !block.early) : blocks;
  if (late.length < blocks.length) {
    const early = blocks.filter((block) => block.early);
    // Done before, in good time: to the other jamb the assistant goes round and comes back.
    const round = early.some((block) => block.jamb !== agent.side) ? 2 * MUSIC_VALUES.walkRound.value : 0;
    busy = round + times.assistant(early, agent.side);
    note(busy, Math.min(...early.map((block) => block.window)));
  }
  const windows = late.map((block) => block.window);
  if (agent.turns) windows.push(agent.free);
  for (const [index, window] of windows.entries()) {
    if (windows.indexOf(window) < index) continue;
    const within = late.every((block) => block.window <= window)
      ? late
      : late.filter((block) => block.window <= window);
    const helps = agent.who === "assistant";
    const need = turn + (helps ? times.assistant(within, agent.side) : times.hand(within, agent.side));
    const inTime = Math.min(agent.free, window);
    note(need, helps ? Math.max(MUSIC_VALUES.assistantEarly.value, inTime) : inTime);
    if (within === late) whole = need;
  }
  return { ...worst, busy: busy + whole };
}

export interface Best {
  readonly loads: readonly Load[];
  readonly shares: readonly (readonly Block[])[];
  readonly slack: number;
  readonly work: number;
}

/** Compares at hundredths, so that the order does not hang on the last digit; above comfort slack counts no more. */
export function isBetter(one: Pick<Best, "slack" | "work">, other: Pick<Best, "slack" | "work"> | null): boolean {
  if (!other) return true;
  const comfort = MUSIC_VALUES.comfortable.value;
  const [a, b] = [Math.min(one.slack, comfort), Math.min(other.slack, comfort)].map((each) => Math.round(each * 100));
  return (a as number) !== (b as number) ? (a as number) > (b as number) : one.work < other.work - 1e-9;
}

const reaches = (agent: Agent, block: Block): boolean =>
  agent.who !== "assistant" || agent.side === block.jamb || block.early;

/** Two hands that read their labels: eyes go to one after the other, so each waits for what the one with less to do reads. */
function withEyes(
  loads: readonly Load[],
  shares: readonly (readonly Block[])[],
  agents: readonly Agent[],
  times: Times,
): readonly Load[] {
  if (!times.crew.reads) return loads;
  const isReading = agents.map(({ who }, index) => who !== "assistant" && (shares[index] ?? []).length > 0);
  if (isReading.filter(Boolean).length < 2) return loads;
  const knobs = shares.flatMap((share, index) =>
    isReading[index] ? [share.reduce((sum, block) => sum + block.moves.length, 0)] : [],
  );
  const wait = secondsOf(SHORT.look.value * Math.min(...knobs), times.crew.pace);
  return loads.map((load, index) => {
    if (!isReading[index]) return load;
    const need = load.need + wait;
    return { ...load, need, slack: capped(load.available, need), busy: load.busy + wait };
  });
}

/** Every block with the hand on whose side it stands: what a player does without thinking; `null` when one is not free. */
function asTheyStand(blocks: readonly Block[], agents: readonly Agent[], times: Times): Best | null {
  const shares = agents.map((agent) =>
    blocks.filter((block) => agent.who !== "assistant" && agent.side === block.jamb),
  );
  if (shares.reduce((sum, share) => sum + share.length, 0) < blocks.length) return null;
  const each = agents.map((agent, index) => loadOf(agent, shares[index] as readonly Block[], times));
  const loads = withEyes(each, shares, agents, times);
  return { loads, shares, slack: leastOf(loads), work: workOfShares(shares, loads) };
}

function leastOf(loads: readonly Load[]): number {
  let least = MOST_SLACK;
  for (const load of loads) if (load.slack < least) least = load.slack;
  return least;
}
const workOfShares = (shares: readonly (readonly Block[])[], loads: readonly Load[]): number =>
  shares.reduce((sum, share, index) => sum + (share.length > 0 ? 1 + (loads[index] as Load).busy : 0), 0);

/** The best of all ways to give whole blocks to those who take part; `null` when nobody reaches one of them. */
function shared(blocks: readonly Block[], agents: readonly Agent[], times: Times): Best | null {
  let best = asTheyStand(blocks, agents, times);
  if (best && best.slack >= MUSIC_VALUES.comfortable.value) return best;
  const shares: Block[][] = agents.map(() => []);
  const loads: Load[] = agents.map((agent) => loadOf(agent, [], times));
  const give = (at: number): void => {
    const seen = withEyes(loads, shares, agents, times);
    const slack = leastOf(seen);
    const work = workOfShares(shares, seen);
    // One more block never leaves anybody more time, or less to do.
    if (!isBetter({ slack, work }, best)) return;
    if (at === blocks.length) {
      best = { loads: [...seen], shares: shares.map((share) => [...share]), slack, work };
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
export function sharedOut(blocks: readonly Block[], agents: readonly Agent[], times: Times): Best | null {
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
