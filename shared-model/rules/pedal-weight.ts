import type { PartSound } from "../acoustics/part-sound.ts";
import type { Tradition } from "../music/texture.ts";
import { footOf } from "../pitch/foot.ts";
import { heardTogether, isOneSilent } from "./balance.ts";
import { agree, allNamed, idsOf, named, ofKinds, reedsOf, soundingAt } from "./naming.ts";
import { FEET_16 } from "./pitches.ts";
import type { PairRule, PartContext } from "./rule.ts";

/**
 * Hundredths of a phon between the bass and the hands that raise no objection, and of a decibel by which the bass must
 * rise over what the hands hide. Low notes count for little in phon and carry the chord all the same.
 */
const LOWEST = -2600;
const HIGHEST = 200;
const RISES = 0;
const OUT_OF_PROPORTION = 250;
/** A soft 16 alone under a chorus with its mixture. */
const NO_DEEP_PRINCIPAL = 60;

/** Schools whose pedal sounds at 8, or is the manual's own: it may be as light as it likes. */
const NO_SIXTEEN: ReadonlySet<Tradition> = new Set([
  "french-classical",
  "italian-renaissance",
  "spanish",
  "english-18c",
]);

/** Half a hundredth of a point for each hundredth beyond; a trifle is let pass. */
const beyond = (over: number): number => (over < 50 ? 0 : Math.min(OUT_OF_PROPORTION, over >> 1));
const hasDeepPrincipal = (sound: PartSound): boolean => ((sound.principal | sound.reed) & FEET_16) !== 0;
const pedalHasDeepPrincipal = (context: PartContext): boolean =>
  context.reach.some((division) =>
    division.stops.some(
      (stop) => !stop.off && stop.kinds.includes("principal") && stop.pitch?.over === 16 && stop.pitch.under === 1,
    ),
  );

function weighed(bass: PartSound, hands: PartSound, bassContext: PartContext): number {
  // Played by the hands for want of a pedal, the bass has the sound of their keyboard.
  if (isOneSilent(bass, hands) || bassContext.keyboard.kind !== "pedal") return 0;
  const { lead, margin } = heardTogether(bass, hands);
  if (lead > HIGHEST) return -beyond(lead - HIGHEST);
  if (NO_SIXTEEN.has(bassContext.section.tradition)) return 0;
  const thin = beyond(Math.max(LOWEST - lead, RISES - margin));
  if (thin > 0) return -thin;
  const full = hands.mixtures > 0 && (bass.plain & FEET_16) !== 0 && !hasDeepPrincipal(bass);
  return full && pedalHasDeepPrincipal(bassContext) ? -NO_DEEP_PRINCIPAL : 0;
}

export const pedalWeight: PairRule = {
  id: "pedal-weight",
  conventions: [14],
  reads: "pair",
  listens: true,
  statement:
    "The pedal follows the hands: soft under flutes, principal 16 under a chorus, reed 16 only under a full one.",
  why: "A bass that is too weak leaves the chords hanging, one that is too strong is all that is heard.",
  source: "common practice",
  severity: "note",
  yieldsToPrescription: true,
  // The hands' own ground: the chorus where there is one, else the accompaniment, else the tune.
  applies: (first, second) => {
    if (first.part.role !== "bass" || first.part.hands !== "feet") return false;
    const { roles } = second.section;
    const ground = roles.has("plenum") ? "plenum" : roles.has("accompaniment") ? "accompaniment" : "melody";
    return second.part.role === ground && second.part.hands !== "feet";
  },
  most: () => 0,
  weigh: weighed,
  words: (bass, hands, bassContext, handsContext, heard, points) => {
    const [low, high] = [named(heard.first.stops), named(heard.second.stops)];
    const where = `the ${bassContext.keyboard.name}`;
    const { lead } = heardTogether(bass, hands);
    const reeds = reedsOf(heard.first.stops);
    if (lead > HIGHEST && reeds.length > 0 && hands.reed === 0) {
      return {
        text: `${named(reeds)} in ${where} ${agree(reeds, "is", "are")} too heavy under ${high}.`,
        remedy: `Take ${allNamed(reeds)} off.`,
        stops: idsOf(reeds),
      };
    }
    if (points === -NO_DEEP_PRINCIPAL && !hasDeepPrincipal(bass) && hands.mixtures > 0) {
      const deep = soundingAt(ofKinds(heard.first.undrawn, ["principal"]), footOf(16), bassContext)[0];
      return {
        text: `A chorus with its mixture on the ${handsContext.keyboard.name} wants a principal 16 under it; ${where} has only ${low}.`,
        remedy: deep ? `Draw ${deep.label}.` : `No principal 16 of ${where} is free.`,
      };
    }
    if (lead < HIGHEST) {
      const [more] = heard.first.undrawn;
      return {
        text: `${low} in ${where} ${agree(heard.first.stops, "is", "are")} thin under ${high}.`,
        remedy: more
          ? `Add to it, for instance ${more.label}.`
          : `${where.replace("the", "The")} has no more to give: couple a manual to it.`,
      };
    }
    return {
      text: `${low} in ${where} ${agree(heard.first.stops, "outweighs", "outweigh")} ${high}.`,
      remedy:
        bassContext.couplers.length > 0
          ? `Take ${bassContext.couplers[0]?.name} off, or a stop of ${where}.`
          : `Take a stop off ${where}.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Gedackt 8 | Pedal: Subbass 16, Oktave 8, Choralbass 4",
        plays: "bass on Pedal, accompaniment on Hauptwerk",
        says: "Subbass 16, Oktave 8 and Choralbass 4 in the Pedal outweigh Gedackt 8.",
      },
      {
        organ: "Hauptwerk: Gedackt 8 | Pedal: Subbass 16, Posaune 16",
        plays: "bass on Pedal, accompaniment on Hauptwerk",
        says: "Posaune 16 in the Pedal is too heavy under Gedackt 8.",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Oktave 2, Mixtur IV, Trompete 8 | Pedal: Subbass 16 (Principal 16)",
        plays: "bass on Pedal, plenum on Hauptwerk",
        says: "Subbass 16 in the Pedal is thin under Principal 8, Oktave 4, Oktave 2, Mixtur IV and Trompete 8.",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Mixtur IV | Pedal: Subbass 16, Oktave 8, Choralbass 4 (Principal 16)",
        plays: "bass on Pedal, plenum on Hauptwerk",
        says: "A chorus with its mixture on the Hauptwerk wants a principal 16 under it; the Pedal has only Subbass 16, Oktave 8 and Choralbass 4.",
      },
    ],
    silent: [
      {
        organ: "Hauptwerk: Gedackt 8 | Pedal: Subbass 16, Gedackt 8",
        plays: "bass on Pedal, accompaniment on Hauptwerk",
      },
      {
        organ: "Hauptwerk: Principal 8, Oktave 4, Oktave 2, Mixtur IV | Pedal: Principal 16, Oktave 8, Posaune 16",
        plays: "bass on Pedal, plenum on Hauptwerk",
      },
    ],
  },
};
