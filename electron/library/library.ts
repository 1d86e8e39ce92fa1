import { join, resolve } from "node:path";
import type { PrintMark } from "../../shared-model/cards/print-marks.ts";
import type {
  CreateRequest,
  DocumentId,
  DocumentKind,
  LibraryChange,
  LibraryEntry,
  PrintedRequest,
  SaveRequest,
  SaveResult,
  StoredDocument,
  Version,
} from "../../shared-model/host-api.ts";
import { DOCUMENT_BYTES } from "../../shared-model/host-api.ts";
import { codeOf, type Disk, realDisk } from "./disk.ts";
import { changesBetween, entryOf, notice, overflowWords } from "./entries.ts";
import { faultAt, HostFault } from "./fault.ts";
import { fileNameOf, folded, freeName } from "./file-name.ts";
import { BIN, fileAt, folderAt, libraryId, namesOf } from "./place.ts";
import { readBytes, readDocument, versionOf } from "./plain-file.ts";
import { printedPath, readPrintNotes, writePrintNotes } from "./print-notes.ts";
import { lookAtOne, lookThrough, type Seen } from "./shelf.ts";
import { startWatcher, type Watcher } from "./watcher.ts";
import { beforePath, createWhole, moveWithoutReplacing, replaceWhole } from "./whole-file.ts";

/** The folder of each kind; what a person puts elsewhere in the library is found as well. */
const FOLDERS: Readonly<Record<DocumentKind, string>> = {
  instrument: "organs",
  piece: "pieces",
  registration: "registrations",
  section: "sections",
};

/** Which window asks, so that it is not told of its own doing. */
export type WindowId = string;

type Listener = (changes: readonly LibraryChange[]) => void;

/** A person's documents on the disk. Every method throws {@link HostFault} only. */
export class Library {
  /** Absolute path. */
  readonly folder: string;
  readonly #disk: Disk;
  readonly #listeners = new Map<Listener, WindowId>();
  readonly #mayMake: boolean;
  #known: ReadonlyMap<string, Seen> | null = null;
  #notices: readonly LibraryEntry[] = [];
  #watcher: Watcher | null = null;
  #queue: Promise<unknown> = Promise.resolve();

  /**
   * @param mayMake whether the folder may be made where it is missing. A folder that a person chose is on a disk that is not
   * plugged in, and must not be made beside it.
   */
  constructor(folder: string, disk: Disk = realDisk, mayMake = true) {
    this.folder = resolve(folder);
    this.#disk = disk;
    this.#mayMake = mayMake;
  }

