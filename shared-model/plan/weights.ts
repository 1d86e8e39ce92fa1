import type { Points } from "../rules/rule.ts";

/** What the work of changing counts against the quality of registrations, in the points of scores. Our own setting. */
export interface PlanWeights {
  /** Each knob moved right before a change, and each that can be moved at leisure, afterwards or not at all. */
  readonly knob: Points;
  readonly leisure: Points;
  /** A piston pressed. */
  readonly press: Points;
  /** A limb that goes to another keyboard, and one that goes to another octave. */
  readonly shift: Points;
  readonly octave: Points;
  /** A change that has to be quick. */
  readonly brisk: Points;
  /** A change that needs the assistant who is there. */
  readonly assistant: Points;
  /** Leaving a registration that the piece has already, without being pinned. */
  readonly disturbed: Points;
}

export const USUAL_WEIGHTS: PlanWeights = {
  knob: 20,
  leisure: 5,
  press: 10,
  shift: 10,
  octave: 20,
  brisk: 200,
  assistant: 150,
  disturbed: 100,
};

/**
 * Costs that come before all points: a link broken is worse than any number of changes that cannot be made, and such a change
 * worse than any loss of points. A piece has at most 500 sections, and no section's points reach 100,000.
 */
export const TIERS = { link: 1e12, impossible: 3e8, absent: 1e8 } as const;
