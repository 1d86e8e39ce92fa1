import type { PartSound } from "../acoustics/part-sound.ts";
import { familiesOf, isAlike, isOneSilent, leadOf, mustBeApart, soundName, soundNameFirst } from "./balance.ts";
import { agree, named } from "./naming.ts";
import type { PairRule, PartContext } from "./rule.ts";

/** Hundredths of a decibel between two voices that still count as equal: common practice. */
const EQUAL = 300;
const EQUAL_AND_DIFFERENT = 150;
const EQUAL_ONLY = 50;
const UNEQUAL = 300;
/** The bass as a third voice: about 7 dB either way. */
const BASS_FACTOR = 5;
const BASS_LEVEL = 700;
const BASS_MOST = 100;

/** Half a point for each hundredth beyond; a trifle is let pass. */
const beyond = (over: number): number => (over < 50 ? 0 : over >> 1);
const isBass = (context: PartContext): boolean => context.part.role === "bass" && context.part.hands === "feet";

function weighed(first: PartSound, second: PartSound, _firstContext: PartContext, secondContext: PartContext): number {
  if (isOneSilent(first, second)) return 0;
  if (isBass(secondContext)) {
    if (second.power <= first.power * BASS_FACTOR && second.power * BASS_FACTOR >= first.power) return 0;
    return -Math.min(BASS_MOST, beyond(Math.abs(leadOf(first, second)) - BASS_LEVEL));
  }
  const over = Math.abs(leadOf(first, second)) - EQUAL;
  if (over > 0) return -Math.min(UNEQUAL, over);
  // Two voices drawn alike have no praise to expect; contrast-of-colour speaks of them.
  if (isAlike(first, second)) return 0;
  return familiesOf(first) !== familiesOf(second) ? EQUAL_AND_DIFFERENT : EQUAL_ONLY;
}

export const trioVoicesEqual: PairRule = {
  id: "trio-voices-equal",
  conventions: [17],
  reads: "pair",
  statement: "The voices of a trio are equal in strength and different in colour, the pedal a light third among them.",
  why: "Three people converse; none of them gives a speech.",
  source: "boyvin-1690",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (first, second) =>
    first.part.role === "voice" &&
    (isBass(second) || (second.part.role === "voice" && first.part.id < second.part.id && mustBeApart(first, second))),
  most: (_first, second) => (isBass(second) ? 0 : EQUAL_AND_DIFFERENT),
  weigh: weighed,
  words: (first, second, firstContext, secondContext, heard, points) => {
    const [one, other] = [named(heard.first.stops), named(heard.second.stops)];
    if (points > 0) {
      const against = `${soundNameFirst(heard.first, firstContext)} against ${soundName(heard.second, secondContext)}`;
      return {
        text: `${against}: equal in strength, ${points === EQUAL_AND_DIFFERENT ? "different" : "near"} in colour.`,
      };
    }
    if (isBass(secondContext)) {
      const heavy = second.power > first.power;
      return {
        text: `${other} in the ${secondContext.keyboard.name} ${heavy ? agree(heard.second.stops, "is too heavy for", "are too heavy for") : agree(heard.second.stops, "is too thin for", "are too thin for")} a trio with ${one}.`,
        remedy: heavy
          ? `Take a stop off the ${secondContext.keyboard.name}.`
          : `Add a stop in the ${secondContext.keyboard.name}, or take one off the ${firstContext.keyboard.name}.`,
      };
    }
    const [strong, weak] = first.power > second.power ? [firstContext, secondContext] : [secondContext, firstContext];
    const [loud, soft] = first.power > second.power ? [heard.first, heard.second] : [heard.second, heard.first];
    return {
      text: `${named(loud.stops)} on the ${strong.keyboard.name} ${agree(loud.stops, "covers", "cover")} ${named(soft.stops)} on the ${weak.keyboard.name}.`,
      remedy:
        loud.stops.length > 1
          ? `Take a stop off the ${strong.keyboard.name}.`
          : `Draw a softer stop on the ${strong.keyboard.name}, or a stronger one on the ${weak.keyboard.name}.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Principal 8 | Positiv: Gedackt 8, Flöte 4",
        plays: "voice on Hauptwerk, left-hand voice on Positiv",
        says: "Principal 8 against Gedackt 8 and Flöte 4: equal in strength, different in colour.",
      },
      {
        organ: "Positif: Bourdon 8 | Récit: Trompette 8",
        plays: "voice on Positif, left-hand voice on Récit",
        says: "Trompette 8 on the Récit covers Bourdon 8 on the Positif.",
      },
      {
        organ: "Oberwerk: Gedackt 8 | Hauptwerk: Principal 8 | Pedal: Subbass 16, Oktave 8, Posaune 16",
        plays: "voice on Oberwerk, bass on Pedal",
        says: "Subbass 16, Oktave 8 and Posaune 16 in the Pedal are too heavy for a trio with Gedackt 8.",
      },
    ],
    silent: [
      { organ: "Oberwerk: Gedackt 8 | Pedal: Subbass 16, Gedackt 8", plays: "voice on Oberwerk, bass on Pedal" },
      {
        organ: "Oberwerk: Gedackt 8 | Hauptwerk: Gedackt 8",
        plays: "melody on Oberwerk, left-hand voice on Hauptwerk",
      },
    ],
  },
};
