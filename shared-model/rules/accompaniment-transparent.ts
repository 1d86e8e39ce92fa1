import type { PartSound } from "../acoustics/part-sound.ts";
import { FAR, FIFTHS, THIRDS } from "../acoustics/pitch-set.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, idsOf, leaveOut, mixturesOf, named, ofKinds, reedsOf, the } from "./naming.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { GREAT_REED_SOLOS, UNDER_VOICES } from "./schools.ts";

const MIXTURE = 250;
const REED = 200;
const MUTATION = 100;
/** Under a great reed, or a chorale in the feet, the chorus may grow. */
const GROWN = 50;

/** A full Swell in its shut box is a soft, dense sound. */
const isShutAway = (sound: PartSound): boolean => sound.shut === 2 && sound.enclosed === sound.stops;

function cost(sound: PartSound, context: PartContext): number {
  const least =
    sound.mixtures > 0
      ? MIXTURE
      : sound.reed !== 0
        ? REED
        : sound.tierceCompounds + sound.cornets > 0 || (sound.mutation & (FIFTHS | THIRDS | FAR)) !== 0
          ? MUTATION
          : 0;
  if (least === 0) return 0;
  const { texture, roles } = context.section;
  const growsWithTheSolo = (texture !== null && GREAT_REED_SOLOS.has(texture)) || roles.has("cantus-firmus");
  return growsWithTheSolo || isShutAway(sound) ? Math.min(least, GROWN) : least;
}

export const accompanimentTransparent: PartRule = {
  id: "accompaniment-transparent",
  conventions: [18],
  reads: "part",
  falling: true,
  statement: "An accompaniment is of flues at 8, or 8 and 4: no mixtures, no reeds, no mutations.",
  why: "Chords that shine draw the ear away from the tune.",
  source: "boyvin-1690",
  severity: "note",
  yieldsToPrescription: true,
  applies: ({ part, section }) =>
    part.role === "accompaniment" &&
    section.texture !== "continuo" &&
    !(section.texture !== null && UNDER_VOICES.has(section.texture)),
  most: () => 0,
  weigh: (sound, context) => -cost(sound, context),
  words: (sound, context, heard) => {
    const bright =
      sound.mixtures > 0
        ? mixturesOf(heard.stops)
        : sound.reed !== 0
          ? reedsOf(heard.stops)
          : ofKinds(heard.stops, [...KIND_GROUPS.mutation, "sesquialtera", "tertian", "cornet"]);
    const what = sound.mixtures > 0 ? "too bright" : sound.reed !== 0 ? "too pointed" : "too coloured";
    return {
      text: `${named(bright)} on ${the(context)} ${agree(bright, "is", "are")} ${what} for an accompaniment.`,
      remedy: leaveOut(bright),
      stops: idsOf(bright),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Gedackt 8, Oktave 4, Mixtur IV",
        plays: "accompaniment on Hauptwerk",
        says: "Mixtur IV on the Hauptwerk is too bright for an accompaniment.",
      },
      {
        organ: "Swell: Stopped Diapason 8, Oboe 8",
        plays: "accompaniment on Swell",
        says: "Oboe 8 on the Swell is too pointed for an accompaniment.",
      },
      {
        organ: "Positif: Bourdon 8, Prestant 4, Nasard 2 2/3",
        plays: "accompaniment on Positif",
        says: "Nasard 2 2/3 on the Positif is too coloured for an accompaniment.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture III | Solo: Tuba 8",
        plays: "melody on Solo, accompaniment on Great",
        texture: "solo-tuba",
        tradition: "english-cathedral",
        says: "Mixture III on the Great is too bright for an accompaniment.",
      },
    ],
    silent: [
      { organ: "Hauptwerk: Gedackt 8, Flöte 4", plays: "accompaniment on Hauptwerk" },
      { organ: "Swell: Stopped Diapason 8, Oboe 8", plays: "melody on Swell" },
      {
        organ: "Great: Open Diapason 8, Principal 4, Fifteenth 2 | Solo: Tuba 8",
        plays: "melody on Solo, accompaniment on Great",
        texture: "solo-tuba",
        tradition: "english-cathedral",
      },
    ],
  },
};
