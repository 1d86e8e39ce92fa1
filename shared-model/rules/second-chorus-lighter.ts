import type { PartSound } from "../acoustics/part-sound.ts";
import { countPitches, lowestOf, OCTAVES } from "../acoustics/pitch-set.ts";
import { hasOneManual, isOneSilent, leadOf } from "./balance.ts";
import { agree, mixturesOf, named } from "./naming.ts";
import type { PairRule, PartContext } from "./rule.ts";

/** Hundredths of a phon between the choruses: a step, no more than a terrace. Common practice. */
const LEAST = 50;
const FARTHEST = 700;
const RIGHT = 100;
const ONE_MIXTURE = 250;
const THIN = 150;
const WRONG_STEP = 200;
const NO_STEP = 150;

/** Octaves by which the second chorus begins higher than the first. */
function thinner(first: PartSound, second: PartSound): number {
  const [one, other] = [lowestOf(first.plain & OCTAVES), lowestOf(second.plain & OCTAVES)];
  if (one === 0 || other === 0) return 0;
  const [deep, high] = one < other ? [one, other] : [other, one];
  return countPitches(OCTAVES & (high - 1) & ~(deep - 1));
}

function weighed(first: PartSound, second: PartSound, firstContext: PartContext, secondContext: PartContext): number {
  if (isOneSilent(first, second) || firstContext.keyboard === secondContext.keyboard) return 0;
  const mixture = first.mixtures > 0 === second.mixtures > 0 ? 0 : ONE_MIXTURE;
  const bottom = thinner(first, second) > 1 ? THIN : 0;
  const step = Math.abs(leadOf(first, second));
  const away = step < LEAST ? NO_STEP : step > FARTHEST ? Math.min(WRONG_STEP, step - FARTHEST) : 0;
  return RIGHT - mixture - bottom - away;
}

export const secondChorusLighter: PairRule = {
  id: "second-chorus-lighter",
  conventions: [50],
  reads: "pair",
  statement:
    "Of two choruses in turn one is a step lighter, of the same family; both have a mixture or neither, and neither lacks the other's ground by more than an octave.",
  why: "They are two choirs, not a choir and a soloist.",
  source: "common practice",
  severity: "note",
  yieldsToPrescription: true,
  applies: (first, second) =>
    first.part.role === "plenum" &&
    second.part.role === "plenum" &&
    first.part.id < second.part.id &&
    !hasOneManual(first.instrument),
  most: () => RIGHT,
  weigh: weighed,
  words: (first, second, firstContext, secondContext, heard, points) => {
    const [one, other] = [firstContext.keyboard.name, secondContext.keyboard.name];
    if (points === RIGHT)
      return { text: `The choruses of the ${one} and the ${other} answer each other a step apart.` };
    const strong = leadOf(first, second) > 0 ? one : other;
    if (points > 0)
      return {
        text: `The choruses of the ${one} and the ${other} answer each other, the ${strong} much the stronger.`,
      };
    if (first.mixtures > 0 !== second.mixtures > 0) {
      const [rich, bare] = first.mixtures > 0 ? [heard.first, heard.second] : [heard.second, heard.first];
      const name = first.mixtures > 0 ? other : one;
      const [mixture] = mixturesOf(bare.undrawn);
      return {
        text: `${named(mixturesOf(rich.stops))} ${agree(mixturesOf(rich.stops), "crowns", "crown")} one chorus, and the ${name} has no mixture to answer it.`,
        remedy: mixture ? `Draw ${mixture.label}.` : `The ${name} has none: leave the mixture out of both.`,
      };
    }
    if (thinner(first, second) > 1) {
      const thin = lowestOf(first.plain & OCTAVES) > lowestOf(second.plain & OCTAVES) ? one : other;
      return {
        text: `The chorus of the ${thin} begins two octaves above the other and cannot answer it.`,
        remedy: `Draw a deeper stop on the ${thin}.`,
      };
    }
    const step = Math.abs(leadOf(first, second));
    if (step < LEAST)
      return {
        text: `The choruses of the ${one} and the ${other} are equally strong, so that no step is heard.`,
        remedy: "Make one of them a little lighter.",
      };
    return {
      text: `The chorus of the ${strong} overwhelms the other.`,
      remedy: `Take a stop off the ${strong}, or add one to the other.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Mixtur IV | Rückpositiv: Gedackt 8, Principal 4, Scharff III",
        plays: "plenum on Hauptwerk, plenum on Rückpositiv",
        says: "The choruses of the Hauptwerk and the Rückpositiv answer each other a step apart.",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4 | Rückpositiv: Principal 8, Oktave 4",
        plays: "plenum on Hauptwerk, plenum on Rückpositiv",
        says: "The choruses of the Hauptwerk and the Rückpositiv are equally strong, so that no step is heard.",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Mixtur IV | Rückpositiv: Gedackt 8, Principal 4 (Scharff III)",
        plays: "plenum on Hauptwerk, plenum on Rückpositiv",
        says: "Mixtur IV crowns one chorus, and the Rückpositiv has no mixture to answer it.",
      },
      {
        organ: "Hauptwerk: Principal 16, Oktave 8, Oktave 4 | Brustwerk: Principal 4, Oktave 2",
        plays: "plenum on Hauptwerk, plenum on Brustwerk",
        says: "The chorus of the Brustwerk begins two octaves above the other and cannot answer it.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Mixtur IV | Rückpositiv: Gedackt 8",
        plays: "plenum on Hauptwerk, accompaniment on Rückpositiv",
      },
      { organ: "Manual: Principal 8, Oktave 4, Mixtur IV", plays: "plenum on Manual, plenum on Manual" },
    ],
  },
};
