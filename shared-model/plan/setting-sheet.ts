import type { Instrument } from "../stoplist/instrument.ts";
import type { PlannedPiece, StoredPiston } from "./planned.ts";

/** What to draw before pressing "set" and one piston. */
export interface SheetRow {
  /** `null` for a general piston. */
  readonly division: string | null;
  readonly level: number;
  readonly number: number;
  /** Divisions with something drawn, in printed order, with the stops as their jamb names them. */
  readonly drawn: readonly { readonly division: string; readonly stops: readonly string[] }[];
  readonly couplers: readonly string[];
  readonly tremulants: readonly string[];
  readonly unisonOff: readonly string[];
  /** The sections for which it is pressed, from 0, each once, in playing order. */
  readonly sections: readonly number[];
}

/** The setting sheet of a plan: piston by piston, and what to mind before the memory is touched. */
export interface SettingSheet {
  readonly rows: readonly SheetRow[];
  readonly cautions: readonly string[];
}

/**
 * What a guest minds before changing a memory. Advice of organists' guilds and of visitor guides: use only the level that is
 * given, note what was there, put it back.
 */
const CAUTIONS: readonly string[] = [
  "Ask the organ's keeper before you change any piston, and which memory level is free; use only that. No permission, no change.",
  "If no level is free, note or photograph what stands on each piston first, and set it back afterwards.",
  "Leave a note for the keeper: the level used, what was reset, what ciphered.",
];

function rowOf({ instrument, stations }: PlannedPiece, piston: StoredPiston, sections: readonly number[]): SheetRow {
  const state = stations[piston.station]?.stand.state;
  const drawn = instrument.divisions
    .filter((division) => piston.division === null || division.name === piston.division)
    .map(({ name, stops }) => ({
      division: name,
      stops: stops.filter((stop) => state?.drawn.has(stop.id)).map((stop) => stop.id.slice(name.length + 1)),
    }));
  const whole = piston.division === null;
  const on = (names: readonly string[], set: ReadonlySet<string> | undefined): readonly string[] =>
    whole ? names.filter((name) => set?.has(name)) : [];
  return {
    division: piston.division,
    level: piston.level,
    number: piston.number,
    drawn: drawn.filter((each) => each.stops.length > 0),
    couplers: on(couplersOf(instrument), state?.couplers),
    tremulants: on(instrument.tremulants, state?.tremulants),
    unisonOff: on(instrument.unisonOff, state?.unisonOff),
    sections,
  };
}

const couplersOf = ({ couplers }: Instrument): readonly string[] =>
  couplers.filter((coupler) => !coupler.fixed).map((coupler) => coupler.name);

/** The sheet of a plan, generals first, by level and number; empty when nothing is stored. */
export function settingSheet(plan: PlannedPiece): SettingSheet {
  const rows = plan.pistons
    .toSorted(
      (a, b) =>
        Number(a.division !== null) - Number(b.division !== null) ||
        (a.division ?? "").localeCompare(b.division ?? "") ||
        a.level - b.level ||
        a.number - b.number,
    )
    .map((piston) => rowOf(plan, piston, [...new Set(piston.uses.map((use) => plan.changes[use]?.section ?? 0))]));
  return { rows, cautions: rows.length > 0 ? CAUTIONS : [] };
}
