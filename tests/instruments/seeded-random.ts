/** A seeded stream of numbers in [0, 1), the same on every machine (mulberry32, a public-domain 32-bit generator). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Choices made from one seeded stream, in the order in which they are asked for. */
export class Draw {
  readonly next: () => number;
  constructor(seed: number) {
    this.next = seededRandom(seed);
  }
  chance(of: number): boolean {
    return this.next() < of;
  }
  /** A whole number from `low` to `high`, both possible. */
  between(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }
  one<T>(list: readonly T[]): T {
    return list[Math.floor(this.next() * list.length)] as T;
  }
  weighted<T>(list: readonly T[], weight: (item: T) => number): T {
    let left = this.next() * list.reduce((sum, item) => sum + weight(item), 0);
    for (const item of list) {
      left -= weight(item);
      if (left < 0) return item;
    }
    return list[list.length - 1] as T;
  }
}
