import type { PartSound } from "../acoustics/part-sound.ts";
import type { BoxPosition } from "../console/state.ts";
import type { Points } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";

/** What earlier parts have settled on divisions that this part hears too. */
export interface Base {
  /** Drawn stops that this part hears with them. */
  readonly drawn: readonly Stop[];
  readonly tremulants: ReadonlySet<string>;
  /** Divisions of which an earlier part hears a drawn stop: their tremulant and box are settled. */
  readonly divisions: ReadonlySet<string>;
  readonly boxes: ReadonlyMap<string, BoxPosition>;
}

/** One set of stops for one part, with everything that its unary rules give it. */
export interface Candidate {
  readonly points: Points;
  /** The most that each companion can still earn on it. */
  readonly companions: readonly Points[];
  /** `points`, and what the companions can earn. */
  readonly reach: Points;
  readonly sound: PartSound;
  /** Own stops, in the order of the offer. */
  readonly stops: readonly Stop[];
  readonly tremulants: readonly string[];
  readonly boxes: readonly (readonly [string, BoxPosition])[];
  readonly excused: boolean;
}

/** What a walk is for: every set above the threshold, one best set (whatever equals it has), or any allowed set at all. */
export type Want = "all" | "best" | "any";
