/** The middle one, of an even number the upper middle; `NaN` of none. */
export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** Milliseconds with as many places as tell something; `never` for a call that was given up. */
export function ms(value: number): string {
  if (value === Number.POSITIVE_INFINITY) return "never";
  if (!Number.isFinite(value)) return "-";
  return value.toFixed(value < 10 ? 2 : value < 100 ? 1 : 0);
}
