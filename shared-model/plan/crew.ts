import type { Limb } from "../music/piece.ts";
import type { Move } from "./changes.ts";
import type { Jamb } from "./console-layout.ts";
import type { Rest } from "./time-left.ts";

/** Who moves things. */
export type Hand = Limb | "assistant";

/** What one hand, foot or helper does for a change. */
export interface Task {
  readonly who: Hand;
  readonly moves: readonly Move[];
  /** Seconds from the first reach until the limb is back (of an assistant: until the last knob acts). */
  readonly seconds: number;
  /** Where it is done long before: a rest inside the section, or any time in it; `null`: right before the change. */
  readonly ahead: Rest | "any time" | null;
  /** Whether the page is turned by this hand as well. */
  readonly turns: boolean;
}

/** One way to make a change. */
export interface Handling {
  readonly tasks: readonly Task[];
  /** Time there is over time needed, for whoever is most pressed; at most 9.99. */
  readonly slack: number;
  /** Seconds that the most pressed needs, and has; both 0 where nobody is pressed. */
  readonly need: number;
  readonly available: number;
}

/** Who and what there is to make changes with. */
export interface Crew {
  readonly assistant: Jamb | "none";
  /** Whether every label must be read. */
  readonly reads: boolean;
  /** Factor of the pace. */
  readonly pace: number;
}
