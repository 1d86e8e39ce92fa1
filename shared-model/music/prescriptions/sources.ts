import { ENGLISH_SOURCES } from "./sources/english.ts";
import { FRENCH_SOURCES } from "./sources/french.ts";
import { GERMAN_SOURCES } from "./sources/german.ts";
import { ITALIAN_AND_SPANISH_SOURCES } from "./sources/italian-spanish.ts";
import type { Source } from "./sources/source.ts";

/** Sources of recipes and conventions by id. `common practice` is no source and has no entry. */
export const SOURCES: Readonly<Record<string, Source>> = {
  ...FRENCH_SOURCES,
  ...GERMAN_SOURCES,
  ...ITALIAN_AND_SPANISH_SOURCES,
  ...ENGLISH_SOURCES,
};
