import type { Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";
import { HAIR, INK, mark, rule } from "./svg.ts";

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

const line = { fill: "none", stroke: INK, "stroke-width": 1.6 };

/** The sign drawn about a point, 12 px high: a bar, a ring, a ring with a lid, two lines, two waves, a lozenge, three bars, a wedge. */
export function drawSign(sign: Sign, x: number, y: number): string {
  switch (sign) {
    case "principal":
      return mark("rect", { x: x - 2.5, y: y - 6, width: 5, height: 12 });
    case "flute":
      return mark("circle", { cx: x, cy: y, r: 4.5, ...line, fill: "#fff" });
    case "stopped flute":
      return (
        mark("circle", { cx: x, cy: y + 1.5, r: 4.2, ...line, fill: "#fff" }) + rule(x - 5, y - 5, x + 5, y - 5, 1.6)
      );
    case "string":
      return rule(x - 2.2, y - 6, x - 2.2, y + 6, 1.6) + rule(x + 2.2, y - 6, x + 2.2, y + 6, 1.6);
    case "celeste": {
      const wave = (at: number): string => `M${at} ${y - 6}q3 3 0 6t0 6`;
      return mark("path", { d: `${wave(x - 3)}${wave(x + 2)}`, ...line });
    }
    case "mutation":
      return mark("path", { d: `M${x} ${y - 6}l5 6l-5 6l-5 -6z`, ...line, fill: "#fff" });
    case "compound":
      return [-4, 0, 4].map((up) => rule(x - 5, y + up, x + 5, y + up, 1.8)).join("");
    case "reed":
      return mark("path", { d: `M${x - 5} ${y - 5}h10l-5 11z` });
  }
}

/** A rung that nothing sounds. */
export const emptyRung = (x1: number, x2: number, y: number): string => rule(x1, y, x2, y, 0.6, HAIR);
