declare module "a-weighting" {
  /** Gain (a factor, not dB) of the weighting curves at a frequency in Hz. */
  const weighting: { a(hz: number): number; c(hz: number): number };
  export default weighting;
}
