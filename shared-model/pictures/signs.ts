import type { Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";
import { curve, filled, outlined, type Point, round, rule, type Shape } from "./shapes.ts";

/** A family as pictures tell it apart: by shape alone. */
export const SIGNS = [
  "principal",
  "flute",
  "stopped flute",
  "string",
  "celeste",
  "mutation",
  "compound",
  "reed",
] as const;
export type Sign = (typeof SIGNS)[number];

const COMPOUNDS: readonly Kind[] = ["mixture", "cymbal", "rauschpfeife", "sesquialtera", "tertian", "cornet"];
const has = (stop: Stop, kinds: readonly Kind[]): boolean => stop.kinds.some((kind) => kinds.includes(kind));

/** The sign of a stop. */
export function signOf(stop: Stop): Sign {
  if (has(stop, COMPOUNDS)) return "compound";
  if (has(stop, KIND_GROUPS.reed)) return "reed";
  if (has(stop, ["celeste"])) return "celeste";
  if (has(stop, ["string", "soft-string"])) return "string";
  if (has(stop, ["stopped-flute", "quintadena"])) return "stopped flute";
  if (has(stop, ["principal"])) return "principal";
  if (has(stop, KIND_GROUPS.mutation)) return "mutation";
  return "flute";
}

const WEIGHT = 1.6;
const CURVE = 12;
/** A wave from top to bottom, three wide. */
const wave = (x: number, y: number): readonly Point[] =>
  Array.from({ length: CURVE + 1 }, (_, at): Point => {
    const share = at / CURVE;
    return [x + 1.5 * Math.sin(2 * Math.PI * share), y - 6 + 12 * share];
  });

/** The sign drawn about a point, 12 high: a bar, a ring, a ring with a lid, two lines, two waves, a lozenge, three bars, a wedge. */
export function drawSign(sign: Sign, x: number, y: number): readonly Shape[] {
  switch (sign) {
    case "principal":
      return [
        filled([
          [x - 2.5, y - 6],
          [x + 2.5, y - 6],
          [x + 2.5, y + 6],
          [x - 2.5, y + 6],
        ]),
      ];
    case "flute":
      return [outlined(round(x, y, 4.5), WEIGHT)];
    case "stopped flute":
      return [outlined(round(x, y + 1.5, 4.2), WEIGHT), rule(x - 5, y - 5, x + 5, y - 5, WEIGHT)];
    case "string":
      return [rule(x - 2.2, y - 6, x - 2.2, y + 6, WEIGHT), rule(x + 2.2, y - 6, x + 2.2, y + 6, WEIGHT)];
    case "celeste":
      return [curve(wave(x - 2.5, y), WEIGHT), curve(wave(x + 2.5, y), WEIGHT)];
    case "mutation":
      return [
        outlined(
          [
            [x, y - 6],
            [x + 5, y],
            [x, y + 6],
            [x - 5, y],
          ],
          WEIGHT,
        ),
      ];
    case "compound":
      return [-4, 0, 4].map((up) => rule(x - 5, y + up, x + 5, y + up, 1.8));
    case "reed":
      return [
        filled([
          [x - 5, y - 5],
          [x + 5, y - 5],
          [x, y + 6],
        ]),
      ];
  }
}

/** A rung that nothing sounds. */
export const emptyRung = (x1: number, x2: number, y: number): Shape => rule(x1, y, x2, y, 0.6, "grey");
