import type { PartSound } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, idsOf, named, soundingAt, The, undrawnAt } from "./naming.ts";
import { FEET_8, FEET_16 } from "./pitches.ts";
import { mayReach } from "./reach-facts.ts";
import type { PartContext, PartRule } from "./rule.ts";

const RIGHT = 300;
const PARTLY = 150;
const EIGHT_ALONE = -200;
const SIXTEEN_ALONE = -250;
const NEITHER = -300;

function weighed(sound: PartSound, context: PartContext): number {
  if (sound.stops === 0) return 0;
  if ((context.zones & ~(sound.cover16 & sound.cover8)) === 0) return RIGHT;
  if (sound.cover16 === 0) return sound.cover8 === 0 ? NEITHER : EIGHT_ALONE;
  return sound.cover8 === 0 ? SIXTEEN_ALONE : PARTLY;
}

export const bassSixteenAndEight: PartRule = {
  id: "bass-sixteen-and-eight",
  conventions: [10],
  reads: "part",
  statement: "A bass in the feet sounds at 16 and 8 together.",
  why: "The double bass doubles the cello: 16 alone is unclear, 8 alone lacks the lower octave.",
  source: "mendelssohn-1845",
  severity: "warning",
  yieldsToPrescription: true,
  // The French classical pedal has a rule of its own; Italian and Spanish pull-downs sound what the manual sounds; the
  // English organ of the 18th century has no pedal.
  applies: ({ part, section }) =>
    part.role === "bass" &&
    part.hands === "feet" &&
    part.sounding === 8 &&
    section.tradition !== "french-classical" &&
    section.tradition !== "italian-renaissance" &&
    section.tradition !== "spanish" &&
    section.tradition !== "english-18c",
  most: (context) => (mayReach(context, FEET_8) && mayReach(context, FEET_16) ? RIGHT : 0),
  weigh: weighed,
  // Every stop more brings the bass nearer to its two octaves.
  atMost: (_now, all, context) => weighed(all, context),
  words: (sound, context, heard, points) => {
    const stops = named(heard.stops);
    const does = (one: string, several: string): string => agree(heard.stops, one, several);
    if (points > 0) {
      const ground = [16, 8].flatMap((length) => soundingAt(heard.stops, footOf(length), context));
      const bearing = ground.length > 0 ? ground : heard.stops;
      const text = `${named(bearing)} ${agree(bearing, "gives", "give")} the bass both its octaves${points === RIGHT ? "" : ", though not on every key"}.`;
      return { text, stops: idsOf(bearing) };
    }
    const lacking = sound.cover8 === 0 ? footOf(8) : footOf(16);
    const effect =
      points === NEITHER ? "no bass" : lacking.over === 8 ? "an unclear bass" : "a bass without its lower octave";
    return {
      text: `${stops} alone ${does("gives", "give")} ${effect}: ${does("it lacks", "they lack")} ${points === NEITHER ? "the 16' and the 8'" : `the ${lacking.over}'`}.`,
      remedy: draw(
        undrawnAt(heard, lacking, context, KIND_GROUPS.foundation),
        lacking.over === 8
          ? `${The(context)} has no fitting 8': couple the accompaniment's manual.`
          : `${The(context)} has no 16' for it: couple a manual 16', or be content with the 8'.`,
      ),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Pedal: Subbass 16, Gedackt 8",
        plays: "bass on Pedal",
        says: "Subbass 16 and Gedackt 8 give the bass both its octaves.",
      },
      {
        organ: "Pedal: Subbass 16 (Oktave 8)",
        plays: "bass on Pedal",
        says: "Subbass 16 alone gives an unclear bass: it lacks the 8'.",
      },
      {
        organ: "Pedal: Oktave 8 (Subbass 16)",
        plays: "bass on Pedal",
        says: "Oktave 8 alone gives a bass without its lower octave: it lacks the 16'.",
      },
      {
        organ: "Pedal: Oktave 4 | Hauptwerk: (Gedackt 8)",
        plays: "bass on Pedal",
        says: "Oktave 4 alone gives no bass: it lacks the 16' and the 8'.",
      },
    ],
    silent: [
      { organ: "Pédale: Flûte 8", plays: "bass on Pédale", tradition: "french-classical" },
      { organ: "Pedale: Contrabassi 16", plays: "bass on Pedale", tradition: "italian-renaissance" },
      { organ: "Pedal: Trompete 8", plays: "cantus-firmus on Pedal" },
      { organ: "Hauptwerk: Principal 8", plays: "left-hand bass on Hauptwerk" },
    ],
  },
};
