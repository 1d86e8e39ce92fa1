import type { Texture } from "../texture.ts";
import { both, feet, type LoosePart, type TextureFacts, texture } from "./layout.ts";

const german = (facts: TextureFacts): Texture => texture("german-romantic", facts);

const chorus: readonly LoosePart[] = [both("plenum"), feet("bass")];

/** Textures of the German romantic school; `sustained`, which serves any tradition, stands among the neutral ones. */
export const GERMAN_ROMANTIC_TEXTURES: readonly Texture[] = [
  german({
    id: "adagio",
    title: "Adagio",
    plain: "Hands and feet play slow and inward music on several soft 8 foot stops over a soft bass.",
    parts: chorus,
    like: "meditation",
    tempo: "slow",
    dynamic: "p",
  }),
  german({
    id: "vox-coelestis",
    title: "Vox coelestis",
    plain: "Hands and feet play very slow harmony on a soft string with its beating partner.",
    parts: chorus,
    like: "meditation",
    tempo: "slow",
    dynamic: "pp",
  }),
  german({
    id: "terraced-crescendo",
    title: "Terraced crescendo",
    plain: "Hands and feet play on while the sound rises in steps, from strings through principals to the reeds.",
    parts: chorus,
    like: "crescendo",
    ladder: true,
  }),
  german({
    id: "full-romantic",
    title: "Full romantic organ",
    plain:
      "Hands and feet play on the whole organ, from its deepest basses to mixtures and reeds, all keyboards coupled.",
    parts: chorus,
    like: "plenum",
    dynamic: "fff",
  }),
  german({
    id: "fugue-romantic",
    title: "Romantic fugue",
    plain: "Hands and feet begin a fugue on firm principals, and stops are added as the voices pile up.",
    parts: chorus,
    like: "fugue",
    tempo: "moderate",
    dynamic: "f",
  }),
];
