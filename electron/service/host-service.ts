import { isAbsolute } from "node:path";
import {
  DOCUMENT_KINDS,
  type ExportedFile,
  type ExportRequest,
  HOST_METHODS,
  type HostFacts,
  type HostMethod,
  type LibraryChange,
  type LibraryEntry,
  type PickedText,
  type StoredDocument,
} from "../../shared-model/host-api.ts";
import { HOST_ARGUMENTS, type Reply } from "../../shared-model/host-messages.ts";
import type { DemoOrgans } from "../library/demo-organs.ts";
import { realDisk } from "../library/disk.ts";
import { headOf } from "../library/document-head.ts";
import { faultAt, HostFault } from "../library/fault.ts";
import { Library, type WindowId } from "../library/library.ts";
import { usualLibrary } from "./settings.ts";

/** What only a host with a screen of its own can do; `null` where the window does it itself. */
export interface Desk {
  /** Absolute path of the folder chosen. */
  readonly chooseLibrary: () => Promise<string | null>;
  readonly chooseText: () => Promise<PickedText | null>;
  readonly exportFile: (request: ExportRequest) => Promise<ExportedFile | null>;
  readonly showPdf: (request: ExportRequest) => Promise<void>;
}

/** What a service is made of. */
export interface ServiceParts {
  readonly host: HostFacts["host"];
  readonly version: string;
  /** Absolute path. */
  readonly library: string;
  readonly demos: DemoOrgans;
  readonly desk: Desk | null;
  /** Called when the person has chosen another library. */
  readonly onLibrary?: (folder: string) => void;
  /** Called when the person has opened an organ. */
  readonly onOrgan?: (organ: { readonly id: string; readonly name: string }) => void;
  /** The organs that the person opened, the last one first, as far as the host remembers them. */
  readonly recent?: () => readonly { readonly id: string }[];
  /** Told of errors that are the program's own. */
  readonly onDefect?: (error: unknown) => void;
}

type Answers = { readonly [M in HostMethod]: (words: readonly unknown[], by: WindowId) => Promise<unknown> };

const PLATFORMS: Readonly<Record<string, HostFacts["platform"]>> = { darwin: "mac", win32: "windows" };
const NAMES = new Intl.Collator("en", { numeric: true });

/** Everything that windows can ask for, the same behind every bridge. */
export class HostService {
  readonly #parts: ServiceParts;
  readonly #watching = new Map<(changes: readonly LibraryChange[]) => void, { by: WindowId; end: () => void }>();
  #library: Library;

  constructor(parts: ServiceParts) {
    this.#parts = parts;
    this.#library = libraryAt(parts.library);
  }

