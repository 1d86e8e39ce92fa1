import { compareFeet, type Foot, footOf } from "../../pitch/foot.ts";
import type { Strength } from "../instrument.ts";
import type { Family, Kind } from "../kind.ts";
import type { GlossaryEntry, Variant } from "./entry.ts";

/** Where a name stands and what is printed beside it: enough to part the things that share a name. */
export interface NamePlace {
  readonly pedal: boolean;
  readonly pitch: Foot | null;
  readonly ranks: number | null;
  /** Length of the division's principal when known: interval names count from it. */
  readonly base?: Foot | undefined;
}

/** What an entry amounts to in its place. */
export interface Meaning {
  readonly kinds: readonly Kind[];
  readonly family: Family;
  readonly strength: Strength;
  readonly tierce: boolean;
}

const UNISON: readonly Kind[] = [
  "principal",
  "stopped-flute",
  "open-flute",
  "harmonic-flute",
  "string",
  "soft-string",
  "quintadena",
];
const SINGLE_MUTATION: readonly Kind[] = ["twelfth", "nasard", "quint", "larigot", "tierce", "septieme", "none"];
const COMPOUND: readonly Family[] = ["mixture", "cornet"];

const applies = (variant: Variant, place: NamePlace): boolean =>
  (variant.pitches.length === 0 || (place.pitch !== null && variant.pitches.includes(place.pitch))) &&
  (variant.ranks === null ||
    (place.ranks !== null && place.ranks >= variant.ranks[0] && place.ranks <= variant.ranks[1])) &&
  (variant.pedal === null || variant.pedal === place.pedal);

const isPowerOfTwo = (number: number): boolean => (number & (number - 1)) === 0;

/**
 * The odd harmonic of the octaves of 8 ft that a length sounds; `null` for any other, so for the old roundings
 * 12, 6 and 3 ft.
 */
function oddHarmonic(pitch: Foot): 1 | 3 | 5 | 7 | 9 | null {
  if (!isPowerOfTwo(pitch.over)) return null;
  for (const odd of [1, 3, 5, 7, 9] as const) {
    if (pitch.under % odd === 0 && isPowerOfTwo(pitch.under / odd)) return odd;
  }
  return null;
}

/** Old print rounds a fifth up: 12, 6, 3 and 1 1/2 stand for 10 2/3, 5 1/3, 2 2/3 and 1 1/3. */
const roundedFifths = new Map([
  [footOf(12), footOf(32, 3)],
  [footOf(6), footOf(16, 3)],
  [footOf(3), footOf(8, 3)],
  [footOf(3, 2), footOf(4, 3)],
]);

function fifthKinds(pitch: Foot, principalScale: boolean, ofRipieno: boolean): readonly Kind[] {
  const place = compareFeet(pitch, footOf(8, 3));
  const also: readonly Kind[] = ofRipieno ? ["principal"] : [];
  if (place < 0) return ["quint", ...also];
  if (place === 0) return [principalScale ? "twelfth" : "nasard", ...also];
  if (pitch === footOf(4, 3)) return principalScale ? ["larigot", "principal"] : ["larigot"];
  return principalScale ? ["principal"] : ["larigot"];
}

/**
 * What an entry amounts to where it stands. The printed pitch has the last word on single flue ranks: a flute of 2
 * 2/3 ft is a nasard, a quint of 5 1/3 ft another stop than one of 1 1/3 ft.
 */
