import { kindBits } from "../acoustics/part-sound.ts";
import { agree, draw, feet, idsOf, mixturesOf, named, The, the, undrawnAt, unisonFoot } from "./naming.ts";
import { unisonCover } from "./pitches.ts";
import { reachesKind } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";

const MIXTURES = kindBits(["mixture", "cymbal", "rauschpfeife"]);

export const mixtureNeedsUnison: PartRule = {
  id: "mixture-needs-unison",
  conventions: [1, 4],
  reads: "part",
  statement: "A mixture never sounds without the unison of its part.",
  why: "Its ranks break back and repeat: without a unison the tune jumps an octave or a fifth at every break.",
  source: "adlung-1768",
  severity: "error",
  yieldsToPrescription: true,
  applies: (context) => reachesKind(context, MIXTURES),
  most: () => 0,
  forbids: (sound, context) => sound.mixtures > 0 && unisonCover(sound, context) === 0,
  weigh: () => 0,
  atMost: (now, all, context) => (now.mixtures > 0 && unisonCover(all, context) === 0 ? null : 0),
  words: (_sound, context, heard) => {
    const mixtures = mixturesOf(heard.stops);
    const unison = unisonFoot(context);
    return {
      text: `${named(mixtures)} on ${the(context)} ${agree(mixtures, "has", "have")} no ${feet(unison)} under ${agree(mixtures, "it", "them")}.`,
      remedy: draw(
        undrawnAt(heard, unison, context),
        `${The(context)} has no ${feet(unison)} for this part; leave ${agree(mixtures, "it", "them")} out.`,
      ),
      stops: idsOf(mixtures),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Oktave 4, Mixtur IV (Principal 8)",
        plays: "plenum on Hauptwerk",
        says: "Mixtur IV on the Hauptwerk has no 8' under it.",
      },
      {
        organ: "Positif: Fourniture III, Cymbale II",
        plays: "plenum on Positif",
        says: "Fourniture III and Cymbale II on the Positif have no 8' under them.",
      },
    ],
    silent: [
      { organ: "Hauptwerk: Principal 8, Mixtur IV", plays: "plenum on Hauptwerk" },
      { organ: "Pedal: Subbass 16, Oktave 4, Mixtur IV", plays: "bass on Pedal" },
    ],
  },
};
