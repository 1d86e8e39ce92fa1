import type { Voice } from "../acoustics/part-sound.ts";
import type { BoxPosition } from "../console/state.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { heardVoice, type PlacedPart, type Seat } from "./placed-part.ts";
import type { Problem } from "./problem.ts";

/** A stop's sound with its box open, half and closed. */
export type Voices = readonly [Voice, Voice, Voice];

/** Where each position of a box stands in {@link Voices}. */
export const AT_BOX: Readonly<Record<BoxPosition, 0 | 1 | 2>> = { open: 0, half: 1, closed: 2 };

const voicesOfSeat = new WeakMap<Seat, Map<Stop, Voices | null>>();

/**
 * What a stop adds to a placed part with its box open, half and closed; `null` when it is not heard. Reckoned once, for
 * the search and for every check: what a voice sounds like is found out when it is first asked, and stays with it.
 */
export function voicesOf(problem: Pick<Problem, "shared">, placed: PlacedPart, stop: Stop): Voices | null {
  let table = voicesOfSeat.get(placed.seat);
  if (!table) {
    table = new Map();
    voicesOfSeat.set(placed.seat, table);
  }
  let voices = table.get(stop);
  if (voices === undefined) {
    const open = heardVoice(placed, stop, problem.shared, "open");
    if (!open) voices = null;
    else if (open.enclosed === 0) voices = [open, open, open];
    else {
      voices = [
        open,
        heardVoice(placed, stop, problem.shared, "half") as Voice,
        heardVoice(placed, stop, problem.shared, "closed") as Voice,
      ];
    }
    table.set(stop, voices);
  }
  return voices;
}
