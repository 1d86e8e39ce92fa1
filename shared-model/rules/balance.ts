import { type Balance, balanceOf, strengthOf } from "../acoustics/hearing.ts";
import type { PartSound } from "../acoustics/part-sound.ts";
import type { Role } from "../music/texture.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { type Heard, listed, type PartContext } from "./rule.ts";

/** Hundredths of a phon by which the first sound is stronger than the second at the same keys; negative when it is softer. */
export const leadOf = (first: PartSound, second: PartSound): number =>
  strengthOf(first.blend) - strengthOf(second.blend);

/** The two as they are played together. */
export const heardTogether = (first: PartSound, second: PartSound): Balance => balanceOf(first.blend, second.blend);

/** Of two parts one is not drawn at all: other rules speak of that, and there is nothing to compare. */
export const isOneSilent = (first: PartSound, second: PartSound): boolean => first.stops === 0 || second.stops === 0;

const PRINCIPAL = 1;
const FLUTE = 2;
const STRING = 4;
const CELESTE = 8;
/** Bit of the reeds in {@link familiesOf}. */
export const REED = 16;
/** Bit of mutations, cornets and mixtures in {@link familiesOf}. */
export const HARMONICS = 32;

/** The families heard in a part, a bit for each: what a listener tells two keyboards apart by. */
export const familiesOf = (sound: PartSound): number =>
  (sound.principal !== 0 ? PRINCIPAL : 0) |
  (sound.flute !== 0 ? FLUTE : 0) |
  (sound.string !== 0 ? STRING : 0) |
  (sound.celeste !== 0 ? CELESTE : 0) |
  (sound.reed !== 0 ? REED : 0) |
  ((sound.mutation | sound.compound) !== 0 ? HARMONICS : 0);

/** Same kinds at the same pitches. What is inside compounds is left out: it changes with the range where they break. */
export const isAlike = (first: PartSound, second: PartSound): boolean =>
  first.kindsLow === second.kindsLow && first.kindsHigh === second.kindsHigh && first.plain === second.plain;

const oneManual = new WeakMap<Instrument, boolean>();
/** Whether the organ has but one keyboard for the hands. Remembered, since pair rules ask for every pair of sounds. */
export function hasOneManual(instrument: Instrument): boolean {
  let known = oneManual.get(instrument);
  if (known === undefined) {
    known = instrument.divisions.filter((division) => division.kind === "manual").length <= 1;
    oneManual.set(instrument, known);
  }
  return known;
}

/** Whether the second part hears, on the keyboard that both share, every stop that the first could draw there. */
export function hearsAllOf(second: PartContext, first: PartContext): boolean {
  if (first.keyboard !== second.keyboard || first.octave !== second.octave) return false;
  // An octave coupler moves what is heard where; nothing is sure then.
  if ([...first.couplers, ...second.couplers].some((coupler) => coupler.pitch !== 8)) return false;
  const speaksIn = (from: number, to: number, { part, octave }: PartContext): boolean =>
    from <= part.high + 12 * octave && to >= part.low + 12 * octave;
  return first.reach.every(
    (division) =>
      second.reach.includes(division) &&
      division.stops.every(({ from, to }) => !speaksIn(from, to, first) || speaksIn(from, to, second)),
  );
}

/** Whether two parts on one keyboard hear the same stops, whatever is drawn. */
export const hearTheSame = (first: PartContext, second: PartContext): boolean =>
  hearsAllOf(first, second) && hearsAllOf(second, first);

/** Whether the music keeps the two parts on different keyboards. */
export const mustBeApart = (first: Pick<PartContext, "part">, second: Pick<PartContext, "part">): boolean =>
  first.part.apartFrom.includes(second.part.id) || second.part.apartFrom.includes(first.part.id);

const ROLE_WORDS: Readonly<Record<Role, string>> = {
  melody: "melody",
  accompaniment: "accompaniment",
  bass: "bass",
  plenum: "chorus",
  "cantus-firmus": "cantus firmus",
  voice: "voice",
  echo: "echo",
};
const ORDINALS = ["first", "second", "third", "fourth"] as const;

/** The part as a musician calls it: `melody`, `second voice`. */
export function partName(context: Pick<PartContext, "part">): string {
  const { id, role } = context.part;
  const number = /-(\d)$/.exec(id)?.[1];
  const ordinal = number === undefined ? undefined : ORDINALS[Number(number) - 1];
  return ordinal ? `${ordinal} ${ROLE_WORDS[role]}` : ROLE_WORDS[role];
}

/** Stops that a sentence still lists before it names their keyboard instead. */
const LISTED = 3;

/** What sounds in a part, short: `Gedackt 8 and Flöte 4`, or `the Oberwerk` for a long list. */
export const soundName = (heard: Heard, context: PartContext): string =>
  heard.stops.length > LISTED ? `the ${context.keyboard.name}` : listed(heard.stops.map((each) => each.label));

/** The same where a sentence begins. */
export const soundNameFirst = (heard: Heard, context: PartContext): string =>
  soundName(heard, context).replace(/^the /, "The ");

/** Whether all of it stands in a shut box: it is soft and dense, the top taken off. */
export const isShutAway = (sound: PartSound): boolean => sound.shut === 2 && sound.enclosed === sound.stops;
