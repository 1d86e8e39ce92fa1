import type { Prescription } from "../prescription.ts";
import { recipe } from "./wanted.ts";

/**
 * Recipes of the Spanish school: one keyboard whose stops divide between C4 and C#4, reeds flat in the front, a few
 * pedal contras.
 */
export const SPANISH_PRESCRIPTIONS: readonly Prescription[] = [
  recipe("lleno.spanish.1", {
    sources: ["nassarre-1724", "spanish-practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "twelfth 2 2/3", "principal 2", "mixture"],
        may: ["principal 16", "larigot 1 1/3", "cymbal"],
        not: ["cornet", "tierce", "nasard", "reed", "celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        optional: true,
        oneOf: [["principal 16", "stopped-flute 16", "principal 8"]],
        not: ["reed"],
      },
    ],
    note: "Both halves alike.",
  }),
  recipe("treble-solo.spanish.1", {
    way: "Corneta",
    sources: ["correa-1626", "spanish-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        half: "treble",
        must: ["cornet treble"],
        may: ["stopped-flute 8 treble"],
        not: ["mixture", "cymbal", "reed"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        half: "bass",
        oneOf: [["principal 8 bass", "stopped-flute 8 bass"]],
        not: ["reed", "mixture", "16"],
      },
    ],
    note: "The Flautado or the Violón in the bass.",
  }),
  recipe("treble-solo.spanish.2", {
    way: "Clarín or trumpet",
    sources: ["correa-1626", "spanish-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        half: "treble",
        oneOf: [["horizontal-trumpet 8 treble", "trumpet 8 treble"]],
        may: ["stopped-flute 8 treble"],
        not: ["mixture", "cymbal", "cornet"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        half: "bass",
        must: ["principal 8 bass"],
        may: ["principal 4 bass", "stopped-flute 8 bass"],
        not: ["reed", "mixture", "16"],
      },
    ],
    note: "A Clarín wants Flautado and Octava in the bass.",
  }),
  recipe("treble-solo.spanish.3", {
    way: "nasardos",
    sources: ["spanish-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        half: "treble",
        must: ["stopped-flute 8 treble", "nasard 2 2/3 treble"],
        may: ["principal 4 treble", "open-flute 4 treble", "open-flute 2 treble", "tierce 1 3/5 treble"],
        not: ["mixture", "reed"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        half: "bass",
        must: ["stopped-flute 8 bass"],
        may: ["principal 8 bass", "open-flute 4 bass"],
        not: ["reed", "mixture"],
      },
    ],
  }),
  recipe("bass-solo.spanish.1", {
    way: "real trumpet",
    sources: ["correa-1626", "spanish-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "bass",
        keyboard: "main",
        half: "bass",
        must: ["trumpet 8 bass"],
        may: ["horizontal-trumpet 4 bass"],
        not: ["mixture", "cymbal"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        half: "treble",
        must: ["principal 8 treble"],
        may: ["principal 4 treble", "stopped-flute 8 treble"],
        not: ["cornet", "reed", "mixture"],
      },
    ],
  }),
  recipe("bass-solo.spanish.2", {
    way: "front reeds",
    sources: ["spanish-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "bass",
        keyboard: "main",
        half: "bass",
        oneOf: [["horizontal-trumpet 8 bass", "regal 8 bass"]],
        may: ["stopped-flute 8 bass"],
        not: ["mixture", "cymbal"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        half: "treble",
        must: ["principal 8 treble"],
        may: ["principal 4 treble", "stopped-flute 8 treble"],
        not: ["cornet", "reed", "mixture"],
      },
    ],
  }),
  recipe("bass-solo.spanish.3", {
    way: "flues",
    sources: ["correa-1626"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "bass",
        keyboard: "main",
        half: "bass",
        must: ["principal 8 bass", "principal 4 bass", "twelfth 2 2/3 bass", "principal 2 bass"],
        may: ["tierce 1 3/5 bass", "nasard 2 2/3 bass", "mixture bass"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        half: "treble",
        must: ["principal 8 treble"],
        may: ["stopped-flute 8 treble"],
        not: ["reed", "mixture", "cornet"],
      },
    ],
  }),
  recipe("two-trebles.spanish.1", {
    sources: ["correa-1626", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        half: "treble",
        oneOf: [["cornet treble", "trumpet 8 treble", "nasard 2 2/3 treble"]],
        may: ["stopped-flute 8 treble"],
        not: ["mixture"],
        note: "two voices in the right hand",
      },
      {
        role: "accompaniment",
        keyboard: "main",
        half: "bass",
        must: ["principal 8 bass"],
        may: ["principal 4 bass"],
        not: ["reed", "mixture"],
      },
    ],
  }),
  recipe("two-basses.spanish.1", {
    sources: ["correa-1626", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "bass",
        keyboard: "main",
        half: "bass",
        must: ["trumpet 8 bass"],
        may: ["principal 8 bass", "principal 4 bass"],
        not: ["mixture"],
        note: "two voices in the left hand",
      },
      {
        role: "accompaniment",
        keyboard: "main",
        half: "treble",
        must: ["principal 8 treble"],
        may: ["principal 4 treble"],
        not: ["reed", "mixture", "cornet"],
      },
    ],
  }),
  recipe("falsas.spanish.1", {
    sources: ["nassarre-1724", "spanish-practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8"],
        may: ["stopped-flute 8"],
        not: ["4", "2", "high-compound", "mutation", "reed"],
      },
    ],
    tremulant: "may",
    note:
      "Flautado alone, slow; a gentle tremblor where the organ has one; the later celeste-like Voz angélica in its " +
      "place.",
  }),
  recipe("falsas.spanish.2", {
    way: "Violón",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      { role: "plenum", keyboard: "main", must: ["stopped-flute 8"], not: ["2", "high-compound", "mutation", "reed"] },
    ],
    tremulant: "may",
  }),
  recipe("batalla.spanish.1", {
    sources: ["spanish-practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["horizontal-trumpet 8 treble", "horizontal-trumpet 4 bass"],
        may: ["trumpet 8", "trumpet 16 treble", "trumpet 4", "horizontal-trumpet 8 bass"],
        not: ["mixture", "cornet", "celeste"],
      },
    ],
    note:
      "Bajoncillo 4 in the bass answers the Clarín 8 of the treble an octave apart in keys, at one pitch. Real " +
      "trumpets give the ground.",
  }),
  recipe("ecos.spanish.1", {
    sources: ["spanish-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        half: "treble",
        must: ["cornet treble"],
        not: ["mixture", "reed"],
      },
      {
        role: "echo",
        keyboard: "echo",
        half: "treble",
        must: ["cornet treble"],
        note: "Corneta de ecos in its box; open, then shut",
      },
      {
        role: "accompaniment",
        keyboard: "main",
        half: "bass",
        must: ["principal 8 bass"],
        may: ["stopped-flute 8 bass", "principal 4 bass"],
        not: ["reed", "mixture"],
      },
    ],
  }),
];
