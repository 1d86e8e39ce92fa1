import type { Prescription } from "../prescription.ts";
import { recipe, type WantedText } from "./wanted.ts";

/** The rows of the ripieno above the Quintadecima: a soft colour keeps them all out. */
const HIGH_ROWS: readonly WantedText[] = ["1 1/3", "1", "2/3", "1/2", "1/3", "1/4"];

/**
 * Recipes of the Italian school: one keyboard, a pull-down pedal or contrabassi of 16 that go with the ripieno,
 * single ranks in place of mixtures. The principal of 8 is taken as base; organs of 16 or 12 foot count from theirs.
 */
export const ITALIAN_RENAISSANCE_PRESCRIPTIONS: readonly Prescription[] = [
  recipe("ripieno.italian-renaissance.1", {
    sources: ["antegnati-1608"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: [
          "principal 8",
          "principal 4",
          "principal 2",
          "larigot 1 1/3",
          "principal 1",
          "principal 2/3",
          "principal 1/2",
          "principal 1/3",
        ],
        may: ["principal 16", "mixture"],
        not: ["flute", "nasard", "tierce-sounding", "celeste", "reed"],
      },
      { role: "bass", keyboard: "pedal", optional: true, may: ["principal 16", "stopped-flute 16"], not: ["reed"] },
    ],
    couplers: ["main/pedal"],
    note:
      "All ranks of the ripieno that the organ has, no flutes. For intonations, toccatas, end of Mass (Deo " +
      "gratias). A modern organ: mixture without tierce for the high ranks.",
  }),
  recipe("mezzo-ripieno.italian-renaissance.1", {
    sources: ["antegnati-1608"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "principal 4", "principal 1/2", "principal 1/3", "open-flute 4"],
        not: ["principal 2", "larigot", "principal 1", "reed", "celeste"],
      },
    ],
    couplers: ["main/pedal"],
    note: "Nearest elsewhere: principals 8 and 4, flute 4, the highest mixture.",
  }),
  recipe("canzona.italian-renaissance.1", {
    sources: ["antegnati-1608"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 4", "open-flute 4"],
        may: ["principal 8"],
        not: ["2", ...HIGH_ROWS, "high-compound", "reed", "celeste"],
      },
    ],
    note: "French canzonas and quick diminutions; at 4 pitch without the Principale, which may join.",
  }),
  recipe("canzona.italian-renaissance.2", {
    sources: ["antegnati-1608", "diruta-1609"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "open-flute 4"],
        may: ["open-flute 2", "open-flute 2 2/3", "nasard 2 2/3"],
        not: [...HIGH_ROWS, "high-compound", "reed", "celeste", "larigot"],
      },
    ],
    note: "Principale with a flute at 4 (or the flutes at the twelfth or fifteenth) for diminutions and dialogue.",
  }),
  recipe("canzona.italian-renaissance.3", {
    way: "flute at the twelfth or fifteenth",
    sources: ["antegnati-1608"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8"],
        oneOf: [["open-flute 2", "open-flute 2 2/3", "nasard 2 2/3"]],
        not: [...HIGH_ROWS, "4", "principal 2", "high-compound", "reed", "celeste"],
      },
    ],
    note: "A higher flute in place of the Flauto in ottava, for diminutions.",
  }),
  recipe("canzona-adagio.italian-renaissance.1", {
    sources: ["antegnati-1608"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 4", "open-flute 4"],
        not: ["principal 8", "2", ...HIGH_ROWS, "high-compound", "reed"],
      },
    ],
    tremulant: "required",
    note: "The same without quick notes; with the tremulant no diminutions.",
  }),
  recipe("elevation.italian-renaissance.1", {
    sources: ["antegnati-1608", "banchieri-1605"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8"],
        not: ["4", "2", ...HIGH_ROWS, "mutation", "high-compound", "reed"],
      },
    ],
    tremulant: "welcome",
    note: "Principale alone, slow; tremulant where it is gentle.",
  }),
  recipe("elevation.italian-renaissance.2", {
    sources: ["diruta-1609", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "celeste 8"],
        not: ["4", "2", ...HIGH_ROWS, "mutation", "high-compound", "reed"],
      },
    ],
    note: "Principale with fiffaro, without tremulant.",
  }),
  recipe("concerto-cornetti.italian-renaissance.1", {
    sources: ["antegnati-1608"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 4", "larigot 1 1/3", "principal 1", "open-flute 4"],
        not: ["8", "2", "2/3", "1/2", "1/3", "1/4", "high-compound", "reed", "celeste"],
      },
    ],
    note: "Imitates cornetts; the fifth stands on 4, so sounds as a twelfth of it.",
  }),
  recipe("fiffaro.italian-renaissance.1", {
    sources: ["antegnati-1608"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8", "celeste 8"],
        not: ["4", "2", ...HIGH_ROWS, "mutation", "high-compound", "reed"],
      },
    ],
    note:
      "Slow and bound as can be; nothing else with it. The fiffaro is a treble stop; below it the Principale speaks " +
      "alone.",
  }),
  recipe("ricercar.italian-renaissance.1", {
    sources: ["diruta-1609", "common practice"],
    evidence: "memory",
    parts: [
      {
        role: "plenum",
        keyboard: "main",
        must: ["principal 8"],
        may: ["principal 4"],
        not: ["2", ...HIGH_ROWS, "mutation", "high-compound", "reed", "celeste"],
      },
      { role: "bass", keyboard: "pedal", optional: true, note: "pull-down of the manual" },
    ],
    couplersMay: ["main/pedal"],
  }),
  recipe("motets-accompaniment.italian-renaissance.1", {
    sources: ["antegnati-1608"],
    evidence: "memory",
    parts: [
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["principal 8"],
        may: ["open-flute 4", "principal 4"],
        not: ["2", ...HIGH_ROWS, "high-compound", "reed", "celeste"],
      },
    ],
    tremulant: "may",
    note: "Few voices: Principale alone; more voices: with Ottava or flute; full choirs: more of the ripieno.",
  }),
  recipe("motets-accompaniment.italian-renaissance.2", {
    way: "with the flute in the octave",
    sources: ["antegnati-1608"],
    evidence: "memory",
    parts: [
      {
        role: "accompaniment",
        keyboard: "main",
        must: ["principal 8", "open-flute 4"],
        not: ["principal 4", "2", ...HIGH_ROWS, "high-compound", "reed", "celeste"],
      },
    ],
    note: "Rounder than with the Ottava, for a few voices.",
  }),
];
