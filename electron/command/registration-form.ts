import { openFile } from "../../shared-model/files/file-head.ts";
import { CATALOGUE } from "../../shared-model/files/known-textures.ts";
import { readMusic, reportStrangeParts } from "../../shared-model/files/music-entry.ts";
import { registrationSchema } from "../../shared-model/files/music-schema.ts";
import { readShape, UnknownKeys } from "../../shared-model/files/shape.ts";
import type { Trouble } from "../../shared-model/files/trouble.ts";

/** What is wrong with a registration file as such, whatever organ it is for: its stops and divisions are not looked up. */
export function registrationTroubles(text: string, fileName: string): readonly Trouble[] {
  const { root, reporter } = openFile(text, fileName, "registration");
  const unknown = new UnknownKeys();
  if (root) unknown.look(root, Object.keys(registrationSchema.shape), "A registration");
  const read = root && readShape(registrationSchema, root, "The registration", reporter);
  if (root && read) {
    const { partIds } = readMusic(root, read, CATALOGUE, reporter, unknown);
    for (const key of ["keyboards", "octaves"]) reportStrangeParts(root.entries?.get(key)?.node, partIds, reporter);
  }
  unknown.report(reporter);
  return reporter.troubles();
}
