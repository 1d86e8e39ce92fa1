import { agree, draw, feet, named, The, the, undrawnAt, unisonFoot } from "./naming.ts";
import { unisonCover } from "./pitches.ts";
import type { PartContext, PartRule } from "./rule.ts";
import { isPedalMelody } from "./schools.ts";

const SOLO = 300;
const CHORDS = 450;
/** Textures that sound an octave high by their nature. */
const HIGH: ReadonlySet<string> = new Set([
  "recorder-consort",
  "petits-oiseaux",
  "flageolet",
  "flute-solo",
  "petites-flutes",
]);

const alone = (context: PartContext): number =>
  context.part.role === "melody" || context.part.role === "echo" ? -SOLO : -CHORDS;

export const fourFootAlone: PartRule = {
  id: "four-foot-alone",
  conventions: [1, 36],
  reads: "part",
  statement:
    "A 4' or 2' alone is played an octave lower for a tune at its place, or stays high where a school has it so.",
  why: "At pitch it sounds an octave above the notes.",
  source: "adlung-1768",
  severity: "note",
  yieldsToPrescription: true,
  applies: (context) =>
    !isPedalMelody(context) && !(context.section.texture !== null && HIGH.has(context.section.texture)),
  most: () => 0,
  weigh: (sound, context) => {
    if (sound.cover === 0 || sound.cover16 !== 0 || unisonCover(sound, context) !== 0) return 0;
    return alone(context);
  },
  atMost: (now, all, context) =>
    now.cover === 0 || all.cover16 !== 0 || unisonCover(all, context) !== 0 ? 0 : alone(context),
  words: (_sound, context, heard) => {
    const unison = unisonFoot(context);
    const { part, keyboard, octave } = context;
    const lower = octave === 0 && part.low - 12 >= keyboard.compass.low;
    const way = lower
      ? "Play it an octave lower."
      : `${The(context)} has no ${feet(unison)} for ${agree(heard.stops, "it", "them")}.`;
    const serving = undrawnAt(heard, unison, context);
    return {
      text: `${named(heard.stops)} on ${the(context)} ${agree(heard.stops, "sounds", "sound")} above the written notes, with no ${feet(unison)}.`,
      remedy: serving && lower ? `Draw ${serving.label}, or play it an octave lower.` : draw(serving, way),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Brustwerk: Flöte 4 (Gedackt 8)",
        plays: "melody on Brustwerk",
        says: "Flöte 4 on the Brustwerk sounds above the written notes, with no 8'.",
      },
      {
        organ: "Rückpositiv: Principal 4, Oktave 2",
        plays: "plenum on Rückpositiv",
        says: "Principal 4 and Oktave 2 on the Rückpositiv sound above the written notes, with no 8'.",
      },
      {
        organ: "Brustwerk: Flöte 2",
        plays: "accompaniment on Brustwerk",
        says: "Flöte 2 on the Brustwerk sounds above the written notes, with no 8'.",
      },
    ],
    silent: [
      { organ: "Brustwerk: Flöte 4", plays: "melody on Brustwerk", octaves: { melody: -1 } },
      { organ: "Brustwerk: Gedackt 8, Flöte 4", plays: "melody on Brustwerk" },
      { organ: "Brustwerk: Flöte 4", plays: "plenum on Brustwerk", texture: "recorder-consort" },
    ],
  },
};
