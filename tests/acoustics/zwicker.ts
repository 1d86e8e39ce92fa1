/**
 * The other standard of loudness, ISO 532-1 (Zwicker's method), stationary sounds: it shares no table and no formula with
 * the model's ear, so where the two agree neither is likely to be wrong. Tables of DIN 45631 / ISO 532-1:2017, from
 * memory; the test holds them against a signal of the standard's Annex B.
 */

/** Third octaves from 25 Hz to 12.5 kHz. */
export const THIRD_OCTAVES: readonly number[] = Array.from(
  { length: 28 },
  (_, index) => 1000 * 2 ** ((index - 16) / 3),
);

const rows = (text: string): readonly (readonly number[])[] =>
  text
    .trim()
    .split("\n")
    .map((row) => row.trim().split(/\s+/).map(Number));
const row = (text: string): readonly number[] => rows(text)[0] as readonly number[];

const RANGES = row("45 55 65 71 80 90 100 120");
const LOW_BANDS = rows(`
  -32 -24 -16 -10 -5 0 -7 -3 0 -2 0
  -29 -22 -15 -10 -4 0 -7 -2 0 -2 0
  -27 -19 -14  -9 -4 0 -6 -2 0 -2 0
  -25 -17 -12  -9 -3 0 -5 -2 0 -2 0
  -23 -16 -11  -7 -3 0 -4 -1 0 -1 0
  -20 -14 -10  -6 -3 0 -4 -1 0 -1 0
  -18 -12  -9  -6 -2 0 -3 -1 0 -1 0
  -15 -10  -8  -4 -2 0 -3 -1 0 -1 0`);
const QUIET = row("30 18 12 8 7 6 5 4 3 3 3 3 3 3 3 3 3 3 3 3");
const TRANSMISSION = row("0 0 0 0 0 0 0 0 0 0 -0.5 -1.6 -3.2 -5.4 -5.6 -4 -1.5 2 5 12");
const DIFFUSE = row("0 0 0.5 0.9 1.2 1.6 2.3 2.8 3 2 0 -1.4 -2 -1.9 -1 0.5 3 4 4.3 4");
const WIDTHS = row("-0.25 -0.6 -0.8 -0.8 -0.5 0 0.5 1.1 1.5 1.7 1.8 1.8 1.7 1.6 1.4 1.2 0.8 0.5 0 -0.5");
const UPPER = row("0.9 1.8 2.8 3.5 4.4 5.4 6.6 7.9 9.2 10.6 12.3 13.8 15.2 16.7 18.1 19.3 20.6 21.8 22.7 23.6 24");
const STEPS = row("21.5 18 15.1 11.5 9 6.1 4.4 3.1 2.13 1.36 0.82 0.42 0.3 0.22 0.15 0.1 0.035 0");
const SLOPES = rows(`
  13 8.2 6.3 5.5 5.5 5.5 5.5 5.5
  9 7.5 6 5.1 4.5 4.5 4.5 4.5
  7.8 6.7 5.6 4.9 4.4 3.9 3.9 3.9
  6.2 5.4 4.6 4 3.5 3.2 3.2 3.2
  4.5 3.8 3.6 3.2 2.9 2.7 2.7 2.7
  3.7 3 2.8 2.35 2.2 2.2 2.2 2.2
  2.9 2.3 2.1 1.9 1.8 1.7 1.7 1.7
  2.4 1.7 1.5 1.35 1.3 1.3 1.3 1.3
  1.95 1.45 1.3 1.15 1.1 1.1 1.1 1.1
  1.5 1.2 0.94 0.86 0.82 0.82 0.82 0.82
  0.72 0.67 0.64 0.63 0.62 0.62 0.62 0.62
  0.59 0.53 0.51 0.5 0.42 0.42 0.42 0.42
  0.4 0.33 0.26 0.24 0.24 0.22 0.22 0.22
  0.27 0.21 0.2 0.18 0.17 0.17 0.17 0.17
  0.16 0.15 0.14 0.12 0.11 0.11 0.11 0.11
  0.12 0.11 0.1 0.08 0.08 0.08 0.08 0.08
  0.09 0.08 0.07 0.06 0.06 0.06 0.06 0.05
  0.06 0.05 0.03 0.02 0.02 0.02 0.02 0.02`);

const at = (list: readonly number[], index: number): number => list[index] as number;

/** Levels of the critical bands: the eleven lowest third octaves make three of them. */
function criticalBands(levels: readonly number[]): readonly number[] {
  const powers = levels.slice(0, 11).map((level, band) => {
    const range = RANGES.findIndex((limit, r) => level <= limit - at(LOW_BANDS[r] as readonly number[], band));
    return 10 ** ((level + at(LOW_BANDS[range < 0 ? 7 : range] as readonly number[], band)) / 10);
  });
  const low = [powers.slice(0, 6), powers.slice(6, 9), powers.slice(9, 11)].map((group) => {
    const sum = group.reduce((all, each) => all + each, 0);
    return sum > 0 ? 10 * Math.log10(sum) : -100;
  });
  return [...low, ...levels.slice(11)];
}

/** Loudness in sones of a steady sound given by its third-octave levels in dB. */
export function zwickerSones(levels: readonly number[], field: "free" | "diffuse"): number {
  const main = criticalBands(levels).map((level, band) => {
    const heard = level - at(TRANSMISSION, band) + (field === "diffuse" ? at(DIFFUSE, band) : 0);
    if (heard <= at(QUIET, band)) return 0;
    const over = heard - at(WIDTHS, band) - at(QUIET, band);
    return Math.max(0, 0.0635 * 10 ** (0.025 * at(QUIET, band)) * ((0.75 + 0.25 * 10 ** (0.1 * over)) ** 0.25 - 1));
  });
  main[0] = at(main, 0) * Math.min(1, 0.4 + 0.32 * at(main, 0) ** 0.2);
  main.push(0);
  let [sum, from, now] = [0, 0, 0];
  let step = 0;
  main.forEach((loud, band) => {
    const upper = at(UPPER, band) + 0.0001;
    const column = Math.min(7, Math.max(0, band - 1));
    while (from < upper) {
      if (now <= loud) {
        if (now < loud)
          step = Math.max(
            0,
            STEPS.findIndex((each) => each < loud),
          );
        sum += loud * (upper - from);
        [from, now] = [upper, loud];
        continue;
      }
      // The upper skirt falls by steps until it meets the next band's loudness or its edge.
      const down = Math.max(loud, at(STEPS, step));
      const slope = at(SLOPES[step] as readonly number[], column);
      let to = from + (now - down) / slope;
      let next = down;
      if (to > upper) {
        to = upper;
        next = now - (to - from) * slope;
      }
      sum += ((to - from) * (now + next)) / 2;
      [from, now] = [to, next];
      while (step < 17 && now <= at(STEPS, step)) step += 1;
    }
  });
  return sum;
}
