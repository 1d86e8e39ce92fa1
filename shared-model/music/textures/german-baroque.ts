import type { Texture } from "../texture.ts";
import { both, feet, left, right, type TextureFacts, texture } from "./layout.ts";

const german = (facts: TextureFacts): Texture => texture("north-german", { also: ["central-german"], ...facts });

/** Textures that the north and the central German schools share, each with recipes of its own. */
export const GERMAN_BAROQUE_TEXTURES: readonly Texture[] = [
  german({
    id: "organo-pleno",
    title: "Organo pleno",
    plain: "Hands and feet play free works and fugues on the full choruses of manual and pedal.",
    parts: [both("plenum"), feet("bass")],
    like: "plenum",
    dynamic: "f",
  }),
  german({
    id: "chorale-in-soprano",
    title: "Chorale in the soprano",
    plain: "The right hand plays the hymn tune in long notes on a penetrating sound, over softer moving voices.",
    parts: [right("melody", "C4-A5", { place: "treble" }), left("accompaniment", "G3-G4"), feet("bass")],
    like: "melody-over-accompaniment",
  }),
  german({
    id: "chorale-in-tenor",
    title: "Chorale in the tenor",
    plain: "The left hand plays the hymn tune in the tenor on a reed or principal, and the right hand moves above it.",
    parts: [left("melody", "C3-A4", { place: "tenor" }), right("accompaniment", "C4-G5"), feet("bass")],
    like: "melody-in-tenor",
  }),
  german({
    id: "chorale-in-pedal",
    title: "Chorale in the pedal",
    plain:
      "The feet play the hymn tune as written, while the left hand has the bass, unless the tune is itself the bass.",
    parts: [feet("cantus-firmus", "C3-D4", { place: "tenor" }), both("accompaniment")],
    like: "melody-in-pedal",
  }),
  german({
    id: "chorale-alto-in-pedal",
    title: "Alto chorale in the pedal at 4 foot",
    plain:
      "The feet play the hymn tune on a 4 foot stop, so that it sounds an octave higher, amid the voices of the hands.",
    parts: [feet("cantus-firmus", "C2-C4", { place: "alto", sounding: 4 }), both("accompaniment")],
    like: "melody-in-pedal",
  }),
  german({
    id: "chorale-fantasia",
    title: "Chorale fantasia",
    plain:
      "The right hand ornaments each line of the hymn on a strong solo, over full inner voices and a strong pedal.",
    parts: [
      right("melody", "C4-C6", { place: "treble" }),
      left("accompaniment"),
      feet("bass"),
      right("echo", "C4-C6", { place: "treble", optional: true }),
    ],
    like: "melody-over-accompaniment",
  }),
  german({
    id: "chorale-trio",
    title: "Chorale trio",
    plain: "The hymn tune and a free voice stand on two keyboards as equals, with a light bass in the feet.",
    parts: [
      right("voice", "C4-C6", { place: "treble" }),
      left("voice", "C3-C5", { place: "tenor" }),
      feet("bass", "C2-D4"),
    ],
    like: "trio",
  }),
  german({
    id: "chorale-prelude-plain",
    title: "Plain chorale prelude",
    plain: "Both hands play the hymn in four simple parts on one keyboard, perhaps with the bass in the feet.",
    parts: [both("plenum"), feet("bass", "C2-C4", { optional: true })],
    like: "hymn-introduction",
  }),
  german({
    id: "ornamented-chorale",
    title: "Ornamented chorale",
    plain: "The right hand sings the hymn tune with many graces on a solo voice, over a quiet left hand and pedal.",
    parts: [right("melody", "C4-A5", { place: "treble" }), left("accompaniment", "G3-G4"), feet("bass")],
    like: "melody-over-accompaniment",
    tempo: "slow",
  }),
  german({
    id: "cornet-solo",
    title: "Cornet solo",
    plain: "The right hand plays a solo on the cornet, over flutes in the left hand and a soft pedal.",
    parts: [right("melody", "C4-A5", { place: "treble" }), left("accompaniment", "G3-G4"), feet("bass")],
    like: "melody-over-accompaniment",
  }),
  german({
    id: "nasat-solo",
    title: "Nasat solo",
    plain: "The right hand plays a solo on a stopped flute with the nasat, over a soft stop in the left hand.",
    parts: [right("melody", "C4-A5", { place: "treble" }), left("accompaniment", "G3-G4"), feet("bass")],
    like: "melody-over-accompaniment",
    dynamic: "p",
  }),
  german({
    id: "tierce-solo",
    title: "Tierce solo",
    plain:
      "The right hand plays a solo on flutes sharpened by the third-sounding rank, over a soft stop in the left hand.",
    parts: [right("melody", "C4-A5", { place: "treble" }), left("accompaniment", "G3-G4"), feet("bass")],
    like: "melody-over-accompaniment",
  }),
  german({
    id: "bicinium",
    title: "Bicinium",
    plain:
      "The hymn tune stands in one hand and a busy counter-voice in the other, on two keyboards of different colour.",
    parts: [right("voice", "G3-C6", { place: "treble" }), left("voice", "C2-C5", { place: "bass" })],
    like: "two-voices",
  }),
  german({
    id: "echo-fantasia",
    title: "Echo fantasia",
    plain: "Both hands play each phrase on a strong keyboard and repeat its end on a softer one.",
    parts: [both("plenum"), both("echo"), feet("bass", "C2-C4", { optional: true })],
    like: "dialogue",
  }),
  german({
    id: "partita-variation",
    title: "Variation of a partita",
    plain: "Both hands play one variation of a set on one keyboard, in a colour that the last variation did not have.",
    parts: [both("plenum")],
    like: "flutes",
  }),
];
