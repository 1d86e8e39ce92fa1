import { maskedThreshold, momentLoudness, quickLoudness, quickPartial } from "./band-tables.ts";
import { BANDS } from "./bands.ts";
import { type Blend, PATTERN_LENGTH } from "./blend.ts";
import { phonOf } from "./loudness.ts";
import { MOMENTS } from "./moments.ts";
import { BAND_COUNT, EXCITATION_UNIT } from "./pipe.ts";

/**
 * What a listener makes of blends: how loud they are, how far one stands out of another, how different their colours
 * are. All results are whole hundredths, rounded here once, so that rules stay exact.
 */

/** Hundredths of a phon: 1000 more is heard as about twice as loud. */
export type Phons = number;

/** Excitation of the air of a quiet church, 20 dB in each band. */
const AMBIENT = 100 * EXCITATION_UNIT;
/** A difference without bounds is of no use to a score. */
const WIDEST = 4000;

/** What has been found out about one blend, kept for all that sound the same. */
interface Heard {
  readonly blend: Blend;
  /** Loudness at each moment in sones, at the keys played; and what of it lies in the height. */
  played: readonly number[] | null;
  shine: readonly number[] | null;
  alike: AlikeHeard | null;
  /** Against what it was held already, and the results. */
  readonly balances: Map<Heard, Balance>;
}

interface AlikeHeard {
  /** Loudness of every band at each key. */
  readonly loudness: Float64Array;
  /** Level in dB of every band at each key, over the room's own noise. */
  readonly level: Float64Array;
  readonly sones: readonly number[];
}

const MOST_BLENDS = 6_000;
const MOST_BALANCES = 100_000;
const known = new Map<string, Heard>();
let balances = 0;

/** Values do not depend on what is kept: forgetting costs time and nothing else. */
function heardOf(blend: Blend): Heard {
  if (blend.heard) return blend.heard as Heard;
  const { key } = blend;
  let heard = known.get(key);
  if (!heard) {
    if (known.size >= MOST_BLENDS || balances >= MOST_BALANCES) {
      known.clear();
      balances = 0;
    }
    heard = { blend, played: null, shine: null, alike: null, balances: new Map() };
    known.set(key, heard);
  }
  blend.heard = heard;
  return heard;
}

const hundredths = (value: number): number => Math.max(-WIDEST, Math.min(WIDEST, Math.round(100 * value)));

/** 10 log2 of a ratio of loudnesses: phon. Silence against silence is no difference. */
const phons = (one: number, other: number): number =>
  one <= 0 && other <= 0
    ? 0
    : one <= 0
      ? -40
      : other <= 0
        ? 40
        : Math.max(-40, Math.min(40, 10 * Math.log2(one / other)));

function playedLoudness(heard: Heard): readonly number[] {
  heard.played ??= Array.from({ length: MOMENTS }, (_, moment) => momentLoudness(heard.blend.atPlayed, moment));
  return heard.played;
}

/** Frequency in Hz from which on a sound shines rather than sings: the partials that draw the ear. Our own setting. */
const HEIGHT_HZ = 1500;
const HEIGHT = BANDS.findIndex((hz) => hz > HEIGHT_HZ);

function shineOf(heard: Heard): readonly number[] {
  heard.shine ??= Array.from({ length: MOMENTS }, (_, moment) => momentLoudness(heard.blend.atPlayed, moment, HEIGHT));
  return heard.shine;
}

/** Loudness in sones of a blend as the part plays it, the mean of its moments; 0 for silence. */
export const sonesOf = (blend: Blend): number =>
  playedLoudness(heardOf(blend)).reduce((sum, each) => sum + each, 0) / MOMENTS;

/** Loudness in sones of the three keys that are alike for all parts, held together. */
export const chordSones = (blend: Blend): number => momentLoudness(blend.chord, 0);

/** Loudness level of one chord's excitation, in hundredths of a phon. */
export const chordStrength = (chord: Float64Array): Phons => Math.round(100 * phonOf(momentLoudness(chord, 0)));

/**
 * Strength of a blend apart from the music, in hundredths of a phon: of the chord g e' c'' (for basses C G c). A soft 8 lies
 * near 7000, a full chorus near 9500.
 */
