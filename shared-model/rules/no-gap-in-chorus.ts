import type { PartSound } from "../acoustics/part-sound.ts";
import { highestOf, lowestOf, OCTAVES, pitchesOf } from "../acoustics/pitch-set.ts";
import { footOf } from "../pitch/foot.ts";
import { draw, feet, named, The, the, undrawnAt } from "./naming.ts";
import { unisonCover } from "./pitches.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { isChorus } from "./schools.ts";

const CHORUS = 300;
const ACCOMPANIMENT = 150;
const COLOUR = 50;

/** Octaves that are skipped between the deepest and the highest octave stop, and that nothing of `filling` holds. */
function skipped(sound: PartSound, filling: PartSound = sound): number {
  const octaves = sound.plain & OCTAVES;
  const deepest = lowestOf(octaves);
  return OCTAVES & ~(deepest | (deepest - 1)) & (highestOf(octaves) - 1) & ~(filling.plain | filling.compound);
}

const gap = (context: PartContext): number =>
  context.part.role === "accompaniment" ? -ACCOMPANIMENT : isChorus(context) ? -CHORUS : -COLOUR;

export const noGapInChorus: PartRule = {
  id: "no-gap-in-chorus",
  conventions: [3],
  reads: "part",
  statement: "A chorus and an accompaniment skip no octave; a gap is a colour for a solo or a light variation.",
  why: "A skipped octave splits chords into a low and a high sound.",
  source: "bedos-1766",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) => context.part.role === "plenum" || context.part.role === "accompaniment",
  most: () => 0,
  weigh: (sound, context) => {
    // A missing unison is another matter.
    if (unisonCover(sound, context) === 0 || skipped(sound) === 0) return 0;
    return gap(context);
  },
  atMost: (now, all, context) =>
    now.plain === 0 || unisonCover(now, context) === 0 || skipped(now, all) === 0 ? 0 : gap(context),
  words: (sound, context, heard) => {
    const missing = pitchesOf(skipped(sound))[0] ?? footOf(4);
    return {
      text: `${named(heard.stops)} ${heard.stops.length === 1 ? "leaves" : "leave"} a gap at ${feet(missing)} on ${the(context)}.`,
      remedy: draw(
        undrawnAt(heard, missing, context),
        `${The(context)} has no ${feet(missing)}; leave the higher stop out of the chords.`,
      ),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Great: Stopped Diapason 8, Fifteenth 2 (Principal 4)",
        plays: "plenum on Great",
        says: "Stopped Diapason 8 and Fifteenth 2 leave a gap at 4' on the Great.",
      },
      {
        organ: "Choir: Gedackt 8, Piccolo 2",
        plays: "accompaniment on Choir",
        says: "Gedackt 8 and Piccolo 2 leave a gap at 4' on the Choir.",
      },
      {
        organ: "Hauptwerk: Gedackt 8, Sifflöte 1",
        plays: "plenum on Hauptwerk",
        texture: "flutes",
        says: "Gedackt 8 and Sifflöte 1 leave a gap at 4' on the Hauptwerk.",
      },
    ],
    silent: [
      { organ: "Great: Stopped Diapason 8, Principal 4, Fifteenth 2", plays: "plenum on Great" },
      { organ: "Choir: Gedackt 8, Piccolo 2", plays: "melody on Choir" },
      { organ: "Hauptwerk: Gedackt 8, Flöte 4, Larigot 1 1/3", plays: "plenum on Hauptwerk", texture: "flutes" },
    ],
  },
};
