import type { PartSound } from "../acoustics/part-sound.ts";
import { isAlike, isOneSilent, leadOf } from "./balance.ts";
import type { PartContext, StepRule } from "./rule.ts";
import { isHymn } from "./steps.ts";

/** Hundredths of a phon: a verse that is largest, or softer, is so by about this much. Common practice. */
const STEP = 150;
const NOT_LARGEST = -200;
const NOT_SOFTER = -150;
const SAME = -100;

function weighed(earlier: PartSound, later: PartSound, context: PartContext): number {
  if (isOneSilent(earlier, later)) return 0;
  const step = leadOf(later, earlier);
  if (context.section.texture === "hymn-verse-last") return step >= STEP ? 0 : NOT_LARGEST;
  if (context.section.texture === "hymn-verse-quiet") return step <= -STEP ? 0 : NOT_SOFTER;
  return isAlike(earlier, later) && step === 0 ? SAME : 0;
}

export const versesGrow: StepRule = {
  id: "verses-grow",
  conventions: [45],
  reads: "steps",
  statement:
    "Verses of a hymn change by a stop or two between them, a quiet one is softer than its neighbours, and the last is the largest.",
  why: "The words change from verse to verse, and the last one crowns the singing.",
  source: "lesson-hymns",
  severity: "note",
  applies: (context) => isHymn(context) && (context.part.role === "plenum" || context.part.role === "melody"),
  weigh: weighed,
  words: (_earlier, _later, context, points) => {
    const where = `on the ${context.keyboard.name}`;
    if (points === NOT_LARGEST) {
      return {
        text: `The last verse ${where} is not larger than the one before.`,
        remedy: "Add a mixture, a reed or a 16, or lighten the verse before.",
      };
    }
    if (points === NOT_SOFTER)
      return {
        text: `The quiet verse ${where} is not softer than the one before.`,
        remedy: "Take off the 2, or a principal.",
      };
    return {
      text: `The verse ${where} sounds like the one before.`,
      remedy: "Add or take off one stop in the breath between the verses.",
    };
  },
  examples: {
    speaks: [
      {
        organ:
          "Great: Open Diapason 8, Principal 4, Fifteenth 2 (Mixture III) => Great: Open Diapason 8, Principal 4, Fifteenth 2 (Mixture III)",
        plays: "plenum on Great",
        texture: "hymn-verse-last",
        says: "The last verse on the Great is not larger than the one before.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4 => Great: Open Diapason 8, Principal 4",
        plays: "plenum on Great",
        texture: "hymn-verse",
        says: "The verse on the Great sounds like the one before.",
      },
    ],
    silent: [
      {
        organ:
          "Great: Open Diapason 8, Principal 4 (Fifteenth 2, Mixture III) => Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture III",
        plays: "plenum on Great",
        texture: "hymn-verse-last",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2 => Great: Stopped Diapason 8, Principal 4",
        plays: "plenum on Great",
        texture: "hymn-verse-quiet",
      },
    ],
  },
};
