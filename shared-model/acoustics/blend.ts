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
  /** What a listener has found out about this blend; both belong to hearing.ts. */
  heard: unknown = null;
  strength: number | null = null;
  private readonly sound: (which: Which) => Sounding;
  private readonly stops: () => readonly number[];
  /** What it is put together of; nothing of a single stop. */
  private readonly parts: readonly Blend[];
  private sorted: readonly number[] | null = null;
  private played: Sounding | null = null;
  private alike: Sounding | null = null;
  private together: Float64Array | null = null;
  private sums: { played: Pattern | null; alike: Pattern | null } | null = null;

  private constructor(sound: (which: Which) => Sounding, stops: () => readonly number[], parts: readonly Blend[] = []) {
    this.sound = sound;
    this.stops = stops;
    this.parts = parts;
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

  /** Blends together; `null` for none. */
  static of(blends: readonly Blend[]): Blend | null {
    const [one] = blends;
    if (!one || blends.length === 1) return one ?? null;
    return new Blend(
      (which) => joined(blends.map((each) => each.sounding(which))),
      () => blends.flatMap((each) => each.numbers).sort((a, b) => a - b),
      blends,
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

  /** The keys that are alike for all parts, held together: one number for each band. Do not change it. */
  get chord(): Float64Array {
    if (this.parts.length > 0 && this.parts.every((each) => each.sounding("alike").shared === null)) {
      // Not kept: a search asks for it once of many sets, and never again.
      const sum = new Float64Array(BAND_COUNT);
      for (const each of this.parts) addPattern(sum, 0, each.chord);
      return sum;
    }
    this.together ??= folded(this.atAlike);
    return this.together;
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

/** The moments of a pattern as one. */
function folded(pattern: Pattern): Float64Array {
  const chord = new Float64Array(BAND_COUNT);
  for (let i = 0; i < PATTERN_LENGTH; i++)
    chord[i % BAND_COUNT] = (chord[i % BAND_COUNT] as number) + (pattern[i] as number);
  return chord;
}

function addPattern(sum: Pattern, moment: number, pattern: Float64Array): void {
  const start = moment * BAND_COUNT;
  for (let b = 0; b < BAND_COUNT; b++) sum[start + b] = (sum[start + b] as number) + (pattern[b] as number);
}

function joined(sounds: readonly Sounding[]): Sounding {
  const own = new Float64Array(PATTERN_LENGTH);
  let shared: Map<string, { moment: number; pattern: Float64Array }> | null = null;
  for (const sound of sounds) {
    for (let i = 0; i < PATTERN_LENGTH; i++) own[i] = (own[i] as number) + (sound.own[i] as number);
    if (!sound.shared) continue;
    shared ??= new Map();
    for (const [pipe, { moment, pattern }] of sound.shared) {
      const known = shared.get(pipe);
      // Two stops may call one pipe by different strengths: the stronger counts, in whatever order they are drawn.
      shared.set(pipe, { moment, pattern: known ? stronger(known.pattern, pattern) : pattern });
    }
  }
  return { own, shared };
}

const stronger = (one: Float64Array, other: Float64Array): Float64Array =>
  one === other ? one : one.map((each, b) => Math.max(each, other[b] as number));
