import type { Tradition } from "../music/texture.ts";
import type { PartContext } from "./rule.ts";

const traditions = (...names: readonly Tradition[]): ReadonlySet<Tradition> => new Set(names);

/** The two German schools before 1800. */
export const GERMAN_BAROQUE = traditions("north-german", "central-german");
/** Schools that build on several 8' stops at once. */
export const ROMANTIC = traditions("french-symphonic", "german-romantic", "english-cathedral");
/** Schools older than the keen string and the swell chorus. */
export const BEFORE_1800 = traditions(
  "french-classical",
  "italian-renaissance",
  "north-german",
  "central-german",
  "english-18c",
  "spanish",
);

/** Textures in which both hands share one sound that is a colour and no chorus: gaps, single stops and celestes have their place. */
const COLOURS: ReadonlySet<string> = new Set([
  "flutes",
  "recorder-consort",
  "concert-de-flutes",
  "petites-flutes",
  "petits-oiseaux",
  "flute-allemande",
  "fond-d-orgue",
  "voix-humaine",
  "quatuor",
  "canzona",
  "canzona-adagio",
  "elevation",
  "concerto-cornetti",
  "fiffaro",
  "ricercar",
  "partita-variation",
  "chorale-prelude-plain",
  "echo-fantasia",
  "falsas",
  "ecos",
  "soft-eights",
  "swell-strings",
  "diapasons",
  "great-diapasons",
  "fonds-8",
  "fonds-8-4",
  "fonds-16-8-4",
  "scherzo-flutes",
  "voix-celeste",
  "celeste-with-pedal-melody",
  "adagio",
  "vox-coelestis",
  "sustained",
  "hymn-verse-quiet",
  "terraced-crescendo",
  "crescendo",
  "batalla",
]);

/** Whether the part carries a chorus: both hands on one sound, in a texture that asks for more than a colour. */
export const isChorus = (context: PartContext): boolean =>
  context.part.role === "plenum" && (context.section.texture === null || !COLOURS.has(context.section.texture));

/** Textures in which the organ goes under singers other than a crowd. */
export const UNDER_VOICES: ReadonlySet<string> = new Set([
  "choir-accompaniment",
  "motets-accompaniment",
  "voice-accompaniment",
  "voice-accompaniment-soft",
  "psalm-accompaniment",
  "chant",
]);

/** Textures whose solo is a great reed, over an accompaniment that grows with it. */
export const GREAT_REED_SOLOS: ReadonlySet<string> = new Set([
  "trumpet-tune",
  "fanfare",
  "solo-tuba",
  "trumpet-voluntary",
  "recit-de-trompette",
  "basse-de-trompette",
  "basse-et-dessus-de-trompette",
]);

/** A tune in the feet, which is no bass. */
export const isPedalMelody = (context: PartContext): boolean =>
  context.part.hands === "feet" && context.part.role !== "bass" && context.part.role !== "plenum";

/** The bass of the music in the left hand, with or without feet. */
export const isLeftHandBass = (context: PartContext): boolean =>
  context.part.hands === "left" &&
  (context.part.role === "bass" ||
    (context.part.role === "voice" && (context.part.place === "bass" || !context.section.feet)));
