import { openFile } from "./file-head.ts";
import { CATALOGUE, type KnownTextures } from "./known-textures.ts";
import { readMusic, type WrittenMusic } from "./music-entry.ts";
import { sectionSchema } from "./music-schema.ts";
import { readShape, UnknownKeys } from "./shape.ts";
import type { Trouble } from "./trouble.ts";

/** What a section file amounts to. */
export interface SectionReading {
  /** `null` when any trouble is an error. */
  readonly section: WrittenMusic | null;
  /** In the order of the file. */
  readonly troubles: readonly Trouble[];
}

/** Reads the text of a section file. Never throws, whatever the text. */
export function readSectionFile(text: string, fileName: string, textures: KnownTextures = CATALOGUE): SectionReading {
  const { root, reporter } = openFile(text, fileName, "section");
  const unknown = new UnknownKeys();
  if (root) unknown.look(root, Object.keys(sectionSchema.shape), "A section");
  const read = root && readShape(sectionSchema, root, "The section", reporter);
  const music = root && read ? readMusic(root, read, textures, reporter, unknown).music : null;
  unknown.report(reporter);
  return { section: reporter.hasErrors() ? null : music, troubles: reporter.troubles() };
}
