import { readdirSync } from "node:fs";
import { join } from "node:path";
import type { DocumentId, LibraryEntry, StoredDocument } from "../../shared-model/host-api.ts";
import { type Disk, realDisk } from "./disk.ts";
import { headOf } from "./document-head.ts";
import { faultAt, HostFault } from "./fault.ts";
import { isDocumentName } from "./place.ts";
import { readDocument } from "./plain-file.ts";

const PREFIX = "demo:";

/** The organs that come with the program. They can be read and copied, never written. */
export interface DemoOrgans {
  readonly list: () => Promise<readonly LibraryEntry[]>;
  readonly owns: (id: DocumentId) => boolean;
  /** @throws HostFault `gone` for any but the listed. */
  readonly read: (id: DocumentId) => Promise<StoredDocument>;
}

/** The demo organs in a folder, which is looked through once. */
export function demoOrgansIn(folder: string, disk: Disk = realDisk): DemoOrgans {
  const files = readdirSync(folder).filter(isDocumentName).sort();
  const read = async (id: DocumentId): Promise<StoredDocument> => {
    const file = files.find((each) => `${PREFIX}${each}` === id);
    if (!file) throw new HostFault("gone", "There is no such demo organ. Choose one from the list.");
    try {
      return await readDocument(id, join(folder, file), file, disk);
    } catch (error) {
      throw faultAt(file, error);
    }
  };
  const entry = async (file: string): Promise<LibraryEntry> => {
    const id = `${PREFIX}${file}`;
    const { kind, name, trouble, facts } = headOf((await read(id)).text);
    return { id, kind, name: name ?? file, file, demo: true, changed: 0, trouble, facts, opened: null };
  };
  // One after the other, so that a page that asks for its scripts meanwhile is answered between two.
  const all = async (): Promise<readonly LibraryEntry[]> => {
    const entries: LibraryEntry[] = [];
    for (const file of files) entries.push(await entry(file));
    return entries;
  };
  let listed: Promise<readonly LibraryEntry[]> | null = null;
  return {
    list: () => (listed ??= all()),
    owns: (id) => id.startsWith(PREFIX),
    read,
  };
}
