import type { Prescription } from "../prescription.ts";
import { PEDAL_8, PEDAL_16 } from "./stop-lists.ts";
import { recipe } from "./wanted.ts";

/**
 * Recipes of the English 19th and 20th centuries: Swell to Great as a matter of course, the pedal coupled to the
 * manual played.
 */
export const ENGLISH_CATHEDRAL_PRESCRIPTIONS: readonly Prescription[] = [
  recipe("great-diapasons.english-cathedral.1", {
    sources: ["hopkins-1855", "stainer-1877"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8 every"],
        may: ["stopped-flute 8", "open-flute 8", "principal 16", "principal 4"],
        not: ["mixture", "reed", "string"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16"],
        may: ["stopped-flute 16", "principal 8", "open-flute 8"],
        not: ["reed"],
      },
    ],
    couplers: ["main/pedal"],
    couplersMay: ["swell/main"],
  }),
  recipe("full-swell.english-cathedral.1", {
    sources: ["stainer-1877", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "swell",
        onlyThere: true,
        must: ["principal 8", "principal 4", "principal 2", "mixture", "trumpet 8", "trumpet 4"],
        oneOf: [["trumpet 16", "bassoon 16"]],
        may: ["oboe 8", "stopped-flute 16", "stopped-flute 8", "string 8"],
        not: ["celeste", "voix-humaine"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        oneOf: [PEDAL_16, PEDAL_8],
        may: ["principal 16", "trumpet 16", "principal 8"],
      },
    ],
    couplers: ["swell/pedal"],
    couplersMay: ["swell/main", "swell/swell-4", "swell/swell-16"],
    note:
      "Box closed to begin with: a registration in itself (a distant full organ), opened for the swell. Reeds 16 8 " +
      "4 with mixture; coupled to Great foundations for a big verse.",
  }),
  recipe("soft-eights.english-cathedral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "swell",
        oneOf: [["soft-string 8", "stopped-flute 8", "string 8"]],
        may: ["soft-string 8", "stopped-flute 8", "open-flute 8", "open-flute 4"],
        not: ["reed", "mixture", "2"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        may: ["stopped-flute 8", "open-flute 8"],
        not: ["reed"],
      },
    ],
    couplers: ["swell/pedal"],
    couplersMay: ["swell/choir"],
  }),
  recipe("swell-strings.english-cathedral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "plenum",
        keyboard: "swell",
        onlyThere: true,
        must: ["celeste 8"],
        oneOf: [["string 8", "soft-string 8"]],
        may: ["stopped-flute 8", "string 8", "soft-string 8"],
        not: ["mixture", "chorus-reed", "2"],
      },
      { role: "bass", keyboard: "pedal", must: ["stopped-flute 16"], may: ["open-flute 8"], not: ["reed"] },
    ],
    tremulant: "may",
    couplers: ["swell/pedal"],
    couplersMay: ["swell/choir", "swell/swell-16", "swell/swell-4"],
  }),
  recipe("psalm-accompaniment.english-cathedral.1", {
    way: "on the Swell",
    sources: ["stainer-1877", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "accompaniment",
        keyboard: "swell",
        must: ["principal 8", "stopped-flute 8"],
        may: ["principal 4", "open-flute 4", "oboe 8", "string 8", "principal 2"],
        not: ["tuba", "celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        optional: true,
        must: ["stopped-flute 16"],
        may: ["open-flute 8", "principal 8", "principal 16"],
        not: ["reed"],
      },
    ],
    couplers: ["swell/pedal"],
    couplersMay: ["swell/main"],
    note: "Changed verse by verse by word; pedal left out in some verses; 16 may vanish.",
  }),
  recipe("psalm-accompaniment.english-cathedral.2", {
    way: "on the Choir",
    sources: ["stainer-1877", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "accompaniment",
        keyboard: "choir",
        must: ["stopped-flute 8"],
        may: ["soft-string 8", "open-flute 4", "clarinet 8"],
        not: ["mixture", "chorus-reed"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        optional: true,
        must: ["stopped-flute 16"],
        may: ["open-flute 8", "principal 8", "principal 16"],
        not: ["reed"],
      },
    ],
    couplersMay: ["choir/pedal", "swell/choir"],
    note: "Changed verse by verse by word; pedal left out in some verses; 16 may vanish.",
  }),
  recipe("solo-tuba.english-cathedral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      { role: "melody", place: "treble", keyboard: "solo", must: ["tuba 8"] },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["principal 8 every", "principal 4", "principal 2"],
        may: ["principal 16", "mixture", "trumpet 8", "trumpet 4", "stopped-flute 8"],
        not: ["tuba"],
        note: "with full Swell coupled",
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8"],
        may: ["trumpet 16", "stopped-flute 16"],
      },
    ],
    couplers: ["swell/main", "main/pedal"],
  }),
  recipe("solo-clarinet.english-cathedral.1", {
    sources: ["common practice"],
    evidence: "common practice",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "choir",
        must: ["clarinet 8"],
        may: ["stopped-flute 8", "open-flute 4"],
        not: ["mixture"],
      },
      {
        role: "accompaniment",
        keyboard: "swell",
        oneOf: [["stopped-flute 8", "soft-string 8", "string 8"]],
        may: ["string 8", "stopped-flute 8", "open-flute 8", "principal 8"],
        not: ["mixture", "reed", "2"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["stopped-flute 16"],
        may: ["open-flute 8", "stopped-flute 8"],
        not: ["reed"],
      },
    ],
    tremulant: "may",
    couplers: ["swell/pedal"],
  }),
  recipe("full-organ.english-cathedral.1", {
    sources: ["stainer-1877", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8 every", "principal 4", "twelfth 2 2/3", "principal 2", "mixture", "trumpet 8"],
        may: ["principal 16", "principal 8", "trumpet 16", "trumpet 4", "open-flute 8"],
        not: ["celeste", "soft-string"],
      },
      {
        role: "plenum",
        keyboard: "swell",
        must: ["principal 8", "principal 4", "principal 2", "mixture", "trumpet 8"],
        may: ["trumpet 16", "trumpet 4", "oboe 8"],
        not: ["celeste"],
      },
      {
        role: "bass",
        keyboard: "pedal",
        must: ["principal 16", "principal 8", "trumpet 16"],
        may: ["stopped-flute 16", "principal 32", "stopped-flute 32", "trumpet 32", "trumpet 8", "principal 4"],
      },
    ],
    couplers: ["swell/main", "main/pedal", "swell/pedal"],
    couplersMay: ["choir/main"],
  }),
];
