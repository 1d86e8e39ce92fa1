import type { PartSound } from "../acoustics/part-sound.ts";
import { heardTogether, isOneSilent, mustBeApart, soundName, soundNameFirst } from "./balance.ts";
import { ratioWords } from "./loudness-words.ts";
import { agree, named } from "./naming.ts";
import type { PairRule, PartContext } from "./rule.ts";

/** Hundredths of a phon between two voices that still count as equal, each in its own register. */
const EQUAL = 600;
/** Hundredths of a decibel between colours that make two persons of them, and under which they are one. */
const DIFFERENT = 300;
const ONE_COLOUR = 150;
const EQUAL_AND_DIFFERENT = 150;
const EQUAL_ONLY = 50;
const UNEQUAL = 300;
/** The bass as a third voice, which the ear takes for softer than it is: hundredths of a phon over and under a voice. */
const BASS_OVER = 700;
const BASS_UNDER = -2500;
const BASS_MOST = 100;

/** Half a hundredth of a point for each hundredth beyond; a trifle is let pass. */
const beyond = (over: number): number => (over < 50 ? 0 : over >> 1);
const isBass = (context: PartContext): boolean => context.part.role === "bass" && context.part.hands === "feet";

function weighed(first: PartSound, second: PartSound, _firstContext: PartContext, secondContext: PartContext): number {
  if (isOneSilent(first, second)) return 0;
  if (isBass(secondContext)) {
    const { lead } = heardTogether(second, first);
    return -Math.min(BASS_MOST, beyond(Math.max(lead - BASS_OVER, BASS_UNDER - lead)));
  }
  const { lead, colour } = heardTogether(first, second);
  const over = Math.abs(lead) - EQUAL;
  if (over > 0) return -Math.min(UNEQUAL, beyond(over));
  // Two voices drawn alike have no praise to expect; contrast-of-colour speaks of them.
  if (colour < ONE_COLOUR) return 0;
  return colour >= DIFFERENT ? EQUAL_AND_DIFFERENT : EQUAL_ONLY;
}

export const trioVoicesEqual: PairRule = {
  id: "trio-voices-equal",
  conventions: [17],
  reads: "pair",
  listens: true,
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
      const heavy = heardTogether(second, first).lead > 0;
      return {
        text: `${other} in the ${secondContext.keyboard.name} ${heavy ? agree(heard.second.stops, "is too heavy for", "are too heavy for") : agree(heard.second.stops, "is too thin for", "are too thin for")} a trio with ${one}.`,
        remedy: heavy
          ? `Take a stop off the ${secondContext.keyboard.name}.`
          : `Add a stop in the ${secondContext.keyboard.name}, or take one off the ${firstContext.keyboard.name}.`,
      };
    }
    const leads = heardTogether(first, second).lead > 0;
    const [strong, weak] = leads ? [firstContext, secondContext] : [secondContext, firstContext];
    const [loud, soft] = leads ? [heard.first, heard.second] : [heard.second, heard.first];
    return {
      text: `${named(loud.stops)} on the ${strong.keyboard.name} ${agree(loud.stops, "covers", "cover")} ${named(soft.stops)} on the ${weak.keyboard.name}: ${ratioWords(Math.abs(heardTogether(first, second).lead))}.`,
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
        says: "Trompette 8 on the Récit covers Bourdon 8 on the Positif: more than three times as loud.",
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
