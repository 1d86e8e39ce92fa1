import type { Texture } from "../texture.ts";
import { both, type LoosePart, left, right, type TextureFacts, texture } from "./layout.ts";

const english = (facts: TextureFacts): Texture => texture("english-18c", facts);

const solo: readonly LoosePart[] = [right("melody", "C4-D6", { place: "treble" }), left("accompaniment", "G1-C5")];
const soloWithEcho: readonly LoosePart[] = [...solo, right("echo", "C4-D6", { place: "treble", optional: true })];

/** Textures of the English 18th century, played without feet on keyboards that go down to G1. */
export const ENGLISH_18C_TEXTURES: readonly Texture[] = [
  english({
    id: "diapasons",
    title: "Diapasons",
    plain: "Both hands open a voluntary slowly on the open and the stopped diapason together.",
    parts: [both("plenum")],
    like: "plenum-manual",
    tempo: "slow",
    dynamic: "mf",
  }),
  english({
    id: "middling-chorus",
    title: "Middling chorus",
    plain: "Both hands play a moderately loud movement on diapasons, principal, twelfth and fifteenth.",
    parts: [both("plenum")],
    like: "plenum-manual",
    dynamic: "mf",
  }),
  english({
    id: "full-organ",
    title: "Full organ",
    plain:
      "Both hands play introductions and fugues on the whole chorus with its sesquialtera, perhaps with the trumpet.",
    parts: [both("plenum")],
    also: ["english-cathedral"],
    like: "plenum-manual",
    dynamic: "ff",
  }),
  english({
    id: "cornet-voluntary",
    title: "Cornet voluntary",
    plain: "The right hand runs nimbly on the cornet, echoed perhaps in the swell, over the left hand's light bass.",
    parts: soloWithEcho,
    like: "melody-over-accompaniment",
    tempo: "fast",
  }),
  english({
    id: "trumpet-voluntary",
    title: "Trumpet voluntary",
    plain: "The right hand plays calls and marches on the trumpet, echoed perhaps in the swell, over the left hand.",
    parts: soloWithEcho,
    like: "trumpet-tune",
  }),
  english({
    id: "hautboy-solo",
    title: "Hautboy solo",
    plain: "The right hand sings on the hautboy in the swell box, opening and closing it, over a stopped diapason.",
    parts: solo,
    like: "melody-over-accompaniment",
    tempo: "slow",
  }),
  english({
    id: "vox-humana-solo",
    title: "Vox humana solo",
    plain: "The right hand sings slowly on the vox humana with the stopped diapason, and the left hand accompanies.",
    parts: solo,
    like: "melody-over-accompaniment",
    tempo: "slow",
    dynamic: "p",
  }),
  english({
    id: "cremona-solo",
    title: "Cremona solo",
    plain: "One hand, often the left, plays the tune on the cremona, and the other accompanies on diapasons.",
    parts: solo,
    like: "melody-over-accompaniment",
  }),
  english({
    id: "swell-echo",
    title: "Swell echoes",
    plain: "The right hand plays each phrase on the great and then repeats it in the swell box, as if from afar.",
    parts: [
      right("melody", "C4-D6", { place: "treble" }),
      left("accompaniment", "G1-C5"),
      right("echo", "C4-D6", { place: "treble" }),
    ],
    like: "solo-and-echo",
  }),
  english({
    id: "flute-solo",
    title: "Flute solo",
    plain: "The right hand plays a cheerful tune on the 4 foot flute, over a stopped diapason in the left hand.",
    parts: solo,
    like: "melody-over-accompaniment",
    dynamic: "p",
  }),
  english({
    id: "corno-duet",
    title: "Duet of horns",
    plain: "The right hand plays two hunting horns in thirds and sixths, near and then far away, over the left hand.",
    parts: soloWithEcho,
    like: "melody-over-accompaniment",
  }),
];
