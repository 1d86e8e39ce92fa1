import type { Prescription } from "../prescription.ts";
import { PEDAL_8, PEDAL_16 } from "./stop-lists.ts";
import { type PartText, recipe } from "./wanted.ts";

const softBass: PartText = {
  role: "bass",
  keyboard: "pedal",
  must: ["stopped-flute 16"],
  oneOf: [PEDAL_8],
  not: ["reed", "mixture", "32"],
};

const step = (number: number, dynamic: "pp" | "p" | "mf" | "f" | "ff", parts: readonly PartText[]): Prescription =>
  recipe(`sustained.neutral.${number}`, {
    dynamic,
    sources: ["common practice"],
    evidence: "common practice",
    parts,
    ...(number > 2 && { couplersMay: ["positive/main", "swell/main", "main/pedal"] }),
  });

/** The ladder of dynamics outside the German romantic school: the same steps, softest first. Common practice. */
export const NEUTRAL_SUSTAINED_PRESCRIPTIONS: readonly Prescription[] = [
  step(1, "pp", [
    {
      role: "plenum",
      keyboard: "any-other",
      oneOf: [["stopped-flute 8", "open-flute 8", "soft-string 8", "string 8"]],
      not: ["4", "2", "16", "principal 8", "mutation", "high-compound", "reed"],
    },
    softBass,
  ]),
  step(2, "p", [
    {
      role: "plenum",
      keyboard: "any-other",
      oneOf: [
        ["stopped-flute 8", "open-flute 8"],
        ["soft-string 8", "string 8", "open-flute 4", "stopped-flute 4"],
      ],
      not: ["2", "16", "mutation", "high-compound", "reed"],
    },
    softBass,
  ]),
  step(3, "mf", [
    {
      role: "plenum",
      keyboard: "main",
      must: ["principal 8"],
      may: ["stopped-flute 8", "open-flute 8", "string 8", "principal 4", "open-flute 4"],
      not: ["2", "high-compound", "reed", "celeste"],
    },
    { role: "bass", keyboard: "pedal", oneOf: [PEDAL_16, PEDAL_8], may: ["principal 8"], not: ["reed", "mixture"] },
  ]),
  step(4, "f", [
    {
      role: "plenum",
      keyboard: "main",
      must: ["principal 8", "principal 4", "principal 2"],
      may: ["stopped-flute 8", "twelfth 2 2/3", "mixture", "principal 16", "stopped-flute 16"],
      not: ["celeste", "chorus-reed"],
    },
    {
      role: "bass",
      keyboard: "pedal",
      must: ["principal 16", "principal 8"],
      may: ["stopped-flute 16", "principal 4"],
      not: ["celeste"],
    },
  ]),
  step(5, "ff", [
    {
      role: "plenum",
      keyboard: "main",
      must: ["principal 8", "principal 4", "principal 2", "mixture"],
      may: ["twelfth 2 2/3", "principal 16", "stopped-flute 16", "cymbal", "trumpet 8", "trumpet 4", "trumpet 16"],
      not: ["celeste", "short-reed"],
    },
    {
      role: "bass",
      keyboard: "pedal",
      must: ["principal 16", "principal 8", "trumpet 16"],
      may: ["stopped-flute 16", "principal 4", "mixture", "trumpet 8", "principal 32", "stopped-flute 32"],
    },
  ]),
];
