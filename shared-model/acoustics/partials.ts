import type { Line } from "./excitation.ts";

/**
 * What a pipe's tone is made of. The shapes follow the literature of organ acoustics: a stopped pipe favours odd
 * partials, a narrow one has more upper partials than a wide one, reeds carry higher and stronger ones than flues, a
 * half-length cylinder favours odd ones at the low end. Each number is a default set by ear and by the agreed
 * scenarios of balance; none was measured on an organ.
 */

/** The tones that are told apart: fewer than the families of the trade, for the ear tells fewer apart. */
export const TONES = [
  "principal",
  "open-flute",
  "stopped-flute",
  "half-stopped",
  "quintadena",
  "string",
  "chorus-reed",
  "oboe",
  "cromorne",
  "short-reed",
] as const;
export type Tone = (typeof TONES)[number];

interface Shape {
  /** Levels in dB of partials 1 to 16 of a pipe that sounds c' (middle C). */
  readonly db: readonly number[];
  /** Fall in dB for each octave of partials beyond the 16th. */
  readonly tail: number;
  /** By how many dB per octave of partials the spectrum gets poorer for each octave up the compass. */
  readonly tilt: number;
}

const shape = (tail: number, tilt: number, db: string): Shape => ({
  db: db.trim().split(/\s+/).map(Number),
  tail,
  tilt,
});

const SHAPES: Readonly<Record<Tone, Shape>> = {
  principal: shape(-16, 1.5, "0  -6 -11 -16 -20 -24 -28 -31 -34 -37 -40 -42 -44 -46 -48 -50"),
  "open-flute": shape(-20, 1.5, "0 -13 -22 -30 -36 -41 -45 -49 -52 -55 -58 -60 -62 -64 -66 -68"),
  "stopped-flute": shape(-20, 1.5, "0 -32 -18 -42 -29 -48 -37 -53 -43 -57 -48 -61 -53 -64 -57 -67"),
  "half-stopped": shape(-18, 1.5, "0 -24 -14 -32 -20 -38 -29 -44 -36 -49 -42 -53 -47 -57 -51 -60"),
  quintadena: shape(-18, 1.5, "0 -22   1 -26  -9 -32 -17 -38 -24 -42 -30 -46 -35 -50 -40 -54"),
  string: shape(-16, 1.5, "0   0  -2  -4  -6  -8 -11 -13 -15 -17 -20 -22 -24 -26 -28 -30"),
  "chorus-reed": shape(-16, 2, "0   1   1   0  -1  -3  -5  -7  -9 -11 -13 -15 -17 -19 -21 -23"),
  oboe: shape(-18, 2, "0   2   4   5   4   1  -3  -7 -11 -14 -17 -20 -23 -26 -28 -30"),
  cromorne: shape(-16, 1.5, "0 -16  -1 -13  -3 -11  -6 -10  -9 -12 -12 -15 -15 -18 -18 -21"),
  "short-reed": shape(-14, 1, "0   3   4   2   0  -1  -1   0   0  -2  -4  -6  -8 -10 -12 -14"),
};

const MIDDLE_C = 261.6256;
const MOST_PARTIALS = 64;
const HIGHEST_HZ = 14_000;
/** Level under the first partial at which a partial is left out. */
const FAINTEST = -75;

/**
 * The partials of one pipe.
 *
 * @param hz what it sounds.
 * @param db sound pressure level of the whole pipe at the listener.
 * @param brighter dB for each octave of partials by which it is brighter (or duller, below 0) than its kind.
 */
export function partialsOf(tone: Tone, hz: number, db: number, brighter = 0): readonly Line[] {
  const { db: table, tail, tilt } = SHAPES[tone];
  const slope = brighter - tilt * Math.log2(hz / MIDDLE_C);
  const lines: { hz: number; db: number }[] = [];
  let power = 0;
  for (let n = 1; n <= MOST_PARTIALS && (n === 1 || n * hz <= HIGHEST_HZ); n++) {
    const base = n <= 16 ? (table[n - 1] as number) : (table[15] as number) + tail * Math.log2(n / 16);
    const level = base + slope * Math.log2(n);
    if (level < FAINTEST) continue;
    lines.push({ hz: n * hz, db: level });
    power += 10 ** (level / 10);
  }
  const shift = db - 10 * Math.log10(power);
  return lines.map((line) => ({ hz: line.hz, db: line.db + shift }));
}

/** dB by which a pipe is stronger or softer than the same stop's middle C, for its place in the compass: softer to both ends. */
export function compassTrim(hz: number): number {
  if (hz < MIDDLE_C) return -1.5 * Math.log2(hz / MIDDLE_C);
  return hz > 2 * MIDDLE_C ? -4 * Math.log2(hz / (2 * MIDDLE_C)) : 0;
}

/** Loss in dB of a shut swell box of ordinary build, by frequency: it dulls as it softens. */
const shutBoxLoss = (hz: number): number => Math.min(20, Math.max(3, 10 + 2.5 * Math.log2(hz / 500)));

/** Loss in dB of a box opened by `open` (0 shut, 1 open): the first quarter of the way makes most of the change. */
export function boxLoss(hz: number, open: number): number {
  const through = 10 ** (-shutBoxLoss(hz) / 10);
  return -10 * Math.log10(through + (1 - through) * Math.sin((open * Math.PI) / 2));
}
