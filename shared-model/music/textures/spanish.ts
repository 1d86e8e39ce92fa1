import type { Texture } from "../texture.ts";
import { both, feet, type LoosePart, left, right, type TextureFacts, texture } from "./layout.ts";

const spanish = (facts: TextureFacts): Texture => texture("spanish", { oneKeyboard: true, ...facts });

const trebleHalf: readonly LoosePart[] = [
  right("melody", "C#4-A5", { place: "treble" }),
  left("accompaniment", "C2-C4"),
];
const bassHalf: readonly LoosePart[] = [left("melody", "C2-C4", { place: "bass" }), right("accompaniment", "C#4-A5")];

/** Textures of the Spanish school: one keyboard, its stops divided between C4 and C#4. */
export const SPANISH_TEXTURES: readonly Texture[] = [
  spanish({
    id: "lleno",
    title: "Lleno",
    plain: "Both hands play an imitative piece on the whole principal chorus of the one keyboard.",
    parts: [both("plenum"), feet("bass", "C2-C3", { optional: true })],
    like: "plenum",
    dynamic: "f",
  }),
  spanish({
    id: "falsas",
    title: "Falsas",
    plain: "Both hands play slow suspensions on the principal alone, so that every clash and its relief is felt.",
    parts: [both("plenum")],
    like: "flutes",
    tempo: "slow",
    dynamic: "p",
  }),
  spanish({
    id: "batalla",
    title: "Batalla",
    plain: "Both hands play the din of a battle on the trumpets that lie flat in the organ's front.",
    parts: [both("plenum")],
    like: "plenum-manual",
    dynamic: "ff",
  }),
  spanish({
    id: "treble-solo",
    title: "Medio registro de tiple",
    plain: "The right hand plays a solo on stops that sound only above middle C, over the left on the lower half.",
    parts: trebleHalf,
    like: "melody-over-accompaniment",
  }),
  spanish({
    id: "bass-solo",
    title: "Medio registro de bajo",
    plain: "The left hand plays a solo on stops that sound only up to middle C, below the right on the upper half.",
    parts: bassHalf,
    like: "solo-in-bass",
  }),
  spanish({
    id: "two-trebles",
    title: "Medio registro of two trebles",
    plain: "The right hand plays two solo voices at once on the upper half of the divided stops, over the left hand.",
    parts: trebleHalf,
    like: "melody-over-accompaniment",
  }),
  spanish({
    id: "two-basses",
    title: "Medio registro of two basses",
    plain: "The left hand plays two solo voices at once on the lower half of the divided stops, below the right hand.",
    parts: bassHalf,
    like: "solo-in-bass",
  }),
  spanish({
    id: "ecos",
    title: "Ecos",
    plain: "The right hand plays a cornet and its echo from a closed box, over the left hand on the lower half.",
    parts: [...trebleHalf, right("echo", "C#4-A5", { place: "treble" })],
    like: "solo-and-echo",
  }),
];
