import type { PartSound } from "../acoustics/part-sound.ts";
import { familiesOf, isAlike, isOneSilent } from "./balance.ts";
import type { StepRule } from "./rule.ts";
import { isVariation } from "./steps.ts";

const SAME = -300;
const ONLY_LOUDER = -150;

function weighed(earlier: PartSound, later: PartSound): number {
  if (isOneSilent(earlier, later)) return 0;
  if (isAlike(earlier, later)) return SAME;
  return familiesOf(earlier) === familiesOf(later) && earlier.plain === later.plain ? ONLY_LOUDER : 0;
}

export const variationsDiffer: StepRule = {
  id: "variations-differ",
  conventions: [48],
  reads: "steps",
  statement: "Neighbouring variations differ in family or pitches, not only in strength.",
  why: "The theme stays; the colour must tell that this is another variation.",
  source: "common practice",
  severity: "note",
  applies: (context) => isVariation(context) && context.part.role !== "bass",
  weigh: weighed,
  words: (_earlier, _later, context, points) => ({
    text:
      points === SAME
        ? `The variation on the ${context.keyboard.name} has the stops of the one before.`
        : `The variation on the ${context.keyboard.name} has the families and pitches of the one before.`,
    remedy: "Change to another family, or leave a gap between the pitches (8 with 2, 4 alone).",
  }),
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Gedackt 8, Flöte 4 (Principal 8) => Hauptwerk: Gedackt 8, Flöte 4 (Principal 8)",
        plays: "plenum on Hauptwerk",
        texture: "partita-variation",
        tradition: "central-german",
        says: "The variation on the Hauptwerk has the stops of the one before.",
      },
      {
        organ: "Hauptwerk: Gedackt 8 (Hohlflöte 8) => Hauptwerk: Hohlflöte 8 (Gedackt 8)",
        plays: "plenum on Hauptwerk",
        texture: "partita-variation",
        tradition: "central-german",
        says: "The variation on the Hauptwerk has the families and pitches of the one before.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Gedackt 8 (Flöte 4) => Hauptwerk: Flöte 4 (Gedackt 8)",
        plays: "plenum on Hauptwerk",
        texture: "partita-variation",
        tradition: "central-german",
      },
      {
        organ: "Hauptwerk: Gedackt 8, Flöte 4 => Hauptwerk: Gedackt 8, Flöte 4",
        plays: "plenum on Hauptwerk",
        texture: "plenum",
      },
    ],
  },
};
