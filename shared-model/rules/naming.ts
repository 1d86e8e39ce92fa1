import { isCompound } from "../acoustics/voice.ts";
import { mayLack } from "../console/range.ts";
import { reachOf } from "../console/reach.ts";
import { compareFeet, type Foot, footOf, stretch } from "../pitch/foot.ts";
import { type Key, keyText } from "../pitch/key.ts";
import { pitchName } from "../pitch/reading.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";
import { type Heard, type HeardStop, listed, listedBriefly, type PartContext } from "./rule.ts";

/** The stops' labels; two of one label by their divisions too. */
const labelsOf = (stops: readonly HeardStop[]): readonly string[] =>
  stops.map(({ label, stop }) =>
    stops.some((other) => other.label === label && other.stop !== stop) ? `${label} (${stop.division})` : label,
  );
/** The stops as a sentence names them: of many the first few, and how many others. */
export const named = (stops: readonly HeardStop[]): string => listedBriefly(labelsOf(stops));
/** Every one of them, for a remedy that a hand has to follow. */
export const allNamed = (stops: readonly HeardStop[]): string => listed(labelsOf(stops));
/** Their ids, for the stops that words concern. */
export const idsOf = (stops: readonly HeardStop[]): readonly string[] => stops.map((each) => each.stop.id);
/** The first word for one stop, the second for several or none: `is`, `are`. */
export const agree = (stops: readonly unknown[], one: string, several: string): string =>
  stops.length === 1 ? one : several;

const isOf = (stop: Stop, kinds: readonly Kind[]): boolean => stop.kinds.some((kind) => kinds.includes(kind));
/** `the Great`, but `Manual III`: a keyboard called by its number takes no article. */
export const the = ({ keyboard }: PartContext): string =>
  /^(?:manual|clavier|klavier|teclado|tastiera)?\s*(?:[ivx]+|\d+)$/iu.test(keyboard.name)
    ? keyboard.name
    : `the ${keyboard.name}`;
/** The same at the start of a sentence: `The Great`. */
export const The = (context: PartContext): string => the(context).replace(/^t/, "T");

/** Those of these kinds. */
export const ofKinds = (stops: readonly HeardStop[], kinds: readonly Kind[]): readonly HeardStop[] =>
  stops.filter((each) => isOf(each.stop, kinds));
/** Those on a tongue. */
export const reedsOf = (stops: readonly HeardStop[]): readonly HeardStop[] => ofKinds(stops, KIND_GROUPS.reed);
/** Mixtures, cymbals and rauschpfeifes. */
export const mixturesOf = (stops: readonly HeardStop[]): readonly HeardStop[] =>
  ofKinds(stops, ["mixture", "cymbal", "rauschpfeife"]);

const lengthsIn = new WeakMap<PartContext, Map<Stop, readonly Foot[]>>();

/**
 * The lengths at which a stop sounds for the part's written keys: one for each way in which the keyboard reaches its division.
 * Empty for compounds and effects. Remembered, since words are made from all undrawn stops at every touch.
 */
export function lengthsOf(stop: Stop, context: PartContext): readonly Foot[] {
  let table = lengthsIn.get(context);
  if (!table) {
    table = new Map();
    lengthsIn.set(context, table);
  }
  let lengths = table.get(stop);
  if (!lengths) {
    lengths = reckonedLengths(stop, context);
    table.set(stop, lengths);
  }
  return lengths;
}

function reckonedLengths(stop: Stop, context: PartContext): readonly Foot[] {
  const { pitch, ranks, division } = stop;
  if (pitch === null || isCompound(stop) || ranks === 0) return [];
  const { instrument, keyboard, couplers, octave, unisonOff } = context;
  return reachOf(instrument, keyboard, (coupler) => coupler.fixed || couplers.includes(coupler), unisonOff)
    .filter((reached) => reached.division.name === division)
    .map(({ shift }) => {
      const higher = octave + shift;
      return higher >= 0 ? stretch(pitch, 1, 2 ** higher) : stretch(pitch, 2 ** -higher);
    });
}

/** The first of these lengths, by the shortest way; `null` for compounds and effects. */
export const soundsAt = (stop: Stop, context: PartContext): Foot | null => lengthsOf(stop, context)[0] ?? null;

/** Those that sound at that length for the written keys. */
export const soundingAt = (stops: readonly HeardStop[], foot: Foot, context: PartContext): readonly HeardStop[] =>
  stops.filter((each) => lengthsOf(each.stop, context).includes(foot));
/** Those that sound deeper than that length for the written keys. */
export const soundingBelow = (stops: readonly HeardStop[], foot: Foot, context: PartContext): readonly HeardStop[] =>
  stops.filter((each) => lengthsOf(each.stop, context).some((sounds) => compareFeet(sounds, foot) < 0));

/** An undrawn flue of these kinds (any flue when none are named) that sounds at that length over the whole part. */
export function undrawnAt(
  heard: Heard,
  foot: Foot,
  context: PartContext,
  kinds: readonly Kind[] = KIND_GROUPS.foundation,
) {
  const serving = heard.undrawn.filter((each) => each.silent.length === 0 && !each.stop.off && isOf(each.stop, kinds));
  return soundingAt(serving, foot, context)[0];
}

/** `Draw Gedackt 8.`, or what to do when the organ has no such stop. */
export const draw = (stop: HeardStop | undefined, otherwise: string): string =>
  stop ? `Draw ${stop.label}.` : otherwise;

/** `Leave out Mixtur IV.` */
export const leaveOut = (stops: readonly HeardStop[]): string => `Leave out ${allNamed(stops)}.`;

/** `8'`, `2 2/3'`. */
export const feet = (foot: Foot): string => `${pitchName(foot)}'`;

/** The length at which the part should sound. */
export const unisonFoot = (context: PartContext): Foot => footOf(context.part.sounding);

/** A length of the octave series: 16, 8, 4, 1/2. */
export const isOctave = (foot: Foot): boolean =>
  (foot.over & (foot.over - 1)) === 0 && (foot.under & (foot.under - 1)) === 0;

/**
 * Keys of the part that the keyboard does not have at the octave at which it is played. A few keys of a range that nobody
 * stated are cut away and not judged, so they are not named either.
 */
export function keysOutside({ part, keyboard, octave }: PartContext): readonly Key[] {
  const { low, high } = keyboard.compass;
  const keys = Array.from({ length: part.high - part.low + 1 }, (_, index) => part.low + index);
  const outside = keys.filter((key) => key + 12 * octave < low || key + 12 * octave > high);
  return part.stated || !mayLack(outside.length, keys.length) ? outside : [];
}

/** Keys on which none of the stops speaks, those that the keyboard lacks among them. Empty when there is no stop. */
export function keysWithout(stops: readonly HeardStop[], context: PartContext): readonly Key[] {
  const [first, ...others] = stops;
  const silent = first?.silent.filter((key) => others.every((each) => each.silent.includes(key))) ?? [];
  return [...new Set([...silent, ...keysOutside(context)])].sort((a, b) => a - b);
}

/** `C2 to B2`, `C2 to E2 and C6`, at most three stretches. */
export function keysText(keys: readonly Key[]): string {
  const runs: [Key, Key][] = [];
  for (const key of keys) {
    const last = runs[runs.length - 1];
    if (last && last[1] === key - 1) last[1] = key;
    else runs.push([key, key]);
  }
  const texts = runs
    .slice(0, 3)
    .map(([from, to]) => (from === to ? keyText(from) : `${keyText(from)} to ${keyText(to)}`));
  return runs.length > 3 ? `${texts.join(", ")} and others` : listed(texts);
}