  /** Every document that lies there, in no order. */
  list(): Promise<readonly LibraryEntry[]> {
    return this.#inTurn(async () => {
      const documents = await this.#lookThrough();
      return [...[...documents.values()].map(entryOf), ...this.#notices];
    });
  }

  async read(id: DocumentId): Promise<StoredDocument> {
    const names = namesOf(id);
    // Where somebody listens, what is handed out is not older than the first look: a change behind it is told.
    if (this.#watcher && !this.#known) await this.#look();
    return at(names, async () => readDocument(id, await this.#pathOf(names), names.join("/"), this.#disk));
  }

  /** The version before the last save; `null` when there is none. */
  async previous(id: DocumentId): Promise<StoredDocument | null> {
    const names = namesOf(id);
    return at(names, async () => {
      const path = beforePath(await this.#pathOf(names));
      try {
        return await readDocument(id, path, names.join("/"), this.#disk);
      } catch (error) {
        if (codeOf(error) === "ENOENT") return null;
        throw error;
      }
    });
  }

  /** What was noted when cards of it were printed. */
  async printed(id: DocumentId): Promise<readonly PrintMark[]> {
    const names = namesOf(id);
    return at(names, async () => readPrintNotes(await this.#pathOf(names), this.#disk));
  }

  /** Notes what was printed, beside the document, which must be there. */
  notePrinted({ id, printed }: PrintedRequest): Promise<void> {
    const names = namesOf(id);
    return this.#inTurn(() =>
      at(names, async () => {
        const path = await this.#pathOf(names);
        await this.#disk.access(path);
        await writePrintNotes(path, printed, this.#disk);
      }),
    );
  }

  save({ id, text, seen }: SaveRequest, by: WindowId): Promise<SaveResult> {
    const names = namesOf(id);
    const file = names.join("/");
    return this.#inTurn(() =>
      at(names, async (): Promise<SaveResult> => {
        const bytes = bytesOf(text, file);
        const now = await this.#standing(id, names);
        if (now?.version !== seen) return { done: "changed-underneath", now };
        const version = versionOf(bytes);
        if (version === seen) return { done: "saved", version };
        const path = await this.#pathOf(names);
        await this.#disk.access(path, WRITE);
        const read = (where: string): Promise<Uint8Array> => readBytes(where, file, this.#disk);
        const isSeen = (there: Uint8Array): boolean => versionOf(there) === seen;
        const replaced = await replaceWhole(path, bytes, { read, isSeen }, this.#disk);
        if (!replaced) return { done: "changed-underneath", now: await this.#standing(id, names) };
        await this.#learn(names, version, by);
        return { done: "saved", version };
      }),
    );
  }

  create({ kind, name, text }: CreateRequest, by: WindowId): Promise<StoredDocument> {
    return this.#inTurn(async () => {
      const otherwise = kind === "instrument" ? "organ" : kind;
      const bytes = bytesOf(text, name);
      const folder = await at([FOLDERS[kind]], () => this.#folderFor(FOLDERS[kind]));
      const stem = fileNameOf(name, otherwise);
      return at([folder, stem], async () => {
        const path = await folderAt(this.folder, [folder], this.#disk);
        const taken = new Set((await this.#disk.readdir(path)).map(folded));
        // A version kept of a file that went has its name too: it must not pass for this one's.
        for (const each of [...taken]) if (each.endsWith("~")) taken.add(each.slice(0, -1));
        for (;;) {
          const file = freeName(stem, ".yaml", taken);
          try {
            await createWhole(join(path, file), bytes, this.#disk);
          } catch (error) {
            if (codeOf(error) !== "EEXIST") throw error;
            taken.add(folded(file));
            continue;
          }
          // What was printed of a document of this name that went is not of this one.
          await this.#disk.rm(printedPath(join(path, file)), { force: true }).catch(() => {});
          const version = versionOf(bytes);
          await this.#learn([folder, file], version, by);
          return { id: libraryId([folder, file]), text, version };
        }
      });
    });
  }

  /** Moves a document, and the version kept of it, to the same place in the library's bin. */
  discard(id: DocumentId, by: WindowId): Promise<void> {
    const names = namesOf(id);
    return this.#inTurn(() =>
      at(names, async () => {
        const path = await this.#pathOf(names);
        await this.#disk.access(path);
        const bin = await this.#binFor(names.slice(0, -1));
        const taken = new Set((await this.#disk.readdir(bin)).map(folded));
        const [, stem = "", ending = ""] = /^(.*)(\.ya?ml)$/is.exec(names.at(-1) as string) ?? [];
        const target = join(bin, freeName(stem, ending, taken));
        await moveWithoutReplacing(path, target, this.#disk);
        await this.#disk.rename(beforePath(path), beforePath(target)).catch(() => {});
        await this.#disk.rename(printedPath(path), printedPath(target)).catch(() => {});
        await this.#learn(names, null, by);
      }),
    );
  }

  /**
   * Tells of documents that others than the window `by` changed, made or took away, from the last look at the library on.
   * Returns what ends it.
   */
  watch(by: WindowId, listener: Listener): () => void {
    // The same function twice is two listeners.
    const own: Listener = (changes) => listener(changes);
    this.#listeners.set(own, by);
    this.#watcher ??= startWatcher(() => void this.#look());
    void this.#look();
    return () => {
      this.#listeners.delete(own);
      if (this.#listeners.size === 0) this.close();
    };
  }

  /** Listens no longer. */
  close(): void {
    this.#listeners.clear();
    this.#watcher?.end();
    this.#watcher = null;
  }

  /** One thing after the other: nothing is looked at while it is written. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#queue.then(work);
    this.#queue = turn.catch(() => {});
    return turn;
  }

  #look(): Promise<void> {
    return this.#inTurn(async () => {
      if (this.#watcher) await this.#lookThrough();
    });
  }

  async #lookThrough(): Promise<ReadonlyMap<string, Seen>> {
    const before = this.#known;
    const { documents, folders, overflows, trouble } = await lookThrough(this.folder, before ?? new Map(), this.#disk);
    this.#known = documents;
    this.#notices = [
      ...(overflows ? [notice("More lies here", overflowWords(this.folder))] : []),
      ...(this.#isExpected(trouble) ? [] : [notice("The library", this.#absence(trouble).message)]),
    ];
    this.#watcher?.listenAt(folders);
    if (before) this.#tell(changesBetween(before, documents), null);
    return documents;
  }

  /**
   * Takes note of what this library did itself, so that only other windows are told. Another program may have written in the
   * moment since: then all are told.
   *
   * @param version what this library wrote; `null` where it took the document away.
   */
  async #learn(names: readonly string[], version: Version | null, by: WindowId): Promise<void> {
    const before = this.#known;
    // Nobody has looked yet: whoever does will find things as they are now.
    if (!before) return;
    const file = names.join("/");
    const after = new Map(before);
    const seen = await lookAtOne(this.folder, file, this.#disk);
    if (seen) after.set(file, seen);
    else after.delete(file);
    this.#known = after;
    if ((seen?.version ?? null) === version) return this.#tell(changesBetween(before, after), by);
    const what = !seen ? "removed" : version === null ? "added" : "changed";
    this.#tell([{ id: libraryId(names), what }], null);
  }

  #tell(changes: readonly LibraryChange[], by: WindowId | null): void {
    if (changes.length === 0) return;
    for (const [listener, window] of [...this.#listeners]) if (window !== by) listener(changes);
  }

  #pathOf(names: readonly string[]): Promise<string> {
    return fileAt(this.folder, names, this.#disk);
  }

  async #standing(id: DocumentId, names: readonly string[]): Promise<StoredDocument | null> {
    try {
      return await readDocument(id, await this.#pathOf(names), names.join("/"), this.#disk);
    } catch (error) {
      if (["ENOENT", "ENOTDIR"].includes(codeOf(error) ?? "")) return null;
      if (error instanceof HostFault && error.trouble === "gone") return null;
      throw error;
    }
  }

  #isExpected(trouble: unknown): boolean {
    return trouble === null || (this.#mayMake && codeOf(trouble) === "ENOENT");
  }

  #absence(trouble: unknown): HostFault {
    if (codeOf(trouble) !== "ENOENT") return faultAt(this.folder, trouble);
    const words = "This folder of your library is not there. Plug in its disk, or choose another folder.";
    return new HostFault("gone", `${this.folder}: ${words}`);
  }

  /** The folder of a kind, made where it is missing; one that stands under another spelling of the name is taken. */
  async #folderFor(name: string): Promise<string> {
    if (this.#mayMake) await this.#make(this.folder);
    else
      await this.#disk.access(this.folder).catch((error: unknown) => {
        throw this.#absence(error);
      });
    const there = (await this.#disk.readdir(this.folder)).find((each) => folded(each) === name);
    if (there === undefined) await this.#make(join(this.folder, name));
    return there ?? name;
  }

  async #binFor(folders: readonly string[]): Promise<string> {
    let path = join(this.folder, await this.#folderFor(BIN));
    for (const name of folders) {
      path = join(path, name);
      await this.#make(path);
    }
    return path;
  }

  async #make(path: string): Promise<void> {
    try {
      await this.#disk.mkdir(path);
    } catch (error) {
      if (codeOf(error) !== "EEXIST") throw error;
    }
  }
}

/** `access` for writing. */
const WRITE = 2;

async function at<T>(names: readonly string[], work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw faultAt(names.join("/"), error);
  }
}

function bytesOf(text: string, file: string): Buffer {
  const bytes = Buffer.from(text);
  if (bytes.byteLength <= DOCUMENT_BYTES) return bytes;
  throw new HostFault(
    "too-large",
    `${file}: It would be longer than ${DOCUMENT_BYTES / 1_000_000} MB. Part it in two.`,
  );
}
