import type { RecipeRule } from "./rule.ts";

export const fewestStops: RecipeRule = {
  id: "fewest-stops",
  conventions: [9],
  reads: "recipe",
  statement: "A sound is made of the fewest stops that make it.",
  why: "Each stop more takes wind and blurs the tuning; one that adds nothing heard only costs.",
  source: "common practice",
  severity: "note",
  examples: {
    speaks: [
      {
        organ: "Hauptwerk: Gedackt 8, Hohlflöte 8, Viola 8",
        plays: "accompaniment on Hauptwerk",
        says: "The accompaniment could do with fewer: Gedackt 8, Hohlflöte 8 and Viola 8.",
      },
      {
        organ: "Pedal: Subbass 16, Octave 8",
        plays: "bass on Pedal",
        texture: "organo-pleno",
        tradition: "north-german",
        says: "Subbass 16 goes beyond the recipe for the bass, but is needed to stand in.",
      },
      {
        organ: "Hauptwerk: Prestant 8, Octave 4, Superoctave 2, Mixtur IV, Hohlflöte 8",
        plays: "plenum on Hauptwerk",
        texture: "plein-jeu",
        tradition: "french-classical",
        says: "The chorus could do without Prestant 8.",
      },
      {
        organ: "Swell [box]: Oboe 8",
        plays: "melody on Swell",
        texture: "melody-over-accompaniment",
        boxes: { Swell: "half" },
        says: "The melody plays from a box that is not open.",
      },
    ],
    silent: [
      { organ: "Hauptwerk: Gedackt 8 (Hohlflöte 8, Viola 8)", plays: "accompaniment on Hauptwerk" },
      { organ: "Swell [box]: Oboe 8", plays: "melody on Swell", texture: "melody-over-accompaniment" },
    ],
  },
};
