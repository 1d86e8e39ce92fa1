import { join } from "node:path";
import type { Version } from "../../shared-model/host-api.ts";
import { codeOf, type Disk } from "./disk.ts";
import { type DocumentHead, headOf } from "./document-head.ts";
import { faultAt } from "./fault.ts";
import { folded, isPlainName } from "./file-name.ts";
import { BIN, DEEPEST, isDocumentName } from "./place.ts";
import { readBytes, utf8, versionOf } from "./plain-file.ts";
import { isForgottenDraft } from "./whole-file.ts";

/** Most documents listed; who has more has chosen the wrong folder. */
const MOST = 5000;

/** One document as it lay on the disk when it was looked at. */
export interface Seen {
  /** From the library's folder, with `/`. */
  readonly file: string;
  /** Differs when the file may have been written since, if it is settled. */
  readonly mark: string;
  /** Whether it was looked at long enough after it was written that another writing would bear another time. */
  readonly settled: boolean;
  /** `null` when it cannot be read. */
  readonly version: Version | null;
  readonly head: DocumentHead;
  /** Milliseconds since 1970. */
  readonly changed: number;
}

/** Everything that lay in the library, by file. */
export interface Shelf {
  readonly documents: ReadonlyMap<string, Seen>;
  /** Paths of the folders looked into. */
  readonly folders: readonly string[];
  /** More lies there than is shown. */
  readonly overflows: boolean;
  /** Why the library's own folder could not be looked into; `null` when it could. */
  readonly trouble: unknown;
}

/**
 * Milliseconds: disks count time in steps, of two seconds at the coarsest in use. A file written twice within one step, at
 * the same length, bears one mark for two texts.
 */
const TIME_STEP = 2500;

interface Walk {
  readonly root: string;
  readonly disk: Disk;
  readonly before: ReadonlyMap<string, Seen>;
  readonly documents: Map<string, Seen>;
  readonly folders: string[];
  overflows: boolean;
  trouble: unknown;
}

const unreadable = (file: string, mark: string, changed: number, trouble: string, settled = true): Seen => ({
  file,
  mark,
  settled,
  version: null,
  head: { kind: null, name: null, trouble, facts: null },
  changed,
});

/** Without the file's own name before it: the list shows that already. */
const wordsOf = (file: string, error: unknown): string => faultAt(file, error).message.replace(`${file}: `, "");

async function lookAt(walk: Walk, path: string, file: string): Promise<Seen | null> {
  try {
    const status = await walk.disk.lstat(path, { bigint: true });
    const mark = [status.ino, status.size, status.mtimeNs, status.ctimeNs].join(" ");
    const known = walk.before.get(file);
    if (known?.mark === mark && known.settled) return known;
    const changed = Number(status.mtimeMs);
    const settled = Date.now() - Math.max(changed, Number(status.ctimeMs)) > TIME_STEP;
    if (status.isSymbolicLink()) {
      return unreadable(file, mark, changed, "It is a link. Links are not followed; put the file itself there.");
    }
    if (!file.split("/").every(isPlainName)) {
      const trouble = "Its name has a sign, or is a word, that not every computer takes. Give it another name.";
      return unreadable(file, mark, changed, trouble);
    }
    try {
      const bytes = await readBytes(path, file, walk.disk);
      const text = utf8(bytes);
      if (text !== null) return { file, mark, settled, version: versionOf(bytes), head: headOf(text), changed };
      return unreadable(file, mark, changed, "It is not written in UTF-8. Save it as UTF-8 in a text editor.", settled);
    } catch (error) {
      return unreadable(file, mark, changed, wordsOf(file, error), settled);
    }
  } catch {
    // It went while we looked.
    return null;
  }
}

async function linkedFolder(walk: Walk, path: string, file: string): Promise<void> {
  const leadsTo = await walk.disk.stat(path).catch(() => null);
  if (!leadsTo?.isDirectory()) return;
  const trouble =
    "This folder is a link. Links are not followed; put the folder itself here, or choose it as the library.";
  walk.documents.set(file, unreadable(file, "link", 0, trouble));
}

function keepUnder(walk: Walk, names: readonly string[]): void {
  const path = names.map((name) => `${name}/`).join("");
  for (const [file, seen] of walk.before) if (file.startsWith(path)) walk.documents.set(file, seen);
}

async function lookInto(walk: Walk, names: readonly string[]): Promise<void> {
  const folder = join(walk.root, ...names);
  const entries = await walk.disk.readdir(folder, { withFileTypes: true }).catch((error: unknown) => {
    if (names.length === 0) walk.trouble = error;
    // A folder that only cannot be read at the moment has not lost its documents.
    if (!["ENOENT", "ENOTDIR"].includes(codeOf(error) ?? "")) keepUnder(walk, names);
    return [];
  });
  walk.folders.push(folder);
  for (const entry of entries) {
    const path = join(folder, entry.name);
    const file = [...names, entry.name].join("/");
    if (isForgottenDraft(entry.name)) await walk.disk.rm(path, { force: true }).catch(() => {});
    if (entry.name.startsWith(".") || (names.length === 0 && folded(entry.name) === BIN)) continue;
    if (entry.isDirectory()) {
      if (names.length < DEEPEST) await lookInto(walk, [...names, entry.name]);
    } else if (isDocumentName(entry.name)) {
      if (walk.documents.size >= MOST) walk.overflows = true;
      if (walk.overflows) return;
      const seen = await lookAt(walk, path, file);
      if (seen) walk.documents.set(file, seen);
    } else if (entry.isSymbolicLink()) await linkedFolder(walk, path, file);
  }
}

/**
 * Looks through the library's folder. Files that bear the same mark as `before` are not read again; drafts of writers that
 * were stopped are taken away. A folder that is missing or closed holds nothing.
 */
export async function lookThrough(root: string, before: ReadonlyMap<string, Seen>, disk: Disk): Promise<Shelf> {
  const walk = walkOf(root, before, disk);
  await lookInto(walk, []);
  return walk;
}

/** One document looked at afresh; `null` when it is not there. */
export const lookAtOne = (root: string, file: string, disk: Disk): Promise<Seen | null> =>
  lookAt(walkOf(root, new Map(), disk), join(root, file), file);

const walkOf = (root: string, before: ReadonlyMap<string, Seen>, disk: Disk): Walk => ({
  root,
  disk,
  before,
  documents: new Map(),
  folders: [],
  overflows: false,
  trouble: null,
});
