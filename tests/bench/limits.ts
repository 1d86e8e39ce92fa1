/** What the warm median of the varied list may take on an organ of up to so many stops, in a texture of three parts. */
const LIMITS: readonly { readonly stops: number; readonly ms: number }[] = [
  { stops: 30, ms: 16 },
  { stops: 60, ms: 50 },
  { stops: 120, ms: 150 },
  { stops: 450, ms: 1000 },
];
export const CHECK_LIMIT_MS = 1;
export const HEAP_LIMIT_MB = 300;
/** A piece of 60 sections on 120 stops, lists of proposals included. */
export const PLAN_LIMIT_MS = 2000;

/** A stop or two more than the size named does not lift an organ into the next class. */
export const limitFor = (stops: number): number =>
  LIMITS.find((limit) => stops <= limit.stops * 1.05)?.ms ?? Number.POSITIVE_INFINITY;

export const verdict = (value: number, limit: number): "within" | "over" | "-" =>
  Number.isNaN(value) || value === Number.NEGATIVE_INFINITY ? "-" : value <= limit ? "within" : "over";

/** How long the code of a line is made warm. */
export const WARMING_MS = 3_000;
