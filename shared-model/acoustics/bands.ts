/**
 * The bands in which the ear takes sound apart. Two scales are in use: the ERB-rate scale of ANSI S3.4-2007 and
 * ISO 532-2 (unit Cam), on which all hearing here is reckoned, and Zwicker's critical bands (unit Bark), for sharpness.
 */

/** Width in Hz of the auditory filter centred on a frequency in Hz: 132 Hz at 1 kHz. */
export const filterWidth = (hz: number): number => 24.673 * (0.004368 * hz + 1);

/** Place of a frequency in Hz on the ERB-rate scale, in Cam: 0 at 0 Hz, 15.6 at 1 kHz. */
export const camOf = (hz: number): number => 21.366 * Math.log10(0.004368 * hz + 1);

/** Frequency in Hz at a place on the ERB-rate scale: undoes {@link camOf}. */
export const hzAtCam = (cam: number): number => (10 ** (cam / 21.366) - 1) / 0.004368;

/**
 * Critical-band rate of a frequency in Hz, in Bark: 1 at about 100 Hz, 8.5 at 1 kHz, 24 at 15.5 kHz.
 * Zwicker and Terhardt's formula of 1980; it lies within a quarter of a Bark of the edges that Zwicker printed.
 */
export const barkOf = (hz: number): number => 13 * Math.atan(0.00076 * hz) + 3.5 * Math.atan((hz / 7500) ** 2);

/** Lowest and highest place of the ear's bands, in Cam: 47 Hz and 15.1 kHz. */
const LOWEST = 1.75;
const HIGHEST = 39;

/** Centres in Hz of bands that lie `step` Cam apart, lowest first. */
export function bandCentres(step: number): Float64Array {
  const count = Math.floor((HIGHEST - LOWEST) / step + 1e-9) + 1;
  return Float64Array.from({ length: count }, (_, index) => hzAtCam(LOWEST + index * step));
}

/** The bands in which registrations are compared: 38 of them, 1 Cam apart. */
export const BANDS: Float64Array = bandCentres(1);
