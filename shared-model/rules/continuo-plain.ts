import type { PartSound } from "../acoustics/part-sound.ts";
import { footOf } from "../pitch/foot.ts";
import { KIND_GROUPS } from "../stoplist/kind.ts";
import {
  agree,
  draw,
  idsOf,
  leaveOut,
  mixturesOf,
  named,
  ofKinds,
  reedsOf,
  soundingBelow,
  the,
  undrawnAt,
} from "./naming.ts";
import { FEET_8, FEET_16 } from "./pitches.ts";
import { mayReach } from "./reach-facts.ts";
import type { PartRule } from "./rule.ts";

const PLAIN = 150;
const REED = -400;
const MIXTURE = -400;
const CELESTE = -300;
const MUTATION = -250;
const DEEP = -150;
const NOT_STOPPED = 0;

function weighed(sound: PartSound): number {
  if (sound.reed !== 0) return REED;
  if (sound.mixtures > 0) return MIXTURE;
  if (sound.celeste !== 0) return CELESTE;
  if (sound.mutation !== 0 || sound.tierces > 0) return MUTATION;
  if ((sound.plain & FEET_16) !== 0) return DEEP;
  return (sound.stopped & FEET_8) !== 0 ? PLAIN : NOT_STOPPED;
}

export const continuoPlain: PartRule = {
  id: "continuo-plain",
  conventions: [49],
  reads: "part",
  statement:
    "A continuo is a stopped 8, a 4 for the tutti and a 2 for the fullest; no reed, celeste, mutation or mixture, a 16 only with a double bass in the tutti.",
  why: "It binds the instruments together and is missed only when it stops.",
  source: "common practice",
  severity: "warning",
  yieldsToPrescription: true,
  applies: ({ part, section }) => section.texture === "continuo" && part.hands !== "feet",
  most: (context) => (mayReach(context, FEET_8) ? PLAIN : 0),
  weigh: weighed,
  atMost: (now, all) => {
    const broken = weighed(now);
    return broken < 0 ? broken : (all.stopped & FEET_8) !== 0 ? PLAIN : NOT_STOPPED;
  },
  words: (sound, context, heard, points) => {
    if (points > 0)
      return {
        text: `${named(heard.stops)} ${agree(heard.stops, "supports", "support")} the other players without being noticed.`,
      };
    const wrong =
      sound.reed !== 0
        ? reedsOf(heard.stops)
        : sound.mixtures > 0
          ? mixturesOf(heard.stops)
          : sound.celeste !== 0
            ? ofKinds(heard.stops, ["celeste"])
            : sound.mutation !== 0 || sound.tierces > 0
              ? ofKinds(heard.stops, [...KIND_GROUPS.mutation, "sesquialtera", "tertian", "cornet"])
              : soundingBelow(heard.stops, footOf(8), context);
    const stopped =
      (sound.stopped & FEET_8) === 0 ? undrawnAt(heard, footOf(8), context, ["stopped-flute"]) : undefined;
    return {
      text:
        points === DEEP
          ? `${named(wrong)} on ${the(context)} ${agree(wrong, "makes", "make")} the continuo heavy.`
          : `${named(wrong)} on ${the(context)} ${agree(wrong, "has", "have")} no place in a continuo.`,
      remedy: stopped ? `${leaveOut(wrong)} ${draw(stopped, "")}` : leaveOut(wrong),
      stops: idsOf(wrong),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Positiv: Gedackt 8, Flöte 4",
        plays: "accompaniment on Positiv",
        texture: "continuo",
        says: "Gedackt 8 and Flöte 4 support the other players without being noticed.",
      },
      {
        organ: "Positiv: Gedackt 8, Regal 8",
        plays: "accompaniment on Positiv",
        texture: "continuo",
        says: "Regal 8 on the Positiv has no place in a continuo.",
      },
      {
        organ: "Manual: Principal 8, Nasat 2 2/3 (Gedackt 8)",
        plays: "accompaniment on Manual",
        texture: "continuo",
        says: "Nasat 2 2/3 on the Manual has no place in a continuo.",
      },
      {
        organ: "Manual: Bordun 16, Gedackt 8",
        plays: "accompaniment on Manual",
        texture: "continuo",
        says: "Bordun 16 on the Manual makes the continuo heavy.",
      },
    ],
    silent: [
      { organ: "Positiv: Principal 8", plays: "accompaniment on Positiv", texture: "continuo" },
      { organ: "Positiv: Gedackt 8, Regal 8", plays: "melody on Positiv" },
    ],
  },
};
