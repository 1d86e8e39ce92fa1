import { reachOf } from "../console/reach.ts";
import type { ConsoleState, Placing } from "../console/state.ts";
import type { Limb } from "../music/piece.ts";
import type { Hands, Section } from "../music/texture.ts";
import type { Instrument } from "../stoplist/instrument.ts";

/** Where a limb plays. */
export interface Seat {
  readonly keyboard: string;
  readonly octave: -1 | 0 | 1;
}

/** A registration as it stands and is played: what sounds under which limb, worked out once. */
export interface Stand {
  readonly state: ConsoleState;
  readonly placings: readonly Placing[];
  /** By division: the limbs that make it sound, through whatever couplers are on. Divisions not named are silent. */
  readonly soundedBy: ReadonlyMap<string, ReadonlySet<Limb>>;
  /** By limb: where it plays, in the section's order of parts. */
  readonly seats: ReadonlyMap<Limb, readonly Seat[]>;
}

/** The limbs that play a part. */
export const limbsOf = (hands: Hands): readonly Limb[] => (hands === "both" ? ["left", "right"] : [hands]);

/** Makes a registration ready for comparing it with what stands before and after it. */
export function standOf(
  instrument: Instrument,
  section: Section,
  state: ConsoleState,
  placings: readonly Placing[],
): Stand {
  const soundedBy = new Map<string, Set<Limb>>();
  const seats = new Map<Limb, Seat[]>();
  for (const { part: id, keyboard: name, octave } of placings) {
    const part = section.parts.find((each) => each.id === id);
    const keyboard = instrument.divisions.find((each) => each.name === name);
    if (!part || !keyboard) continue;
    // Without a pedal, what is written for the feet goes to the hands.
    const limbs = part.hands === "feet" && keyboard.kind !== "pedal" ? limbsOf("left") : limbsOf(part.hands);
    const isOn = (coupler: { readonly fixed: boolean; readonly name: string }): boolean =>
      coupler.fixed || state.couplers.has(coupler.name);
    const reached = reachOf(instrument, keyboard, isOn, state.unisonOff.has(name));
    for (const division of new Set([keyboard.name, ...reached.map((each) => each.division.name)])) {
      const row = soundedBy.get(division) ?? new Set();
      for (const limb of limbs) row.add(limb);
      soundedBy.set(division, row);
    }
    for (const limb of limbs) {
      const row = seats.get(limb) ?? [];
      if (!row.some((each) => each.keyboard === name && each.octave === octave)) row.push({ keyboard: name, octave });
      seats.set(limb, row);
    }
  }
  return { state, placings, soundedBy, seats };
}
