import type { Prescription } from "../prescription.ts";
import { FLUTE_4, FLUTE_8, PEDAL_8, PEDAL_16, QUIET_8 } from "./stop-lists.ts";
import { recipe } from "./wanted.ts";

/**
 * Recipes that serve any tradition but for the solos: a common denominator of practice.
 */
export const NEUTRAL_ENSEMBLE_PRESCRIPTIONS: readonly Prescription[] = [
  recipe("dialogue.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4"],
        may: ["principal 2", "mixture", "stopped-flute 8"],
      },
      {
        role: "plenum",
        keyboard: "positive",
        oneOf: [
          ["principal 8", "stopped-flute 8"],
          ["principal 4", "open-flute 4", "stopped-flute 4"],
        ],
        may: ["principal 2", "open-flute 2", "mixture", "cymbal"],
        not: ["16"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        optional: true,
        oneOf: [PEDAL_16, PEDAL_8],
        may: ["principal 16", "principal 8", "trumpet 16"],
      },
    ],
    note: "Two choruses of like colour, the second a step lighter.",
  }),
  recipe("continuo.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "accompaniment",
        keyboard: "any-other",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "stopped-flute 4", "principal 4"],
        not: ["16", "reed", "mixture", "mutation", "celeste"],
      },
    ],
    note: "Stopped 8; with 4 for tutti; pedal silent or soft 16 for tutti bass only.",
  }),
  recipe("hymn-introduction.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4"],
        may: ["stopped-flute 8", "open-flute 4", "principal 2"],
        not: ["chorus-reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        oneOf: [PEDAL_16, PEDAL_8],
        may: ["principal 16", "principal 8"],
        not: ["chorus-reed"],
      },
    ],
    couplersMay: ["main/pedal"],
    note: "As the first verse or one step under it, in its tempo.",
  }),
  recipe("hymn-verse.neutral.1", {
    sources: ["lesson-hymns", "common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2"],
        may: ["stopped-flute 8", "twelfth 2 2/3", "mixture", "open-flute 4"],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        oneOf: [PEDAL_16, PEDAL_8],
        may: ["principal 16", "principal 8", "stopped-flute 16", "principal 4"],
      },
    ],
    couplersMay: ["main/pedal", "swell/main"],
    note:
      "Read in the course: at least 8 and 4 in the hands, 16 and 8 in the feet. That they are principals, with the " +
      "2, is common practice.",
  }),
  recipe("hymn-verse-manual.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 4"],
        oneOf: [["principal 8", "stopped-flute 8"]],
        may: ["principal 2", "open-flute 4"],
        not: ["16", "celeste"],
      },
    ],
  }),
  recipe("hymn-verse-quiet.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        oneOf: [["principal 8", "stopped-flute 8", "open-flute 8"]],
        may: ["open-flute 4", "stopped-flute 4", "principal 4", "soft-string 8"],
        not: ["chorus-reed", "mixture", "celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "principal 8"]],
        not: ["reed"],
      },
    ],
    note: "Still 8 and 4 if a congregation sings.",
  }),
  recipe("hymn-verse-last.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2", "mixture"],
        may: ["principal 16", "trumpet 8", "twelfth 2 2/3", "stopped-flute 8", "trumpet 4"],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8"],
        may: ["trumpet 16", "principal 4", "stopped-flute 32", "mixture", "trumpet 8"],
      },
    ],
    couplers: ["main/pedal"],
    couplersMay: ["swell/main"],
  }),
  recipe("hymn-verse-last.neutral.2", {
    way: "with reeds",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2", "mixture", "trumpet 8"],
        may: ["principal 16", "stopped-flute 16", "twelfth 2 2/3", "stopped-flute 8", "trumpet 4"],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8", "trumpet 16"],
        may: ["principal 4", "stopped-flute 32", "mixture", "trumpet 8"],
      },
    ],
    couplers: ["main/pedal"],
    couplersMay: ["swell/main"],
    note: "The largest verse, where the room and the singers bear it.",
  }),
  recipe("choir-accompaniment.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "accompaniment",
        keyboard: "any-other",
        oneOf: [QUIET_8],
        may: ["stopped-flute 8", "open-flute 8", "soft-string 8", "open-flute 4", "stopped-flute 4", "principal 8"],
        not: ["chorus-reed", "mixture", "celeste", "16"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8"]],
        not: ["reed"],
      },
    ],
  }),
  recipe("chant.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "accompaniment",
        keyboard: "any-other",
        oneOf: [QUIET_8],
        may: ["soft-string 8", "open-flute 8", "stopped-flute 8"],
        not: ["reed", "mixture", "2", "4"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        optional: true,
        oneOf: [["stopped-flute 16", "string 16"], PEDAL_8],
        not: ["reed", "principal 16"],
      },
    ],
  }),
  recipe("fanfare.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        keyboard: "any-other",
        oneOf: [["horizontal-trumpet 8", "tuba 8", "trumpet 8"]],
        may: ["principal 8", "trumpet 4"],
        not: ["celeste"],
      },
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2"],
        may: ["mixture", "principal 16", "trumpet 8"],
        not: ["celeste"],
      },
      { role: "bass", keyboard: "pedal", must: ["principal 16", "principal 8"], may: ["trumpet 16", "principal 4"] },
    ],
  }),
  recipe("trio.neutral.1", {
    way: "principals against flutes",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "voice",
        place: "treble",
        keyboard: "any-other",
        must: ["principal 8"],
        may: ["principal 4"],
        not: ["16", "mixture", "celeste", "reed"],
      },
      {
        role: "voice",
        place: "tenor",
        keyboard: "any-other",
        oneOf: [FLUTE_8],
        may: ["open-flute 4", "stopped-flute 4", "open-flute 2", "larigot 1 1/3", "nasard 2 2/3"],
        not: ["16", "mixture", "celeste", "reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        oneOf: [["stopped-flute 16", "string 16", "open-flute 16", "principal 16"], PEDAL_8],
        not: ["chorus-reed", "mixture", "32"],
      },
    ],
    note: "Equal, not alike.",
  }),
  recipe("trio.neutral.2", {
    way: "reed against flutes with a high pitch",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "voice",
        place: "treble",
        keyboard: "any-other",
        oneOf: [["cromorne 8", "oboe 8", "clarinet 8", "schalmei 8"]],
        may: ["stopped-flute 8", "open-flute 4"],
        not: ["16", "mixture", "chorus-reed", "celeste"],
      },
      {
        role: "voice",
        place: "tenor",
        keyboard: "any-other",
        oneOf: [FLUTE_8, FLUTE_4, ["nasard 2 2/3", "open-flute 2", "larigot 1 1/3", "sesquialtera"]],
        not: ["16", "mixture", "celeste", "reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        oneOf: [["stopped-flute 16", "string 16", "open-flute 16", "principal 16"], PEDAL_8],
        not: ["chorus-reed", "mixture", "32"],
      },
    ],
    note: "Equal, not alike.",
  }),
  recipe("trio.neutral.3", {
    way: "light",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "voice",
        place: "treble",
        keyboard: "any-other",
        oneOf: [["stopped-flute 8", "open-flute 8"]],
        may: ["open-flute 4", "open-flute 2"],
        not: ["16", "mixture"],
      },
      {
        role: "voice",
        place: "tenor",
        keyboard: "any-other",
        octave: -1,
        oneOf: [["open-flute 4", "stopped-flute 4", "principal 4"]],
        not: ["16", "mixture", "reed"],
        note: "a 4 ft stop, hand an octave lower",
      },
      {
        role: "bass",
        keyboard: "pedal",
        oneOf: [["stopped-flute 16", "string 16", "open-flute 16", "principal 16"], PEDAL_8],
        not: ["chorus-reed", "32"],
      },
    ],
  }),
  recipe("two-voices.neutral.1", {
    way: "principals against flutes",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "voice",
        place: "treble",
        keyboard: "any-other",
        must: ["principal 8"],
        may: ["principal 4"],
        not: ["reed", "mixture", "celeste", "16"],
      },
      {
        role: "voice",
        place: "bass",
        keyboard: "any-other",
        oneOf: [FLUTE_8],
        may: ["open-flute 4", "stopped-flute 4"],
        not: ["reed", "mixture", "celeste", "16"],
      },
    ],
  }),
  recipe("two-voices.neutral.2", {
    way: "reed against principals",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "voice",
        place: "treble",
        keyboard: "any-other",
        oneOf: [["cromorne 8", "oboe 8", "clarinet 8", "schalmei 8"]],
        may: ["stopped-flute 8", "open-flute 4"],
        not: ["mixture", "celeste", "16"],
      },
      {
        role: "voice",
        place: "bass",
        keyboard: "any-other",
        must: ["principal 8"],
        may: ["principal 4"],
        not: ["reed", "mixture", "celeste", "16"],
      },
    ],
  }),
  recipe("two-voices.neutral.3", {
    way: "flutes with a fifth or tierce against a low reed",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "voice",
        place: "treble",
        keyboard: "any-other",
        oneOf: [FLUTE_8, ["sesquialtera", "nasard 2 2/3"]],
        may: ["open-flute 4", "stopped-flute 4", "principal 4"],
        not: ["reed", "mixture", "celeste", "16"],
      },
      {
        role: "voice",
        place: "bass",
        keyboard: "any-other",
        oneOf: [["trumpet 8", "cromorne 8", "dulcian 8", "bassoon 8"]],
        may: ["stopped-flute 8", "principal 4"],
        not: ["mixture", "celeste", "16"],
      },
    ],
  }),
  recipe("two-voices.neutral.4", {
    way: "flutes with a fifth or tierce against principals",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "voice",
        place: "treble",
        keyboard: "any-other",
        oneOf: [FLUTE_8, ["sesquialtera", "nasard 2 2/3"]],
        may: ["open-flute 4", "stopped-flute 4", "principal 4"],
        not: ["reed", "mixture", "celeste", "16"],
      },
      {
        role: "voice",
        place: "bass",
        keyboard: "any-other",
        must: ["principal 8"],
        may: ["principal 4"],
        not: ["reed", "mixture", "celeste", "16"],
      },
    ],
  }),
  recipe("plenum.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2", "mixture"],
        may: ["twelfth 2 2/3", "principal 16", "stopped-flute 16", "quintadena 16", "cymbal", "trumpet 8"],
        not: ["celeste", "short-reed", "string"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8"],
        may: ["principal 4", "mixture", "trumpet 16", "stopped-flute 16", "trumpet 8"],
        not: ["celeste"],
      },
    ],
    couplersMay: ["positive/main", "swell/main", "main/pedal"],
  }),
  recipe("plenum-manual.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 4", "principal 2", "mixture"],
        oneOf: [["principal 8", "stopped-flute 8"]],
        may: ["twelfth 2 2/3", "cymbal", "stopped-flute 8"],
        not: ["celeste", "short-reed", "string"],
      },
    ],
  }),
  recipe("fugue.neutral.1", {
    way: "clear chorus",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2"],
        may: ["twelfth 2 2/3", "mixture"],
        not: ["celeste", "string", "tierce-sounding", "reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        oneOf: [PEDAL_16, PEDAL_8],
        may: ["principal 16", "principal 8", "principal 4", "trumpet 16"],
      },
    ],
    couplersMay: ["main/pedal"],
  }),
  recipe("fugue.neutral.2", {
    way: "singing",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4"],
        may: ["stopped-flute 8"],
        not: ["celeste", "string", "tierce-sounding", "reed", "2", "mixture"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        oneOf: [PEDAL_16, PEDAL_8],
        may: ["principal 16", "principal 8", "principal 4", "trumpet 16"],
      },
    ],
    couplersMay: ["main/pedal"],
    note: "A calm fugue sings on principals 8 and 4.",
  }),
  recipe("flutes.neutral.1", {
    way: "8 with others",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        oneOf: [["stopped-flute 8", "open-flute 8", "harmonic-flute 8"]],
        may: ["open-flute 4", "stopped-flute 4", "open-flute 2"],
        not: ["reed", "mixture", "principal", "16"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        optional: true,
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8"]],
        not: ["reed"],
      },
    ],
    tremulant: "may",
  }),
  recipe("meditation.neutral.1", {
    way: "string and celeste",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "accompaniment",
        keyboard: "any-other",
        must: ["celeste 8"],
        oneOf: [["string 8", "soft-string 8"]],
        may: ["stopped-flute 8"],
        not: ["reed", "mixture", "2", "16"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "string 8"]],
        not: ["reed"],
      },
    ],
    note: "Box shut.",
  }),
  recipe("meditation.neutral.2", {
    way: "two soft 8s",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "accompaniment",
        keyboard: "any-other",
        oneOf: [
          ["stopped-flute 8", "open-flute 8", "harmonic-flute 8"],
          ["soft-string 8", "string 8"],
        ],
        not: ["reed", "mixture", "2", "16", "celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "string 8"]],
        not: ["reed"],
      },
    ],
    note: "Box shut.",
  }),
  recipe("meditation.neutral.3", {
    way: "one flute",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "accompaniment",
        keyboard: "any-other",
        oneOf: [["stopped-flute 8", "open-flute 8", "harmonic-flute 8"]],
        not: ["reed", "mixture", "2", "16", "celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "string 8"]],
        not: ["reed"],
      },
    ],
    tremulant: "may",
    note: "Box shut.",
  }),
  recipe("trumpet-tune.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "any-other",
        oneOf: [["trumpet 8", "tuba 8", "horizontal-trumpet 8"]],
        may: ["principal 8", "stopped-flute 8", "principal 4"],
        not: ["mixture", "celeste"],
      },
      {
        role: "accompaniment",
        keyboard: "any-other",
        must: ["principal 8", "principal 4"],
        may: ["principal 2", "stopped-flute 8", "mixture"],
        not: ["reed", "celeste"],
      },
      { role: "bass", keyboard: "pedal", oneOf: [PEDAL_16, PEDAL_8], may: ["principal 16", "principal 8"] },
    ],
  }),
  recipe("toccata.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2"],
        may: ["mixture", "twelfth 2 2/3", "stopped-flute 8", "cymbal", "trumpet 8"],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8"],
        may: ["principal 4", "trumpet 16", "mixture"],
      },
    ],
    couplersMay: ["positive/main", "swell/main", "main/pedal"],
  }),
  recipe("crescendo.neutral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        may: ["principal", "flute", "string", "soft-string", "quintadena", "mutation", "high-compound", "reed"],
        note: "ordered states, convention 19",
      },
      {
        role: "bass",
        keyboard: "pedal",
        may: ["principal", "flute", "string", "soft-string", "quint", "high-compound", "reed"],
      },
    ],
    couplersMay: ["positive/main", "swell/main", "solo/main", "echo/main", "main/pedal"],
  }),
];