  /**
   * Answers one call. Never throws: whatever is wrong is in the reply, in words.
   *
   * @param method its name as it came over the bridge.
   * @param words its arguments as they came.
   * @param by the window that asks.
   */
  async answer(method: string, words: unknown, by: WindowId): Promise<Reply> {
    const known = HOST_METHODS.find((each) => each === method);
    const sound = known ? HOST_ARGUMENTS[known].safeParse(words) : null;
    if (!known || !sound?.success) {
      const trouble = "The window asked for something that this program does not know. Close it and open it again.";
      return { ok: false, trouble: { trouble: "failed", words: trouble } };
    }
    try {
      return { ok: true, value: (await this.#answers[known](sound.data, by)) ?? null };
    } catch (error) {
      if (!(error instanceof HostFault)) this.#parts.onDefect?.(error);
      const { trouble, message } = faultAt(known, error);
      return { ok: false, trouble: { trouble, words: message } };
    }
  }

  /** Tells a window of changes by others, in the library of the moment. Returns what ends it. */
  watch(by: WindowId, listener: (changes: readonly LibraryChange[]) => void): () => void {
    const own = (changes: readonly LibraryChange[]): void => listener(changes);
    this.#watching.set(own, { by, end: this.#library.watch(by, own) });
    return () => {
      this.#watching.get(own)?.end();
      this.#watching.delete(own);
    };
  }

  /** Watches nothing any more. */
  close(): void {
    this.#watching.clear();
    this.#library.close();
  }

  readonly #answers: Answers = {
    facts: async () => this.#facts(),
    list: async () => this.#list(),
    read: async (words) => this.#read(...HOST_ARGUMENTS.read.parse(words)),
    save: async (words, by) => {
      const [request] = HOST_ARGUMENTS.save.parse(words);
      if (this.#parts.demos.owns(request.id)) throw DEMO_STAYS;
      return this.#library.save(request, by);
    },
    create: async (words, by) => this.#library.create(...HOST_ARGUMENTS.create.parse(words), by),
    previous: async (words) => {
      const [id] = HOST_ARGUMENTS.previous.parse(words);
      return this.#parts.demos.owns(id) ? null : this.#library.previous(id);
    },
    printed: async (words) => {
      const [id] = HOST_ARGUMENTS.printed.parse(words);
      return this.#parts.demos.owns(id) ? [] : this.#library.printed(id);
    },
    notePrinted: async (words) => {
      const [request] = HOST_ARGUMENTS.notePrinted.parse(words);
      if (this.#parts.demos.owns(request.id)) throw DEMO_STAYS;
      return this.#library.notePrinted(request);
    },
    discard: async (words, by) => {
      const [id] = HOST_ARGUMENTS.discard.parse(words);
      if (this.#parts.demos.owns(id)) throw DEMO_STAYS;
      return this.#library.discard(id, by);
    },
    opened: async (words) => this.#opened(...HOST_ARGUMENTS.opened.parse(words)),
    chooseLibrary: async () => {
      const folder = (await this.#parts.desk?.chooseLibrary()) ?? null;
      if (folder === null || !isAbsolute(folder)) return null;
      this.#moveTo(folder);
      return this.#facts();
    },
    chooseText: async () => (await this.#parts.desk?.chooseText()) ?? null,
    exportFile: async (words) => this.#desk().exportFile(...HOST_ARGUMENTS.exportFile.parse(words)),
    showPdf: async (words) => this.#desk().showPdf(...HOST_ARGUMENTS.showPdf.parse(words)),
  };

  #desk(): Desk {
    if (this.#parts.desk) return this.#parts.desk;
    throw new HostFault(
      "not-allowed",
      "In a browser the page itself hands files out. Close this page and open it again.",
    );
  }

  #facts(): HostFacts {
    const { host, version } = this.#parts;
    return { host, version, platform: PLATFORMS[process.platform] ?? "linux", library: this.#library.folder };
  }

  async #list(): Promise<readonly LibraryEntry[]> {
    const recent = this.#parts.recent?.().map(({ id }) => id) ?? [];
    const all = [...(await this.#library.list()), ...(await this.#parts.demos.list())];
    const entries = all.map((entry): LibraryEntry => {
      const opened = recent.indexOf(entry.id);
      return opened < 0 ? entry : { ...entry, opened };
    });
    const rank = ({ kind }: LibraryEntry): number =>
      kind === null ? DOCUMENT_KINDS.length : DOCUMENT_KINDS.indexOf(kind);
    return entries.sort(
      (a, b) => rank(a) - rank(b) || NAMES.compare(a.name, b.name) || (a.id < b.id ? -1 : Number(a.id > b.id)),
    );
  }

  #read(id: string): Promise<StoredDocument> {
    return this.#parts.demos.owns(id) ? this.#parts.demos.read(id) : this.#library.read(id);
  }

  async #opened(id: string): Promise<void> {
    const { kind, name } = headOf((await this.#read(id)).text);
    if (kind === "instrument") this.#parts.onOrgan?.({ id, name: name ?? id.slice(id.lastIndexOf("/") + 1) });
  }

  #moveTo(folder: string): void {
    this.#library.close();
    this.#library = libraryAt(folder);
    for (const [listener, { by }] of [...this.#watching]) {
      this.#watching.set(listener, { by, end: this.#library.watch(by, listener) });
    }
    this.#parts.onLibrary?.(folder);
  }
}

/** Only the usual folder is made where it is missing. */
const libraryAt = (folder: string): Library => new Library(folder, realDisk, folder === usualLibrary());

const DEMO_STAYS = new HostFault("not-allowed", "A demo organ stays as it is. Make a copy of it and change the copy.");