export function strengthOf(blend: Blend | null): Phons {
  if (!blend) return 0;
  blend.strength ??= chordStrength(blend.chord);
  return blend.strength;
}

function alikeHeard(heard: Heard): AlikeHeard {
  if (heard.alike) return heard.alike;
  const pattern = heard.blend.atAlike;
  const loudness = new Float64Array(PATTERN_LENGTH);
  const level = new Float64Array(PATTERN_LENGTH);
  const sones = new Array<number>(MOMENTS).fill(0);
  for (let i = 0; i < PATTERN_LENGTH; i++) {
    const units = pattern[i] as number;
    loudness[i] = quickLoudness(i % BAND_COUNT, units);
    level[i] = 10 * Math.log10(units + AMBIENT + maskedThreshold(i % BAND_COUNT, 0));
    const moment = Math.floor(i / BAND_COUNT);
    sones[moment] = (sones[moment] as number) + 2 * (loudness[i] as number);
  }
  heard.alike = { loudness, level, sones };
  return heard.alike;
}

/** Colours without a key in common cannot be compared; they are taken for as different as a reed and a flute. */
const APART: number = 1200;

/**
 * How different two colours are at the same keys, in hundredths of a decibel: the spread of the difference of their
 * levels from band to band, weighted by what is heard there. Mere strength drops out. A principal and an open flute lie
 * near 500 apart, a stopped flute and an oboe near 1400, a principal with and without a stopped flute under 100.
 */
export const colourDistance = (one: Blend, other: Blend): number => distanceOf(heardOf(one), heardOf(other));

function distanceOf(one: Heard, other: Heard): number {
  const [a, b] = [alikeHeard(one), alikeHeard(other)];
  let [distance, keys] = [0, 0];
  for (let moment = 0; moment < MOMENTS; moment++) {
    if (a.sones[moment] === 0 || b.sones[moment] === 0) continue;
    let [weights, sum, squares] = [0, 0, 0];
    for (let i = moment * BAND_COUNT; i < (moment + 1) * BAND_COUNT; i++) {
      const weight = (a.loudness[i] as number) + (b.loudness[i] as number);
      const difference = (a.level[i] as number) - (b.level[i] as number);
      weights += weight;
      sum += weight * difference;
      squares += weight * difference * difference;
    }
    distance += Math.sqrt(Math.max(0, squares / weights - (sum / weights) ** 2));
    keys += 1;
  }
  return keys === 0 ? APART : Math.round((100 * distance) / keys);
}

/** Two parts heard together, the first against the second. Means over the three moments. */
export interface Balance {
  /** How much stronger the first is than the second, each by itself. */
  readonly lead: Phons;
  /** How much more is left of the first in the presence of the second than the other way round: who is heard first. */
  readonly prominence: Phons;
  /** Share of the first's loudness, in hundredths, that is left in the presence of the second; and of the second's. */
  readonly kept: number;
  readonly otherKept: number;
  /** Hundredths of a decibel by which the first rises over what the second hides, where it rises most. */
  readonly margin: number;
  /** How much stronger the first is than the second above 1500 Hz, each by itself. */
  readonly shine: Phons;
  /** See {@link colourDistance}. */
  readonly colour: number;
}

/** Number of bands whose margins count: where a sound is best heard. */
const BEST_BANDS = 3;

