import { barkOf, camOf } from "./bands.ts";

/**
 * From excitation to what is heard: loudness in sones, alone and in the presence of another sound, after
 * ANSI S3.4-2007 / ISO 532-2:2017 and Moore, Glasberg and Baer, J. Audio Eng. Soc. 45 (1997) 224.
 */

/** Frequency, threshold excitation in dB, and the constants A, alpha and K (dB) that change with it below 1 kHz. */
const BY_HZ: readonly (readonly [number, number, number, number, number])[] = [
  [50, 28.2, 8.85, 0.2652, 13.5],
  [63, 23.8, 7.71, 0.2507, 10],
  [80, 19.3, 6.87, 0.2377, 7.1],
  [100, 15.7, 6.24, 0.2278, 4.9],
  [125, 12.7, 5.76, 0.22, 3.1],
  [160, 10, 5.4, 0.2134, 1.5],
  [200, 8, 5.17, 0.209, 0.4],
  [250, 6.4, 5.01, 0.2057, -0.5],
  [315, 5.3, 4.89, 0.2031, -1.3],
  [400, 4.4, 4.79, 0.2013, -1.9],
  [500, 3.73, 4.72, 0.2, -2.3],
  [630, 3.73, 4.72, 0.2, -2.7],
  [800, 3.73, 4.72, 0.2, -2.9],
  [1000, 3.73, 4.72, 0.2, -3],
];
const QUIET_THRESHOLD = 3.73;
const C = 0.046871;
/** Excitation above which loudness grows by another law. */
const VERY_LOUD = 1e10;

/** What the ear does in one band. */
interface Band {
  readonly hz: number;
  /** Excitation of a sound that is just heard in quiet. */
  readonly threshold: number;
  readonly gain: number;
  readonly a: number;
  readonly alpha: number;
  /** Excitation of a sound that is just heard, as a share of that of the sound that hides it. */
  readonly needed: number;
}

function bandAt(hz: number): Band {
  const at = BY_HZ.findIndex(([each]) => each >= hz);
  const high = BY_HZ[at < 0 ? BY_HZ.length - 1 : at] as (typeof BY_HZ)[number];
  const low = at <= 0 ? high : (BY_HZ[at - 1] as (typeof BY_HZ)[number]);
  const share = low === high ? 0 : Math.log(hz / low[0]) / Math.log(high[0] / low[0]);
  const between = (column: 1 | 2 | 3 | 4): number => low[column] + share * (high[column] - low[column]);
  const thresholdDb = between(1);
  return {
    hz,
    threshold: 10 ** (thresholdDb / 10),
    gain: 10 ** ((QUIET_THRESHOLD - thresholdDb) / 10),
    a: between(2),
    alpha: between(3),
    needed: 10 ** (between(4) / 10),
  };
}

/** An ear with bands `step` Cam apart whose centres are given in Hz. */
export interface Ear {
  readonly bands: readonly Band[];
  readonly step: number;
}

/** Makes an ear of these bands. */
export const earOf = (centres: Float64Array, step: number): Ear => ({ bands: [...centres].map(bandAt), step });

const compressed = (band: Band, excitation: number): number => (band.gain * excitation + band.a) ** band.alpha;

/** Loudness in one band in quiet, in sones per Cam and ear. */
function bandLoudness(band: Band, excitation: number): number {
  if (excitation <= 0) return 0;
  if (excitation > VERY_LOUD) return C * (excitation / 1.0707) ** 0.2;
  const loud = C * (compressed(band, excitation) - band.a ** band.alpha);
  return excitation < band.threshold ? loud * ((2 * excitation) / (excitation + band.threshold)) ** 1.5 : loud;
}

