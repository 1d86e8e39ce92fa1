import type { Prescription } from "../prescription.ts";
import { DYNAMICS, type Dynamic, type Tradition } from "../texture.ts";
import { textureFor } from "../textures/catalogue.ts";
import { CENTRAL_GERMAN_PRESCRIPTIONS } from "./central-german.ts";
import { ENGLISH_18C_PRESCRIPTIONS } from "./english-18c.ts";
import { ENGLISH_CATHEDRAL_PRESCRIPTIONS } from "./english-cathedral.ts";
import { FRENCH_CLASSICAL_PRESCRIPTIONS } from "./french-classical.ts";
import { FRENCH_SYMPHONIC_PRESCRIPTIONS } from "./french-symphonic.ts";
import { GERMAN_ROMANTIC_PRESCRIPTIONS } from "./german-romantic.ts";
import { ITALIAN_RENAISSANCE_PRESCRIPTIONS } from "./italian-renaissance.ts";
import { NEUTRAL_ENSEMBLE_PRESCRIPTIONS } from "./neutral-ensembles.ts";
import { NEUTRAL_SOLO_PRESCRIPTIONS } from "./neutral-solos.ts";
import { NEUTRAL_SUSTAINED_PRESCRIPTIONS } from "./neutral-sustained.ts";
import { NORTH_GERMAN_PRESCRIPTIONS } from "./north-german.ts";
import { SPANISH_PRESCRIPTIONS } from "./spanish.ts";

/** Every recipe of every school. Several of one texture and tradition are alternatives of equal standing. */
export const PRESCRIPTIONS: readonly Prescription[] = [
  ...NEUTRAL_SOLO_PRESCRIPTIONS,
  ...NEUTRAL_ENSEMBLE_PRESCRIPTIONS,
  ...NEUTRAL_SUSTAINED_PRESCRIPTIONS,
  ...FRENCH_CLASSICAL_PRESCRIPTIONS,
  ...ITALIAN_RENAISSANCE_PRESCRIPTIONS,
  ...NORTH_GERMAN_PRESCRIPTIONS,
  ...CENTRAL_GERMAN_PRESCRIPTIONS,
  ...ENGLISH_18C_PRESCRIPTIONS,
  ...ENGLISH_CATHEDRAL_PRESCRIPTIONS,
  ...SPANISH_PRESCRIPTIONS,
  ...FRENCH_SYMPHONIC_PRESCRIPTIONS,
  ...GERMAN_ROMANTIC_PRESCRIPTIONS,
];

const byTexture = new Map<string, Prescription[]>();
for (const prescription of PRESCRIPTIONS) {
  const known = byTexture.get(prescription.texture);
  if (known) known.push(prescription);
  else byTexture.set(prescription.texture, [prescription]);
}

/** Recipes without a dynamic, and of those with one the nearest to the one asked for; of two as near the softer. */
function nearestDynamic(found: readonly Prescription[], dynamic: Dynamic | null): readonly Prescription[] {
  if (dynamic === null) return found;
  const steps = (of: Dynamic): number => Math.abs(DYNAMICS.indexOf(of) - DYNAMICS.indexOf(dynamic));
  const stated = DYNAMICS.filter((known) => found.some((prescription) => prescription.dynamic === known));
  const [nearest] = stated.toSorted((a, b) => steps(a) - steps(b));
  return found.filter((prescription) => prescription.dynamic === undefined || prescription.dynamic === nearest);
}

/**
 * The recipes by which a texture is registered: the tradition's own; failing these the neutral ones of a neutral
 * texture; for a school's texture those of a school that has it (it was asked for by its name), and at last those
 * of the neutral texture of its shape. Without a dynamic, recipes of every dynamic. Empty for an unknown texture.
 */
export function prescriptionsFor(
  textureId: string,
  tradition: Tradition,
  dynamic: Dynamic | null,
): readonly Prescription[] {
  const texture = textureFor(textureId, tradition);
  if (!texture) return [];
  const all = byTexture.get(textureId) ?? [];
  const wayOf = (school: Tradition): readonly Prescription[] => all.filter((known) => known.tradition === school);
  const home = texture.traditions.find((known) => wayOf(known).length > 0);
  const like = texture.like === null ? [] : (byTexture.get(texture.like) ?? []);
  const choices = [
    wayOf(tradition),
    home ? wayOf(home) : [],
    like.filter((known) => known.tradition === tradition),
    like.filter((known) => known.tradition === "neutral"),
  ];
  return nearestDynamic(choices.find((found) => found.length > 0) ?? [], dynamic);
}
