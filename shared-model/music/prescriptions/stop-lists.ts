import type { WantedText } from "./wanted.ts";

/** Alternatives that many recipes share; one stop of a list is enough. Common practice. */

/** The 16' of an ordinary pedal bass. */
export const PEDAL_16: readonly WantedText[] = ["stopped-flute 16", "principal 16", "string 16"];

/** The 8' that goes with it. */
export const PEDAL_8: readonly WantedText[] = ["stopped-flute 8", "open-flute 8", "principal 8", "string 8"];

/** A soft 8' for an accompaniment. */
export const QUIET_8: readonly WantedText[] = ["stopped-flute 8", "open-flute 8", "soft-string 8"];

/** A flute 8' as the ground of a solo colour. */
export const FLUTE_8: readonly WantedText[] = ["stopped-flute 8", "open-flute 8"];

/** A flute 4' above it. */
export const FLUTE_4: readonly WantedText[] = ["open-flute 4", "stopped-flute 4"];
