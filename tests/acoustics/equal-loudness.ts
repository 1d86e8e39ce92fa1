/**
 * Two standards that know nothing of the model's ear, to hold it against. Parameters of ISO 226:2003 read in two
 * independent listings (densilcabrera/aarae, alexanderlerch/ACA-Slides); A-weighting of IEC 61672-1, formula as printed
 * at third-octave.com.
 */
const ISO_226 = {
  hz: [31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000],
  alpha: [0.48, 0.409, 0.349, 0.301, 0.267, 0.25, 0.243, 0.242, 0.254],
  transfer: [-23, -13, -6.2, -2, 0, 0, -1, 1.2, -11.2],
  threshold: [59.5, 37.5, 22.1, 11.4, 4.4, 2.4, -1.3, -5.4, 12.6],
} as const;

/** Frequencies at which {@link contourDb} is known. */
export const CONTOUR_HZ: readonly number[] = ISO_226.hz;

/** Level in dB of a pure tone, from the front, that is as loud as a 1 kHz tone of `phon` dB. */
export function contourDb(hz: number, phon: number): number {
  const at = ISO_226.hz.indexOf(hz as (typeof ISO_226.hz)[number]);
  const alpha = ISO_226.alpha[at] as number;
  const transfer = ISO_226.transfer[at] as number;
  const threshold = ISO_226.threshold[at] as number;
  const sum = 4.47e-3 * (10 ** (0.025 * phon) - 1.15) + (0.4 * 10 ** ((threshold + transfer) / 10 - 9)) ** alpha;
  return (10 / alpha) * Math.log10(sum) - transfer + 94;
}

/** A-weighting in dB. */
export function aWeightingDb(hz: number): number {
  const f = hz * hz;
  const above = 12194 ** 2;
  const gain = (above * f * f) / ((f + 20.6 ** 2) * (f + above) * Math.sqrt((f + 107.7 ** 2) * (f + 737.9 ** 2)));
  return 20 * Math.log10(gain) + 2;
}
