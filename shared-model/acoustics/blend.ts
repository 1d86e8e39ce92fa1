import type { Key } from "../pitch/key.ts";
import { MOMENTS, type Moments } from "./moments.ts";
import { BAND_COUNT } from "./pipe.ts";

/** Excitation over moments and bands: moment by moment, band by band, in whole units (see pipe.ts). */
export type Pattern = Float64Array;
export const PATTERN_LENGTH = MOMENTS * BAND_COUNT;

/** One pipe that a stop sounds at a key. */
export interface SoundingPipe {
  /** Which pipe it is, for those that several stops may ask for; `null` for a stop's own. */
  readonly shared: string | null;
  readonly pattern: Float64Array;
}

/** What sounds at some moments: a stop's own pipes added up, and the shared ones apart, since each speaks once. */
interface Sounding {
  readonly own: Pattern;
  readonly shared: ReadonlyMap<string, { readonly moment: number; readonly pattern: Float64Array }> | null;
}

type Which = "played" | "alike";

const MOST_SIGNATURES = 50_000;
const numbers = new Map<string, number>();
let nextNumber = 0;

/** A number for a stop's sound, the same for stops that sound the same. Forgetting only costs time. */
function numberOf(signature: string): number {
  let number = numbers.get(signature);
  if (number === undefined) {
    if (numbers.size >= MOST_SIGNATURES) numbers.clear();
    number = nextNumber;
    nextNumber += 1;
    numbers.set(signature, number);
  }
  return number;
}

/**
 * What is heard of one stop or of several together. Sums are made when a rule asks for them, and kept: the search asks
 * about few of the sets that it passes through.
 */
export class Blend {
  /** What a listener has found out about this blend; belongs to hearing.ts. */
  heard: unknown = null;
  private readonly sound: (which: Which) => Sounding;
  private readonly stops: () => readonly number[];
  private sorted: readonly number[] | null = null;
  private played: Sounding | null = null;
  private alike: Sounding | null = null;
  private sums: { played: Pattern | null; alike: Pattern | null } | null = null;

  private constructor(sound: (which: Which) => Sounding, stops: () => readonly number[]) {
    this.sound = sound;
    this.stops = stops;
  }

  /**
   * One stop, at the keys of these moments.
   *
   * @param signature a text that is the same for stops, and ways of hearing them, that cannot be told apart.
   */
  static ofStop(moments: Moments, pipesAt: (key: Key) => readonly SoundingPipe[], signature: () => string): Blend {
    return new Blend(
      (which) => {
        const own = new Float64Array(PATTERN_LENGTH);
        const shared = new Map<string, { moment: number; pattern: Float64Array }>();
        const keys = which === "played" ? moments.played : moments.alike.map((key) => [key]);
        keys.forEach((chord, moment) => {
          for (const pipe of chord.flatMap(pipesAt)) {
            if (pipe.shared !== null) shared.set(`${moment} ${pipe.shared}`, { moment, pattern: pipe.pattern });
            else addPattern(own, moment, pipe.pattern);
          }
        });
        return { own, shared: shared.size > 0 ? shared : null };
      },
      () => [numberOf(signature())],
    );
  }

  /** Two blends together. */
  static of(one: Blend, other: Blend): Blend {
    return new Blend(
      (which) => joined(one.sounding(which), other.sounding(which)),
      () => merged(one.numbers, other.numbers),
    );
  }

  /** The same text for blends of stops that sound the same, in whatever order they were drawn. */
  get key(): string {
    return this.numbers.join(" ");
  }

  /** A blend is the stops in it, whatever has been reckoned about it. */
  toJSON(): string {
    return this.key;
  }

  private get numbers(): readonly number[] {
    this.sorted ??= this.stops();
    return this.sorted;
  }

  /** Excitation at the keys that the part plays, low, middle and high. Do not change it. */
  get atPlayed(): Pattern {
    return this.sum("played");
  }

  /** Excitation at the keys that are alike for all parts. Do not change it. */
  get atAlike(): Pattern {
    return this.sum("alike");
  }

  private sounding(which: Which): Sounding {
    const known = this[which];
    if (known) return known;
    const made = this.sound(which);
    this[which] = made;
    return made;
  }

  private sum(which: Which): Pattern {
    const { own, shared } = this.sounding(which);
    if (!shared) return own;
    this.sums ??= { played: null, alike: null };
    let sum = this.sums[which];
    if (!sum) {
      sum = own.slice();
      for (const { moment, pattern } of shared.values()) addPattern(sum, moment, pattern);
      this.sums[which] = sum;
    }
    return sum;
  }
}

/** Two ascending lists as one. */
function merged(one: readonly number[], other: readonly number[]): readonly number[] {
  const all: number[] = [];
  let [i, j] = [0, 0];
  while (i < one.length || j < other.length) {
    const takeOne = j >= other.length || (i < one.length && (one[i] as number) <= (other[j] as number));
    all.push((takeOne ? one[i++] : other[j++]) as number);
  }
  return all;
}

function addPattern(sum: Pattern, moment: number, pattern: Float64Array): void {
  const start = moment * BAND_COUNT;
  for (let b = 0; b < BAND_COUNT; b++) sum[start + b] = (sum[start + b] as number) + (pattern[b] as number);
}

function joined(one: Sounding, other: Sounding): Sounding {
  const own = new Float64Array(PATTERN_LENGTH);
  for (let i = 0; i < PATTERN_LENGTH; i++) own[i] = (one.own[i] as number) + (other.own[i] as number);
  if (!one.shared || !other.shared) return { own, shared: one.shared ?? other.shared };
  const shared = new Map(one.shared);
  for (const [pipe, sound] of other.shared) {
    const known = shared.get(pipe);
    // Two stops may call one pipe by different strengths: the stronger counts, in whatever order they are drawn.
    shared.set(pipe, known ? { moment: sound.moment, pattern: stronger(known.pattern, sound.pattern) } : sound);
  }
  return { own, shared };
}

const stronger = (one: Float64Array, other: Float64Array): Float64Array =>
  one === other ? one : one.map((each, b) => Math.max(each, other[b] as number));
