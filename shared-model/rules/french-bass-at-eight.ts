import type { PartSound } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import { agree, draw, idsOf, leaveOut, named, soundingAt, soundingBelow, The, undrawnAt } from "./naming.ts";
import { FEET_8, FEET_16 } from "./pitches.ts";
import { mayReach } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";

const RIGHT = 300;
const SIXTEEN_UNDER = -200;
const NO_EIGHT = -300;

function weighed(sound: PartSound): number {
  if (sound.stops === 0) return 0;
  if ((sound.plain & FEET_8) === 0) return NO_EIGHT;
  return (sound.plain & FEET_16) === 0 ? RIGHT : SIXTEEN_UNDER;
}

export const frenchBassAtEight: PartRule = {
  id: "french-bass-at-eight",
  conventions: [10],
  reads: "part",
  statement: "A French classical bass in the feet sounds at 8, on the flutes of the pedal.",
  why: "That pedal is a voice among the others and doubles no string bass; its 16 comes late in the century, for the plein jeu.",
  source: "bedos-1766",
  severity: "warning",
  yieldsToPrescription: true,
  applies: ({ part, section }) =>
    part.role === "bass" && part.hands === "feet" && part.sounding === 8 && section.tradition === "french-classical",
  most: (context) => (mayReach(context, FEET_8) ? RIGHT : 0),
  weigh: weighed,
  atMost: (now, all) => {
    if ((all.plain & FEET_8) === 0) return all.stops === 0 ? 0 : NO_EIGHT;
    return (now.plain & FEET_16) === 0 ? RIGHT : SIXTEEN_UNDER;
  },
  words: (_sound, context, heard, points) => {
    if (points > 0) {
      const ground = soundingAt(heard.stops, footOf(8), context);
      const bearing = ground.length > 0 ? ground : heard.stops;
      return {
        text: `${named(bearing)} ${agree(bearing, "carries", "carry")} the bass at 8', as the French classical pedal does.`,
        stops: idsOf(bearing),
      };
    }
    if (points === SIXTEEN_UNDER) {
      const deep = soundingBelow(heard.stops, footOf(8), context);
      return {
        text: `${named(deep)} ${agree(deep, "lies", "lie")} under a French classical bass, which sounds at 8'.`,
        remedy: leaveOut(deep),
        stops: idsOf(deep),
      };
    }
    return {
      text: `${named(heard.stops)} alone ${agree(heard.stops, "gives", "give")} no bass: ${agree(heard.stops, "it lacks", "they lack")} the 8'.`,
      remedy: draw(
        undrawnAt(heard, footOf(8), context, KIND_GROUPS.foundation),
        `${The(context)} has no fitting 8': couple the accompaniment's manual.`,
      ),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Pédale: Flûte 8",
        plays: "bass on Pédale",
        tradition: "french-classical",
        says: "Flûte 8 carries the bass at 8', as the French classical pedal does.",
      },
      {
        organ: "Pédale: Soubasse 16, Flûte 8",
        plays: "bass on Pédale",
        tradition: "french-classical",
        says: "Soubasse 16 lies under a French classical bass, which sounds at 8'.",
      },
      {
        organ: "Pédale: Flûte 4 (Flûte 8)",
        plays: "bass on Pédale",
        tradition: "french-classical",
        says: "Flûte 4 alone gives no bass: it lacks the 8'.",
      },
    ],
    silent: [
      { organ: "Pédale: Flûte 8", plays: "bass on Pédale", tradition: "french-symphonic" },
      { organ: "Pédale: Trompette 8", plays: "cantus-firmus on Pédale", tradition: "french-classical" },
    ],
  },
};
