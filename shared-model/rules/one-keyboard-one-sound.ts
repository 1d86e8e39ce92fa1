import type { PartSound } from "../acoustics/part-sound.ts";
import type { Role } from "../music/texture.ts";
import { hasOneManual, hearsAllOf, hearTheSame, isAlike, isOneSilent, mustBeApart, partName } from "./balance.ts";
import { named } from "./naming.ts";
import type { PairRule, PartContext } from "./rule.ts";

const NO_CONTRAST = -1500;
const SOLO_IN_THE_CHORDS = -900;

/** The one that must stand out comes first; its sound may hold the other's stops, never the other way round. */
const PROMINENCE: Readonly<Record<Role, number>> = {
  melody: 3,
  "cantus-firmus": 3,
  voice: 2,
  bass: 2,
  plenum: 2,
  accompaniment: 1,
  echo: 0,
};

const meet = (first: PartContext, second: PartContext): boolean =>
  first.keyboard === second.keyboard || first.reach.some((division) => second.reach.includes(division));

/** Whether all that sounds in the first part sounds in the second too, as far as kinds and pitches tell. */
function isWithin(inner: PartSound, outer: PartSound, innerContext: PartContext, outerContext: PartContext): boolean {
  if ((inner.kindsLow & ~outer.kindsLow) !== 0 || (inner.kindsHigh & ~outer.kindsHigh) !== 0) return false;
  return innerContext.octave !== outerContext.octave || (inner.plain & ~outer.plain) === 0;
}

/** Whether the keyboards or couplers let one part be heard in the other, against the purpose of the music. */
function isLost(first: PartSound, second: PartSound, firstContext: PartContext, secondContext: PartContext): boolean {
  if (isOneSilent(first, second)) return false;
  const [one, other] = [PROMINENCE[firstContext.part.role], PROMINENCE[secondContext.part.role]];
  const within = isWithin(first, second, firstContext, secondContext);
  if (one !== other) return within && meet(firstContext, secondContext);
  // Of two choruses one may stand inside the other: the smaller coupled to the larger.
  const lost =
    firstContext.part.role === "plenum"
      ? isAlike(first, second)
      : within || isWithin(second, first, secondContext, firstContext);
  return lost && meet(firstContext, secondContext);
}

/** Whether the second part hears every stop that the first could draw on the one keyboard they share. */
function isSurelyWithin(first: PartContext, second: PartContext): boolean {
  if (!hasOneManual(first.instrument)) return false;
  if (PROMINENCE[first.part.role] === PROMINENCE[second.part.role] && first.part.role === "plenum") return false;
  return hearsAllOf(second, first);
}

/** Couplers that bring one keyboard, or what sounds on it, to the other. */
function bridge(from: PartContext, to: PartContext): string | undefined {
  const straight = to.couplers.find((each) => each.from === from.keyboard.name && each.to === to.keyboard.name);
  return (straight ?? to.couplers.find((each) => from.reach.some((division) => division.name === each.from)))?.name;
}

