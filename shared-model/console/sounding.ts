import { hasKey, type Key } from "../pitch/key.ts";
import type { Division, Instrument } from "../stoplist/instrument.ts";
import { reachOf } from "./reach.ts";
import type { ConsoleState } from "./state.ts";

/** One pipe, named by its rank and its place in it: two stops that ask for the same pipe get it once. */
export interface Pipe {
  readonly rank: string;
  /** Semitones above the rank's first pipe. */
  readonly number: number;
}

/** Semitones from a rank's first pipe up to where a stop of this pitch takes it at the lowest C. */
export const stepsBetween = (
  longest: { over: number; under: number },
  pitch: { over: number; under: number },
): number => Math.round(12 * Math.log2((longest.over * pitch.under) / (longest.under * pitch.over)));

/** The pipes that sound when a key of a keyboard is held, each once: where every judgement starts. */
export function soundingPipes(
  instrument: Instrument,
  state: ConsoleState,
  keyboard: Division,
  key: Key,
): readonly Pipe[] {
  const pipes = new Map<string, Pipe>();
  if (!hasKey(keyboard.compass, key)) return [];
  const on = (coupler: { name: string; fixed: boolean }) => coupler.fixed || state.couplers.has(coupler.name);
  for (const { division, shift } of reachOf(instrument, keyboard, on, state.unisonOff.has(keyboard.name))) {
    const played = key + 12 * shift;
    for (const stop of division.stops) {
      if (stop.off || !state.drawn.has(stop.id)) continue;
      for (const use of stop.uses) {
        if (played < use.from || played > use.to) continue;
        const rank = instrument.ranks.find((each) => each.id === use.rank);
        if (!rank) continue;
        const number = stepsBetween(rank.longest, use.pitch) + played - 36;
        pipes.set(`${use.rank}:${number}`, { rank: use.rank, number });
      }
    }
  }
  return [...pipes.values()];
}
