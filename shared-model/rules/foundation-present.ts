import {
  agree,
  draw,
  feet,
  idsOf,
  keysText,
  keysWithout,
  named,
  ofKinds,
  soundingAt,
  The,
  the,
  undrawnAt,
  unisonFoot,
} from "./naming.ts";
import { unisonCover } from "./pitches.ts";
import { isDivided } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";
import { isPedalMelody } from "./schools.ts";

const NO_UNISON = 600;

export const foundationPresent: PartRule = {
  id: "foundation-present",
  conventions: [1],
  reads: "part",
  statement: "A part sounds at its own unison, over its whole range.",
  why: "Octave stops above and below colour a note; the unison is the note.",
  source: "adlung-1768",
  severity: "warning",
  yieldsToPrescription: true,
  // A tune in the feet and octave stops alone have rules of their own.
  applies: (context) => !isPedalMelody(context),
  most: () => 0,
  weigh: (sound, context) => {
    const unison = unisonCover(sound, context);
    if (unison === 0) return sound.cover16 === 0 ? 0 : -NO_UNISON;
    const lacking = sound.cover & ~unison;
    if (lacking === 0 || isDivided(context)) return 0;
    return -Math.trunc((NO_UNISON * context.keysIn(lacking)) / context.keysIn(context.zones));
  },
  atMost: (now, all, context) => {
    if (now.cover16 === 0 && unisonCover(now, context) === 0) return 0;
    const unison = unisonCover(all, context);
    if (unison === 0) return -NO_UNISON;
    const lacking = isDivided(context) ? 0 : now.cover & ~unison;
    return lacking === 0 ? 0 : -Math.trunc((NO_UNISON * context.keysIn(lacking)) / context.keysIn(context.zones));
  },
  words: (sound, context, heard) => {
    const unison = unisonFoot(context);
    const place = `on ${the(context)}`;
    const serving = undrawnAt(heard, unison, context);
    if (unisonCover(sound, context) === 0) {
      return {
        text: `Nothing ${place} sounds at ${feet(unison)}: ${named(heard.stops)} ${agree(heard.stops, "speaks", "speak")} at other octaves.`,
        remedy: draw(serving, `${The(context)} has no ${feet(unison)} for this part; play it an octave higher.`),
      };
    }
    const unisons = [...soundingAt(heard.stops, unison, context), ...ofKinds(heard.stops, ["cornet"])];
    const lacking = keysWithout(unisons, context);
    if (unisons.length === 0 || lacking.length === 0) {
      return {
        text: `Not every key ${place} has an ${feet(unison)} of its own.`,
        remedy: draw(serving, `No ${feet(unison)} of ${the(context)} covers the whole part.`),
      };
    }
    return {
      text: `${keysText(lacking)} ${place} ${agree(lacking, "has", "have")} no ${feet(unison)}: ${named(unisons)} ${agree(unisons, "does", "do")} not reach them.`,
      remedy: draw(serving, `No ${feet(unison)} of ${the(context)} covers the whole part.`),
      stops: idsOf(unisons),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Bordun 16, Oktave 4 (Principal 8)",
        plays: "plenum on Hauptwerk",
        says: "Nothing on the Hauptwerk sounds at 8': Bordun 16 and Oktave 4 speak at other octaves.",
      },
      {
        organ: "Récit: Trompette 8 from C3, Flûte octaviante 4 (Flûte harmonique 8)",
        plays: "plenum on Récit",
        says: "C2 to B2 on the Récit have no 8': Trompette 8 does not reach them.",
      },
      {
        organ: "Swell: Contra Fagotto 16 (Oboe 8)",
        plays: "melody on Swell",
        says: "Nothing on the Swell sounds at 8': Contra Fagotto 16 speaks at other octaves.",
      },
    ],
    silent: [
      { organ: "Hauptwerk: Bordun 16, Principal 8, Oktave 4", plays: "plenum on Hauptwerk" },
      { organ: "Hauptwerk: Bordun 16 (Principal 8)", plays: "melody on Hauptwerk", octaves: { melody: 1 } },
    ],
  },
};
