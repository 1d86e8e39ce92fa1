import type { BoxPosition } from "../console/state.ts";
import type { Strength } from "../stoplist/instrument.ts";

/**
 * How strong a sound is, from the strengths of the stops alone: the one place that a computed hearing will replace.
 *
 * Powers are whole numbers so that a sum does not depend on the order of adding. Steps of about 4 dB between the five
 * strengths, 6 dB for a half and 12 dB for a closed box: common practice, not measurements.
 */
const POWER_OF_STRENGTH: Readonly<Record<Strength, number>> = { 1: 1000, 2: 2500, 3: 6300, 4: 16000, 5: 40000 };
const BOX_DIVISOR: Readonly<Record<BoxPosition, number>> = { open: 1, half: 4, closed: 16 };

/** Power of a stop of this strength behind a box in this position, in whole units: a strength 1 stop in the open has 1000. */
export const powerOf = (strength: Strength, box: BoxPosition): number =>
  Math.round(POWER_OF_STRENGTH[strength] / BOX_DIVISOR[box]);

/** Level of a power in whole hundredths of a decibel: 3000 for one very soft stop, 3800 for one principal; 0 for silence. */
export const levelOf = (power: number): number => (power <= 0 ? 0 : Math.round(1000 * Math.log10(power)));
