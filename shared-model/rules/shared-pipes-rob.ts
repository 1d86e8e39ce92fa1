import { robbedIn } from "../acoustics/part-sound.ts";
import { idsOf, named, the } from "./naming.ts";
import type { HeardStop, PartRule } from "./rule.ts";

const EACH = 50;
const MOST_COUNTED = 3;

export const sharedPipesRob: PartRule = {
  id: "shared-pipes-rob",
  conventions: [22],
  reads: "part",
  falling: true,
  statement: "Stops that draw one rank at two pitches rob chords of notes: each pipe speaks once.",
  why: "Of an octave played on 8 and 4 from one rank, the middle pipe is asked for twice and sounds once.",
  source: "common practice",
  severity: "note",
  yieldsToPrescription: false,
  // A single line never asks for one pipe twice.
  applies: (context) => context.part.role === "plenum" || context.part.role === "accompaniment",
  most: () => 0,
  weigh: (sound) => -EACH * Math.min(MOST_COUNTED, robbedIn(sound)),
  words: (_sound, context, heard) => {
    const sharing = sharingOneRank(heard.stops);
    return {
      text: `${named(sharing)} share one rank on ${the(context)}: ${intervalOf(sharing)}.`,
      remedy: "Draw the second pitch from another rank where the organ has one.",
      stops: idsOf(sharing),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Manual: Gedackt 8 {gedackt}, Flöte 4 {gedackt}",
        plays: "plenum on Manual",
        says: "Gedackt 8 and Flöte 4 share one rank on the Manual: an octave played on them loses a note.",
      },
      {
        organ: "Swell: Flute 8 {flute}, Nazard 2 2/3 {flute}",
        plays: "accompaniment on Swell",
        says: "Flute 8 and Nazard 2 2/3 share one rank on the Swell: a twelfth played on them loses a note.",
      },
      {
        organ: "Swell: Flute 8 {flute}, Bourdon 8 {flute}",
        plays: "accompaniment on Swell",
        says: "Flute 8 and Bourdon 8 share one rank on the Swell: the second adds no sound of its own.",
      },
    ],
    silent: [
      { organ: "Manual: Gedackt 8 {gedackt}, Principal 4", plays: "plenum on Manual" },
      { organ: "Manual: Gedackt 8 {gedackt}, Flöte 4 {gedackt}", plays: "melody on Manual" },
    ],
  },
};

/** The first stops that draw a rank in common, in printed order. */
function sharingOneRank(stops: readonly HeardStop[]): readonly HeardStop[] {
  const ranksOf = (each: HeardStop): ReadonlySet<string> => new Set(each.stop.uses.map((use) => use.rank));
  for (const each of stops) {
    const own = ranksOf(each);
    const sharing = stops.filter((other) => [...ranksOf(other)].some((rank) => own.has(rank)));
    if (sharing.length > 1) return sharing;
  }
  return stops;
}

/** What is lost when two stops of a rank are played together: the interval between them asks for one pipe twice. */
function intervalOf(stops: readonly HeardStop[]): string {
  const [first, second] = stops.map((each) => each.stop.pitch);
  if (!first || !second) return "some intervals lose a note";
  const [longer, shorter] = first.over * second.under >= second.over * first.under ? [first, second] : [second, first];
  const harmonic = (longer.over * shorter.under) / (longer.under * shorter.over);
  const names: Readonly<Record<number, string>> = {
    2: "an octave",
    3: "a twelfth",
    4: "a double octave",
    5: "a seventeenth",
    6: "a nineteenth",
    8: "a triple octave",
  };
  if (harmonic === 1) return "the second adds no sound of its own";
  return `${names[harmonic] ?? "some interval"} played on them loses a note`;
}
