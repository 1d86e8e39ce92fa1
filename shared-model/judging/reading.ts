import type { PrescribedPart, Prescription } from "../music/prescription.ts";
import type { Part, Role } from "../music/texture.ts";
import type { Points } from "../rules/rule.ts";

/** What a full prescription earns over all its parts. */
const FULL_PRESCRIPTION: Points = 6000;
/** What a part earns besides, that the prescription leaves to the player. */
const OPTIONAL_PART: Points = 300;
const ROLE_WEIGHT: Readonly<Record<Role, number>> = {
  melody: 3,
  plenum: 3,
  "cantus-firmus": 3,
  voice: 2,
  accompaniment: 2,
  bass: 1.5,
  echo: 1.5,
};

/** One part of a prescription set against one part of the section. */
export interface PartRecipe {
  readonly prescribed: PrescribedPart;
  readonly share: Points;
  /** Whether it is published: what only common practice says has no more weight than the conventions have. */
  readonly published: boolean;
}

/** One way to look at a section: in the light of a prescription, or by the conventions alone (`null`). */
export interface Reading {
  readonly prescription: Prescription | null;
  /** By part id; a part without an entry is judged by the conventions alone. */
  readonly recipes: ReadonlyMap<string, readonly PartRecipe[]>;
}

/** Which prescribed parts speak of which parts of the section: by role, then by place, then in order. */
export function readingOf(prescription: Prescription | null, parts: readonly Part[]): Reading {
  const recipes = new Map<string, { prescribed: PrescribedPart; share: Points; published: boolean }[]>();
  const published = prescription?.evidence !== "common practice";
  if (!prescription) return { prescription, recipes };
  const pairs: { part: Part; prescribed: PrescribedPart }[] = [];
  for (const role of new Set(prescription.parts.map((each) => each.role))) {
    const asked = prescription.parts.filter((each) => each.role === role);
    const played = parts.filter((each) => each.role === role);
    if (played.length === 0) continue;
    const taken = new Set<Part>();
    const left: PrescribedPart[] = [];
    for (const prescribed of asked) {
      const fit = played.find((each) => !taken.has(each) && prescribed.place && each.place === prescribed.place);
      if (fit) {
        taken.add(fit);
        pairs.push({ part: fit, prescribed });
      } else left.push(prescribed);
    }
    for (const prescribed of left) {
      const fit =
        played.find((each) => !taken.has(each)) ??
        played.find((each) => prescribed.place && each.place === prescribed.place) ??
        played[0];
      taken.add(fit as Part);
      pairs.push({ part: fit as Part, prescribed });
    }
  }
  const needed = pairs.filter((each) => !each.prescribed.optional);
  const total = needed.reduce((sum, each) => sum + ROLE_WEIGHT[each.prescribed.role], 0);
  let spent = 0;
  for (const [index, { part, prescribed }] of [
    ...needed,
    ...pairs.filter((each) => each.prescribed.optional),
  ].entries()) {
    let share: Points = OPTIONAL_PART;
    if (!prescribed.optional) {
      const last = index === needed.length - 1;
      share = last ? FULL_PRESCRIPTION - spent : Math.floor((FULL_PRESCRIPTION * ROLE_WEIGHT[prescribed.role]) / total);
      spent += share;
    }
    recipes.set(part.id, [...(recipes.get(part.id) ?? []), { prescribed, share, published }]);
  }
  return { prescription, recipes };
}
