import type { PartSound } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import { agree, draw, idsOf, leaveOut, named, soundingBelow, the, undrawnAt } from "./naming.ts";
import { FEET_4, FEET_16 } from "./pitches.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { isChorus, isLeftHandBass, ROMANTIC, UNDER_VOICES } from "./schools.ts";

const ACCOMPANIMENT = 300;
const SLOW_HARMONY = 120;
const SOLO = 250;
const THIN_CHORUS = 200;
/** A solo that never goes under this key (G4) bears a 16. */
const HIGH_LINE = 67;
const SOFT: ReadonlySet<string> = new Set(["ppp", "pp", "p"]);

/** Whether both hands may have a 16: a full chorus, or the fonds of the romantic schools from mf upward. */
const grave = (context: PartContext): boolean => context.section.dynamic === null || !SOFT.has(context.section.dynamic);

/** What a 16 costs under what else is drawn. */
function underAll(sound: PartSound, context: PartContext): number {
  const { role, low } = context.part;
  if (role === "accompaniment") return context.section.texture === "meditation" ? -SLOW_HARMONY : -ACCOMPANIMENT;
  if (role !== "plenum") return low >= HIGH_LINE ? 0 : -SOLO;
  if (!grave(context)) return -SLOW_HARMONY;
  if (ROMANTIC.has(context.section.tradition)) return 0;
  if (!isChorus(context)) return -SLOW_HARMONY;
  return (sound.plain & FEET_4) !== 0 ? 0 : -THIN_CHORUS;
}

export const sixteenInManual: PartRule = {
  id: "sixteen-in-manual",
  conventions: [8],
  reads: "part",
  statement:
    "A manual 16 gives gravity to a full chorus with 8 and 4 above it; it muddies an accompaniment and lies too low under a solo.",
  why: "It moves the harmony into the bass octave, where chords are mud.",
  source: "bedos-1766",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (context) =>
    context.part.hands !== "feet" &&
    context.part.sounding === 8 &&
    !isLeftHandBass(context) &&
    context.section.texture !== "continuo" &&
    !(context.section.texture !== null && UNDER_VOICES.has(context.section.texture)),
  most: () => 0,
  weigh: (sound, context) => ((sound.plain & FEET_16) === 0 ? 0 : underAll(sound, context)),
  atMost: (now, all, context) => ((now.plain & FEET_16) === 0 ? 0 : underAll(all, context)),
  words: (_sound, context, heard, points) => {
    const deep = soundingBelow(heard.stops, footOf(8), context);
    const { role } = context.part;
    const place = `on ${the(context)}`;
    if (points === -THIN_CHORUS) {
      return {
        text: `${named(deep)} ${place} ${agree(deep, "lies", "lie")} under too thin a chorus.`,
        remedy: draw(undrawnAt(heard, footOf(4), context), leaveOut(deep)),
        stops: idsOf(deep),
      };
    }
    const harm =
      role === "plenum"
        ? `${agree(deep, "thickens", "thicken")} a sound that is no full chorus`
        : role === "accompaniment"
          ? `${agree(deep, "muddies", "muddy")} the accompaniment`
          : `${agree(deep, "draws", "draw")} the line down an octave`;
    return {
      text: `${named(deep)} ${place} ${harm}.`,
      remedy:
        role === "plenum" || role === "accompaniment"
          ? leaveOut(deep)
          : `${leaveOut(deep)} Or play the line an octave higher.`,
      stops: idsOf(deep),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Bordun 16, Gedackt 8",
        plays: "accompaniment on Hauptwerk",
        says: "Bordun 16 on the Hauptwerk muddies the accompaniment.",
      },
      {
        organ: "Grand-Orgue: Bourdon 16, Montre 8",
        plays: "plenum on Grand-Orgue",
        says: "Bourdon 16 on the Grand-Orgue lies under too thin a chorus.",
      },
      {
        organ: "Hauptwerk: Quintadena 16, Gedackt 8, Flöte 4",
        plays: "melody on Hauptwerk",
        says: "Quintadena 16 on the Hauptwerk draws the line down an octave.",
      },
      {
        organ: "Hauptwerk: Bordun 16, Gedackt 8, Flöte 4",
        plays: "plenum on Hauptwerk",
        texture: "flutes",
        says: "Bordun 16 on the Hauptwerk thickens a sound that is no full chorus.",
      },
    ],
    silent: [
      { organ: "Grand-Orgue: Bourdon 16, Montre 8, Prestant 4, Doublette 2", plays: "plenum on Grand-Orgue" },
      { organ: "Swell: Fagott 16", plays: "melody on Swell", octaves: { melody: 1 } },
    ],
  },
};
