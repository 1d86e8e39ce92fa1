import type { Prescription } from "../prescription.ts";
import { recipe } from "./wanted.ts";

/**
 * Recipes of the English 18th century: no pedal, no manual 16, no couplers while playing, a short Swell in its box, a
 * rare tremulant.
 */
export const ENGLISH_18C_PRESCRIPTIONS: readonly Prescription[] = [
  recipe("diapasons.english-18c.1", {
    sources: ["stanley-1748", "blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8 every", "stopped-flute 8"],
        not: ["4", "2", "mutation", "high-compound", "reed"],
      },
    ],
    note: "Open and stopped together, slow; the stopped gives the open its speech.",
  }),
  recipe("middling-chorus.english-18c.1", {
    sources: ["marsh-1791"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "stopped-flute 8", "principal 4", "twelfth 2 2/3", "principal 2"],
        not: ["cornet", "tierce", "reed", "mixture"],
      },
    ],
    note: "No Twelfth without Fifteenth.",
  }),
  recipe("middling-chorus.english-18c.2", {
    way: "lighter",
    sources: ["blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "stopped-flute 8", "principal 4"],
        may: ["principal 2"],
        not: ["cornet", "reed", "mixture", "twelfth"],
      },
    ],
  }),
  recipe("full-organ.english-18c.1", {
    sources: ["stanley-1748", "marsh-1791", "blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8 every", "stopped-flute 8", "principal 4", "twelfth 2 2/3", "principal 2", "sesquialtera"],
        may: ["tierce 1 3/5", "mixture", "trumpet 8", "trumpet 4", "principal 4 every"],
        not: ["cornet", "celeste", "voix-humaine", "cromorne", "flute 4"],
      },
    ],
    couplersMay: ["choir/main"],
    note: "With or without the Trumpet; introductions slow, then the fugue on it. Tierce mixture is the rule.",
  }),
  recipe("full-organ.english-18c.2", {
    way: "with the Trumpet",
    sources: ["marsh-1791", "blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: [
          "principal 8 every",
          "stopped-flute 8",
          "principal 4",
          "twelfth 2 2/3",
          "principal 2",
          "sesquialtera",
          "trumpet 8",
        ],
        may: ["tierce 1 3/5", "mixture"],
        not: ["cornet", "celeste", "voix-humaine", "cromorne", "flute 4"],
      },
    ],
    couplersMay: ["choir/main"],
    note: "The Trumpet on the full chorus.",
  }),
  recipe("full-organ.english-18c.3", {
    way: "with Trumpet and Clarion",
    sources: ["marsh-1791", "blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: [
          "principal 8 every",
          "stopped-flute 8",
          "principal 4",
          "twelfth 2 2/3",
          "principal 2",
          "sesquialtera",
          "trumpet 8",
          "trumpet 4",
        ],
        may: ["tierce 1 3/5", "mixture"],
        not: ["cornet", "celeste", "voix-humaine", "cromorne", "flute 4"],
      },
    ],
    couplersMay: ["choir/main"],
    note: "Where a Clarion stands beside it.",
  }),
  recipe("cornet-voluntary.english-18c.1", {
    sources: ["stanley-1748", "blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        must: ["cornet"],
        may: ["principal 8", "stopped-flute 8"],
        not: ["trumpet", "sesquialtera", "mixture", "twelfth"],
      },
      {
        role: "accompaniment",
        keyboard: "choir",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "stopped-flute 4", "principal 4"],
        not: ["high-compound", "reed", "16"],
      },
      {
        role: "echo",
        keyboard: "swell",
        optional: true,
        must: ["cornet"],
        may: ["principal 8", "stopped-flute 8"],
        note: "box shut or half",
      },
    ],
    note:
      "Quick; the left hand on the Choir's Stopped Diapason (with Flute or Principal), or on the bass of the Great " +
      "diapasons where the Cornet begins at middle C.",
  }),
  recipe("trumpet-voluntary.english-18c.1", {
    sources: ["stanley-1748"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        must: ["trumpet 8"],
        may: ["principal 8", "stopped-flute 8"],
        not: ["cornet", "sesquialtera", "twelfth", "mixture"],
      },
      {
        role: "accompaniment",
        keyboard: "choir",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "stopped-flute 4", "principal 4"],
        not: ["high-compound", "reed", "16"],
      },
      {
        role: "echo",
        keyboard: "swell",
        optional: true,
        must: ["trumpet 8"],
        may: ["oboe 8", "principal 8", "stopped-flute 8"],
        note: "box shut or half",
      },
    ],
    note: "Diapasons with the Trumpet for roundness; one or two voices in the right hand.",
  }),
  recipe("hautboy-solo.english-18c.1", {
    sources: ["marsh-1791", "blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "swell",
        must: ["oboe 8", "stopped-flute 8"],
        may: ["principal 8"],
        not: ["cornet", "voix-humaine", "trumpet"],
      },
      {
        role: "accompaniment",
        keyboard: "choir",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "stopped-flute 4"],
        not: ["high-compound", "reed", "16"],
      },
    ],
  }),
  recipe("vox-humana-solo.english-18c.1", {
    sources: ["stanley-1748", "blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "swell",
        must: ["voix-humaine 8", "stopped-flute 8"],
        not: ["high-compound", "trumpet", "oboe", "cromorne"],
      },
      {
        role: "accompaniment",
        keyboard: "choir",
        must: ["stopped-flute 8"],
        not: ["high-compound", "reed", "16"],
      },
    ],
    note: "Slow. Stands on Choir or Swell; the accompaniment on the other. A tremulant only where the organ has one.",
  }),
  recipe("cremona-solo.english-18c.1", {
    sources: ["blewitt-1795", "marsh-1791"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "choir",
        must: ["cromorne 8", "stopped-flute 8"],
        not: ["high-compound", "trumpet", "oboe", "voix-humaine"],
      },
      {
        role: "accompaniment",
        keyboard: "swell",
        must: ["stopped-flute 8"],
        may: ["principal 8"],
        not: ["high-compound", "reed", "16"],
      },
    ],
    note:
      "Accompanied on the Swell diapasons, or on the Great Stopped Diapason where the Swell is too short for the " +
      "left hand.",
  }),
  recipe("cremona-solo.english-18c.2", {
    way: "short Swell",
    sources: ["blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "choir",
        must: ["cromorne 8", "stopped-flute 8"],
        not: ["high-compound", "trumpet", "oboe", "voix-humaine"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        not: ["high-compound", "reed", "16"],
      },
    ],
  }),
  recipe("swell-echo.english-18c.1", {
    sources: ["stanley-1748", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        oneOf: [["cornet", "trumpet 8"]],
        may: ["principal 8", "stopped-flute 8"],
        not: ["mixture", "sesquialtera"],
      },
      {
        role: "echo",
        place: "treble",
        keyboard: "swell",
        oneOf: [["cornet", "trumpet 8", "oboe 8"]],
        may: ["principal 8", "stopped-flute 8", "principal 4"],
        note: "the same colour in the box",
      },
      {
        role: "accompaniment",
        keyboard: "choir",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "principal 4"],
        not: ["reed", "sesquialtera"],
      },
    ],
  }),
  recipe("flute-solo.english-18c.1", {
    sources: ["stanley-1748", "blewitt-1795"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "choir",
        must: ["stopped-flute 4"],
        may: ["stopped-flute 8"],
        not: ["principal", "reed", "mixture"],
      },
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["stopped-flute 8"],
        not: ["high-compound", "reed", "16"],
      },
    ],
    note: "The Flute at 4, alone (in octaves above the notes) or with the Stopped Diapason, over a Stopped Diapason.",
  }),
  recipe("corno-duet.english-18c.1", {
    sources: ["stanley-1748", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "melody",
        place: "treble",
        keyboard: "main",
        oneOf: [["horn 8", "trumpet 8", "principal 8"]],
        may: ["stopped-flute 8", "principal 8"],
        not: ["cornet", "mixture"],
      },
      {
        role: "accompaniment",
        keyboard: "choir",
        must: ["stopped-flute 8"],
        may: ["open-flute 4", "stopped-flute 4", "principal 4"],
        not: ["high-compound", "reed", "16"],
      },
      {
        role: "echo",
        keyboard: "swell",
        optional: true,
        oneOf: [["horn 8", "trumpet 8", "oboe 8", "principal 8"]],
        may: ["stopped-flute 8", "principal 8"],
        note: "box shut or half",
      },
    ],
    note: "Two horns in one hand: a Horn, or the Trumpet softened by diapasons; in the box for the distance.",
  }),
];
