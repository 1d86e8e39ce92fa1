import type { PartSound } from "../acoustics/part-sound.ts";
import { isAlike, isOneSilent, leadOf, partName } from "./balance.ts";
import type { PartContext, StepRule } from "./rule.ts";
import { isHymn, isLadder, isVariation } from "./steps.ts";

/** Hundredths of a phon that the ear tells as a step, and that it takes for a leap within a ladder. */
const HEARD = 100;
const LEAP = 1000;
const SAME = -200;
const LEAPS = -150;

function weighed(earlier: PartSound, later: PartSound, context: PartContext): number {
  if (isOneSilent(earlier, later)) return 0;
  const step = Math.abs(leadOf(later, earlier));
  if (step < HEARD && (isLadder(context) ? step < HEARD >> 1 || isAlike(earlier, later) : isAlike(earlier, later)))
    return SAME;
  return isLadder(context) && step > LEAP ? LEAPS : 0;
}

export const stepsAudible: StepRule = {
  id: "steps-audible",
  conventions: [19],
  reads: "steps",
  statement: "One step differs from the next so that it is heard, and a crescendo grows without leaps.",
  why: "A change that nobody hears costs the player a hand, and a leap is no crescendo.",
  source: "common practice",
  severity: "note",
  applies: (context) => context.part.role !== "bass" && !isHymn(context) && !isVariation(context),
  weigh: weighed,
  words: (earlier, later, context, points) => {
    const where = `The ${partName(context)} on the ${context.keyboard.name}`;
    if (points === LEAPS) return { text: `${where} leaps in one step of the ladder.`, remedy: "Put a step between." };
    return isAlike(earlier, later)
      ? {
          text: `${where} sounds the same as in the step before.`,
          remedy: "Leave the step out, or change a family or a pitch.",
        }
      : { text: `${where} changes by less than the ear tells.`, remedy: "Join this step with the next." };
  },
  examples: {
    speaks: [
      {
        organ: "Great: Stopped Diapason 8, Open Diapason 8 => Great: Stopped Diapason 8, Open Diapason 8",
        plays: "plenum on Great",
        says: "The chorus on the Great sounds the same as in the step before.",
      },
      {
        organ:
          "Great: Stopped Diapason 8 (Open Diapason 8, Principal 4, Fifteenth 2, Mixture III) => Great: Stopped Diapason 8, Open Diapason 8, Principal 4, Fifteenth 2, Mixture III",
        plays: "plenum on Great",
        texture: "crescendo",
        says: "The chorus on the Great leaps in one step of the ladder.",
      },
    ],
    silent: [
      {
        organ: "Great: Stopped Diapason 8 (Open Diapason 8) => Great: Stopped Diapason 8, Open Diapason 8",
        plays: "plenum on Great",
        texture: "crescendo",
      },
      {
        organ: "Swell: Oboe 8 (Stopped Diapason 8) => Swell: Stopped Diapason 8 (Oboe 8)",
        plays: "melody on Swell",
      },
    ],
  },
};
