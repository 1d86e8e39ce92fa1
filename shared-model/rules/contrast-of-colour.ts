import type { PartSound } from "../acoustics/part-sound.ts";
import {
  heardTogether,
  hearTheSame,
  isOneSilent,
  mustBeApart,
  partName,
  soundName,
  soundNameFirst,
} from "./balance.ts";
import { named } from "./naming.ts";
import type { PairRule, PartContext } from "./rule.ts";

const CLEAR = 200;
const SOME = 100;
const ALIKE = -600;

/**
 * Hundredths of a decibel between two colours, from which nobody mistakes them, from which they can be told apart, and
 * under which they are one. Two seats in a church differ by more than 5 dB from partial to partial (Plomp and Steeneken).
 */
const DISTANT = 600;
const TOLD_APART = 300;
const ONE_COLOUR = 150;

/** How far two colours lie apart. */
function apart(solo: PartSound, ground: PartSound): number {
  const { colour } = heardTogether(solo, ground);
  if (colour >= DISTANT) return CLEAR;
  if (colour >= TOLD_APART) return SOME;
  return colour < ONE_COLOUR ? ALIKE : 0;
}

const isSolo = (context: PartContext): boolean => context.part.role === "melody";

export const contrastOfColour: PairRule = {
  id: "contrast-of-colour",
  conventions: [16],
  reads: "pair",
  listens: true,
  statement: "A melody and its accompaniment, or two voices, differ in colour, not only in strength.",
  why: "Two keyboards drawn alike sound like one.",
  source: "common practice",
  severity: "warning",
  // A recipe that leaves the choice of stops open does not mean that both keyboards may choose the same.
  yieldsToPrescription: false,
  applies: (first, second) =>
    second.part.role === "accompaniment"
      ? isSolo(first) || first.part.role === "cantus-firmus"
      : first.part.role === "voice" &&
        second.part.role === "voice" &&
        first.part.id < second.part.id &&
        mustBeApart(first, second),
  most: (first) => (isSolo(first) ? CLEAR : 0),
  mostHere: (solo, ground) => (isSolo(solo) && !hearTheSame(solo, ground) ? CLEAR : 0),
  weigh: (solo, ground, soloContext, groundContext) => {
    if (isOneSilent(solo, ground)) return 0;
    const points = apart(solo, ground);
    // On one keyboard nothing else is to be had: one-keyboard-one-sound speaks of it.
    if (points < 0 && soloContext.keyboard === groundContext.keyboard) return 0;
    return isSolo(soloContext) ? points : Math.min(0, points);
  },
  words: (_solo, _ground, soloContext, groundContext, heard, points) => {
    if (points > 0) {
      const against = `${soundNameFirst(heard.first, soloContext)} against ${soundName(heard.second, groundContext)}`;
      return {
        text: `${against}: ${points === CLEAR ? "two colours that nobody mistakes for one" : "different enough to be told apart"}.`,
      };
    }
    const [solo, ground] = [named(heard.first.stops), named(heard.second.stops)];
    const [other] = heard.first.undrawn;
    return {
      text:
        solo === ground
          ? `The ${soloContext.keyboard.name} and the ${groundContext.keyboard.name} sound alike with ${solo}: the second keyboard is wasted.`
          : `The ${soloContext.keyboard.name} with ${solo} and the ${groundContext.keyboard.name} with ${ground} sound alike: the second keyboard is wasted.`,
      remedy: other
        ? `Give the ${partName(soloContext)} another colour, for instance ${other.label}.`
        : `Give the ${partName(groundContext)} another colour: the ${soloContext.keyboard.name} has no other.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Swell: Oboe 8 | Great: Stopped Diapason 8",
        plays: "melody on Swell, accompaniment on Great",
        says: "Oboe 8 against Stopped Diapason 8: two colours that nobody mistakes for one.",
      },
      {
        organ: "Oberwerk: Gedackt 8, Principal 4, Oktave 2 | Hauptwerk: Gedackt 8, Flöte 4",
        plays: "melody on Oberwerk, accompaniment on Hauptwerk",
        says: "Gedackt 8, Principal 4 and Oktave 2 against Gedackt 8 and Flöte 4: two colours that nobody mistakes for one.",
      },
      {
        organ: "Oberwerk: Gedackt 8 (Nasat 2 2/3) | Hauptwerk: Gedackt 8",
        plays: "melody on Oberwerk, accompaniment on Hauptwerk",
        says: "The Oberwerk and the Hauptwerk sound alike with Gedackt 8: the second keyboard is wasted.",
      },
      {
        organ: "Swell: Open Diapason 8, Principal 4 | Great: Open Diapason 8, Principal 4",
        plays: "melody on Swell, accompaniment on Great",
        says: "The Swell and the Great sound alike with Open Diapason 8 and Principal 4: the second keyboard is wasted.",
      },
      {
        organ: "Oberwerk: Gedackt 8 | Hauptwerk: Gedackt 8 (Flöte 4)",
        plays: "voice on Oberwerk, left-hand voice on Hauptwerk",
        says: "The Oberwerk and the Hauptwerk sound alike with Gedackt 8: the second keyboard is wasted.",
      },
      {
        organ: "Swell: Open Diapason 8 | Great: Stopped Diapason 8, Flute 4",
        plays: "melody on Swell, accompaniment on Great",
        says: "Open Diapason 8 against Stopped Diapason 8 and Flute 4: different enough to be told apart.",
      },
    ],
    silent: [
      {
        organ: "Oberwerk: Principal 8, Oktave 4, Oktave 2 | Hauptwerk: Principal 8, Oktave 4",
        plays: "melody on Oberwerk, accompaniment on Hauptwerk",
      },
      { organ: "Oberwerk: Gedackt 8 | Hauptwerk: Gedackt 8", plays: "plenum on Oberwerk, accompaniment on Hauptwerk" },
    ],
  },
};
