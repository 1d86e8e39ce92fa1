import Fuse from "fuse.js";
import type { Texture, Tradition } from "../texture.ts";
import { ENGLISH_18C_TEXTURES } from "./english-18c.ts";
import { ENGLISH_CATHEDRAL_FULL_ORGAN, ENGLISH_CATHEDRAL_TEXTURES } from "./english-cathedral.ts";
import { FRENCH_CLASSICAL_TEXTURES } from "./french-classical.ts";
import {
  FRENCH_SYMPHONIC_GRAND_CHOEUR,
  FRENCH_SYMPHONIC_TEXTURES,
  FRENCH_SYMPHONIC_VOIX_HUMAINE,
} from "./french-symphonic.ts";
import { GERMAN_BAROQUE_TEXTURES } from "./german-baroque.ts";
import { GERMAN_ROMANTIC_TEXTURES } from "./german-romantic.ts";
import { ITALIAN_RENAISSANCE_TEXTURES } from "./italian-renaissance.ts";
import { NEUTRAL_TEXTURES } from "./neutral.ts";
import { SPANISH_TEXTURES } from "./spanish.ts";

/** Every texture once, neutral ones first, then school by school in order of time. The ids never change. */
export const TEXTURES: readonly Texture[] = [
  ...NEUTRAL_TEXTURES,
  ...FRENCH_CLASSICAL_TEXTURES,
  ...ITALIAN_RENAISSANCE_TEXTURES,
  ...GERMAN_BAROQUE_TEXTURES,
  ...ENGLISH_18C_TEXTURES,
  ...ENGLISH_CATHEDRAL_TEXTURES,
  ...SPANISH_TEXTURES,
  ...FRENCH_SYMPHONIC_TEXTURES,
  ...GERMAN_ROMANTIC_TEXTURES,
];

const byId = new Map(TEXTURES.map((texture) => [texture.id, texture]));

/** Shapes that a later school gave to a name it inherited: `tradition/id`. */
const reshaped = new Map(
  [ENGLISH_CATHEDRAL_FULL_ORGAN, FRENCH_SYMPHONIC_VOIX_HUMAINE, FRENCH_SYMPHONIC_GRAND_CHOEUR].map((texture) => [
    `${texture.traditions[0]}/${texture.id}`,
    { ...texture, traditions: byId.get(texture.id)?.traditions ?? texture.traditions },
  ]),
);

/** The texture of that id, in the shape of the first tradition it belongs to; `null` when there is none. */
export const textureById = (id: string): Texture | null => byId.get(id) ?? null;

/**
 * The texture of that id as this tradition plays it: a few ids (`voix-humaine`, `full-organ`, `grand-choeur`) have
 * other parts in another school. For a tradition without it, as {@link textureById}; `null` for no such id.
 */
export const textureFor = (id: string, tradition: Tradition): Texture | null =>
  reshaped.get(`${tradition}/${id}`) ?? textureById(id);

/** The textures of one tradition in the catalogue's order and this tradition's shape, without those that serve any. */
export const texturesOf = (tradition: Tradition): readonly Texture[] =>
  TEXTURES.filter((texture) => texture.traditions.includes(tradition)).map(
    (texture) => reshaped.get(`${tradition}/${texture.id}`) ?? texture,
  );

const nearIds = new Fuse(TEXTURES, { keys: ["id", "title"], ignoreLocation: true, threshold: 0.45 });

/** Up to three ids that a mistyped or half-remembered name may have meant, nearest first; empty when none is near. */
export const nearestTextureIds = (text: string): readonly string[] =>
  nearIds.search(text.slice(0, 60), { limit: 3 }).map((hit) => hit.item.id);
