import { type Foot, stretch } from "../pitch/foot.ts";
import { type Key, LOWEST_KEY } from "../pitch/key.ts";
import { pitchName } from "../pitch/reading.ts";
import type { Rank, RankUse } from "../stoplist/instrument.ts";
import type { Row } from "./composition.ts";
import { pipesAbove } from "./pitch-text.ts";
import { unlike } from "./unlike.ts";

/**
 * The key at which pitches are nominal: on C2 an 8' stop plays an 8' pipe, so key `k` of a stop at pitch `p` plays pipe
 * `(k - 36) + keys from the rank's longest to p` of its rank, counted from 0. All ranks are laid out that way: a stop that begins
 * higher leaves the lowest numbers of its rank unused, and below C2 a rank begins an octave lower.
 */
const NOMINAL_KEY = LOWEST_KEY;

/** Keys on which a rank speaks when it is drawn at a pitch; they may lie outside any keyboard. */
export function keysOfRank(rank: Rank, pitch: Foot): { readonly low: Key; readonly high: Key } {
  const low = NOMINAL_KEY - pipesAbove(rank.longest, pitch);
  return { low, high: low + rank.pipes - 1 };
}

/** The ranks of an organ while it is read, in order and by id. */
export class Ranks {
  readonly #byId = new Map<string, Rank>();

  add(rank: Rank): void {
    this.#byId.set(rank.id, rank);
  }

  get(id: string): Rank | undefined {
    return this.#byId.get(id);
  }

  all(): readonly Rank[] {
    return [...this.#byId.values()];
  }

  /** A new rank of one stop's own, long enough for its keys. */
  own(id: string, pitch: Foot, from: Key, to: Key): string {
    const unique = unlike(id, (one) => this.#byId.has(one));
    const octaves = Math.max(0, Math.ceil((NOMINAL_KEY - from) / 12));
    const pipes = Math.max(1, to - NOMINAL_KEY + 1 + 12 * octaves);
    this.add({ id: unique, longest: stretch(pitch, 2 ** octaves), pipes });
    return unique;
  }
}

/** Several ranks of one pitch through the whole range. */
export function plainUses(
  ranks: Ranks,
  id: string,
  pitch: Foot,
  count: number,
  from: Key,
  to: Key,
): readonly RankUse[] {
  return Array.from({ length: Math.max(1, count) }, () => ({ rank: ranks.own(id, pitch, from, to), pitch, from, to }));
}

/**
 * The pipes of a compound: from break to break its pitches. Stretches of one pitch share a rank, since a rank is a row of pipes
 * of one pitch; a pitch that stands twice in a row has a rank for each.
 */
export function compoundUses(ranks: Ranks, id: string, rows: readonly Row[], from: Key, to: Key): readonly RankUse[] {
  const made = new Map<string, string>();
  const uses: RankUse[] = [];
  rows.forEach((row, index) => {
    const first = Math.max(from, row.from);
    const last = Math.min(to, (rows[index + 1]?.from ?? to + 1) - 1);
    if (first > last) return;
    const times = new Map<Foot, number>();
    for (const pitch of row.pitches) {
      const time = (times.get(pitch) ?? 0) + 1;
      times.set(pitch, time);
      const key = `${pitchName(pitch)} ${time}`;
      const rank = made.get(key) ?? ranks.own(`${id} : ${pitchName(pitch)}`, pitch, from, to);
      made.set(key, rank);
      uses.push({ rank, pitch, from: first, to: last });
    }
  });
  return uses;
}

/** What of another stop's pipes serves between two keys. */
export const usesBetween = (uses: readonly RankUse[], from: Key, to: Key): readonly RankUse[] =>
  uses
    .filter((use) => use.from <= to && use.to >= from)
    .map((use) => ({ ...use, from: Math.max(use.from, from), to: Math.min(use.to, to) }));

/** Lowest and highest key of some uses; `null` when there are none. */
export const keysOfUses = (uses: readonly RankUse[]): { readonly from: Key; readonly to: Key } | null =>
  uses.length === 0
    ? null
    : { from: Math.min(...uses.map((use) => use.from)), to: Math.max(...uses.map((use) => use.to)) };

/** How many ranks sound together where most do. */
export function ranksSounding(uses: readonly RankUse[]): number {
  const starts = [...new Set(uses.map((use) => use.from))];
  return starts.reduce((most, key) => Math.max(most, uses.filter((use) => use.from <= key && use.to >= key).length), 0);
}
