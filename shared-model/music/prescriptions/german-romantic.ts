import type { Prescription } from "../prescription.ts";
import { recipe } from "./wanted.ts";

/**
 * Recipes of the German romantic school: the dynamic sets the stops, keyboards and pedal are coupled from mf up.
 */
export const GERMAN_ROMANTIC_PRESCRIPTIONS: readonly Prescription[] = [
  recipe("sustained.german-romantic.1", {
    way: "any soft 8",
    dynamic: "pp",
    sources: ["mendelssohn-1845"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "echo",
        oneOf: [["soft-string 8", "stopped-flute 8", "string 8", "open-flute 8"]],
        not: ["4", "2", "mutation", "mixture", "reed", "principal 8", "16"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "string 8"]],
        may: ["principal 8"],
        not: ["reed", "string 16"],
      },
    ],
    note: "One soft 8, two at most; the weakest manual.",
  }),
  recipe("sustained.german-romantic.2", {
    way: "a string-toned 8",
    dynamic: "pp",
    sources: ["rheinberger-preface"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        must: ["soft-string 8"],
        not: ["4", "2", "mutation", "mixture", "reed", "principal 8", "16", "flute"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8"]],
        not: ["reed", "string 16"],
      },
    ],
    note: "Salicional, Dolce or Aeoline alone.",
  }),
  recipe("sustained.german-romantic.3", {
    dynamic: "p",
    sources: ["mendelssohn-1845", "rheinberger-preface"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        must: ["soft-string 8", "stopped-flute 8"],
        may: ["open-flute 8", "string 8", "open-flute 4", "stopped-flute 4"],
        not: ["2", "mutation", "mixture", "reed", "principal 8"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["open-flute 8", "string 8", "stopped-flute 8"]],
        may: ["string 16"],
        not: ["reed"],
      },
    ],
  }),
  recipe("sustained.german-romantic.4", {
    dynamic: "mf",
    sources: ["mendelssohn-1845", "rheinberger-preface"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "stopped-flute 8"],
        may: ["string 8", "open-flute 8", "open-flute 4", "principal 4", "stopped-flute 16"],
        not: ["2", "mixture", "reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16", "principal 8"],
        may: ["string 16", "open-flute 8", "string 8", "principal 16"],
        not: ["reed"],
      },
    ],
    couplersMay: ["positive/main", "main/pedal"],
  }),
  recipe("sustained.german-romantic.5", {
    dynamic: "f",
    sources: ["mendelssohn-1845", "rheinberger-preface"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 2"],
        may: [
          "principal 16",
          "stopped-flute 16",
          "string 8",
          "open-flute 8",
          "stopped-flute 8",
          "twelfth 2 2/3",
          "open-flute 4",
          "cornet",
          "mixture",
        ],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16", "principal 8"],
        oneOf: [["principal 16", "string 16", "open-flute 16"]],
        may: ["string 16", "quint 10 2/3", "principal 4", "open-flute 8"],
      },
    ],
    couplers: ["main/pedal"],
    couplersMay: ["positive/main", "swell/main"],
  }),
  recipe("sustained.german-romantic.6", {
    dynamic: "ff",
    sources: ["mendelssohn-1845", "rheinberger-preface"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 16", "principal 8", "principal 4", "twelfth 2 2/3", "principal 2", "mixture", "trumpet 8"],
        may: ["cornet", "trumpet 16", "trumpet 4", "string 8", "open-flute 8", "quint 5 1/3", "tierce 3 1/5"],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "stopped-flute 16", "principal 8", "trumpet 16"],
        may: ["principal 4", "principal 32", "stopped-flute 32", "trumpet 32", "trumpet 8", "quint 10 2/3"],
      },
    ],
    couplers: ["any-other/main", "main/pedal"],
  }),
  recipe("adagio.german-romantic.1", {
    sources: ["rheinberger-preface", "reger-practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "any-other",
        must: ["soft-string 8", "stopped-flute 8"],
        may: ["open-flute 8", "celeste 8", "string 8", "open-flute 4"],
        not: ["reed", "mixture", "2"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "string 8"]],
        not: ["reed"],
      },
    ],
    couplersMay: ["positive/main"],
    note: "Each phrase may step between keyboards of soft 8s.",
  }),
  recipe("melody-over-accompaniment.german-romantic.1", {
    way: "flute",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        must: ["open-flute 8"],
        may: ["stopped-flute 8"],
        not: ["mixture", "16"],
      },
      {
        role: "accompaniment",
        keyboard: "any-other",
        oneOf: [["soft-string 8", "stopped-flute 8"]],
        may: ["stopped-flute 8", "soft-string 8", "string 8", "celeste 8"],
        not: ["reed", "mixture", "2", "principal 8"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "string 8", "open-flute 8"]],
        not: ["reed"],
      },
    ],
  }),
  recipe("melody-over-accompaniment.german-romantic.2", {
    way: "principal",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        must: ["principal 8"],
        may: ["stopped-flute 8"],
        not: ["mixture", "16"],
      },
      {
        role: "accompaniment",
        keyboard: "any-other",
        oneOf: [["soft-string 8", "stopped-flute 8"]],
        may: ["stopped-flute 8", "soft-string 8", "string 8", "celeste 8"],
        not: ["reed", "mixture", "2", "principal 8"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "string 8", "open-flute 8"]],
        not: ["reed"],
      },
    ],
  }),
  recipe("melody-over-accompaniment.german-romantic.3", {
    way: "string",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        must: ["string 8"],
        may: ["stopped-flute 8"],
        not: ["mixture", "16"],
      },
      {
        role: "accompaniment",
        keyboard: "any-other",
        oneOf: [["soft-string 8", "stopped-flute 8"]],
        may: ["stopped-flute 8", "soft-string 8", "string 8", "celeste 8"],
        not: ["reed", "mixture", "2", "principal 8"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "string 8", "open-flute 8"]],
        not: ["reed"],
      },
    ],
  }),
  recipe("melody-over-accompaniment.german-romantic.4", {
    way: "clarinet",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        must: ["clarinet 8"],
        may: ["stopped-flute 8"],
        not: ["mixture", "16"],
      },
      {
        role: "accompaniment",
        keyboard: "any-other",
        oneOf: [["soft-string 8", "stopped-flute 8"]],
        may: ["stopped-flute 8", "soft-string 8", "string 8", "celeste 8"],
        not: ["reed", "mixture", "2", "principal 8"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "string 8", "open-flute 8"]],
        not: ["reed"],
      },
    ],
  }),
  recipe("melody-over-accompaniment.german-romantic.5", {
    way: "oboe",
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        must: ["oboe 8"],
        may: ["stopped-flute 8"],
        not: ["mixture", "16"],
      },
      {
        role: "accompaniment",
        keyboard: "any-other",
        oneOf: [["soft-string 8", "stopped-flute 8"]],
        may: ["stopped-flute 8", "soft-string 8", "string 8", "celeste 8"],
        not: ["reed", "mixture", "2", "principal 8"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "string 8", "open-flute 8"]],
        not: ["reed"],
      },
    ],
  }),
  recipe("vox-coelestis.german-romantic.1", {
    sources: ["reger-practice", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "swell",
        must: ["celeste 8", "soft-string 8"],
        may: ["stopped-flute 8", "open-flute 8"],
        not: ["reed", "mixture", "2"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        oneOf: [["stopped-flute 8", "open-flute 8", "string 8"]],
        not: ["reed"],
      },
    ],
  }),
  recipe("terraced-crescendo.german-romantic.1", {
    sources: ["walcker-1915", "common practice"],
    evidence: "read",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        may: ["principal", "flute", "string", "soft-string", "quintadena", "mutation", "high-compound", "reed"],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        may: ["principal", "flute", "string", "soft-string", "quint", "high-compound", "reed"],
      },
    ],
    couplers: ["any-other/main", "main/pedal"],
    note:
      "Order (first steps read, the rest custom): soft string 8; stopped 8; open flute 8, pedal 16 soft; gamba 8; " +
      "flute 4; principal 8; principal 4, pedal principal 16 and 8; 2 2/3 and 2; cornet; mixture; reeds 8, 4, 16; " +
      "pedal reeds 16, then 32; manual 16 flues late (in the list of 1915 the main Bourdon 16 comes at the end). " +
      "Couplers from the first steps on; celestes drop out when principals come.",
  }),
  recipe("full-romantic.german-romantic.1", {
    sources: ["reger-practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: [
          "principal 16",
          "principal 8",
          "string 8",
          "open-flute 8",
          "principal 4",
          "twelfth 2 2/3",
          "principal 2",
          "mixture",
          "trumpet 8",
        ],
        may: ["trumpet 16", "trumpet 4", "cornet", "cymbal", "quint 5 1/3"],
        not: ["celeste"],
      },
      {
        role: "plenum",
        keyboard: "swell",
        optional: true,
        must: ["principal 8", "principal 4", "mixture", "trumpet 8"],
        may: ["string 8", "oboe 8", "open-flute 4"],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "stopped-flute 16", "principal 8", "principal 4", "trumpet 16"],
        may: ["principal 32", "stopped-flute 32", "trumpet 32", "trumpet 8", "trumpet 4", "quint 10 2/3", "mixture"],
      },
    ],
    couplers: ["any-other/main", "main/pedal"],
    couplersMay: ["swell/main-4"],
  }),
  recipe("fugue-romantic.german-romantic.1", {
    sources: ["mendelssohn-1845", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4"],
        may: ["stopped-flute 8", "open-flute 8", "principal 2", "string 8", "stopped-flute 16"],
        not: ["celeste", "reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8"],
        may: ["stopped-flute 16", "string 16"],
      },
    ],
    couplers: ["main/pedal"],
    couplersMay: ["positive/main"],
    note: "Begins f or mf on principals and grows; no roller inside an entry.",
  }),
];
