import type { Registration } from "../music/piece.ts";
import type { PlannedSection } from "./planned.ts";
import type { Stand } from "./stand.ts";

/** A stand as a file keeps it. */
export const registrationOf = ({ state, placings }: Stand): Registration => ({
  keyboards: Object.fromEntries(placings.map((each) => [each.part, each.keyboard])),
  octaves: Object.fromEntries(placings.filter((each) => each.octave !== 0).map((each) => [each.part, each.octave])),
  state,
});

/** The registrations of a planned section: its own, then those of its later steps. */
export const registrationsOf = ({ chosen }: PlannedSection): readonly Registration[] =>
  [chosen.entry, ...chosen.steps.map((step) => step.stand)].map(registrationOf);
