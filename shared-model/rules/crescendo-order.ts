import type { PartSound } from "../acoustics/part-sound.ts";
import { isOneSilent, leadOf } from "./balance.ts";
import { FEET_2, FEET_4, FEET_8, FEET_16 } from "./pitches.ts";
import type { PartContext, StepRule } from "./rule.ts";
import { isLadder } from "./steps.ts";

const FALLS = -300;
const TAKEN_OFF = -100;
const TOO_EARLY = -200;
const SIXTEEN_FIRST = -150;

/** What comes too early in the later sound, by the usual order: 8s, 4s, 2, reeds in the box, mixtures, open reeds. */
type Early = "mixture" | "reed" | "two" | "four" | null;

function early(earlier: PartSound, later: PartSound, context: PartContext): Early {
  if (later.mixtures > earlier.mixtures && (later.plain & FEET_2) === 0 && (later.plain & FEET_4) === 0)
    return "mixture";
  const reedComes = (later.chorusReed & ~earlier.chorusReed) !== 0;
  const shut = later.enclosed > 0 && later.shut === 2;
  // French symphonic and English reeds come before the upperwork, in their box; the German ladder has them last.
  const german =
    context.section.tradition === "german-romantic" && later.mixtures === 0 && (later.plain & FEET_2) === 0;
  if (reedComes && !shut && ((later.plain & FEET_4) === 0 || german)) return "reed";
  if ((later.plain & ~earlier.plain & FEET_2) !== 0 && (later.plain & FEET_4) === 0) return "two";
  return (later.plain & ~earlier.plain & FEET_4) !== 0 && (later.plain & FEET_8) === 0 ? "four" : null;
}

function weighed(earlier: PartSound, later: PartSound, context: PartContext): number {
  if (isOneSilent(earlier, later)) return 0;
  if (leadOf(later, earlier) < 0) return FALLS;
  if (early(earlier, later, context) !== null) return TOO_EARLY;
  if ((later.plain & ~earlier.plain & FEET_16) !== 0 && (later.plain & FEET_4) === 0) return SIXTEEN_FIRST;
  return (earlier.plain & ~later.plain) !== 0 ? TAKEN_OFF : 0;
}

const NAMES = { mixture: "The mixture", reed: "A great reed", two: "The 2", four: "The 4" } as const;
const WANTED = {
  mixture: "Bring the 4 and the 2 before it.",
  reed: "Bring it after the flues, or shut in its box.",
  two: "Bring the 4 before it.",
  four: "Bring an 8 before it.",
} as const;

export const crescendoOrder: StepRule = {
  id: "crescendo-order",
  conventions: [19],
  reads: "steps",
  statement:
    "A crescendo starts from the softest flue and adds 8s, 4s, 2, reeds in their box, mixtures, open reeds, with 16s once there is something above to carry them.",
  why: "Each stop joins a sound that already covers its entry.",
  source: "walcker-1915",
  severity: "warning",
  applies: (context) => isLadder(context) && context.part.role !== "bass",
  weigh: weighed,
  words: (earlier, later, context, points) => {
    const where = `on the ${context.keyboard.name}`;
    if (points === FALLS)
      return {
        text: `This step ${where} is softer than the one before.`,
        remedy: "Keep what is drawn, and add to it.",
      };
    if (points === SIXTEEN_FIRST)
      return { text: `The 16 ${where} comes before any 4.`, remedy: "Bring it once an 8 and a 4 lie over it." };
    if (points === TAKEN_OFF)
      return {
        text: `A pitch that sounded ${where} goes off again as the sound grows.`,
        remedy: "Keep what is drawn, and add to it.",
      };
    const what = early(earlier, later, context) ?? "mixture";
    return { text: `${NAMES[what]} ${where} comes before its turn.`, remedy: WANTED[what] };
  },
  examples: {
    speaks: [
      {
        organ:
          "Great: Open Diapason 8 (Principal 4, Fifteenth 2, Mixture III) => Great: Open Diapason 8, Mixture III (Principal 4, Fifteenth 2)",
        plays: "plenum on Great",
        texture: "crescendo",
        says: "The mixture on the Great comes before its turn.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4 => Great: Stopped Diapason 8, Principal 4",
        plays: "plenum on Great",
        texture: "crescendo",
        says: "This step on the Great is softer than the one before.",
      },
      {
        organ: "Manual I: Principal 8, Oktave 4 (Trompete 8) => Manual I: Principal 8, Oktave 4, Trompete 8",
        plays: "plenum on Manual I",
        texture: "terraced-crescendo",
        tradition: "german-romantic",
        says: "A great reed on the Manual I comes before its turn.",
      },
    ],
    silent: [
      {
        organ: "Great: Open Diapason 8 (Principal 4) => Great: Open Diapason 8, Principal 4",
        plays: "plenum on Great",
        texture: "crescendo",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4 => Great: Stopped Diapason 8, Principal 4",
        plays: "plenum on Great",
        texture: "plenum",
      },
    ],
  },
};
