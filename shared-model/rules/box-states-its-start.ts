import type { PartSound } from "../acoustics/part-sound.ts";
import { agree, named } from "./naming.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { isChorus, ROMANTIC } from "./schools.ts";

const SOLO_SHUT = -100;
const CHORUS_SHUT = -150;
/** Textures that begin in the shut box: the forte to come. */
const STARTS_SHUT: ReadonlySet<string> = new Set([
  "full-swell",
  "anches-prepared",
  "swell-strings",
  "crescendo",
  "terraced-crescendo",
  "psalm-accompaniment",
]);

function weighed(sound: PartSound, context: PartContext): number {
  if (sound.shut !== 2) return 0;
  const { role } = context.part;
  if (role === "melody") return SOLO_SHUT;
  const { dynamic, tradition, texture } = context.section;
  if (!isChorus(context) || (texture !== null && STARTS_SHUT.has(texture))) return 0;
  const soft = dynamic === "ppp" || dynamic === "pp" || dynamic === "p";
  return soft || (ROMANTIC.has(tradition) && sound.reed !== 0) ? 0 : CHORUS_SHUT;
}

export const boxStatesItsStart: PartRule = {
  id: "box-states-its-start",
  conventions: [39],
  reads: "part",
  statement:
    "Each section states where its box starts: shut for a soft accompaniment or a celeste, open for a solo or a chorus.",
  why: "A player who starts with the box shut has given away the colour, and half the crescendo.",
  source: "common practice",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) => context.canShade && (context.part.role === "melody" || context.part.role === "plenum"),
  most: () => 0,
  weigh: weighed,
  words: (_sound, context, heard) => {
    const boxed = heard.stops.filter((each) =>
      context.reach.some((division) => division.name === each.stop.division && division.box !== null),
    );
    const what = context.part.role === "melody" ? "solo" : "chorus";
    return {
      text: `The ${what} starts with ${named(boxed)} shut away in the box.`,
      remedy: `Start with the box open, or half open, and shade ${agree(boxed, "it", "them")} from there.`,
      stops: boxed.map((each) => each.stop.id),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Swell [box]: Oboe 8",
        plays: "melody on Swell",
        boxes: { Swell: "closed" },
        says: "The solo starts with Oboe 8 shut away in the box.",
      },
      {
        organ: "Swell [box]: Open Diapason 8, Principal 4, Mixture III",
        plays: "plenum on Swell",
        boxes: { Swell: "closed" },
        says: "The chorus starts with Open Diapason 8, Principal 4 and Mixture III shut away in the box.",
      },
    ],
    silent: [
      { organ: "Swell [box]: Oboe 8", plays: "melody on Swell", boxes: { Swell: "half" } },
      { organ: "Swell [box]: Stopped Diapason 8", plays: "accompaniment on Swell", boxes: { Swell: "closed" } },
      {
        organ: "Swell [box]: Open Diapason 8, Principal 4, Mixture III, Cornopean 8",
        plays: "plenum on Swell",
        boxes: { Swell: "closed" },
        texture: "full-swell",
        tradition: "english-cathedral",
      },
    ],
  },
};
