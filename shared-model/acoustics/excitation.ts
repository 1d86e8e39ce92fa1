import { filterWidth } from "./bands.ts";

/** One partial: frequency in Hz and sound pressure level in dB at the listener. */
export interface Line {
  readonly hz: number;
  readonly db: number;
}

/** How sound reaches the head: from all around, as in a church, or from the front, as in the standard's examples. */
export type Field = "diffuse" | "free";

/**
 * Gain in dB from the room to the inner ear, by frequency in Hz, linear between: outer ear in a diffuse and in a free
 * field, and middle ear (ANSI S3.4-2007, ISO 532-2:2017).
 */
const HZ = [
  20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 750, 800, 1000, 1250, 1500, 1600, 2000,
  2500, 3000, 3150, 4000, 5000, 6000, 6300, 8000, 9000, 10000, 11200, 12500, 14000, 15000, 16000,
] as const;
const MIDDLE_EAR = [
  -39.6, -32, -25.85, -21.4, -18.5, -15.9, -14.1, -12.4, -11, -9.6, -8.3, -7.4, -6.2, -4.8, -3.8, -3.3, -2.9, -2.6,
  -2.6, -4.5, -5.4, -6.1, -8.5, -10.4, -7.3, -7, -6.6, -7, -9.2, -10.2, -12.2, -10.8, -10.1, -12.7, -15, -18.2, -23.8,
  -32.3,
] as const;
const OUTER_EAR: Readonly<Record<Field, readonly number[]>> = {
  diffuse: [
    0, 0, 0, 0, 0, 0, 0, 0, 0.1, 0.3, 0.4, 0.5, 1, 1.6, 1.7, 2.2, 2.7, 2.9, 3.8, 5.3, 6.8, 7.2, 10.2, 14.9, 14.5, 14.4,
    12.7, 10.8, 8.9, 8.7, 8.5, 6.2, 5, 4.5, 4, 3.3, 2.6, 2,
  ],
  free: [
    0, 0, 0, 0, 0, 0, 0, 0, 0.1, 0.3, 0.5, 0.9, 1.4, 1.6, 1.7, 2.5, 2.7, 2.6, 2.6, 3.2, 5.2, 6.6, 12, 16.8, 15.3, 15.2,
    14.2, 10.7, 7.1, 6.4, 1.8, -0.9, -1.6, 1.9, 4.9, 2, -2, 2.5,
  ],
};

/** Gain in dB of outer and middle ear together; beyond the table its ends hold. */
function earGain(hz: number, field: Field): number {
  const outer = OUTER_EAR[field];
  const above = HZ.findIndex((each) => each >= hz);
  const at = above < 0 ? HZ.length - 1 : above;
  const high = (MIDDLE_EAR[at] as number) + (outer[at] as number);
  if (above <= 0) return high;
  const low = (MIDDLE_EAR[at - 1] as number) + (outer[at - 1] as number);
  const [from, to] = [HZ[at - 1] as number, HZ[at] as number];
  return low + ((high - low) * (hz - from)) / (to - from);
}

/** Slope of an auditory filter: the higher, the steeper. */
const slopeAt = (hz: number): number => (4 * hz) / filterWidth(hz);
const SLOPE_AT_1KHZ = slopeAt(1000);
/** A filter lets nothing pass that lies further above its centre than this, as a share of the centre. */
const REACH_ABOVE = 2;
/** The lower slope at its flattest: no sound is loud enough to make a filter listen everywhere below it. */
const FLATTEST = 0.1;

/** Beyond this a filter lets less pass than one part in 10^9. */
const NOTHING = 24;

/**
 * How strongly each band of the ear is excited by a sound of these partials: power over that of the hearing threshold
 * at 1 kHz's reference, a whole-band pattern as in ANSI S3.4-2007. The louder a partial, the further it spreads upward;
 * how loud is told from the sound's own partials, so that patterns of separate sounds may be added.
 *
 * @param bands centres in Hz, ascending.
 */
export function excitationOf(lines: readonly Line[], bands: Float64Array, field: Field): Float64Array {
  const pattern = new Float64Array(bands.length);
  const powers = lines.map((line) => 10 ** ((line.db + earGain(line.hz, field)) / 10));
  lines.forEach(({ hz }, i) => {
    const slope = slopeAt(hz);
    let around = 0;
    for (let j = 0; j < lines.length; j++) {
      const p = slope * (Math.abs((lines[j] as Line).hz - hz) / hz);
      if (p < NOTHING) around += (1 + p) * Math.exp(-p) * (powers[j] as number);
    }
    const level = 10 * Math.log10(around);
    const power = powers[i] as number;
    const flatter = 1 - (0.35 / SLOPE_AT_1KHZ) * (level - 51);
    for (let b = 0; b < bands.length; b++) {
      const centre = bands[b] as number;
      const away = (hz - centre) / centre;
      if (away > REACH_ABOVE) continue;
      const upper = slopeAt(centre);
      const p = (away > 0 ? upper : Math.max(FLATTEST, upper * flatter)) * Math.abs(away);
      if (p < NOTHING) pattern[b] = (pattern[b] as number) + (1 + p) * Math.exp(-p) * power;
    }
  });
  return pattern;
}
