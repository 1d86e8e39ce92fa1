import type { Texture } from "../texture.ts";
import { both, feet, type LoosePart, left, right, type TextureFacts, texture } from "./layout.ts";

const english = (facts: TextureFacts): Texture => texture("english-cathedral", facts);

const chorus: readonly LoosePart[] = [both("plenum"), feet("bass")];
const solo: readonly LoosePart[] = [
  right("melody", "C4-A5", { place: "treble" }),
  left("accompaniment", "G3-G4"),
  feet("bass"),
];

/** Textures of the English school from the 19th century on. */
export const ENGLISH_CATHEDRAL_TEXTURES: readonly Texture[] = [
  english({
    id: "great-diapasons",
    title: "Great diapasons",
    plain: "Hands and feet play broadly on the open diapasons of the great, the ground tone of the organ.",
    parts: chorus,
    like: "plenum",
    dynamic: "mf",
  }),
  english({
    id: "full-swell",
    title: "Full swell",
    plain: "Hands and feet play on the reeds and mixture of the swell behind its closed shutters, which then open.",
    parts: chorus,
    like: "plenum",
    dynamic: "f",
  }),
  english({
    id: "soft-eights",
    title: "Soft eights",
    plain: "Hands and feet play on one or two of the softest 8 foot stops over a soft 16 foot.",
    parts: chorus,
    like: "meditation",
    dynamic: "pp",
  }),
  english({
    id: "swell-strings",
    title: "Swell strings",
    plain: "Hands and feet play slow chords on the swell's strings, which waver with the celeste.",
    parts: chorus,
    like: "meditation",
    tempo: "slow",
    dynamic: "pp",
  }),
  english({
    id: "psalm-accompaniment",
    title: "Psalm accompaniment",
    plain:
      "The hands accompany a choir that chants a psalm, changing stops as the words change, with or without the feet.",
    parts: [both("accompaniment"), feet("bass", "C2-C4", { optional: true })],
    like: "choir-accompaniment",
  }),
  english({
    id: "solo-tuba",
    title: "Tuba solo",
    plain: "The right hand plays the tune on the tuba, the loudest reed, over the full great in left hand and feet.",
    parts: solo,
    like: "trumpet-tune",
    dynamic: "ff",
  }),
  english({
    id: "solo-clarinet",
    title: "Clarinet solo",
    plain: "The right hand sings on the choir's clarinet, over soft swell stops in the left hand and a soft pedal.",
    parts: solo,
    like: "melody-over-accompaniment",
    tempo: "slow",
    dynamic: "p",
  }),
];

/** The full organ of this school has a pedal, unlike that of the 18th century; it shares the older texture's id. */
export const ENGLISH_CATHEDRAL_FULL_ORGAN: Texture = english({
  id: "full-organ",
  title: "Full organ",
  plain: "Hands and feet play on the great with its reeds, the full swell coupled to it, and the whole pedal.",
  parts: chorus,
  like: "plenum",
  dynamic: "ff",
});
