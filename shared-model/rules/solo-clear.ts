import type { Balance } from "../acoustics/hearing.ts";
import { heardTogether, hearTheSame, isAlike, isOneSilent, isShutAway, soundName, soundNameFirst } from "./balance.ts";
import { ownColour, ratioTo, ratioWords } from "./loudness-words.ts";
import type { PairRule } from "./rule.ts";

/** Hundredths of a phon by which a solo should be heard before its accompaniment; a colour of its own makes up for some of it. */
const CLEAR = 600;
const COLOUR_COUNTS = 1000;
/** Hundredths of a decibel by which it should rise over what the chords hide, somewhere. */
const RISES = 900;
const FULL_MARKS = 300;
const BURIED = -600;
const COVERED = -200;

/** How much is lacking until the solo is clear, in hundredths; 0 or below when it is. */
function lacking({ prominence, colour, margin }: Balance): number {
  const stands = prominence + Math.trunc((6 * Math.min(COLOUR_COUNTS, colour)) / 5);
  return Math.max(CLEAR - stands, RISES - margin);
}

export const soloClear: PairRule = {
  id: "solo-clear",
  conventions: [15, 25],
  reads: "pair",
  listens: true,
  statement:
    "A melody stands clear of its accompaniment, by loudness or by a colour of its own, in a shut box as well.",
  why: "A tune that sinks into its chords is no longer a tune, and a shut box takes the top off its sound.",
  source: "bedos-1766",
  severity: "warning",
  yieldsToPrescription: true,
  applies: (first, second) => first.part.role === "melody" && second.part.role === "accompaniment",
  most: () => FULL_MARKS,
  mostHere: (solo, ground) => (hearTheSame(solo, ground) ? 0 : FULL_MARKS),
  weigh: (solo, ground, soloContext, groundContext) => {
    if (isOneSilent(solo, ground)) return 0;
    // Half a point for each phon short of clear, down to six points.
    const points = Math.max(BURIED, FULL_MARKS - (Math.max(0, lacking(heardTogether(solo, ground))) >> 1));
    // A tune drawn like its chords on their own keyboard stands clear of nothing, however it lies.
    const oneSound = soloContext.keyboard === groundContext.keyboard && isAlike(solo, ground);
    return oneSound ? Math.min(0, points) : points;
  },
  words: (solo, ground, soloContext, groundContext, heard, points) => {
    const { lead } = heardTogether(solo, ground);
    const tune = soundNameFirst(heard.first, soloContext);
    const chords = soundName(heard.second, groundContext);
    const one = heard.first.stops.length === 1 || tune.startsWith("The ");
    if (points > 0) {
      const colour = ownColour(solo, ground, soloContext, one ? "has its own colour" : "have their own colour");
      const just = points === FULL_MARKS ? "" : `, just clear of ${heard.second.stops.length === 1 ? "it" : "them"}`;
      return { text: `${tune} ${one ? "stands" : "stand"} ${ratioTo(lead, chords)}${colour}${just}.` };
    }
    const alone = chords.startsWith("the ") || heard.second.stops.length === 1;
    const cover =
      points <= COVERED ? `${alone ? "covers" : "cover"} the solo of` : `${alone ? "is" : "are"} rather strong under`;
    return {
      text: `${soundNameFirst(heard.second, groundContext)} ${chords.startsWith("the ") ? "" : `on the ${groundContext.keyboard.name} `}${cover} ${soundName(heard.first, soloContext)}, which ${one ? "is" : "are"} ${ratioWords(lead)}.`,
      remedy:
        isShutAway(solo) && ground.shut === 0
          ? `Open the box of the ${soloContext.keyboard.name}, or start with it half open.`
          : `Take a stop off the ${groundContext.keyboard.name}, or draw a stronger solo.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Swell: Viola 8 | Great: Open Diapason 8, Principal 4",
        plays: "melody on Swell, accompaniment on Great",
        says: "Open Diapason 8 and Principal 4 on the Great cover the solo of Viola 8, which is about a third as loud.",
      },
      {
        organ: "Swell: Aeoline 8 | Great: Open Diapason 8",
        plays: "melody on Swell, accompaniment on Great",
        says: "Open Diapason 8 on the Great covers the solo of Aeoline 8, which is about a third as loud.",
      },
      {
        organ: "Swell: Oboe 8 | Choir: Stopped Diapason 8",
        plays: "melody on Swell, accompaniment on Choir",
        says: "Oboe 8 stands about half as loud again as Stopped Diapason 8 and has its own colour above the octave.",
      },
      {
        organ: "Swell: Gedackt 8, Nasat 2 2/3 | Choir: Gedackt 8",
        plays: "melody on Swell, accompaniment on Choir",
        says: "Gedackt 8 and Nasat 2 2/3 stand about as loud as Gedackt 8 and have their own colour above the octave.",
      },
      {
        organ: "Swell [box]: Viola 8 | Great: Stopped Diapason 8",
        plays: "melody on Swell, accompaniment on Great",
        boxes: { Swell: "closed" },
        says: "Stopped Diapason 8 on the Great covers the solo of Viola 8, which is about a third as loud.",
      },
      {
        organ: "Récit: Cromorne 8 | Positif: Bourdon 8, Prestant 4",
        plays: "melody on Récit, accompaniment on Positif",
        says: "Bourdon 8 and Prestant 4 on the Positif are rather strong under Cromorne 8, which is about two thirds as loud.",
      },
    ],
    silent: [
      { organ: "Swell: Oboe 8 | Great: Stopped Diapason 8", plays: "melody on Swell, plenum on Great" },
      { organ: "Great: Open Diapason 8 | Pedal: Bourdon 16", plays: "plenum on Great, bass on Pedal" },
    ],
  },
};
