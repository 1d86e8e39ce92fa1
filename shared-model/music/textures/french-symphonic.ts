import type { Texture } from "../texture.ts";
import { both, feet, type LoosePart, left, right, type TextureFacts, texture } from "./layout.ts";

const french = (facts: TextureFacts): Texture => texture("french-symphonic", facts);

const chorus: readonly LoosePart[] = [both("plenum"), feet("bass")];
const solo = (range: string): readonly LoosePart[] => [
  right("melody", range),
  left("accompaniment", "G3-G4"),
  feet("bass"),
];

/** Textures of the French symphonic school: keyboards coupled, the Récit in its box. */
export const FRENCH_SYMPHONIC_TEXTURES: readonly Texture[] = [
  french({
    id: "fonds-8",
    title: "Fonds de 8",
    plain: "Hands and feet play broad harmony on all the 8 foot flues of the coupled keyboards.",
    parts: chorus,
    like: "sustained",
    dynamic: "mf",
  }),
  french({
    id: "fonds-8-4",
    title: "Fonds de 8 et 4",
    plain: "Hands and feet play on all the 8 foot flues of the coupled keyboards with those of 4 foot above them.",
    parts: chorus,
    like: "sustained",
    dynamic: "mf",
  }),
  french({
    id: "fonds-16-8-4",
    title: "Fonds de 16, 8 et 4",
    plain: "Hands and feet play on all the flues of 16, 8 and 4 foot, dark and massive.",
    parts: chorus,
    like: "sustained",
    dynamic: "f",
  }),
  french({
    id: "fonds-et-anches-8",
    title: "Fonds et anches de 8",
    plain: "Hands and feet play on all the 8 foot flues together with the 8 foot reeds.",
    parts: chorus,
    like: "sustained",
    dynamic: "f",
  }),
  french({
    id: "anches-prepared",
    title: "Fonds, anches préparées",
    plain: "Hands and feet play on the flues, and the drawn reeds stay silent until a foot lets their wind in.",
    parts: chorus,
    like: "sustained",
    dynamic: "mf",
  }),
  french({
    id: "grand-choeur-symphonic",
    title: "Grand chœur, symphonic",
    plain: "Hands and feet play on everything that the coupled keyboards have but the celestes and the voix humaine.",
    parts: chorus,
    like: "plenum",
    dynamic: "fff",
  }),
  french({
    id: "plein-jeu-symphonic",
    title: "Plein jeu, symphonic",
    plain: "Hands and feet play a fugue or older music on flues from 16 foot to the mixtures, without reeds.",
    parts: chorus,
    like: "plenum",
    dynamic: "f",
  }),
  french({
    id: "toccata-symphonic",
    title: "Symphonic toccata",
    plain: "The hands repeat quick figures on flues and reeds while the feet thunder out a slow theme.",
    parts: chorus,
    like: "toccata",
    tempo: "fast",
    dynamic: "ff",
  }),
  french({
    id: "scherzo-flutes",
    title: "Scherzo on flutes",
    plain: "The hands skip lightly over flutes of 8, 4 and 2 foot, and the feet pluck along softly.",
    parts: chorus,
    like: "flutes",
    tempo: "fast",
    dynamic: "p",
  }),
  french({
    id: "voix-celeste",
    title: "Voix céleste",
    plain: "The hands hold slow chords on a string and its celeste in the closed box, over a very soft pedal.",
    parts: chorus,
    like: "meditation",
    tempo: "slow",
    dynamic: "pp",
  }),
  french({
    id: "recit-cantabile",
    title: "Cantabile on the Récit",
    plain: "The right hand sings a broad melody on flues and reeds in the box, over the flues of another keyboard.",
    parts: solo("C3-A5"),
    like: "melody-over-accompaniment",
    tempo: "slow",
  }),
  french({
    id: "solo-hautbois",
    title: "Solo of the hautbois",
    plain:
      "The right hand sings on the Récit's oboe, the left hand accompanies on soft flutes and the feet play lightly.",
    parts: solo("C4-A5"),
    like: "melody-over-accompaniment",
    dynamic: "p",
  }),
  french({
    id: "solo-clarinette",
    title: "Solo of the clarinette",
    plain: "The right hand sings on the clarinet, over flutes or strings of the Récit in the left hand.",
    parts: solo("C4-A5"),
    like: "melody-over-accompaniment",
    dynamic: "p",
  }),
  french({
    id: "solo-flute-harmonique",
    title: "Solo of the flûte harmonique",
    plain:
      "The right hand sings on a flute that grows fuller as it climbs, over the softest stops of the closed Récit.",
    parts: solo("G3-C6"),
    like: "melody-over-accompaniment",
    dynamic: "p",
  }),
  french({
    id: "celeste-with-pedal-melody",
    title: "Celeste with a pedal melody",
    plain: "The hands hold wavering string chords while the feet sing the melody on a 4 foot flute, an octave higher.",
    parts: [feet("melody", "C2-C4", { sounding: 4 }), both("accompaniment")],
    like: "melody-in-pedal",
    tempo: "slow",
    dynamic: "pp",
  }),
];

/** Here chords stand for a distant choir; in the classical school, whose id it shares, the voix humaine is a solo. */
export const FRENCH_SYMPHONIC_VOIX_HUMAINE: Texture = french({
  id: "voix-humaine",
  title: "Voix humaine",
  plain: "Hands and feet play soft chords on the voix humaine with tremulant, like a choir heard from far away.",
  parts: chorus,
  like: "meditation",
  tempo: "slow",
  dynamic: "pp",
});

/** Here the pedal always takes part; in the early 19th century, whose id it shares, it may be missing. */
export const FRENCH_SYMPHONIC_GRAND_CHOEUR: Texture = french({
  id: "grand-choeur",
  title: "Grand chœur",
  plain: "Hands and feet play on all the flues and reeds of the coupled keyboards and pedal together.",
  parts: chorus,
  like: "plenum",
  dynamic: "fff",
});
