import type { PartSound } from "../acoustics/part-sound.ts";
import { agree, idsOf, keysText } from "./naming.ts";
import { FEET_16 } from "./pitches.ts";
import { isDivided } from "./reach-facts.ts";
import { type HeardStop, listed, type PartRule } from "./rule.ts";

const EACH = 40;
const MOST_COUNTED = 3;

/** Short stops beyond those that only add to others: a celeste, a cornet and a 16 may begin late. */
const missed = (sound: PartSound): number =>
  sound.short - (sound.celeste === 0 ? 0 : 1) - sound.cornets - ((sound.plain & FEET_16) === 0 ? 0 : 1);

const onlyAdds = (each: HeardStop): boolean =>
  each.stop.kinds.includes("celeste") || each.stop.kinds.includes("cornet");

export const shortStopNamed: PartRule = {
  id: "short-stop-named",
  conventions: [21],
  reads: "part",
  statement: "A stop that falls silent within a melody's range is named, even where others carry the note.",
  why: "The colour changes in the middle of the tune.",
  source: "bedos-1766-pipes",
  severity: "note",
  yieldsToPrescription: false,
  // Halves are meant to begin and end; the rule of the divided keyboard speaks of them.
  applies: (context) => context.part.role !== "plenum" && context.part.role !== "bass" && !isDivided(context),
  most: () => 0,
  weigh: (sound, context) => {
    if (sound.short === 0) return 0;
    const count = Math.min(MOST_COUNTED, missed(sound));
    // Where a key is silent altogether the rule of the compass speaks.
    return count <= 0 || (context.zones & ~sound.cover) !== 0 ? 0 : -EACH * count;
  },
  words: (_sound, _context, heard) => {
    const short = heard.stops.filter((each) => each.silent.length > 0 && !onlyAdds(each));
    return {
      text: `${listed(short.map((each) => `${each.label} is silent on ${keysText(each.silent)}`))}: the colour changes there.`,
      remedy: `Keep the line within ${agree(short, "its", "their")} keys, or choose a stop that has them.`,
      stops: idsOf(short),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Récit: Hautbois 8 to D5, Bourdon 8",
        plays: "melody on Récit",
        says: "Hautbois 8 is silent on Eb5 to A5: the colour changes there.",
      },
      {
        organ: "Echo: Trompette 8 from E4, Flûte 8",
        plays: "melody on Echo",
        says: "Trompette 8 is silent on C4 to Eb4: the colour changes there.",
      },
    ],
    silent: [
      { organ: "Récit: Hautbois 8, Bourdon 8", plays: "melody on Récit" },
      { organ: "Récit: Viole de gambe 8, Voix céleste 8 from C4", plays: "accompaniment on Récit" },
      {
        organ: "Grand-Orgue: Cornet V from C4, Bourdon 8",
        plays: "melody on Grand-Orgue",
        ranges: { melody: "G3-C6" },
      },
    ],
  },
};
