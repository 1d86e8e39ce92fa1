import type { Instrument } from "./instrument.ts";

/** What a list of organs says of each of them. */
export interface OrganFacts {
  /** Manual keyboards; divisions that share one count once. */
  readonly manuals: number;
  /** `pull-down`: pedal keys without stops of their own. */
  readonly pedal: "none" | "pull-down" | "stops";
  /** Stops of all divisions, those that are marked off among them. */
  readonly stops: number;
  /** When it was built; `null` when the file does not say. */
  readonly year: number | null;
}

/** The size of an organ in a few figures. */
export function organFacts({ divisions, year }: Instrument): OrganFacts {
  const pedals = divisions.filter((each) => each.kind === "pedal");
  return {
    manuals: new Set(divisions.map((each) => each.keyboard).filter((each) => each !== null)).size,
    pedal: pedals.length === 0 ? "none" : pedals.some((each) => each.stops.length > 0) ? "stops" : "pull-down",
    stops: divisions.reduce((sum, each) => sum + each.stops.length, 0),
    year,
  };
}
