/** The middle one, of an even number the upper middle; `NaN` of none. */
export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** Milliseconds with as many places as tell something. */
export const ms = (value: number): string =>
  Number.isFinite(value) ? (value < 10 ? value.toFixed(2) : value < 100 ? value.toFixed(1) : value.toFixed(0)) : "-";