export function meaningOf(entry: GlossaryEntry, place: NamePlace): Meaning {
  const variant = entry.variants.find((one) => applies(one, place));
  const plain: Meaning = {
    kinds: variant?.kinds ?? entry.kinds,
    family: variant?.family ?? entry.family,
    strength: variant?.strength ?? entry.strength,
    tierce: variant?.tierce ?? entry.tierce,
  };
  if (variant?.kinds || place.pitch === null || COMPOUND.includes(plain.family)) return plain;
  const first = plain.kinds[0] as Kind;
  const isMutation = SINGLE_MUTATION.includes(first);
  if (!isMutation && !UNISON.includes(first)) return plain;
  const pitch = (isMutation ? roundedFifths.get(place.pitch) : undefined) ?? place.pitch;
  const odd = oddHarmonic(pitch);
  const principalScale = plain.kinds.includes("principal") || plain.kinds.includes("twelfth");
  const ofRipieno = plain.family === "principal" && entry.interval !== null && plain.kinds.includes("principal");
  const family: Family = ofRipieno ? "principal" : "mutation";
  switch (odd) {
    case 3:
      return { ...plain, family, kinds: fifthKinds(pitch, principalScale, ofRipieno) };
    case 5:
      return { ...plain, family: "mutation", kinds: ["tierce"] };
    case 7:
      return { ...plain, family: "mutation", kinds: ["septieme"] };
    case 9:
      return { ...plain, family: "mutation", kinds: ["none"] };
    default:
      return plain;
  }
}

const HALF_STEPS: readonly (readonly [number, number])[] = [
  [1, 1],
  [9, 8],
  [5, 4],
  [4, 3],
  [3, 2],
  [5, 3],
  [7, 4],
];

/**
 * The length so many steps above a base, counted from 1 as interval names do: 15 over 8 ft is 2 ft, 19 over 8 ft
 * 1 1/3.
 */
export function intervalPitch(steps: number, base: Foot): Foot {
  const octaves = Math.floor((steps - 1) / 7);
  const [over, under] = HALF_STEPS[(steps - 1) % 7] as readonly [number, number];
  return footOf(base.over * under, base.under * over * 2 ** octaves);
}

/** The pitch that custom gives the name here when none is printed, else `null`. */
export function impliedPitch(entry: GlossaryEntry, place: NamePlace): Foot | null {
  if (entry.interval !== null && place.base) return intervalPitch(entry.interval, place.base);
  return place.pedal ? entry.implied.pedal : entry.implied.manual;
}

/** Whatever passes, or all when nothing does. */
const preferring = <T>(all: readonly T[], passes: (one: T) => boolean): readonly T[] => {
  const some = all.filter(passes);
  return some.length > 0 ? some : all;
};

const isCompound = (entry: GlossaryEntry): boolean => COMPOUND.includes(entry.family);
const sounds = (entry: GlossaryEntry): boolean => entry.family !== "effect";

const usualHere = (entry: GlossaryEntry, pedal: boolean): readonly Foot[] =>
  pedal ? entry.usualPitches.pedal : entry.usualPitches.manual;

/** Of the entries that share a name, those that can stand here: ranks part first, then the keyboard, then the pitch. */
export function fitting(entries: readonly GlossaryEntry[], place: NamePlace): readonly GlossaryEntry[] {
  if (entries.length < 2) return entries;
  const { ranks, pitch, pedal } = place;
  let left = pitch || ranks ? preferring(entries, sounds) : entries;
  if (ranks !== null && ranks > 1) {
    left = preferring(left, isCompound);
    left = preferring(left, (one) => one.ranks === null || (ranks >= one.ranks[0] && ranks <= one.ranks[1]));
  }
  left = preferring(left, (one) => !sounds(one) || usualHere(one, pedal).length > 0);
  if (ranks !== null && ranks > 1) left = preferring(left, (one) => one.ranks !== null);
  if (pitch !== null) {
    left = preferring(left, (one) => usualHere(one, pedal).includes(pitch));
    if (ranks === null) left = preferring(left, (one) => !isCompound(one));
  }
  return ranks === null ? withoutRankTwins(left) : left;
}

/** With no ranks printed, entries that only a number of ranks picks out give way to the plain one of their family. */
const withoutRankTwins = (entries: readonly GlossaryEntry[]): readonly GlossaryEntry[] =>
  entries.filter(
    (one) => one.ranks === null || !entries.some((other) => other.ranks === null && other.family === one.family),
  );
