import type { Prescription } from "../prescription.ts";
import { PEDAL_8, PEDAL_16 } from "./stop-lists.ts";
import { recipe } from "./wanted.ts";

/**
 * Recipes of the north German school: an independent pedal, keyboards seldom coupled, a tremulant of the whole organ
 * or of one Werk.
 */
export const NORTH_GERMAN_PRESCRIPTIONS: readonly Prescription[] = [
  recipe("organo-pleno.north-german.1", {
    sources: ["praetorius-1619", "mattheson-1739", "buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "twelfth 2 2/3", "principal 2", "mixture"],
        may: [
          "principal 16",
          "quintadena 16",
          "stopped-flute 16",
          "rauschpfeife",
          "cymbal",
          "sesquialtera",
          "tertian",
          "trumpet 16",
        ],
        not: ["celeste", "short-reed", "voix-humaine"],
      },
      {
        role: "plenum",
        keyboard: "positive",
        optional: true,
        must: ["principal 4", "principal 2", "cymbal"],
        oneOf: [["principal 8", "stopped-flute 8", "quintadena 8"]],
        may: ["sesquialtera", "mixture", "dulcian 16"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8", "principal 4", "mixture", "trumpet 16", "trumpet 8"],
        may: ["principal 32", "trumpet 32", "trumpet 4", "cornett 2", "rauschpfeife", "stopped-flute 16"],
        not: ["celeste"],
      },
    ],
    couplersMay: ["positive/main"],
    note:
      "As a rule uncoupled: each Werk has its own chorus, played in turn; the pedal stands alone. Manual reeds: " +
      "Mattheson leaves them out, others add a 16 or 8 for weight; one opinion does not bind. A Positiv without " +
      "Principal 8 begins with Gedackt 8 and Principal 4.",
  }),
  recipe("organo-pleno.north-german.2", {
    way: "grave, from the principal 16",
    sources: ["buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 16", "principal 8", "principal 4", "twelfth 2 2/3", "principal 2", "mixture"],
        may: ["rauschpfeife", "cymbal", "sesquialtera", "tertian", "trumpet 16"],
        not: ["celeste", "short-reed", "voix-humaine"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8", "principal 4", "mixture", "trumpet 16", "trumpet 8"],
        may: [
          "principal 32",
          "trumpet 32",
          "trumpet 4",
          "cornett 2",
          "rauschpfeife",
          "stopped-flute 16",
          "principal 2",
          "open-flute 2",
        ],
        not: ["celeste"],
      },
    ],
    couplersMay: ["positive/main"],
    note: "The main keyboard alone from its 16 up, broad and slow; the other choruses answer it uncoupled.",
  }),
  recipe("chorale-in-soprano.north-german.1", {
    way: "8, 4 and a high stop",
    sources: ["scheidt-1624"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "positive",
        oneOf: [
          ["stopped-flute 8", "quintadena 8"],
          ["principal 4", "open-flute 4", "stopped-flute 4"],
          ["mixture", "cymbal", "principal 2"],
        ],
        not: ["celeste"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        oneOf: [["open-flute 4", "stopped-flute 4"]],
        not: ["16", "mixture", "reed", "tierce-sounding"],
      },
      { role: "bass", keyboard: "pedal", must: ["stopped-flute 16"], oneOf: [PEDAL_8], not: ["chorus-reed"] },
    ],
    note: "Solo sharp enough to be heard through: 8, 4 and a high stop. A principal 8 alone in the middle is his other choice.",
  }),
  recipe("chorale-in-soprano.north-german.2", {
    way: "reed",
    sources: ["buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "positive",
        oneOf: [["cromorne 8", "trumpet 8", "dulcian 8", "schalmei 8"]],
        may: ["stopped-flute 8", "open-flute 4", "principal 4"],
        not: ["mixture"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "stopped-flute 4", "open-flute 8", "principal 8"],
        not: ["16", "mixture", "reed"],
      },
      { role: "bass", keyboard: "pedal", oneOf: [PEDAL_16, PEDAL_8], not: ["chorus-reed"] },
    ],
    tremulant: "may",
  }),
  recipe("chorale-in-soprano.north-german.3", {
    way: "Sesquialtera",
    sources: ["buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "positive",
        must: ["sesquialtera"],
        oneOf: [
          ["stopped-flute 8", "principal 8"],
          ["open-flute 4", "stopped-flute 4", "principal 4"],
        ],
        may: ["principal 2"],
        not: ["mixture", "reed", "celeste"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "stopped-flute 4", "open-flute 8", "principal 8"],
        not: ["16", "mixture", "reed", "tierce-sounding"],
      },
      { role: "bass", keyboard: "pedal", oneOf: [PEDAL_16, PEDAL_8], not: ["chorus-reed"] },
    ],
    note: "A common colour of the Hamburg and Lübeck organs; read in no source.",
  }),
  recipe("chorale-in-tenor.north-german.1", {
    sources: ["scheidt-1624", "buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "tenor",
        keyboard: "positive",
        oneOf: [["trumpet 8", "cromorne 8", "dulcian 8", "regal 8"]],
        may: ["stopped-flute 8", "principal 4", "open-flute 4"],
        not: ["16", "mixture"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "principal 8", "principal 4"],
        not: ["16", "mixture", "reed"],
      },
      { role: "bass", keyboard: "pedal", oneOf: [PEDAL_16, PEDAL_8] },
    ],
    note: "The tenor sounds at 8, without 16; the treble above it may be brighter (8 4).",
  }),
  recipe("chorale-in-pedal.north-german.1", {
    sources: ["scheidt-1624", "buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "cantus-firmus",
        place: "tenor",
        keyboard: "pedal",
        must: ["trumpet 8"],
        may: ["principal 8", "principal 4", "trumpet 4"],
        not: ["16", "32"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["principal 8"],
        may: ["principal 4", "stopped-flute 8", "open-flute 4", "principal 2"],
        not: ["reed", "mixture"],
      },
    ],
    note: "Chant in tenor position: 8, never 16; the bass lies in the left hand.",
  }),
  recipe("chorale-in-pedal.north-german.2", {
    way: "chant as the lowest voice, organo pleno",
    sources: ["scheidt-1624", "buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "cantus-firmus",
        place: "bass",
        keyboard: "pedal",
        must: ["trumpet 16", "trumpet 8", "principal 16", "principal 8"],
        may: ["principal 4", "trumpet 4", "cornett 2", "mixture", "trumpet 32", "stopped-flute 16"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2", "mixture"],
        may: ["principal 16", "quintadena 16", "twelfth 2 2/3", "cymbal", "sesquialtera"],
        not: ["celeste"],
      },
    ],
    note: "Here 16 belongs under the chant.",
  }),
  recipe("chorale-alto-in-pedal.north-german.1", {
    sources: ["scheidt-1624"],
    evidence: "memory",
    parts: [
      {
        role: "cantus-firmus",
        place: "alto",
        keyboard: "pedal",
        oneOf: [["principal 4", "open-flute 4", "stopped-flute 4", "trumpet 4", "cornett 4", "schalmei 4"]],
        not: ["16", "32", "8", "mixture"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["principal 4"],
        not: ["principal 8", "16", "mixture", "reed"],
      },
    ],
    note: "4 in the pedal against 8 in the hands; a Cornett 2 an octave lower is the sharp choice.",
  }),
  recipe("chorale-fantasia.north-german.1", {
    way: "solo reed or Sesquialtera",
    sources: ["buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "positive",
        oneOf: [["trumpet 8", "cornett 8", "cromorne 8", "sesquialtera", "cornet"]],
        may: ["principal 8", "principal 4", "stopped-flute 8", "open-flute 4", "open-flute 2", "nasard 2 2/3"],
        not: ["celeste"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["principal 8", "principal 4"],
        may: ["stopped-flute 8", "open-flute 4"],
        not: ["mixture", "reed", "16"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8"],
        may: ["trumpet 16", "trumpet 8", "trumpet 4", "cornett 2", "principal 4", "stopped-flute 16"],
      },
      {
        role: "echo",
        keyboard: "any-other",
        optional: true,
        oneOf: [["stopped-flute 8", "principal 8"]],
        may: ["principal 8", "principal 4", "open-flute 4", "sesquialtera"],
        note: "echo of the solo on a third keyboard in the same kind of colour, fewer stops",
      },
    ],
    note:
      "Solo reed or Sesquialtera with 8 4 (2 2/3 2); the middle on principals 8 4 of another Werk, not on flutes " +
      "only; a strong pedal.",
  }),
  recipe("chorale-fantasia.north-german.2", {
    way: "Trommete, Zink, Nasat, flutes 4 and 2",
    sources: ["kortkamp-chronicle"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "any-other",
        must: ["trumpet 8", "cornett 8", "nasard 2 2/3", "open-flute 4", "open-flute 2"],
        not: ["celeste", "mixture", "cymbal"],
      },
      {
        role: "accompaniment",
        keyboard: "positive",
        must: ["principal 8", "principal 4"],
        not: ["mixture", "reed", "16"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "trumpet 16", "trumpet 8", "cornett 2"],
        may: ["principal 8", "trumpet 4"],
      },
      {
        role: "echo",
        keyboard: "any-other",
        optional: true,
        oneOf: [["stopped-flute 8", "principal 8"]],
        may: ["principal 8", "principal 4", "open-flute 4", "sesquialtera"],
        note: "echo of the solo on a third keyboard in the same kind of colour, fewer stops",
      },
    ],
    note:
      "Weckmann at his trial: solo on a manual of its own, 8 and 4 of the Rückpositiv in the middle, a strong pedal " +
      "with a 2 foot reed.",
  }),
  recipe("chorale-trio.north-german.1", {
    sources: ["buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "voice",
        place: "treble",
        keyboard: "positive",
        oneOf: [["principal 8", "stopped-flute 8", "cromorne 8"]],
        may: ["principal 4", "open-flute 4", "nasard 2 2/3", "sesquialtera"],
        not: ["16", "mixture"],
      },
      {
        role: "voice",
        place: "tenor",
        keyboard: "main",
        oneOf: [PEDAL_8],
        may: ["open-flute 4", "principal 4", "stopped-flute 4"],
        not: ["16", "mixture"],
      },
      { role: "bass", keyboard: "pedal", oneOf: [PEDAL_16, PEDAL_8], not: ["mixture", "chorus-reed", "32"] },
    ],
    note:
      "Two colours of equal weight (principal against flutes with a fifth, reed against Sesquialtera); no 16 in the " +
      "hands.",
  }),
  recipe("chorale-prelude-plain.north-german.1", {
    sources: ["buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8"],
        may: ["principal 4", "stopped-flute 8", "open-flute 4"],
        not: ["mixture", "reed", "tierce-sounding"],
      },
      { role: "bass", keyboard: "pedal", optional: true, oneOf: [PEDAL_16, PEDAL_8], not: ["chorus-reed"] },
    ],
  }),
  recipe("chorale-prelude-plain.north-german.2", {
    way: "quiet",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "stopped-flute 4", "string 8", "open-flute 8"],
        not: ["mixture", "reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        optional: true,
        must: ["stopped-flute 16"],
        oneOf: [PEDAL_8],
        not: ["chorus-reed"],
      },
    ],
  }),
  recipe("ornamented-chorale.north-german.1", {
    sources: ["buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "positive",
        must: ["sesquialtera"],
        oneOf: [["principal 8", "stopped-flute 8"]],
        may: ["principal 4", "open-flute 4", "stopped-flute 8", "principal 8", "principal 2"],
        not: ["mixture", "celeste"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "open-flute 8", "principal 8", "string 8"],
        not: ["16", "mixture", "reed", "tierce-sounding"],
      },
      { role: "bass", keyboard: "pedal", oneOf: [PEDAL_16, PEDAL_8], not: ["chorus-reed"] },
    ],
    tremulant: "may",
  }),
  recipe("ornamented-chorale.north-german.2", {
    way: "single voice stop",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      { role: "melody", place: "treble", keyboard: "positive", must: ["principal 8"], not: ["mixture"] },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["open-flute 8", "string 8"],
        not: ["16", "4", "mixture", "reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "string 8"]],
        not: ["chorus-reed"],
      },
    ],
    tremulant: "may",
  }),
  recipe("cornet-solo.north-german.1", {
    sources: ["buxtehude-practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "positive",
        oneOf: [
          ["cornet", "tierce 1 3/5", "sesquialtera"],
          ["stopped-flute 8", "principal 8"],
          ["principal 4", "open-flute 4", "stopped-flute 4"],
        ],
        may: ["principal 2", "open-flute 2"],
        not: ["mixture", "celeste"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "stopped-flute 4", "quintadena 8"],
        not: ["16", "mixture", "reed", "tierce-sounding"],
      },
      { role: "bass", keyboard: "pedal", oneOf: [PEDAL_16, PEDAL_8], not: ["chorus-reed"] },
    ],
    note: "A Cornet of three ranks (from middle C) needs 8 and 4 under it.",
  }),
  recipe("nasat-solo.north-german.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "positive",
        must: ["stopped-flute 8", "nasard 2 2/3"],
        may: ["open-flute 4", "stopped-flute 4", "principal 4", "open-flute 2"],
        not: ["tierce-sounding", "mixture", "reed"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["open-flute 8", "string 8", "quintadena 8"],
        not: ["16", "mixture", "reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "principal 8"]],
        not: ["chorus-reed"],
      },
    ],
    tremulant: "may",
    note: "A 4 ft flute between makes it rounder.",
  }),
  recipe("tierce-solo.north-german.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "positive",
        must: ["stopped-flute 8", "tierce 1 3/5"],
        oneOf: [
          ["open-flute 4", "stopped-flute 4", "principal 4"],
          ["nasard 2 2/3", "twelfth 2 2/3", "sesquialtera"],
        ],
        may: [
          "open-flute 4",
          "stopped-flute 4",
          "principal 4",
          "principal 2",
          "open-flute 2",
          "sesquialtera",
          "tertian",
        ],
        not: ["mixture", "reed"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        may: ["open-flute 8", "string 8", "open-flute 4"],
        not: ["16", "mixture", "reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "principal 8"]],
        not: ["chorus-reed"],
      },
    ],
    note: "The broken-up Cornet: a tierce wants its fifth under it.",
  }),
  recipe("bicinium.north-german.1", {
    sources: ["scheidt-1624", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "voice",
        place: "treble",
        keyboard: "positive",
        oneOf: [["cromorne 8", "principal 8", "sesquialtera", "cornet"]],
        may: ["principal 4", "open-flute 4", "stopped-flute 8"],
        not: ["mixture"],
      },
      {
        role: "voice",
        place: "bass",
        keyboard: "main",
        oneOf: [["dulcian 16", "trumpet 8", "principal 8", "stopped-flute 8"]],
        may: ["principal 4", "open-flute 4", "trumpet 8", "stopped-flute 8"],
        not: ["mixture"],
      },
    ],
    note: "Two colours; the lower voice may stand on a 16 reed played an octave higher, or lie at 8.",
  }),
  recipe("echo-fantasia.north-german.1", {
    sources: ["scheidt-1624", "common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4"],
        may: ["principal 2", "stopped-flute 8", "mixture"],
        not: ["celeste"],
      },
      {
        role: "echo",
        keyboard: "positive",
        oneOf: [["stopped-flute 8", "principal 8"]],
        may: ["principal 4", "principal 8", "principal 2"],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        optional: true,
        oneOf: [PEDAL_16, PEDAL_8],
        may: ["principal 16", "principal 8"],
      },
    ],
    note: "Same kind of sound, fewer or farther stops for the answer.",
  }),
  recipe("partita-variation.north-german.1", {
    way: "one stopped flute",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        must: ["stopped-flute 8"],
        not: ["4", "2", "mutation", "mixture", "reed", "16"],
      },
    ],
    note: "One variation of a set: the next takes another colour.",
  }),
  recipe("partita-variation.north-german.2", {
    way: "flutes 8 and 4",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        oneOf: [
          ["stopped-flute 8", "open-flute 8"],
          ["open-flute 4", "stopped-flute 4"],
        ],
        not: ["principal", "mutation", "mixture", "reed", "16"],
      },
    ],
    note: "One variation of a set: the next takes another colour.",
  }),
  recipe("partita-variation.north-german.3", {
    way: "flutes 8 and 2",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        must: ["open-flute 2"],
        oneOf: [["stopped-flute 8", "open-flute 8"]],
        not: ["4", "mutation", "mixture", "reed", "16"],
      },
    ],
    note: "One variation of a set: the next takes another colour.",
  }),
  recipe("partita-variation.north-german.4", {
    way: "flutes 8 and 2 2/3",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        must: ["nasard 2 2/3"],
        oneOf: [["stopped-flute 8", "open-flute 8"]],
        not: ["tierce-sounding", "mixture", "reed", "16"],
      },
    ],
    note: "One variation of a set: the next takes another colour.",
  }),
  recipe("partita-variation.north-german.5", {
    way: "principals 8, 4 and 2",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        must: ["principal 8", "principal 4", "principal 2"],
        may: ["twelfth 2 2/3"],
        not: ["mixture", "reed", "16"],
      },
    ],
    note: "One variation of a set: the next takes another colour.",
  }),
  recipe("partita-variation.north-german.6", {
    way: "a reed with a flute",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        oneOf: [
          ["cromorne 8", "dulcian 8", "regal 8", "schalmei 8", "voix-humaine 8"],
          ["stopped-flute 8", "open-flute 8", "open-flute 4", "stopped-flute 4"],
        ],
        not: ["mixture", "chorus-reed"],
      },
    ],
    note: "One variation of a set: the next takes another colour.",
  }),
  recipe("partita-variation.north-german.7", {
    way: "full chorus for the last",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2", "mixture"],
        may: ["twelfth 2 2/3", "cymbal", "principal 16", "quintadena 16", "stopped-flute 16", "sesquialtera"],
        not: ["celeste", "short-reed"],
      },
    ],
    note: "One variation of a set: the next takes another colour.",
  }),
];
