/** Position of a swell box. */
export type BoxPosition = "open" | "half" | "closed";

/** How the console stands: what is drawn, coupled, shaken and shaded. A division's drawn stops are one set, whichever keyboard plays it. */
export interface ConsoleState {
  /** Ids of drawn stops. */
  readonly drawn: ReadonlySet<string>;
  /** Names of couplers that are on (fixed ones need not be listed). */
  readonly couplers: ReadonlySet<string>;
  /** Divisions whose tremulant is on, or `all`. */
  readonly tremulants: ReadonlySet<string>;
  /** By box name; a box not named is open. */
  readonly boxes: ReadonlyMap<string, BoxPosition>;
  /** Divisions whose unison is off on their own keyboard (`reachOf` says what that means). Proposals never use it. */
  readonly unisonOff: ReadonlySet<string>;
}

/** Where a part is played: the division whose keyboard it is, and how many octaves away from the written keys. */
export interface Placing {
  readonly part: string;
  /** Name of the division whose keyboard it is. */
  readonly keyboard: string;
  /** -1 an octave lower than written, 0, or 1 an octave higher. */
  readonly octave: -1 | 0 | 1;
}
