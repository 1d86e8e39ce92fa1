import { fileKindOf } from "../../shared-model/files/file-kind.ts";
import type {
  CreateRequest,
  DocumentId,
  ExportRequest,
  Host,
  HostFacts,
  HostTrouble,
  LibraryChange,
  LibraryEntry,
  PickedText,
  SaveRequest,
  SaveResult,
  StoredDocument,
} from "../../shared-model/host-api.ts";

/** A document that the memory holds. */
interface Held {
  text: string;
  before: string | null;
}

const nameIn = (text: string, file: string): string => /^(?:name|title):[ ]*"?([^"\n]+?)"?$/m.exec(text)?.[1] ?? file;

/** A host without a machine: documents lie in memory. For tests, where nothing may touch a disk. */
export class MemoryHost implements Host {
  readonly #documents = new Map<DocumentId, Held>();
  readonly #listeners = new Set<(changes: readonly LibraryChange[]) => void>();
  /** What was handed to the person, in order. */
  readonly exported: ExportRequest[] = [];
  picked: PickedText | null = null;

  /** @param documents texts by their ids, demo organs as `demo:name.yaml`. */
  constructor(documents: Readonly<Record<DocumentId, string>>) {
    for (const [id, text] of Object.entries(documents)) this.#documents.set(id, { text, before: null });
  }

  facts(): Promise<HostFacts> {
    return Promise.resolve({ host: "browser", version: "0.0.0", platform: "linux", library: "memory" });
  }

  list(): Promise<readonly LibraryEntry[]> {
    const entries = [...this.#documents].map(
      ([id, { text }]): LibraryEntry => ({
        id,
        kind: fileKindOf(text),
        name: nameIn(text, id),
        file: id.replace(/^[a-z]+:/, ""),
        demo: id.startsWith("demo:"),
        changed: 0,
        trouble: null,
      }),
    );
    return Promise.resolve(entries.sort((a, b) => a.name.localeCompare(b.name)));
  }

  read(id: DocumentId): Promise<StoredDocument> {
    const held = this.#documents.get(id);
    if (!held) return Promise.reject(gone(id));
    return Promise.resolve({ id, text: held.text, version: held.text });
  }

  save({ id, text, seen }: SaveRequest): Promise<SaveResult> {
    const held = this.#documents.get(id);
    if (!held) return Promise.resolve({ done: "changed-underneath", now: null });
    if (held.text !== seen) {
      return Promise.resolve({ done: "changed-underneath", now: { id, text: held.text, version: held.text } });
    }
    this.#documents.set(id, { text, before: held.text });
    return Promise.resolve({ done: "saved", version: text });
  }

  create({ kind, name, text }: CreateRequest): Promise<StoredDocument> {
    let id = `library:${kind}/${name}.yaml`;
    for (let count = 2; this.#documents.has(id); count += 1) id = `library:${kind}/${name} ${count}.yaml`;
    this.#documents.set(id, { text, before: null });
    return Promise.resolve({ id, text, version: text });
  }

  previous(id: DocumentId): Promise<StoredDocument | null> {
    const before = this.#documents.get(id)?.before ?? null;
    return Promise.resolve(before === null ? null : { id, text: before, version: before });
  }

  discard(id: DocumentId): Promise<void> {
    this.#documents.delete(id);
    return Promise.resolve();
  }

  watch(listener: (changes: readonly LibraryChange[]) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  chooseLibrary(): Promise<HostFacts | null> {
    return Promise.resolve(null);
  }

  chooseText(): Promise<PickedText | null> {
    return Promise.resolve(this.picked);
  }

  exportFile(request: ExportRequest): Promise<{ where: string | null } | null> {
    this.exported.push(request);
    return Promise.resolve({ where: null });
  }

  showPdf(request: ExportRequest): Promise<void> {
    this.exported.push(request);
    return Promise.resolve();
  }

  onMenu(): () => void {
    return () => undefined;
  }

  /** Another hand writes a document (or takes it away): the listeners are told, as a host tells. */
  write(id: DocumentId, text: string | null): void {
    const what = text === null ? "removed" : this.#documents.has(id) ? "changed" : "added";
    if (text === null) this.#documents.delete(id);
    else this.#documents.set(id, { text, before: null });
    for (const listener of this.#listeners) listener([{ id, what }]);
  }
}

const gone = (id: DocumentId): HostTrouble => ({
  trouble: "gone",
  words: `${id} is not there any more. Was it moved or renamed?`,
});
