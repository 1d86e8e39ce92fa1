import type { PartSound } from "../acoustics/part-sound.ts";
import { doubledIn } from "../acoustics/part-sound.ts";
import { countPitches } from "../acoustics/pitch-set.ts";
import { footText } from "../pitch/foot.ts";
import { feet, idsOf, lengthsOf, named, reedsOf, soundsAt, the } from "./naming.ts";
import { fluePitches } from "./pitches.ts";
import { hasDividedFlues } from "./reach-facts.ts";
import type { HeardStop, PartContext, PartRule } from "./rule.ts";
import { isChorus } from "./schools.ts";

const STRICT = 60;
const MILD = 25;
/** From the fourth doubling on it is one thick sound anyhow. */
const COUNTED = 3;

const plainFlues = (sound: PartSound): number => sound.principal | sound.flute | sound.string;
/** Flues that double a flue: a reed or a celeste beside the flue of its pitch is no doubling. */
const doubledFlues = (sound: PartSound): number =>
  Math.max(
    0,
    doubledIn(sound) - countPitches(sound.reed & fluePitches(sound)) - countPitches(sound.celeste & plainFlues(sound)),
  );

export const doublingInChorus: PartRule = {
  id: "doubling-in-chorus",
  conventions: [6],
  reads: "part",
  falling: true,
  statement:
    "A German baroque or Italian chorus draws one flue of each pitch; the French, English, Spanish and romantic schools build on several.",
  why: "Two flues of one pitch thicken, drift out of tune with each other and take each other's wind.",
  source: "romantic-8ft-page",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) => {
    const { tradition } = context.section;
    // Two halves of one pitch are one stop, and a sound does not tell on which keys its stops lie.
    if (!isChorus(context) || hasDividedFlues(context)) return false;
    // The second chorus that central German practice couples brings its own pitches along.
    if (tradition === "central-german") return context.couplers.length === 0;
    return tradition === "north-german" || tradition === "italian-renaissance" || tradition === "neutral";
  },
  most: () => 0,
  weigh: (sound, context) =>
    -Math.min(COUNTED, doubledFlues(sound)) * (context.section.tradition === "neutral" ? MILD : STRICT),
  words: (_sound, context, heard) => {
    const pairs = doubledStops(heard.stops, context);
    const pitch = pairs[0] && soundsAt(pairs[0].stop, context);
    return {
      text: `${named(pairs)} double one another${pitch ? ` at ${feet(pitch)}` : ""} in the chorus of ${the(context)}.`,
      remedy: pairs.length > 1 ? `Keep one of them, the principal first.` : "Keep one stop of each pitch.",
      stops: idsOf(pairs),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Principal 8, Gedackt 8, Oktave 4, Oktave 2, Mixtur IV",
        plays: "plenum on Hauptwerk",
        texture: "organo-pleno",
        tradition: "north-german",
        says: "Principal 8 and Gedackt 8 double one another at 8' in the chorus of the Hauptwerk.",
      },
      {
        organ: "Great: Open Diapason 8, Stopped Diapason 8, Principal 4, Fifteenth 2",
        plays: "plenum on Great",
        texture: "plenum",
        says: "Open Diapason 8 and Stopped Diapason 8 double one another at 8' in the chorus of the Great.",
      },
    ],
    silent: [
      { organ: "Órgano: Violón 8 bass, Violón 8 treble, Octava 4 bass, Octava 4 treble", plays: "plenum on Órgano" },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Oktave 2, Mixtur IV, Trompete 8",
        plays: "plenum on Hauptwerk",
        texture: "organo-pleno",
        tradition: "north-german",
      },
      {
        organ: "Grand-Orgue: Montre 8, Bourdon 8, Prestant 4, Doublette 2, Fourniture IV",
        plays: "plenum on Grand-Orgue",
        texture: "plein-jeu",
        tradition: "french-classical",
      },
      { organ: "Hauptwerk: Gedackt 8, Flöte 8", plays: "accompaniment on Hauptwerk", tradition: "north-german" },
    ],
  },
};

/** The flues of the first pitch that several of them share, in printed order. */
function doubledStops(stops: readonly HeardStop[], context: PartContext): readonly HeardStop[] {
  const reeds = reedsOf(stops);
  const byPitch = new Map<string, HeardStop[]>();
  for (const each of stops) {
    const sounds = reeds.includes(each) ? [] : lengthsOf(each.stop, context);
    for (const foot of sounds) byPitch.set(footText(foot), [...(byPitch.get(footText(foot)) ?? []), each]);
  }
  return [...byPitch.values()].find((each) => each.length > 1) ?? stops;
}
