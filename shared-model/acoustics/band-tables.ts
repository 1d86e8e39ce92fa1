import { BANDS } from "./bands.ts";
import { earOf } from "./loudness.ts";
import { BAND_COUNT, EXCITATION_UNIT } from "./pipe.ts";

/**
 * The formulas of loudness.ts for whole-number excitations on {@link BANDS}, by tables instead of powers: the search asks
 * for some ten thousand of them in a tenth of a second. Straight lines between 32 points to the octave; the error is
 * below one part in 10^4, far below a tenth of a phon.
 */

/** The ear that registrations are judged with. */
export const EAR = earOf(BANDS, 1);

const POINTS_PER_OCTAVE = 32;
const LOWEST_EXPONENT = -30;
const OCTAVES = 90;
const MANTISSA_BITS = 23;
const FRACTION_BITS = MANTISSA_BITS - 5;
const FRACTION_MASK = 2 ** FRACTION_BITS - 1;
const FIRST = (127 + LOWEST_EXPONENT) * POINTS_PER_OCTAVE;

const asFloat = new Float32Array(1);
const asBits = new Uint32Array(asFloat.buffer);

/** A function of positive numbers from 2^-30 to 2^60, tabulated on their logarithm. */
class Table {
  private readonly values: Float64Array;

  constructor(of: (x: number) => number) {
    this.values = Float64Array.from({ length: OCTAVES * POINTS_PER_OCTAVE + 2 }, (_, index) => {
      const octave = Math.floor(index / POINTS_PER_OCTAVE);
      return of(2 ** (LOWEST_EXPONENT + octave) * (1 + (index % POINTS_PER_OCTAVE) / POINTS_PER_OCTAVE));
    });
  }

  /** At 0 and below the value at the lowest point. */
  at(x: number): number {
    asFloat[0] = x;
    const bits = asBits[0] as number;
    const index = (bits >>> FRACTION_BITS) - FIRST;
    if (x <= 0 || index < 0) return this.values[0] as number;
    const low = this.values[index] as number;
    return low + ((this.values[index + 1] as number) - low) * ((bits & FRACTION_MASK) / (FRACTION_MASK + 1));
  }
}

const C = 0.046871;

/** One band, its excitations counted in whole units. */
interface QuickBand {
  readonly threshold: number;
  readonly needed: number;
  readonly compressed: Table;
  /** (A)^alpha, and what a sound at threshold adds to it. */
  readonly quiet: number;
  readonly atThreshold: number;
}

let power03: Table | null = null;
/** x^0.3. */
const toThe03 = (x: number): number => {
  power03 ??= new Table((each) => each ** 0.3);
  return power03.at(x);
};

let made: readonly QuickBand[] | null = null;
function quickBands(): readonly QuickBand[] {
  if (made) return made;
  const tables = new Map<string, Table>();
  made = EAR.bands.map(({ threshold, gain, a, alpha, needed }) => {
    const key = `${gain} ${a} ${alpha}`;
    const compressed = tables.get(key) ?? new Table((units) => ((gain * units) / EXCITATION_UNIT + a) ** alpha);
    tables.set(key, compressed);
    const quiet = a ** alpha;
    return {
      threshold: threshold * EXCITATION_UNIT,
      needed,
      compressed,
      quiet,
      atThreshold: (gain * threshold + a) ** alpha - quiet,
    };
  });
  return made;
}

/** Loudness of one band in quiet, in sones per Cam and ear, of an excitation in whole units. */
export function quickLoudness(b: number, units: number): number {
  if (units <= 0) return 0;
  const band = quickBands()[b] as QuickBand;
  const loud = C * Math.max(0, band.compressed.at(units) - band.quiet);
  if (units >= band.threshold) return loud;
  const share = (2 * units) / (units + band.threshold);
  return loud * share * Math.sqrt(share);
}

/** What is left of it in the presence of `masker`, in whole units too. */
export function quickPartial(b: number, units: number, masker: number): number {
  if (units <= 0) return 0;
  if (masker <= 0) return quickLoudness(b, units);
  const { threshold: atRest, needed, compressed, quiet, atThreshold } = quickBands()[b] as QuickBand;
  const threshold = needed * masker + atRest;
  const both = compressed.at(units + masker);
  const hidden = compressed.at(masker + threshold);
  let partial: number;
  if (units >= threshold) partial = C * (both - quiet - (hidden - atThreshold - quiet) * toThe03(threshold / units));
  else {
    const alone = compressed.at(masker);
    const share = (2 * units) / (units + threshold);
    const room = hidden - alone;
    partial = room > 0 ? ((C * atThreshold * (both - alone)) / room) * share * Math.sqrt(share) : 0;
  }
  return partial <= 0 ? 0 : Math.min(partial, quickLoudness(b, units));
}

/** Excitation in whole units that a sound needs in the presence of another to be just heard. */
export function maskedThreshold(b: number, masker: number): number {
  const { threshold, needed } = quickBands()[b] as QuickBand;
  return needed * masker + threshold;
}

/** Loudness in sones, both ears, of one moment of a pattern; of its bands from one on where one is named. */
export function momentLoudness(pattern: Float64Array, moment: number, lowest = 0): number {
  let sum = 0;
  for (let b = lowest; b < BAND_COUNT; b++) sum += quickLoudness(b, pattern[moment * BAND_COUNT + b] as number);
  return 2 * sum;
}
