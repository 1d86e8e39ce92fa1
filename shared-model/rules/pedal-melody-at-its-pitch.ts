import type { PartSound } from "../acoustics/part-sound.ts";
import { deeperThan } from "../acoustics/pitch-set.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, feet, idsOf, leaveOut, named, soundingBelow, The, undrawnAt, unisonFoot } from "./naming.ts";
import { FEET_16, unisonCover, unisonOf } from "./pitches.ts";
import { mayReach } from "./reach-facts.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { isPedalMelody } from "./schools.ts";

const RIGHT = 200;
const WRONG_PITCH = -600;
const UNDER_IT = -400;
/** Lowest written key (E2) of a chant that is itself the lowest voice and may have a 16. */
const LOWEST_VOICE = 40;

/** A chant that is the bass of the music, as Scheidt and plenum chorales have it. */
const isLowest = (context: PartContext): boolean =>
  context.part.sounding >= 8 && (context.part.place === "bass" || context.part.low <= LOWEST_VOICE);

function isUnderIt(sound: PartSound, context: PartContext): boolean {
  const deep = (sound.plain | sound.compound) & deeperThan(unisonOf(context));
  return deep !== 0 && !(isLowest(context) && (deep & ~FEET_16) === 0);
}

export const pedalMelodyAtItsPitch: PartRule = {
  id: "pedal-melody-at-its-pitch",
  conventions: [12],
  reads: "part",
  statement:
    "A melody in the feet sounds at its prescribed pitch, with nothing deeper under it unless it is the lowest voice.",
  why: "A 16 under it makes a tune into a bass, and the bass is in the left hand.",
  source: "scheidt-1624",
  severity: "warning",
  yieldsToPrescription: true,
  applies: isPedalMelody,
  most: (context) => (mayReach(context, unisonOf(context)) ? RIGHT : 0),
  weigh: (sound, context) => {
    if (sound.stops === 0) return 0;
    const unison = unisonCover(sound, context);
    if (unison === 0) return WRONG_PITCH;
    if (isUnderIt(sound, context)) return UNDER_IT;
    return unison === context.zones ? RIGHT : 0;
  },
  atMost: (now, all, context) => {
    if (all.stops === 0) return 0;
    const unison = unisonCover(all, context);
    if (unison === 0) return WRONG_PITCH;
    if (isUnderIt(now, context)) return UNDER_IT;
    return unison === context.zones ? RIGHT : 0;
  },
  words: (_sound, context, heard, points) => {
    const pitch = unisonFoot(context);
    const stops = named(heard.stops);
    const at = soundingBelow(heard.stops, pitch, context).length > 0 ? `16' and ${feet(pitch)}` : feet(pitch);
    if (points > 0) return { text: `${stops} ${agree(heard.stops, "sings", "sing")} the tune in the feet at ${at}.` };
    if (points === WRONG_PITCH) {
      return {
        text: `${stops} ${agree(heard.stops, "does", "do")} not sound at ${feet(pitch)}, where the tune in the feet belongs.`,
        remedy: draw(
          undrawnAt(heard, pitch, context, [...KIND_GROUPS.reed, ...KIND_GROUPS.foundation]),
          `${The(context)} has no ${feet(pitch)}: couple a manual's ${feet(pitch)} alone.`,
        ),
      };
    }
    const deep = soundingBelow(heard.stops, pitch, context);
    return {
      text: `${named(deep)} ${agree(deep, "turns", "turn")} the tune in the feet into a bass.`,
      remedy: leaveOut(deep),
      stops: idsOf(deep),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Pedal: Trompete 8 (Subbass 16)",
        plays: "cantus-firmus on Pedal",
        says: "Trompete 8 sings the tune in the feet at 8'.",
      },
      {
        organ: "Pedal: Subbass 16, Trompete 8",
        plays: "cantus-firmus on Pedal",
        says: "Subbass 16 turns the tune in the feet into a bass.",
      },
      {
        organ: "Pedal: Subbass 16 (Trompete 8)",
        plays: "cantus-firmus on Pedal",
        says: "Subbass 16 does not sound at 8', where the tune in the feet belongs.",
      },
      {
        organ: "Pedal: Oktave 8 (Oktave 4)",
        plays: "cantus-firmus on Pedal",
        texture: "chorale-alto-in-pedal",
        tradition: "central-german",
        says: "Oktave 8 does not sound at 4', where the tune in the feet belongs.",
      },
      {
        organ: "Pedal: Posaune 16, Trompete 8",
        plays: "cantus-firmus on Pedal",
        ranges: { "cantus-firmus": "C2-D4" },
        says: "Posaune 16 and Trompete 8 sing the tune in the feet at 16' and 8'.",
      },
    ],
    silent: [
      { organ: "Pedal: Subbass 16, Oktave 8", plays: "bass on Pedal" },
      { organ: "Hauptwerk: Trompete 8", plays: "melody on Hauptwerk" },
    ],
  },
};
