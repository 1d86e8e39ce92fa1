import type { PartSound } from "../acoustics/part-sound.ts";
import {
  agree,
  draw,
  feet,
  idsOf,
  keysText,
  keysWithout,
  leaveOut,
  mixturesOf,
  named,
  ofKinds,
  soundingAt,
  the,
  unisonFoot,
} from "./naming.ts";
import { unisonCover } from "./pitches.ts";
import { isDivided } from "./reach-facts.ts";
import type { HeardStop, PartContext, PartRule } from "./rule.ts";
import { isPedalMelody } from "./schools.ts";

const NO_EIGHT = 400;
const COLOUR_CHANGES = 100;
const HALF_CROWNED = 100;

/** Stops that end within the part while no other stop of their name carries on; all short ones when every name goes on. */
function withoutOtherHalf(stops: readonly HeardStop[]): readonly HeardStop[] {
  const short = stops.filter((each) => each.silent.length > 0);
  const single = short.filter(
    ({ stop }) => !short.some((other) => other.stop !== stop && other.stop.name === stop.name),
  );
  return single.length > 0 ? single : short;
}

/** Zones with sound but without the unison; 0 where there is no unison at all, of which other rules speak. */
function lacking(sound: PartSound, context: PartContext): number {
  const unison = unisonCover(sound, context);
  return unison === 0 ? 0 : sound.cover & ~unison;
}

const partly = (cover: number, zones: number): boolean => cover !== 0 && cover !== zones;
const changes = (sound: PartSound, zones: number): boolean =>
  partly(sound.cover16, zones) ||
  partly(sound.cover4, zones) ||
  partly(sound.cover2, zones) ||
  partly(sound.mutation8, zones);

export const eachHalfItsEight: PartRule = {
  id: "each-half-its-eight",
  conventions: [41],
  reads: "part",
  statement:
    "On a divided keyboard each half that a part uses has its own 8; a line that crosses the dividing key changes colour, and a chorus has its mixture in both halves.",
  why: "The halves are two organs under one row of keys.",
  source: "correa-1626",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (context) => isDivided(context) && !isPedalMelody(context),
  most: () => 0,
  weigh: (sound, context) => {
    if (sound.short === 0) return 0;
    const hole = lacking(sound, context);
    if (hole !== 0) return -Math.max(1, Math.trunc((NO_EIGHT * context.keysIn(hole)) / context.keysIn(context.zones)));
    const { role } = context.part;
    if (role === "plenum") return partly(sound.crowned, context.zones) ? -HALF_CROWNED : 0;
    const isLine = role === "melody" || role === "voice" || role === "echo";
    return isLine && changes(sound, context.zones) ? -COLOUR_CHANGES : 0;
  },
  words: (sound, context, heard) => {
    const hole = lacking(sound, context);
    if (hole === 0 && context.part.role === "plenum") {
      const single = withoutOtherHalf(mixturesOf(heard.stops));
      const silent = keysText(single[0]?.silent ?? []);
      return {
        text: `${named(single)} ${agree(single, "crowns", "crown")} one half of the chorus on ${the(context)}: ${silent} ${agree(single[0]?.silent ?? [], "goes", "go")} without.`,
        remedy: draw(
          mixturesOf(heard.undrawn).find(({ stop }) => stop.half !== single[0]?.stop.half && !stop.off),
          leaveOut(single),
        ),
        stops: idsOf(single),
      };
    }
    if (hole === 0) {
      const single = withoutOtherHalf(heard.stops);
      const silent = keysText(single[0]?.silent ?? []);
      return {
        text: `The line crosses the dividing key of ${the(context)}: ${named(single)} ${agree(single, "is", "are")} silent on ${silent}, so the colour changes there.`,
        remedy: "Keep the line in one half, or draw both halves alike.",
        stops: idsOf(single),
      };
    }
    const unison = unisonFoot(context);
    const silent = keysWithout(
      [...soundingAt(heard.stops, unison, context), ...ofKinds(heard.stops, ["cornet"])],
      context,
    );
    const serving = soundingAt(heard.undrawn, unison, context).find(
      (each: HeardStop) => !each.stop.off && silent.every((key) => !each.silent.includes(key)),
    );
    return {
      text:
        silent.length === 0
          ? `One half of ${the(context)} has no ${feet(unison)} of its own.`
          : `${keysText(silent)} on ${the(context)} ${agree(silent, "has", "have")} no ${feet(unison)} of ${agree(silent, "its", "their")} own.`,
      remedy: draw(serving, `That half of ${the(context)} has no ${feet(unison)}.`),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Órgano: Flautado 8 treble, Octava 4 bass, Octava 4 treble (Flautado 8 bass)",
        plays: "plenum on Órgano",
        says: "C2 to B3 on the Órgano have no 8' of their own.",
      },
      {
        organ: "Órgano: Flautado 8 bass, Flautado 8 treble, Octava 4 treble",
        plays: "voice on Órgano",
        says: "The line crosses the dividing key of the Órgano: Octava 4 treble is silent on C3 to B3, so the colour changes there.",
      },
      {
        organ: "Órgano: Flautado 8 bass, Flautado 8 treble, Octava 4, Lleno IV bass (Lleno IV treble)",
        plays: "plenum on Órgano",
        says: "Lleno IV bass crowns one half of the chorus on the Órgano: C4 to C6 go without.",
      },
    ],
    silent: [
      {
        organ: "Órgano: Flautado 8 bass, Flautado 8 treble, Octava 4, Lleno IV bass, Lleno IV treble",
        plays: "plenum on Órgano",
      },
      {
        organ: "Órgano: Flautado 8 bass, Flautado 8 treble, Octava 4 bass, Octava 4 treble",
        plays: "plenum on Órgano",
      },
      { organ: "Órgano: Clarín 8 treble", plays: "melody on Órgano", ranges: { melody: "C4-A5" } },
      { organ: "Órgano: Bajoncillo 4 bass, Clarín 8 treble", plays: "melody on Órgano", ranges: { melody: "C4-C6" } },
    ],
  },
};
