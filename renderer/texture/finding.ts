import Fuse from "fuse.js";
import { type Texture, TRADITIONS, type Tradition } from "../../shared-model/music/texture.ts";
import { TEXTURES, texturesOf } from "../../shared-model/music/textures/catalogue.ts";

/** Textures under one heading. */
export interface Group {
  readonly tradition: Tradition;
  readonly textures: readonly Texture[];
}

/** Schools with the number of textures that are theirs; the first is for any school and counts all. */
export const SCHOOLS: readonly { readonly tradition: Tradition; readonly count: number }[] = TRADITIONS.map(
  (tradition) => ({
    tradition,
    count: tradition === "neutral" ? TEXTURES.length : texturesOf(tradition).length,
  }),
);

/** The catalogue under its headings: for a school its own textures first, then those that serve any. */
export function groupsFor(school: Tradition): readonly Group[] {
  const order = school === "neutral" ? TRADITIONS : [school, "neutral" as const];
  const seen = new Set<string>();
  return order
    .map((tradition) => ({
      tradition,
      textures: texturesOf(tradition).filter((texture) => {
        // A texture that several schools share stands under the first of them.
        if (seen.has(texture.id)) return false;
        seen.add(texture.id);
        return true;
      }),
    }))
    .filter((group) => group.textures.length > 0);
}

const index = new Fuse(TEXTURES, {
  keys: [
    { name: "title", weight: 3 },
    { name: "id", weight: 2 },
    { name: "plain", weight: 1 },
    { name: "traditions", weight: 1 },
  ],
  ignoreLocation: true,
  ignoreDiacritics: true,
  threshold: 0.32,
});

/** Textures for a word or two, best first; all of the catalogue's schools are looked through. */
export const findTextures = (words: string): readonly Texture[] =>
  index.search(words.trim().slice(0, 80), { limit: 24 }).map((hit) => hit.item);
