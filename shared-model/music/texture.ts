import type { Key } from "../pitch/key.ts";

export const TRADITIONS = [
  "neutral",
  "french-classical",
  "italian-renaissance",
  "north-german",
  "central-german",
  "english-18c",
  "english-cathedral",
  "spanish",
  "french-symphonic",
  "german-romantic",
] as const;
export type Tradition = (typeof TRADITIONS)[number];

export const ROLES = ["melody", "accompaniment", "bass", "plenum", "cantus-firmus", "voice", "echo"] as const;
export type Role = (typeof ROLES)[number];

export type Hands = "right" | "left" | "both" | "feet";
export const DYNAMICS = ["ppp", "pp", "p", "mp", "mf", "f", "ff", "fff"] as const;
export type Dynamic = (typeof DYNAMICS)[number];
export type Tempo = "slow" | "moderate" | "fast";

/** Where in the texture a voice lies, when that matters. */
export type Place = "treble" | "alto" | "tenor" | "bass";

/** One strand of the music: what it does, who plays it, and over which keys. */
export interface Part {
  /** The role, with `-1`, `-2` in the texture's order where a role occurs twice. */
  readonly id: string;
  readonly role: Role;
  readonly hands: Hands;
  readonly place: Place | null;
  /** Lowest and highest written key. */
  readonly low: Key;
  readonly high: Key;
  /** Pitch in feet at which it sounds: 8 as written, 4 an octave higher, 16 an octave lower. */
  readonly sounding: 16 | 8 | 4 | 2;
  /** Complete without it. */
  readonly optional: boolean;
  /** Whether the range is the catalogue's default (cut at the end of a keyboard) or stated by a section (must be covered). */
  readonly stated: boolean;
  /** Must not share a keyboard with these parts. */
  readonly apartFrom: readonly string[];
}

/** A way in which music lies on the keyboards. */
export interface Texture {
  readonly id: string;
  /** What a musician calls it. */
  readonly title: string;
  /** One plain sentence for a beginner. */
  readonly plain: string;
  /** Traditions it belongs to; `["neutral"]` serves any. */
  readonly traditions: readonly Tradition[];
  /** The neutral texture of its shape, whose recipes serve when its own do not; `null` for a neutral one. */
  readonly like: string | null;
  readonly parts: readonly Part[];
  /** The part whose colour makes one proposal different from another. */
  readonly colourOf: string;
  /** A chorus (not a solo): recipes call for many stops. */
  readonly tempo: Tempo | null;
  readonly dynamic: Dynamic | null;
  /** `true` when the answer is a ladder of steps, not a list of alternatives. */
  readonly ladder: boolean;
}

/** What is to be registered: a texture made concrete. */
export interface Section {
  readonly name: string | null;
  readonly bars: string | null;
  /** Id of the catalogue, `null` for parts written by hand. */
  readonly texture: string | null;
  readonly tradition: Tradition;
  readonly dynamic: Dynamic | null;
  readonly tempo: Tempo | null;
  readonly parts: readonly Part[];
}
