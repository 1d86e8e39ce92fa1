import type { Division } from "../stoplist/instrument.ts";
import type { Move, Shift } from "./changes.ts";
import type { ConsoleLayout, Jamb } from "./console-layout.ts";
import type { Crew } from "./crew.ts";
import {
  type ActTimes,
  actTime,
  handTime,
  type KnobRow,
  meansTime,
  motionTime,
  secondsOf,
  type Visit,
  waitingTime,
} from "./motion.ts";
import { SHORT } from "./motion-values.ts";
import type { TimeLeft } from "./time-left.ts";

/** Knobs of one division that can be moved from the same time on. */
export interface Block {
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

export function blocksOf(moves: readonly Move[], time: TimeLeft): readonly Block[] {
  const blocks: { jamb: Jamb; division: string; moves: Move[]; window: number; early: boolean }[] = [];
  for (const move of moves) {
    const window = windowOf(move, time);
    const early = move.heldBy.size === 0;
    const block = blocks.find(
      (each) =>
        each.division === move.division && each.jamb === move.jamb && each.window === window && each.early === early,
    );
    if (block) block.moves.push(move);
    else blocks.push({ jamb: move.jamb, division: move.division, moves: [move], window, early });
  }
  return blocks;
}

/** Works out the times of hands on one console at one pace. */
export class Times {
  readonly #layout: ConsoleLayout;
  readonly #crew: Crew;
  readonly #acts: ActTimes;

  constructor(layout: ConsoleLayout, crew: Crew) {
    this.#layout = layout;
    this.#crew = crew;
    const { action, distances } = layout;
    this.#acts = { draw: actTime("draw", action, distances), cancel: actTime("cancel", action, distances) };
  }

  get crew(): Crew {
    return this.#crew;
  }

  /** Blocks of the own jamb first. */
  #inOrder(blocks: readonly Block[], side: Jamb): readonly Block[] {
    if (blocks.every((block) => block.jamb === side)) return blocks;
    return [...blocks.filter((block) => block.jamb === side), ...blocks.filter((block) => block.jamb !== side)];
  }

  /** How far a block lies from the jamb where the hand is, or from the keys. */
  #away(jamb: Jamb, last: Jamb | null, side: Jamb): number {
    const { distances } = this.#layout;
    if (last === null) return distances.keysToBlock + (jamb === side ? 0 : distances.farJamb);
    return last === jamb ? distances.blockToBlock : distances.jambToJamb;
  }

  /** Seconds until a hand is back at the keys. */
  hand(blocks: readonly Block[], side: Jamb): number {
    const { distances } = this.#layout;
    const rows: KnobRow[] = [];
    let last: Jamb | null = null;
    for (const block of this.#inOrder(blocks, side)) {
      const cancels = block.moves.reduce((sum, move) => sum + (move.act === "cancel" ? 1 : 0), 0);
      rows.push({ away: this.#away(block.jamb, last, side), draws: block.moves.length - cancels, cancels });
      last = block.jamb;
    }
    const back = last === null ? 0 : this.#away(last, null, side);
    return secondsOf(handTime(rows, back, this.#acts, this.#crew.reads, distances), this.#crew.pace);
  }

  /** Seconds until the last knob acts under the two waiting hands of an assistant: the best place to part the row is taken. */
  assistant(blocks: readonly Block[], side: Jamb): number {
    const { action, distances } = this.#layout;
    const visits: Visit[] = [];
    let last: Jamb | null = null;
    for (const block of this.#inOrder(blocks, side)) {
      for (const [index, { act }] of block.moves.entries())
        visits.push({ act, away: index === 0 ? this.#away(block.jamb, last, side) : distances.knobPitch });
      last = block.jamb;
    }
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
