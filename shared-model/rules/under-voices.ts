import { type Phons, strengthOf } from "../acoustics/hearing.ts";
import { strengthAtLeast } from "../acoustics/loudness-bounds.ts";
import type { PartSound } from "../acoustics/part-sound.ts";
import { yardstickIn } from "../acoustics/yardstick.ts";
import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { isShutAway } from "./balance.ts";
import { agree, idsOf, leaveOut, mixturesOf, named, ofKinds, reedsOf, soundingBelow, the } from "./naming.ts";
import { FEET_16 } from "./pitches.ts";
import type { HeardStop, PartContext, PartRule } from "./rule.ts";
import { UNDER_VOICES } from "./schools.ts";

/**
 * Hundredths of a phon over a principal 8 in the same room that the hands may have under these singers: one voice, a few,
 * a choir. Our own setting.
 */
const CEILING: Readonly<Record<string, Phons>> = {
  "voice-accompaniment-soft": -600,
  "voice-accompaniment": 150,
  chant: 150,
  "motets-accompaniment": 250,
  "psalm-accompaniment": 350,
  "choir-accompaniment": 350,
};
const LOUD_AT_MOST = 300;

/** What offends most, worst first, with its points. */
const OFFENCES = [
  {
    points: -300,
    what: "doubles the singers' tune",
    whats: "double the singers' tune",
    is: (sound: PartSound) => sound.reed !== 0,
    stops: reedsOf,
  },
  {
    points: -250,
    what: "covers the words",
    whats: "cover the words",
    is: (sound: PartSound) => sound.mixtures > 0,
    stops: mixturesOf,
  },
  {
    points: -200,
    what: "leaves the singers no pitch to hold",
    whats: "leave the singers no pitch to hold",
    is: (sound: PartSound) => sound.celeste !== 0,
    stops: (stops: readonly HeardStop[]) => ofKinds(stops, ["celeste"]),
  },
  {
    points: -120,
    what: "colours the chords",
    whats: "colour the chords",
    is: (sound: PartSound) => sound.mutation !== 0 || sound.tierces > 0,
    stops: (stops: readonly HeardStop[]) =>
      ofKinds(stops, [...KIND_GROUPS.mutation, "sesquialtera", "tertian", "cornet"]),
  },
] as const;
const MANUAL_16 = -200;
const PEDAL_REED = -200;

/** @param strength of the hands, in hundredths of a phon. */
function weighed(sound: PartSound, strength: Phons, context: PartContext): number {
  if (context.part.role === "bass") return (sound.reed & FEET_16) !== 0 ? PEDAL_REED : 0;
  let worst = 0;
  if (!isShutAway(sound)) for (const each of OFFENCES) if (each.points < worst && each.is(sound)) worst = each.points;
  if ((sound.plain & FEET_16) !== 0 && MANUAL_16 < worst) worst = MANUAL_16;
  const ceiling = yardstickIn(context.instrument.room) + (CEILING[context.section.texture ?? ""] ?? 0);
  const over = strength - ceiling;
  const loud = over <= 0 ? 0 : -Math.min(LOUD_AT_MOST, over);
  return Math.min(worst, loud);
}

export const underVoices: PartRule = {
  id: "under-voices",
  conventions: [31],
  reads: "part",
  statement: "Under singers: flues at 8 that do not outweigh them; no reed, no celeste, no manual 16, a soft pedal.",
  why: "The singers lead; the organ holds the pitch and carries the words.",
  source: "bedos-1766",
  severity: "warning",
  yieldsToPrescription: true,
  applies: ({ part, section }) =>
    section.texture !== null &&
    UNDER_VOICES.has(section.texture) &&
    (part.role === "accompaniment" || part.role === "bass"),
  most: () => 0,
  listens: ({ part, section }) =>
    part.role === "accompaniment" && section.texture !== null && UNDER_VOICES.has(section.texture),
  weigh: (sound, context) => weighed(sound, strengthOf(sound.blend), context),
  atMost: (now, all, context) => {
    const mayBeShutAway = all.shut === 2 && now.enclosed === now.stops;
    return mayBeShutAway && context.part.role !== "bass" ? 0 : weighed(now, strengthAtLeast(now), context);
  },
  words: (sound, context, heard, points) => {
    const place = `on ${the(context)}`;
    if (context.part.role === "bass") {
      const reeds = reedsOf(heard.stops);
      return {
        text: `${named(reeds)} ${place} ${agree(reeds, "is", "are")} too heavy under singers.`,
        remedy: leaveOut(reeds),
        stops: idsOf(reeds),
      };
    }
    const offence = isShutAway(sound) ? undefined : OFFENCES.find((each) => each.points === points && each.is(sound));
    if (offence) {
      const stops = offence.stops(heard.stops);
      return {
        text: `${named(stops)} ${place} ${agree(stops, offence.what, offence.whats)}.`,
        remedy: leaveOut(stops),
        stops: idsOf(stops),
      };
    }
    if (points === MANUAL_16 && (sound.plain & FEET_16) !== 0) {
      const deep = soundingBelow(heard.stops, footOf(8), context);
      return {
        text: `${named(deep)} ${place} ${agree(deep, "makes", "make")} the chords thick under the singers.`,
        remedy: leaveOut(deep),
        stops: idsOf(deep),
      };
    }
    return {
      text: `${named(heard.stops)} ${place} ${agree(heard.stops, "outweighs", "outweigh")} the singers.`,
      remedy: "Take a stop off, or shut the box where there is one.",
    };
  },
  examples: {
    speaks: [
      {
        organ: "Swell: Stopped Diapason 8, Oboe 8",
        plays: "accompaniment on Swell",
        texture: "choir-accompaniment",
        says: "Oboe 8 on the Swell doubles the singers' tune.",
      },
      {
        organ: "Great: Open Diapason 8, Stopped Diapason 8, Principal 4, Fifteenth 2",
        plays: "accompaniment on Great",
        texture: "chant",
        says: "Open Diapason 8, Stopped Diapason 8, Principal 4 and Fifteenth 2 on the Great outweigh the singers.",
      },
      {
        organ: "Great: Open Diapason 8, Principal 4, Mixture III",
        plays: "accompaniment on Great",
        texture: "choir-accompaniment",
        says: "Mixture III on the Great covers the words.",
      },
      {
        organ: "Swell: Salicional 8, Voix céleste 8",
        plays: "accompaniment on Swell",
        texture: "choir-accompaniment",
        says: "Voix céleste 8 on the Swell leaves the singers no pitch to hold.",
      },
      {
        organ: "Great: Double Diapason 16, Stopped Diapason 8",
        plays: "accompaniment on Great",
        texture: "chant",
        says: "Double Diapason 16 on the Great makes the chords thick under the singers.",
      },
      {
        organ: "Pedal: Trombone 16, Bourdon 16",
        plays: "bass on Pedal",
        texture: "choir-accompaniment",
        says: "Trombone 16 on the Pedal is too heavy under singers.",
      },
    ],
    silent: [
      {
        organ: "Swell: Stopped Diapason 8, Gemshorn 4",
        plays: "accompaniment on Swell",
        texture: "choir-accompaniment",
      },
      { organ: "Swell: Stopped Diapason 8, Oboe 8", plays: "accompaniment on Swell" },
      {
        organ: "Swell [box]: Open Diapason 8, Principal 4, Mixture III, Cornopean 8",
        plays: "accompaniment on Swell",
        texture: "choir-accompaniment",
        boxes: { Swell: "closed" },
      },
    ],
  },
};
