import type { Texture } from "../texture.ts";
import { both, feet, type LoosePart, left, right, type TextureFacts, texture } from "./layout.ts";

const french = (facts: TextureFacts): Texture => texture("french-classical", facts);

const pedalFlutes = feet("bass", "C2-C4", { optional: true });
const chorus: readonly LoosePart[] = [both("plenum"), pedalFlutes];
const trebleSolo: readonly LoosePart[] = [
  right("melody", "C4-C6", { place: "treble" }),
  left("accompaniment", "C2-C5"),
  pedalFlutes,
];
const tenorSolo: readonly LoosePart[] = [
  left("melody", "A2-D5", { place: "tenor" }),
  right("accompaniment", "G3-C6"),
  feet("bass"),
];
const bassSolo: readonly LoosePart[] = [left("melody", "C2-C5", { place: "bass" }), right("accompaniment", "C4-A5")];

/** Textures of the French classical school. The feet play at 8' on flutes, or carry a chant on reeds. */
export const FRENCH_CLASSICAL_TEXTURES: readonly Texture[] = [
  french({
    id: "plein-jeu",
    title: "Plein jeu",
    plain: "Both hands play grave and full chords on the principals and mixtures of two coupled keyboards.",
    parts: chorus,
    like: "plenum",
    tempo: "slow",
    dynamic: "f",
  }),
  french({
    id: "grand-jeu",
    title: "Grand jeu",
    plain: "Both hands play on the trumpets and cornets of coupled keyboards, and a small cornet may echo them.",
    parts: [both("plenum"), right("echo", "C4-C6", { optional: true, place: "treble" }), pedalFlutes],
    like: "dialogue",
    dynamic: "ff",
  }),
  french({
    id: "grand-choeur",
    title: "Grand chœur",
    plain: "Both hands play on all the trumpets and cornets with the high principals, as in the early 19th century.",
    parts: chorus,
    also: ["french-symphonic"],
    like: "plenum",
    dynamic: "ff",
  }),
  french({
    id: "fugue-grave",
    title: "Fugue grave",
    plain: "Both hands play a slow fugue on the trumpet, whose firm tone makes every entry plain.",
    parts: [both("plenum")],
    like: "fugue",
    tempo: "slow",
  }),
  french({
    id: "fond-d-orgue",
    title: "Fond d'orgue",
    plain: "Both hands play slowly on all the calm stops of 8 and 4 foot, without anything sharp or reedy.",
    parts: chorus,
    like: "flutes",
    tempo: "slow",
    dynamic: "mf",
  }),
  french({
    id: "concert-de-flutes",
    title: "Concert de flûtes",
    plain: "Both hands play gently on every flute and stopped rank of the two coupled keyboards.",
    parts: chorus,
    like: "flutes",
    dynamic: "p",
  }),
  french({
    id: "petites-flutes",
    title: "Petites flûtes, or flûtes à bec",
    plain: "Both hands play on stops of 4 foot alone, which sound an octave higher, like a band of recorders.",
    parts: [both("plenum")],
    like: "recorder-consort",
    dynamic: "p",
  }),
  french({
    id: "petits-oiseaux",
    title: "Petits oiseaux",
    plain: "Both hands twitter on stops that sound a twelfth, and play in another key so that it comes out right.",
    parts: [both("plenum")],
    like: "recorder-consort",
    tempo: "fast",
    dynamic: "p",
  }),
  french({
    id: "flute-allemande",
    title: "Flûte allemande",
    plain: "Both hands play high on 8 foot flues only, whose treble sounds like the transverse flute.",
    parts: [both("plenum", "G3-C6")],
    like: "flutes",
    dynamic: "p",
  }),
  french({
    id: "recit-de-cornet",
    title: "Récit de cornet",
    plain: "The right hand plays quick and round figures on the cornet, over two calm stops in the left hand.",
    parts: trebleSolo,
    like: "melody-over-accompaniment",
  }),
  french({
    id: "recit-de-cromorne",
    title: "Récit de cromorne",
    plain: "The right hand sings tenderly on the nasal cromorne, while the left hand accompanies on the main keyboard.",
    parts: trebleSolo,
    like: "melody-over-accompaniment",
    tempo: "slow",
  }),
  french({
    id: "recit-de-tierce",
    title: "Récit de tierce",
    plain: "The right hand sings on five ranks that together make a reedy cornet, over one soft stop in the left.",
    parts: trebleSolo,
    like: "melody-over-accompaniment",
  }),
  french({
    id: "recit-de-nasard",
    title: "Récit de nasard",
    plain:
      "The right hand sings on a stopped flute with the nasard, a hollow and gentle sound, over one or two soft stops.",
    parts: trebleSolo,
    like: "melody-over-accompaniment",
    tempo: "slow",
    dynamic: "p",
  }),
  french({
    id: "recit-de-trompette",
    title: "Récit de trompette",
    plain:
      "The right hand plays proudly on one trumpet, or on two with a 4 foot principal, and the left hand accompanies.",
    parts: trebleSolo,
    like: "melody-over-accompaniment",
    dynamic: "f",
  }),
  french({
    id: "voix-humaine",
    title: "Voix humaine",
    plain:
      "One hand sings like a human voice on the voix humaine with the gentle tremulant, and the other accompanies.",
    parts: [right("melody", "F2-G5"), left("accompaniment", "C2-C5"), pedalFlutes],
    like: "melody-over-accompaniment",
    also: ["french-symphonic"],
    tempo: "slow",
    dynamic: "p",
  }),
  french({
    id: "fifre",
    title: "Fifre",
    plain:
      "The right hand whistles like a fife on a stopped 8 foot with 2 foot stops, and the left hand beats the drum.",
    parts: trebleSolo,
    like: "melody-over-accompaniment",
    tempo: "fast",
  }),
  french({
    id: "flageolet",
    title: "Flageolet",
    plain: "The right hand plays two 2 foot stops alone, which sound two octaves higher, over two 8 foot stops.",
    parts: trebleSolo,
    like: "melody-over-accompaniment",
    tempo: "fast",
  }),
  french({
    id: "musette",
    title: "Musette",
    plain:
      "The right hand plays the bagpipe's tune over a drone held by the feet or by the weighted keys of the left hand.",
    parts: trebleSolo,
    like: "pastorale",
    tempo: "moderate",
  }),
  french({
    id: "noel",
    title: "Noël",
    plain: "The right hand plays a Christmas carol and its variations on ever new colours over a light left hand.",
    parts: trebleSolo,
    like: "melody-over-accompaniment",
  }),
  french({
    id: "tierce-en-taille",
    title: "Tierce en taille",
    plain: "The left hand sings an ornamented tenor on the rich tierce ranks, below soft stops in the right hand.",
    parts: tenorSolo,
    like: "melody-in-tenor",
    tempo: "slow",
  }),
  french({
    id: "cromorne-en-taille",
    title: "Cromorne en taille",
    plain:
      "The left hand sings in the tenor on the cromorne, the right hand accompanies above and the feet play a flute.",
    parts: tenorSolo,
    like: "melody-in-tenor",
    tempo: "slow",
  }),
  french({
    id: "trompette-en-taille",
    title: "Trompette en taille",
    plain: "The left hand carries a tenor melody or a chant on the trumpet, through lighter stops in the right hand.",
    parts: [tenorSolo[0] as LoosePart, tenorSolo[1] as LoosePart, pedalFlutes],
    like: "melody-in-tenor",
  }),
  french({
    id: "basse-de-trompette",
    title: "Basse de trompette",
    plain:
      "The left hand leaps over the lower keys on the trumpet, while the right hand accompanies on the other keyboard.",
    parts: bassSolo,
    like: "solo-in-bass",
  }),
  french({
    id: "basse-de-cromorne",
    title: "Basse de cromorne",
    plain: "The left hand plays a low solo on the cromorne, the right hand accompanies on all the 8 foot flues.",
    parts: bassSolo,
    like: "solo-in-bass",
  }),
  french({
    id: "basse-et-dessus-de-trompette",
    title: "Basse et dessus de trompette",
    plain: "The trumpet speaks now in the bass and now in the treble, and whichever hand is free accompanies it.",
    parts: [both("melody", "C2-A5"), both("accompaniment", "C2-A5")],
    like: "solo-in-bass",
  }),
  french({
    id: "duo",
    title: "Duo",
    plain: "A bright voice in the right hand and a deep one in the left converse, each on its own keyboard.",
    parts: [right("voice", "C4-C6", { place: "treble" }), left("voice", "C2-C5", { place: "bass" })],
    like: "two-voices",
  }),
  french({
    id: "trio-two-trebles",
    title: "Trio with two trebles",
    plain: "The right hand plays two upper voices on one keyboard, and the left hand plays the bass on another.",
    parts: [right("voice", "C4-C6", { place: "treble" }), left("bass", "C2-C5", { place: "bass" })],
    like: "two-voices",
  }),
  french({
    id: "trio-three-keyboards",
    title: "Trio on three keyboards",
    plain: "Each hand plays one voice on its own keyboard, in different colours, above a pedal flute of 8 foot.",
    parts: [right("voice", "G3-C6", { place: "treble" }), left("voice", "G3-C6", { place: "tenor" }), feet("bass")],
    like: "trio",
  }),
  french({
    id: "quatuor",
    title: "Quatuor",
    plain: "Each hand plays two of four voices on its own keyboard, tierce ranks against the cromorne.",
    parts: [right("voice", "G3-C6", { place: "treble" }), left("voice", "C2-C5", { place: "bass" })],
    like: "two-voices",
  }),
  french({
    id: "fugue-a-5",
    title: "Fugue in five voices",
    plain:
      "The right hand plays two voices on the cornet, the left hand two on the cromorne, and the feet the fifth voice.",
    parts: [right("voice", "C4-C6", { place: "treble" }), left("voice", "C3-C5", { place: "tenor" }), feet("bass")],
    like: "trio",
    tempo: "slow",
  }),
  french({
    id: "plain-chant-en-basse",
    title: "Plain chant in the bass",
    plain: "The feet play the chant in long low notes on trumpets, beneath the full mixtures of the hands.",
    parts: [both("plenum"), feet("cantus-firmus", "C2-C4", { place: "bass" })],
    like: "melody-in-pedal",
    dynamic: "f",
  }),
  french({
    id: "plain-chant-en-taille",
    title: "Plain chant in the tenor",
    plain:
      "The feet play the chant on the trumpet in the middle of the texture, and the hands play above and below it.",
    parts: [both("plenum"), feet("cantus-firmus", "C3-E4", { place: "tenor" })],
    like: "melody-in-pedal",
    dynamic: "f",
  }),
  french({
    id: "dialogue-with-echo",
    title: "Dialogue with echo",
    plain:
      "The right hand wanders between cornet, cromorne and a distant echo, while the left hand accompanies all three.",
    parts: [
      right("melody", "C4-C6", { place: "treble" }),
      right("melody", "C4-C6", { place: "treble" }),
      right("echo", "C4-C6", { place: "treble" }),
      left("accompaniment", "C2-C5"),
    ],
    like: "solo-and-echo",
  }),
  french({
    id: "voice-accompaniment",
    title: "Accompaniment of voices",
    plain: "Both hands accompany singers on as many 8 foot stops as the voices can bear.",
    parts: [both("accompaniment")],
    like: "continuo",
  }),
  french({
    id: "voice-accompaniment-soft",
    title: "Accompaniment of a weak voice",
    plain: "Both hands accompany one soft voice on a single stopped 8 foot.",
    parts: [both("accompaniment")],
    like: "continuo",
    dynamic: "pp",
  }),
];
