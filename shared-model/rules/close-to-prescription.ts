import type { RecipeRule } from "./rule.ts";

export const closeToPrescription: RecipeRule = {
  id: "close-to-prescription",
  conventions: [26],
  reads: "recipe",
  statement:
    "A texture of a school is registered as its sources say; what the organ lacks is replaced by the nearest stop and named.",
  why: "The composers and organists of the school wrote down what they drew.",
  source: "common practice",
  severity: "note",
  examples: {
    speaks: [
      {
        organ: "Organo: Principale 8, Fiffaro 8",
        plays: "plenum on Organo",
        texture: "fiffaro",
        tradition: "italian-renaissance",
        says: "As Antegnati (1608) has it, the chorus draws Principale 8 and Fiffaro 8.",
      },
      {
        organ: "Positif: Clarinette 8",
        plays: "melody on Positif",
        texture: "recit-de-cromorne",
        tradition: "french-classical",
        says: "Clarinette 8 stands in for the cromorne 8 that the recipe asks for.",
      },
    ],
    silent: [
      { organ: "Organo: Principale 8, Fiffaro 8", plays: "plenum on Organo" },
      { organ: "Positif: Clarinette 8", plays: "melody on Positif", tradition: "french-classical" },
    ],
  },
};
