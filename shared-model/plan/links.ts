import type { LinkKind } from "../music/piece.ts";
import type { Points } from "../rules/rule.ts";
import type { Impression } from "./candidates.ts";

/** Hundredths of a phon by which something is heard as softer, and by which an echo is. */
const SOFTER = 100;
const ECHO = 250;
/** So much louder or softer is a contrast in itself. Common practice. */
const CONTRAST = 600;

/** Points against an echo of another colour, and against one from the same keyboard. Our own setting. */
const OTHER_COLOUR: Points = 600;
const SAME_KEYBOARD: Points = 20;
const TOO_NEAR: Points = 150;
/** Hundredths of a decibel beyond which an echo is hardly heard (common practice), and points against it (our own setting). */
const FAR = 1000;
const TOO_FAR: Points = 60;
/** Points against a contrast of pitches alone. Our own setting. */
const ONLY_PITCHES: Points = 100;

/** Whether a registration stands to another as a link says, and points against how it does. */
export function linkHolds(
  kind: LinkKind,
  mine: Impression,
  other: Impression,
): { readonly holds: boolean; readonly cost: Points } {
  const softer = other.level - mine.level;
  switch (kind) {
    case "same-as":
      return { holds: true, cost: 0 };
    case "softer-than":
      return { holds: softer >= SOFTER, cost: 0 };
    case "louder-than":
      return { holds: softer <= -SOFTER, cost: 0 };
    case "echo-of": {
      const near = softer < ECHO ? TOO_NEAR : softer > FAR ? TOO_FAR : 0;
      const colour = mine.colour === other.colour || mine.families === other.families ? 0 : OTHER_COLOUR;
      return { holds: softer >= SOFTER, cost: near + colour + (mine.keyboard === other.keyboard ? SAME_KEYBOARD : 0) };
    }
    case "contrast-with": {
      const otherFamilies = mine.families !== other.families || Math.abs(softer) >= CONTRAST;
      return { holds: otherFamilies || mine.pitches !== other.pitches, cost: otherFamilies ? 0 : ONLY_PITCHES };
    }
  }
}
