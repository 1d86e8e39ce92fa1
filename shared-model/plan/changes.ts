import type { BoxPosition } from "../console/state.ts";
import type { Limb } from "../music/piece.ts";
import type { Half, Instrument } from "../stoplist/instrument.ts";
import { type ConsoleLayout, type Jamb, jambFor } from "./console-layout.ts";
import type { Act } from "./motion.ts";
import type { Seat, Stand } from "./stand.ts";

/** One thing to move. */
export interface Move {
  readonly act: Act;
  readonly what: "stop" | "coupler" | "tremulant" | "unison-off" | "box";
  /** As the jamb names it: a stop without its division, a coupler `Swell to Great`, the division of a tremulant. */
  readonly name: string;
  /** Id of a stop; the name of all else. */
  readonly id: string;
  /** The division among whose knobs it stands. */
  readonly division: string;
  readonly jamb: Jamb;
  /** Moved by a foot. */
  readonly foot: boolean;
  /** Of a box: where it goes. */
  readonly to: BoxPosition | null;
  /**
   * Limbs under which it sounds before the change: it can be moved once all of them are silent. Nobody: at any time in the
   * section before.
   */
  readonly heldBy: ReadonlySet<Limb>;
}

/** A limb that goes elsewhere. */
export interface Shift {
  readonly limb: Limb;
  readonly from: readonly Seat[];
  readonly to: readonly Seat[];
}

/** All that differs between two registrations. */
export interface Difference {
  /** Must have been moved when the later one begins to sound. */
  readonly needed: readonly Move[];
  /** Silent in the later one: may be moved when there is time, or left. */
  readonly later: readonly Move[];
  readonly shifts: readonly Shift[];
}

const NOBODY: ReadonlySet<Limb> = new Set();

const sameSeats = (one: readonly Seat[], other: readonly Seat[]): boolean =>
  one.length === other.length &&
  one.every((seat) => other.some((each) => each.keyboard === seat.keyboard && each.octave === seat.octave));

/** Compares two registrations on one console. Moves come in the order of the instrument: stops, couplers, tremulants, boxes. */
export function differenceOf(instrument: Instrument, layout: ConsoleLayout, earlier: Stand, later: Stand): Difference {
  const needed: Move[] = [];
  const leisure: Move[] = [];
  const main = instrument.divisions[0]?.name ?? "";
  const add = (
    move: Pick<Move, "what" | "name" | "id" | "division"> & { readonly to?: BoxPosition; readonly half?: Half },
    isOn: boolean,
    wasOn: boolean,
    concerns: readonly string[],
  ): void => {
    if (isOn === wasOn && move.to === undefined) return;
    const held = concerns.flatMap((division) => [...(earlier.soundedBy.get(division) ?? [])]);
    const full: Move = {
      act: isOn ? "draw" : "cancel",
      what: move.what,
      name: move.name,
      id: move.id,
      division: move.division,
      jamb: jambFor(layout, move.division, move.half ?? null),
      foot: move.what === "box" || (move.what === "coupler" && layout.footCouplers),
      to: move.to ?? null,
      heldBy: held.length === 0 ? NOBODY : new Set(held),
    };
    (concerns.some((division) => later.soundedBy.has(division)) ? needed : leisure).push(full);
  };
  const [from, to] = [earlier.state, later.state];
  for (const { name: division, stops } of instrument.divisions) {
    for (const { id, half } of stops) {
      const name = id.slice(division.length + 1);
      add({ what: "stop", name, id, division, half }, to.drawn.has(id), from.drawn.has(id), [division]);
    }
  }
  for (const { name, to: keyboard, fixed } of instrument.couplers) {
    if (fixed) continue;
    const move = { what: "coupler", name, id: name, division: keyboard } as const;
    add(move, to.couplers.has(name), from.couplers.has(name), [keyboard]);
  }
  const all = instrument.divisions.map((division) => division.name);
  for (const name of instrument.tremulants) {
    const move = { what: "tremulant", name, id: name, division: name === "all" ? main : name } as const;
    add(move, to.tremulants.has(name), from.tremulants.has(name), name === "all" ? all : [name]);
  }
  for (const name of instrument.unisonOff) {
    const move = { what: "unison-off", name, id: name, division: name } as const;
    add(move, to.unisonOff.has(name), from.unisonOff.has(name), [name]);
  }
  for (const box of new Set(instrument.divisions.flatMap((division) => division.box ?? []))) {
    const inside = instrument.divisions.filter((division) => division.box === box).map((division) => division.name);
    const [was, is] = [from.boxes.get(box) ?? "open", to.boxes.get(box) ?? "open"];
    const heard = inside.some((division) => later.soundedBy.has(division));
    if (was === is || !heard) continue;
    add({ what: "box", name: box, id: box, division: inside[0] ?? main, to: is }, true, false, inside);
  }
  return { needed, later: leisure, shifts: shiftsOf(earlier, later) };
}

function shiftsOf(earlier: Stand, later: Stand): readonly Shift[] {
  return [...later.seats].flatMap(([limb, to]): readonly Shift[] => {
    const from = earlier.seats.get(limb) ?? [];
    return from.length === 0 || sameSeats(from, to) ? [] : [{ limb, from, to }];
  });
}
