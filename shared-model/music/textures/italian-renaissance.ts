import type { Texture } from "../texture.ts";
import { both, feet, type LoosePart, type TextureFacts, texture } from "./layout.ts";

const italian = (facts: TextureFacts): Texture => texture("italian-renaissance", facts);

/** One keyboard; the feet, where there is a pedal, pull its lowest keys down. */
const oneKeyboard: readonly LoosePart[] = [both("plenum"), feet("bass", "C2-C3", { optional: true })];

/** Textures of the Italian school. */
export const ITALIAN_RENAISSANCE_TEXTURES: readonly Texture[] = [
  italian({
    id: "ripieno",
    title: "Ripieno",
    plain: "Both hands play on all the principal ranks from the lowest to the highest, without a flute among them.",
    parts: oneKeyboard,
    like: "plenum",
    dynamic: "f",
  }),
  italian({
    id: "mezzo-ripieno",
    title: "Mezzo ripieno",
    plain:
      "Both hands play on the low principals with the very highest ranks and a flute, leaving out what lies between.",
    parts: oneKeyboard,
    like: "plenum",
    dynamic: "mf",
  }),
  italian({
    id: "canzona",
    title: "Canzona",
    plain: "Both hands play quick and dancing passages on the octave and a flute, light and clear.",
    parts: oneKeyboard,
    like: "flutes",
    tempo: "fast",
  }),
  italian({
    id: "canzona-adagio",
    title: "Slow canzona with tremulant",
    plain: "Both hands play without quick notes on the octave and the flute, and the tremulant makes them waver.",
    parts: oneKeyboard,
    like: "flutes",
    tempo: "slow",
  }),
  italian({
    id: "elevation",
    title: "Elevation",
    plain: "Both hands play slow and tender harmonies on the mild principal, for the most solemn moment of the Mass.",
    parts: oneKeyboard,
    like: "flutes",
    tempo: "slow",
    dynamic: "p",
  }),
  italian({
    id: "concerto-cornetti",
    title: "Concerto of cornetts",
    plain: "Both hands imitate a group of cornetts with four small ranks that stand on the octave.",
    parts: oneKeyboard,
    like: "recorder-consort",
  }),
  italian({
    id: "fiffaro",
    title: "Fiffaro, or voce umana",
    plain: "Both hands bind slow chords on two principals tuned a shade apart, so that they beat like a singing voice.",
    parts: oneKeyboard,
    like: "flutes",
    tempo: "slow",
    dynamic: "p",
  }),
  italian({
    id: "ricercar",
    title: "Ricercar",
    plain: "Both hands weave long and equal voices on the principal, as singers would.",
    parts: oneKeyboard,
    like: "fugue",
    tempo: "moderate",
  }),
  italian({
    id: "motets-accompaniment",
    title: "Accompaniment of motets",
    plain: "Both hands support a few singers on the principal, and add the octave or a flute when more of them sing.",
    parts: [both("accompaniment"), feet("bass", "C2-C3", { optional: true })],
    like: "choir-accompaniment",
  }),
];