/** Loudness in one band of a sound that another one partly hides, in sones per Cam and ear: never more than in quiet. */
function partialBandLoudness(band: Band, excitation: number, masker: number): number {
  if (excitation <= 0) return 0;
  if (masker <= 0) return bandLoudness(band, excitation);
  const threshold = band.needed * masker + band.threshold;
  const both = compressed(band, excitation + masker);
  const quiet = band.a ** band.alpha;
  const atQuietThreshold = compressed(band, band.threshold) - quiet;
  if (excitation >= threshold) {
    const lost = compressed(band, masker + threshold) - atQuietThreshold - quiet;
    const partial = C * (both - quiet - lost * (threshold / excitation) ** 0.3);
    return Math.min(Math.max(0, partial), bandLoudness(band, excitation));
  }
  const alone = compressed(band, masker);
  const heard = ((2 * excitation) / (excitation + threshold)) ** 1.5;
  const partial = (C * heard * atQuietThreshold * (both - alone)) / (compressed(band, masker + threshold) - alone);
  return Math.min(Math.max(0, partial), bandLoudness(band, excitation));
}

const summed = (ear: Ear, of: (band: Band, index: number) => number): number =>
  2 * ear.step * ear.bands.reduce((sum, band, index) => sum + of(band, index), 0);

/** Loudness in sones, both ears, of an excitation pattern on the ear's bands; 1 sone is a 1 kHz tone of 40 dB. */
export const loudnessOf = (ear: Ear, pattern: ArrayLike<number>): number =>
  summed(ear, (band, index) => bandLoudness(band, pattern[index] as number));

/** Loudness in sones that is left of a sound in the presence of another. */
export const partialLoudnessOf = (ear: Ear, pattern: ArrayLike<number>, masker: ArrayLike<number>): number =>
  summed(ear, (band, index) => partialBandLoudness(band, pattern[index] as number, masker[index] as number));

/** Sones of a 1 kHz tone at 0, 5, 10 ... 120 phon, free field (ANSI S3.4-2007). */
const SONES = [
  0.0011, 0.0088, 0.029, 0.07, 0.142, 0.255, 0.422, 0.662, 0.997, 1.461, 2.098, 2.97, 4.166, 5.813, 8.102, 11.326,
  15.98, 22.929, 33.216, 48.242, 70.362, 103.274, 152.776, 227.855, 341.982,
] as const;
const PHON_STEP = 5;

/** Loudness level in phon (0 to 120) of a loudness in sones: 40 at 1 sone, about 10 more for each doubling. */
export function phonOf(sones: number): number {
  if (sones <= SONES[0]) return 0;
  const above = SONES.findIndex((each) => each >= sones);
  if (above < 0) return PHON_STEP * (SONES.length - 1);
  const [low, high] = [SONES[above - 1] as number, SONES[above] as number];
  return PHON_STEP * (above - 1 + Math.log(sones / low) / Math.log(high / low));
}

/** Brightness: where the middle of the loudness lies, in Cam; 0 for silence. A plain tone of 1 kHz lies near 16. */
export function brightnessOf(ear: Ear, pattern: ArrayLike<number>): number {
  let [sum, weighted] = [0, 0];
  ear.bands.forEach((band, index) => {
    const loud = bandLoudness(band, pattern[index] as number);
    sum += loud;
    weighted += loud * camOf(band.hz);
  });
  return sum > 0 ? weighted / sum : 0;
}

/** Constant by which the reference sound, narrow noise about 1 kHz at 60 dB, has 1 acum on this ear. */
const SHARPNESS = 0.1134;

/** Weight of a place in Bark for sharpness (DIN 45692): 1 up to 15.8 Bark, then rising steeply. */
export const sharpnessWeight = (bark: number): number =>
  bark <= 15.8 ? 1 : 0.15 * Math.exp(0.42 * (bark - 15.8)) + 0.85;

/** Sharpness in acum, formed after DIN 45692 but from this ear's loudness; 0 for silence. */
export function sharpnessOf(ear: Ear, pattern: ArrayLike<number>): number {
  let [sum, weighted] = [0, 0];
  ear.bands.forEach((band, index) => {
    const loud = bandLoudness(band, pattern[index] as number);
    const bark = barkOf(band.hz);
    sum += loud;
    weighted += loud * sharpnessWeight(bark) * bark;
  });
  return sum > 0 ? (SHARPNESS * weighted) / sum : 0;
}
