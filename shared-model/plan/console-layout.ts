import { type Half, hasPistons, type Instrument } from "../stoplist/instrument.ts";
import { type DivisionKind, divisionKinds } from "../stoplist/keyboard-kind.ts";
import { type Distances, type KnobAction, USUAL_DISTANCES } from "./motion.ts";

/** The side of the player on which knobs stand. */
export type Jamb = "left" | "right";

/** How a console is laid out for the hands. */
export interface ConsoleLayout {
  readonly action: KnobAction;
  /** By division. */
  readonly jambs: ReadonlyMap<string, Jamb>;
  /** Divisions whose side somebody has stated. */
  readonly stated: ReadonlySet<string>;
  /** Whether couplers are iron pedals for the feet. */
  readonly footCouplers: boolean;
  readonly distances: Distances;
  /** What nobody has stated and is taken to be so, in words. */
  readonly assumed: readonly string[];
}

/**
 * Where divisions stand in the jambs of English and American consoles: Swell and Pedal at the left, Great and Choir at the
 * right. Taken for others too where nothing is stated.
 */
const LEFT: readonly DivisionKind[] = ["pedal", "swell", "recit", "echo"];

function jambOf(kinds: ReadonlySet<DivisionKind>): Jamb {
  if (kinds.has("main")) return "right";
  return LEFT.some((kind) => kinds.has(kind)) ? "left" : "right";
}

/** Where a knob stands; of divided stops, where nothing is stated, basses at the left and trebles at the right. Common practice. */
export function jambFor(layout: ConsoleLayout, division: string, half: Half): Jamb {
  if (half !== null && !layout.stated.has(division)) return half === "bass" ? "left" : "right";
  return layout.jambs.get(division) ?? "right";
}

const layouts = new WeakMap<Instrument, ConsoleLayout>();

/** The console of an instrument: as its file states it, by custom where it does not. */
export function layoutOf(instrument: Instrument): ConsoleLayout {
  const known = layouts.get(instrument);
  if (known) return known;
  const stated = instrument.console;
  const kinds = divisionKinds(instrument);
  const assumed: string[] = [];
  const jambs = new Map<string, Jamb>();
  const open: string[] = [];
  for (const { name } of instrument.divisions) {
    const side = stated?.left.includes(name) ? "left" : stated?.right.includes(name) ? "right" : null;
    if (side === null) open.push(name);
    jambs.set(name, side ?? jambOf(kinds.get(name) ?? new Set()));
  }
  if (open.length > 0) {
    const at = (side: Jamb): string => open.filter((name) => jambs.get(name) === side).join(", ");
    assumed.push(
      [at("left") && `knobs of ${at("left")} at the left`, at("right") && `knobs of ${at("right")} at the right`]
        .filter(Boolean)
        .join(", "),
    );
  }
  const action =
    stated?.action ?? (hasPistons(instrument.aids) || instrument.aids.levels > 0 ? "electric" : "mechanical");
  if (!stated?.action) assumed.push(`${action} stop action`);
  const measured = Object.fromEntries(Object.entries(stated?.distances ?? {}).filter(([, cm]) => cm !== undefined));
  if (Object.keys(measured).length === 0) assumed.push("distances of a usual console");
  const layout: ConsoleLayout = {
    action,
    jambs,
    stated: new Set(instrument.divisions.map((each) => each.name).filter((name) => !open.includes(name))),
    // French pedals for couplers came with the pedals for the ventils. Common practice.
    footCouplers: instrument.aids.ventils.length > 0,
    distances: {
      ...USUAL_DISTANCES,
      ...(action === "tabs" && { keysToBlock: USUAL_DISTANCES.tabs, knobPitch: USUAL_DISTANCES.tabPitch }),
      ...measured,
    },
    assumed,
  };
  layouts.set(instrument, layout);
  return layout;
}
