import type { PartSound } from "../acoustics/part-sound.ts";
import { heardTogether, isOneSilent } from "./balance.ts";
import { agree, named } from "./naming.ts";
import type { PairRule, PartContext } from "./rule.ts";

/** Hundredths of a decibel by which a solo should rise over what the pedal hides, where it rises most. Our own setting. */
const RISES = 900;
const MOST = 200;
/** Share of the solo's loudness, in hundredths, under which hardly anything is left of it. */
const HARDLY_LEFT = 15;

/**
 * A quarter of a hundredth of a point for each hundredth short; a trifle is let pass. Pipes of the solo's own keyboard
 * that a coupler brings to the pedal are left out, and a bass that hands play for want of a pedal: other rules speak of both.
 */
function weighed(solo: PartSound, bass: PartSound, soloContext: PartContext, bassContext: PartContext): number {
  if (isOneSilent(solo, bass) || bassContext.keyboard.kind !== "pedal") return 0;
  if (bassContext.reach.includes(soloContext.keyboard)) return 0;
  const short = RISES - heardTogether(solo, bass).margin;
  return short < 100 ? 0 : -Math.min(MOST, short >> 2);
}

export const pedalHidesNoSolo: PairRule = {
  id: "pedal-hides-no-solo",
  conventions: [14, 15],
  reads: "pair",
  statement: "The pedal leaves the solo to be heard: it carries the chords and does not cover the tune.",
  why: "A low sound hides what lies above it more than the other way round.",
  source: "common practice",
  severity: "note",
  yieldsToPrescription: true,
  applies: (first, second) =>
    first.part.role === "melody" &&
    first.part.hands !== "feet" &&
    second.part.role === "bass" &&
    second.part.hands === "feet",
  most: () => 0,
  weigh: weighed,
  words: (solo, bass, soloContext, bassContext, heard) => {
    const left = heardTogether(solo, bass).kept < HARDLY_LEFT ? "hardly anything" : "little";
    const [tune, low] = [named(heard.first.stops), named(heard.second.stops)];
    return {
      text: `${low} in the ${bassContext.keyboard.name} ${agree(heard.second.stops, "hides", "hide")} the solo of ${tune} on the ${soloContext.keyboard.name}: ${left} of it is left.`,
      remedy: `Take a stop off the ${bassContext.keyboard.name}, or draw a stronger solo.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Oberwerk: Gedackt 8 | Pedal: Subbass 16, Posaune 16",
        plays: "melody on Oberwerk, bass on Pedal",
        says: "Subbass 16 and Posaune 16 in the Pedal hide the solo of Gedackt 8 on the Oberwerk: hardly anything of it is left.",
      },
      {
        organ: "Oberwerk: Gedackt 8 | Pedal: Subbass 16, Oktave 8, Choralbass 4",
        plays: "melody on Oberwerk, bass on Pedal",
        says: "Subbass 16, Oktave 8 and Choralbass 4 in the Pedal hide the solo of Gedackt 8 on the Oberwerk: little of it is left.",
      },
    ],
    silent: [
      { organ: "Oberwerk: Gedackt 8 | Pedal: Subbass 16, Oktave 8", plays: "melody on Oberwerk, bass on Pedal" },
      { organ: "Oberwerk: Oboe 8 | Pedal: Subbass 16, Posaune 16", plays: "melody on Oberwerk, bass on Pedal" },
      { organ: "Oberwerk: Gedackt 8 | Pedal: Subbass 16, Posaune 16", plays: "plenum on Oberwerk, bass on Pedal" },
    ],
  },
};