export const oneKeyboardOneSound: PairRule = {
  id: "one-keyboard-one-sound",
  conventions: [23, 30],
  reads: "pair",
  statement:
    "Two parts that must differ do not sound on one keyboard, and no coupler carries the solo into the quieter part.",
  why: "A keyboard has one sound at a time, but for divided stops; what is coupled to it sounds along.",
  source: "common practice",
  severity: "error",
  yieldsToPrescription: false,
  applies: (first, second) => {
    if (!mustBeApart(first, second)) return false;
    const [one, other] = [PROMINENCE[first.part.role], PROMINENCE[second.part.role]];
    return one > other || (one === other && first.part.id < second.part.id);
  },
  most: () => 0,
  mostHere: (first, second) => {
    if (hasOneManual(first.instrument) && hearTheSame(first, second)) return NO_CONTRAST;
    return isSurelyWithin(first, second) ? SOLO_IN_THE_CHORDS : 0;
  },
  forbids: (first, second, firstContext, secondContext) =>
    !hasOneManual(firstContext.instrument) && isLost(first, second, firstContext, secondContext),
  weigh: (first, second, firstContext, secondContext) => {
    if (!hasOneManual(firstContext.instrument) || !isLost(first, second, firstContext, secondContext)) return 0;
    return isAlike(first, second) ? NO_CONTRAST : SOLO_IN_THE_CHORDS;
  },
  words: (_first, _second, firstContext, secondContext, heard, points) => {
    const [one, other] = [partName(firstContext), partName(secondContext)];
    const keyboard = secondContext.keyboard.name;
    if (hasOneManual(firstContext.instrument)) {
      const half = heard.first.undrawn.find((each) => each.stop.half === "treble");
      return {
        text:
          points === SOLO_IN_THE_CHORDS
            ? `On one keyboard the ${other} runs into ${named(heard.first.stops)} of the ${one}.`
            : `On one keyboard the ${one} and the ${other} sound alike: ${named(heard.first.stops)}.`,
        remedy: half
          ? `Draw ${half.label} for the ${one}, and keep the other hand in the bass half.`
          : firstContext.keyboard.stops.some((stop) => stop.half !== null)
            ? `Keep the ${other} in the bass half, and leave the ${one} a treble half of its own.`
            : `The ${keyboard} has no divided stops: let the ${one} lie apart from the other hand, which plays lightly.`,
      };
    }
    if (firstContext.keyboard === secondContext.keyboard) {
      const free = firstContext.instrument.divisions.find(
        (each) => each.kind === "manual" && each !== firstContext.keyboard,
      );
      return {
        text: `The ${one} and the ${other} lie on one keyboard, the ${keyboard}, and sound alike.`,
        remedy: `Play one of them on the ${free?.name}.`,
      };
    }
    const into = bridge(firstContext, secondContext);
    const coupler = into ?? bridge(secondContext, firstContext) ?? "A coupler that cannot be taken off";
    return {
      text: into
        ? `${coupler} carries the ${one} into the ${other}.`
        : `${coupler} gives the ${one} the very sound of the ${other}.`,
      remedy: into ? `Take ${coupler} off.` : `Draw a stop for the ${one} alone, or take ${coupler} off.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Órgano: Violón 8 bass, Violón 8 treble, Corneta V treble",
        plays: "melody on Órgano, accompaniment on Órgano",
        ranges: { melody: "C4-A5", accompaniment: "C4-G4" },
        says: "On one keyboard the melody and the accompaniment sound alike: Violón 8 treble and Corneta V treble.",
      },
      {
        organ: "Positif: Bourdon 8 | Récit: (Hautbois 8)",
        plays: "melody on Récit, accompaniment on Positif",
        couplers: ["Positif to Récit"],
        says: "Positif to Récit gives the melody the very sound of the accompaniment.",
      },
      {
        organ: "Hauptwerk: Gedackt 8, Flöte 4 | Oberwerk: Principal 4",
        plays: "melody on Hauptwerk, accompaniment on Hauptwerk",
        says: "The melody and the accompaniment lie on one keyboard, the Hauptwerk, and sound alike.",
      },
      {
        organ: "Oberwerk: Gedackt 8, Nasat 2 2/3 | Hauptwerk: Gedackt 8",
        plays: "melody on Oberwerk, accompaniment on Hauptwerk",
        couplers: ["Oberwerk to Hauptwerk"],
        says: "Oberwerk to Hauptwerk carries the melody into the accompaniment.",
      },
      {
        organ: "Manual: Gedackt 8, Flöte 4",
        plays: "melody on Manual, accompaniment on Manual",
        says: "On one keyboard the melody and the accompaniment sound alike: Gedackt 8 and Flöte 4.",
      },
    ],
    silent: [
      {
        organ: "Oberwerk: Gedackt 8, Nasat 2 2/3 | Hauptwerk: Gedackt 8",
        plays: "melody on Oberwerk, accompaniment on Hauptwerk",
        couplers: ["Hauptwerk to Oberwerk"],
      },
      {
        organ: "Órgano: Violón 8 bass, Corneta V treble",
        plays: "melody on Órgano, accompaniment on Órgano",
        ranges: { melody: "C4-A5", accompaniment: "C3-B3" },
      },
      {
        organ: "Hauptwerk: Gedackt 8, Flöte 4 | Oberwerk: Principal 4",
        plays: "plenum on Hauptwerk, accompaniment on Hauptwerk",
      },
    ],
  },
};
