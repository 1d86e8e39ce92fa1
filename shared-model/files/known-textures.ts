import type { Tradition } from "../music/texture.ts";
import { nearestTextureIds, textureById, textureFor } from "../music/textures/catalogue.ts";

/** What a file's `texture:` is held against. */
export interface KnownTextures {
  readonly knownTexture: (id: string) => boolean;
  /** Ids like a misspelt one, best first. */
  readonly nearest: (id: string) => readonly string[];
  /** Ids of the texture's parts, to hold `ranges`, `keyboards` and the like against; absent: those are not looked at. */
  readonly partsOf?: (id: string, tradition: Tradition | null) => readonly string[];
}

/** The textures of the catalogue. */
export const CATALOGUE: KnownTextures = {
  knownTexture: (id) => textureById(id) !== null,
  nearest: nearestTextureIds,
  partsOf: (id, tradition) =>
    ((tradition ? textureFor(id, tradition) : textureById(id))?.parts ?? []).map((part) => part.id),
};
