import type { PartSound } from "../acoustics/part-sound.ts";
import { mayLack } from "../console/range.ts";
import { agree, draw, idsOf, isOctave, keysOutside, keysText, keysWithout, named, the } from "./naming.ts";
import type { PartContext, PartRule } from "./rule.ts";

const EACH_KEY = 40;
const MOST_COUNTED = 20;

/** Octave stops only: a mutation that reaches further than they do does not make a key speak. */
const keysWithoutAny = (speaking: number, context: PartContext): number => {
  const silent = context.zones & ~speaking;
  return silent === 0 ? 0 : context.keysIn(silent);
};

/** Keys on which nothing speaks that carries the part: an octave stop, or in a part without one whatever there is. */
function silentKeys(sound: PartSound, context: PartContext): number {
  if (sound.stops === 0) return 0;
  return keysWithoutAny(sound.cover === 0 ? sound.speaks : sound.cover, context);
}

const tooMany = (keys: number, context: PartContext): boolean =>
  keys > 0 && (context.part.stated || !mayLack(keys, context.keysIn(context.zones)));

const costOf = (keys: number): number => -EACH_KEY * Math.min(MOST_COUNTED, keys);

export const everyKeySpeaks: PartRule = {
  id: "every-key-speaks",
  conventions: [21],
  reads: "part",
  statement: "Every key of a part's range speaks on the stops that carry it.",
  why: "A note that does not sound is a wrong note.",
  source: "common practice",
  severity: "error",
  yieldsToPrescription: false,
  applies: () => true,
  most: () => 0,
  forbids: (sound, context) => tooMany(silentKeys(sound, context), context),
  weigh: (sound, context) => costOf(silentKeys(sound, context)),
  atMost: (now, all, context) => {
    let keys = keysWithoutAny(all.cover, context);
    if (now.cover === 0) keys = Math.min(keys, keysWithoutAny(all.speaks, context));
    return tooMany(keys, context) ? null : costOf(keys);
  },
  words: (_sound, context, heard) => {
    const octaves = heard.stops.filter(
      ({ stop }) => stop.kinds.includes("cornet") || (stop.ranks === 1 && stop.pitch && isOctave(stop.pitch)),
    );
    const carrying = octaves.length > 0 ? octaves : heard.stops;
    const silent = keysWithout(carrying, context);
    const serving = heard.undrawn.find(
      ({ stop, silent: without }) =>
        stop.ranks === 1 && stop.pitch && isOctave(stop.pitch) && silent.every((key) => !without.includes(key)),
    );
    const them = agree(silent, "it", "them");
    const outside = keysOutside(context);
    if (silent.every((key) => outside.includes(key))) {
      const at = context.octave === 0 ? "" : ` an octave ${context.octave > 0 ? "higher" : "lower"}`;
      return {
        text: `The part goes beyond the keys of ${the(context)}${at}: ${keysText(outside)} ${agree(outside, "is", "are")} not there.`,
        remedy: at === "" ? "Play it on another keyboard." : "Play it at its written octave, or on another keyboard.",
      };
    }
    return {
      text: `${keysText(silent)} ${agree(silent, "is", "are")} silent on ${the(context)}: ${named(carrying)} ${agree(carrying, "does", "do")} not have ${them}.`,
      remedy: draw(serving, `No stop of ${the(context)} has ${them}; play the part on another keyboard.`),
      stops: idsOf(carrying),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Récit: Hautbois 8 from C3 (Bourdon 8)",
        plays: "melody on Récit",
        ranges: { melody: "A2-C5" },
        says: "A2 to B2 are silent on the Récit: Hautbois 8 does not have them.",
      },
      {
        organ: "Swell: Oboe 8 from C3",
        plays: "plenum on Swell",
        says: "C2 to B2 are silent on the Swell: Oboe 8 does not have them.",
      },
      {
        organ: "Cornet-Echo: Cornet V from C4",
        plays: "accompaniment on Cornet-Echo",
        says: "G3 to B3 are silent on the Cornet-Echo: Cornet V does not have them.",
      },
      {
        organ: "Pedal: Oktave 8",
        plays: "cantus-firmus on Pedal",
        octaves: { "cantus-firmus": 1 },
        ranges: { "cantus-firmus": "C3-C5" },
        says: "The part goes beyond the keys of the Pedal an octave higher: F#3 to C5 are not there.",
      },
    ],
    silent: [
      { organ: "Récit: Trompette 8 from C3", plays: "melody on Récit" },
      { organ: "Swell: Oboe 8 from C3, Stopped Diapason 8", plays: "plenum on Swell" },
    ],
  },
};