function reckoned(first: Heard, second: Heard): Balance {
  const [one, other] = [first.blend.atPlayed, second.blend.atPlayed];
  const [quiet, otherQuiet] = [playedLoudness(first), playedLoudness(second)];
  const [bright, otherBright] = [shineOf(first), shineOf(second)];
  let [lead, prominence, kept, otherKept, margin, shine] = [0, 0, 0, 0, 0, 0];
  for (let moment = 0; moment < MOMENTS; moment++) {
    let [left, otherLeft] = [0, 0];
    // The three highest margins, highest first.
    let [best, next, third] = [-100, -100, -100];
    for (let b = 0; b < BAND_COUNT; b++) {
      const i = moment * BAND_COUNT + b;
      const s = one[i] as number;
      const m = other[i] as number;
      left += quickPartial(b, s, m);
      otherLeft += quickPartial(b, m, s);
      if (s <= 0) continue;
      const over = s / maskedThreshold(b, m + AMBIENT);
      if (over <= third) continue;
      if (over > best) {
        third = next;
        next = best;
        best = over;
      } else if (over > next) {
        third = next;
        next = over;
      } else third = over;
    }
    const [loud, otherLoud] = [quiet[moment] as number, otherQuiet[moment] as number];
    lead += phons(loud, otherLoud);
    shine += phons(bright[moment] as number, otherBright[moment] as number);
    prominence += phons(left, otherLeft);
    kept += loud > 0 ? (2 * left) / loud : 0;
    otherKept += otherLoud > 0 ? (2 * otherLeft) / otherLoud : 0;
    let dB = 0;
    for (const each of [best, next, third]) dB += each > 0 ? Math.max(-40, 10 * Math.log10(each)) : -40;
    margin += dB / BEST_BANDS;
  }
  return {
    lead: hundredths(lead / MOMENTS),
    prominence: hundredths(prominence / MOMENTS),
    kept: hundredths(kept / MOMENTS),
    otherKept: hundredths(otherKept / MOMENTS),
    margin: hundredths(margin / MOMENTS),
    shine: hundredths(shine / MOMENTS),
    colour: distanceOf(first, second),
  };
}

const ALIKE_SILENT: Balance = { lead: 0, prominence: 0, kept: 0, otherKept: 0, margin: 0, shine: 0, colour: 0 };

/** The balance of two blends; nothing of either has no balance and gives zeros. */
export function balanceOf(first: Blend | null, second: Blend | null): Balance {
  if (!first || !second) return ALIKE_SILENT;
  const [one, other] = [heardOf(first), heardOf(second)];
  let balance = one.balances.get(other);
  if (!balance) {
    balance = reckoned(one, other);
    one.balances.set(other, balance);
    balances += 1;
  }
  return balance;
}

/** Share of the first sound's loudness over which it must lead to be called its own. */
const MOSTLY = 0.7;
/** A sound leads in a band where it has twice the power. */
const LEADS = 2;
/** The middle one of the keys that are alike: e', of basses G. */
const MIDDLE_KEY = 1;

/** Frequency in Hz from which upward, at the same key, the first of two sounds mostly leads; `null` where it never does. */
export function leadsFrom(first: Blend, second: Blend): number | null {
  const [one, other] = [first.atAlike, second.atAlike];
  let from: number | null = null;
  let [loud, leading] = [0, 0];
  for (let b = BAND_COUNT - 1; b >= 0; b--) {
    const i = MIDDLE_KEY * BAND_COUNT + b;
    const [s, m] = [one[i] as number, other[i] as number];
    if (s < AMBIENT) continue;
    const loudness = quickLoudness(b, s);
    loud += loudness;
    if (s < LEADS * m) continue;
    leading += loudness;
    if (leading >= MOSTLY * loud) from = BANDS[b] as number;
  }
  return from;
}

/** One band of two sounds as a picture shows it: levels in dB, the quiet air of a church being 20. */
export interface BandLevels {
  /** Centre of the band. */
  readonly hz: number;
  readonly first: number;
  readonly second: number;
  /** Level that a sound needs here to be heard beside the second. */
  readonly hidden: number;
}

const levelIn = (units: number): number => 10 * Math.log10(Math.max(units, AMBIENT / 100) / EXCITATION_UNIT);

/** Two blends (or one and nothing) band by band, at the middle moment of their parts, lowest band first. */
export function bandLevels(first: Blend, second: Blend | null): readonly BandLevels[] {
  return Array.from(BANDS, (hz, b) => {
    const i = MIDDLE_KEY * BAND_COUNT + b;
    const other = second ? (second.atPlayed[i] as number) : 0;
    return {
      hz,
      first: levelIn(first.atPlayed[i] as number),
      second: levelIn(other),
      hidden: levelIn(maskedThreshold(b, other + AMBIENT)),
    };
  });
}
