import { describe, expect, test } from "vitest";
import { proposeAtRandom, randomCase } from "./random-proposals.ts";

/** How many random organs; a long run asks for ten thousand. */
const ORGANS = Number(process.env.REGISTRANT_ORGANS ?? 40);
const TOGETHER = 20;
/** A call that takes longer is named, but is not a fault of the list. */
const SLOW_MS = 5_000;

const starts = Array.from({ length: Math.ceil(ORGANS / TOGETHER) }, (_, index) => 1 + index * TOGETHER);

describe("no proposal for a random organ is nonsense", () => {
  test.each(starts)("seeds from %i", { timeout: 600_000 }, (start) => {
    let proposals = 0;
    for (let seed = start; seed < Math.min(start + TOGETHER, ORGANS + 1); seed++) {
      const one = randomCase(seed);
      const outcome = proposeAtRandom(one);
      if (outcome.slowest > SLOW_MS) console.warn(`${one.title}: ${Math.round(outcome.slowest)} ms`);
      expect(outcome.faults).toEqual([]);
      proposals += outcome.proposals;
    }
    expect(proposals).toBeGreaterThan(0);
  });
});
