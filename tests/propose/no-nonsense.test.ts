import { describe, expect, test } from "vitest";
import { proposeAtRandom, randomCase } from "./random-proposals.ts";

/** How many random organs; a long run asks for ten thousand. */
const ORGANS = Number(process.env.REGISTRANT_ORGANS ?? 40);
const TOGETHER = 20;

const starts = Array.from({ length: Math.ceil(ORGANS / TOGETHER) }, (_, index) => 1 + index * TOGETHER);

describe("no proposal for a random organ is nonsense", () => {
  test.each(starts)("seeds from %i", { timeout: 600_000 }, (start) => {
    let proposals = 0;
    const unproved: number[] = [];
    for (let seed = start; seed < Math.min(start + TOGETHER, ORGANS + 1); seed++) {
      const outcome = proposeAtRandom(randomCase(seed));
      expect(outcome.faults).toEqual([]);
      proposals += outcome.proposals;
      if (!outcome.proven) unproved.push(seed);
    }
    expect(proposals).toBeGreaterThan(0);
    if (unproved.length > 0) console.info(`Best of what was found, not proved the best: seeds ${unproved.join(", ")}`);
  });
});
