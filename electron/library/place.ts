import { join } from "node:path";
import type { DocumentId } from "../../shared-model/host-api.ts";
import type { Disk } from "./disk.ts";
import { HostFault } from "./fault.ts";
import { folded, isPlainName } from "./file-name.ts";

/** Folder inside the library where discarded documents lie. It is not listed. */
export const BIN = "discarded";
/** Deepest folder below the library's own. */
export const DEEPEST = 8;

/** Whether a file of this name is looked at by the library at all. */
export const isDocumentName = (name: string): boolean => /\.ya?ml$/i.test(name);

/** The id of a file of the library, from the names on the way to it. */
export const libraryId = (names: readonly string[]): DocumentId => `library:${names.join("/")}`;

/**
 * The names on the way from the library's folder to a document.
 *
 * @throws HostFault `not-allowed` for whatever could lead elsewhere or to something that is no document.
 */
export function namesOf(id: DocumentId): readonly string[] {
  const names = id.startsWith("library:") ? id.slice("library:".length).split("/") : [];
  const last = names.at(-1) ?? "";
  const sound = names.length <= DEEPEST + 1 && names.every(isPlainName) && isDocumentName(last);
  if (!sound || folded(names[0] ?? "") === BIN) {
    throw new HostFault(
      "not-allowed",
      "There can be no document of this name in the library. Choose one from the list.",
    );
  }
  return names;
}

/**
 * The path of a folder of the library, after every step was seen to be a real folder of exactly this name: no link, and
 * not another spelling that a disk without upper and lower case would take for it.
 *
 * @throws HostFault, or an error of the file system when a step is missing.
 */
export async function folderAt(root: string, names: readonly string[], disk: Disk): Promise<string> {
  let path = root;
  for (const [index, name] of names.entries()) {
    await mustBeNamed(path, name, names, disk);
    path = join(path, name);
    const status = await disk.lstat(path);
    if (status.isSymbolicLink()) throw linkFault(names.slice(0, index + 1).join("/"));
    if (!status.isDirectory()) throw goneFault(names.join("/"));
  }
  return path;
}

/**
 * The path of a file of the library, on the terms of {@link folderAt}. The file itself may be missing.
 *
 * @throws as {@link folderAt}; `gone` when a file of another spelling stands there.
 */
export async function fileAt(root: string, names: readonly string[], disk: Disk): Promise<string> {
  const name = names.at(-1) as string;
  const folder = await folderAt(root, names.slice(0, -1), disk);
  const path = join(folder, name);
  const status = await disk.lstat(path).catch(() => null);
  if (status?.isSymbolicLink()) throw linkFault(names.join("/"));
  if (status) await mustBeNamed(folder, name, names, disk);
  return path;
}

async function mustBeNamed(folder: string, name: string, names: readonly string[], disk: Disk): Promise<void> {
  const there = await disk.readdir(folder);
  if (!there.includes(name)) throw goneFault(names.join("/"));
}

const linkFault = (file: string): HostFault =>
  new HostFault("not-allowed", `${file}: It is a link. Links are not followed; put the file or folder itself there.`);

const goneFault = (file: string): HostFault =>
  new HostFault("gone", `${file}: It is not there any more. Was it moved, renamed or taken away?`);
