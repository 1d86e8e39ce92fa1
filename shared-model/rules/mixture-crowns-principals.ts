import type { PartSound } from "../acoustics/part-sound.ts";
import { kindBits } from "../acoustics/part-sound.ts";
import { deeperThan } from "../acoustics/pitch-set.ts";
import { footOf } from "../pitch/foot.ts";
import { agree, draw, idsOf, mixturesOf, named, The, the, undrawnAt } from "./naming.ts";
import { FEET_2, FEET_4, FEET_8, FEET_16, unisonCover } from "./pitches.ts";
import { reachesKind } from "./reach-facts.ts";
import type { PartContext, PartRule } from "./rule.ts";

const ON_FLUTES = 300;
/** A high mixture over flutes is a solo colour that some like. */
const SOLO_ON_FLUTES = 120;
const NO_FOUR = 200;
const NO_TWO = 60;

/** Chorus reeds at two octaves carry a mixture as principals do: the full Swell. */
const carriedByReeds = (sound: PartSound): boolean => (sound.chorusReed & FEET_8) !== 0 && (sound.reed & ~FEET_8) !== 0;

function lack(sound: PartSound, context: PartContext): number {
  if (sound.mixtures === 0 || carriedByReeds(sound) || unisonCover(sound, context) === 0) return 0;
  const under = deeperThan(sound.mixture);
  if (context.part.hands === "feet") return (sound.principal & (FEET_16 | FEET_8 | FEET_4)) === 0 ? 1 : 0;
  // A stopped 8 under principals 4 and 2 is a chorus, so the principal may begin at any of the three.
  if ((sound.principal & (FEET_8 | FEET_4 | FEET_2)) === 0) return 1;
  if ((under & FEET_4) !== 0 && sound.cover4 === 0) return 2;
  return (under & FEET_2) !== 0 && sound.cover2 === 0 ? 3 : 0;
}

const MIXTURES = kindBits(["mixture", "cymbal", "rauschpfeife"]);

export const mixtureCrownsPrincipals: PartRule = {
  id: "mixture-crowns-principals",
  conventions: [4],
  reads: "part",
  statement: "A mixture crowns a chorus of principals up to the pitch just under its lowest rank.",
  why: "Over flutes, or over a lone 8', it hangs in the air.",
  source: "adlung-1768",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (context) => reachesKind(context, MIXTURES),
  most: () => 0,
  weigh: (sound, context) => {
    const what = lack(sound, context);
    if (what === 0) return 0;
    const { role } = context.part;
    if (what === 1) return role === "melody" || role === "echo" ? -SOLO_ON_FLUTES : -ON_FLUTES;
    return what === 2 ? -NO_FOUR : -NO_TWO;
  },
  atMost: (now, all, context) => {
    if (now.mixtures === 0 || carriedByReeds(all) || unisonCover(now, context) === 0) return 0;
    const { role, hands } = context.part;
    const carriers = hands === "feet" ? FEET_16 | FEET_8 | FEET_4 : FEET_8 | FEET_4 | FEET_2;
    if ((all.principal & carriers) !== 0) return 0;
    return role === "melody" || role === "echo" ? -SOLO_ON_FLUTES : -ON_FLUTES;
  },
  words: (sound, context, heard) => {
    const mixtures = mixturesOf(heard.stops);
    const what = lack(sound, context);
    const stops = idsOf(mixtures);
    if (what === 1) {
      const principal =
        undrawnAt(heard, footOf(4), context, ["principal"]) ?? undrawnAt(heard, footOf(8), context, ["principal"]);
      return {
        text: `${named(mixtures)} ${agree(mixtures, "stands", "stand")} off from the rest of ${the(context)}: no principal carries ${agree(mixtures, "it", "them")}.`,
        remedy: draw(
          principal,
          `${The(context)} has no principal to crown; leave ${agree(mixtures, "it", "them")} out.`,
        ),
        stops,
      };
    }
    const octave = what === 2 ? 4 : 2;
    return {
      text: `${named(mixtures)} ${agree(mixtures, "has", "have")} no ${octave}' under ${agree(mixtures, "it", "them")} on ${the(context)}.`,
      remedy: draw(
        undrawnAt(heard, footOf(octave), context, ["principal", "open-flute"]),
        `${The(context)} has no ${octave}' to fill the chorus.`,
      ),
      stops,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Schwellwerk: Gedackt 8, Rohrflöte 4, Waldflöte 2, Scharff III",
        plays: "plenum on Schwellwerk",
        says: "Scharff III stands off from the rest of the Schwellwerk: no principal carries it.",
      },
      {
        organ: "Hauptwerk: Principal 8, Mixtur IV (Oktave 4)",
        plays: "plenum on Hauptwerk",
        says: "Mixtur IV has no 4' under it on the Hauptwerk.",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Mixtur IV (Oktave 2)",
        plays: "plenum on Hauptwerk",
        says: "Mixtur IV has no 2' under it on the Hauptwerk.",
      },
      {
        organ: "Pedal: Subbass 16, Gedackt 8, Mixtur IV (Oktave 4)",
        plays: "bass on Pedal",
        says: "Mixtur IV stands off from the rest of the Pedal: no principal carries it.",
      },
    ],
    silent: [
      { organ: "Rückpositiv: Gedackt 8, Principal 4, Oktave 2, Scharff III", plays: "plenum on Rückpositiv" },
      { organ: "Swell [box]: Gedackt 8, Gemshorn 4, Mixture III, Trumpet 8, Fagotto 16", plays: "plenum on Swell" },
      { organ: "Hauptwerk: Principal 8, Oktave 4, Mixtur V 2", plays: "plenum on Hauptwerk" },
    ],
  },
};
