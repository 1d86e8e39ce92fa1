import type { Part } from "../music/texture.ts";
import type { Key } from "../pitch/key.ts";

/** How many moments of a section are listened to: one low, one middle, one high. */
export const MOMENTS = 3;

/** Keys at which a part is listened to. */
export interface Moments {
  /** What the part holds at each moment, in its own range: a note, or a chord. */
  readonly played: readonly (readonly Key[])[];
  /** The same three keys for all parts of a kind: for comparing colours and strengths apart from the music. */
  readonly alike: readonly Key[];
}

/** Where in its range a part lies at the three moments. Basses dwell low. */
const TUNE = [0.3, 0.55, 0.8] as const;
const BASS = [0.1, 0.25, 0.4] as const;
const CHORD = [0.35, 0.5, 0.65] as const;
/** Semitones of a chord about its middle: a triad in one hand, four notes in two. */
const ONE_HAND = [-4, 0, 3] as const;
const TWO_HANDS = [-12, -5, 0, 4] as const;
/** g e' c''. */
export const HANDS_ALIKE = [55, 64, 72] as const;
const FEET_ALIKE = [36, 43, 48] as const;

type Manner = "tune" | "bass" | "one-hand" | "two-hands";

/** How a part moves, as far as listening goes: two parts of the same manner and range are listened to at the same keys. */
export function mannerOf({ role, hands }: Pick<Part, "role" | "hands">): Manner {
  if (role === "bass") return "bass";
  if (role === "plenum") return "two-hands";
  if (role === "accompaniment") return "one-hand";
  return role === "echo" && hands === "both" ? "two-hands" : "tune";
}

/** The keys at which to listen to a part of this manner over a written range. */
export function momentsOf(manner: Manner, low: Key, high: Key): Moments {
  const shares = manner === "bass" ? BASS : manner === "tune" ? TUNE : CHORD;
  const steps: readonly number[] = manner === "one-hand" ? ONE_HAND : manner === "two-hands" ? TWO_HANDS : [0];
  const played = shares.map((share) => {
    const middle = low + Math.round(share * (high - low));
    return [...new Set(steps.map((step) => Math.min(high, Math.max(low, middle + step))))];
  });
  return { played, alike: manner === "bass" ? FEET_ALIKE : HANDS_ALIKE };
}
