import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { DocumentId, LibraryChange } from "../../shared-model/host-api.ts";
import { troubleWords } from "./opening.ts";
import { organOf } from "./organ.ts";
import { openPieceText, pieceTextAfter } from "./piece-text.ts";
import type { Store } from "./store.ts";
import { isAtSight, isBegun, type Work } from "./work.ts";

/** Milliseconds after the last change at which it is written: a pause in drawing, not each stop by itself. */
const PAUSE = 350;

/**
 * Keeps the library as the desk has it: writes what changed after a short pause, one write after the other, and takes
 * notice of what other programs write. Nothing is ever written over a text that was not seen.
 */
export class Autosave {
  readonly #store: Store;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #writing: Promise<void> = Promise.resolve();
  #isWriting = false;
  #seen: Pick<Work, "organ" | "piece" | "entry"> | null = null;

  constructor(store: Store) {
    this.#store = store;
  }

  /** Begins to watch desk and library. Returns what ends it. */
  start(): () => void {
    this.#store.writesBy(() => this.flush());
    const leave = [
      this.#store.subscribe(() => this.#look()),
      this.#store.host.watch((changes) => void this.#told(changes)),
    ];
    return () => {
      for (const end of leave) end();
      if (this.#timer !== null) clearTimeout(this.#timer);
    };
  }

  #look(): void {
    const { organ, piece, entry } = this.#store.work;
    const isAskedAgain = this.#store.desk().saving.state === "waiting" && this.#timer === null && !this.#isWriting;
    const { organ: seenOrgan, piece: seenPiece, entry: seenEntry } = this.#seen ?? {};
    if (!isAskedAgain && seenOrgan === organ && seenPiece === piece && seenEntry === entry) return;
    this.#seen = { organ, piece, entry };
    if (!this.#mayBeDue()) return;
    if (this.#store.desk().saving.state === "saved") this.#store.set({ saving: { state: "waiting" } });
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), PAUSE);
  }

  /** Whether there may be something to write, told without reckoning: this is asked at every stop that is drawn. */
  #mayBeDue(): boolean {
    const { piece } = this.#store.work;
    const { pieceFile } = this.#store.desk();
    if (isAtSight(this.#store.work)) return false;
    return this.#organDue() || (pieceFile ? piece !== pieceFile.piece : isBegun(piece));
  }

  /** Whether the desk has something that the library does not. */
  #isDue(): boolean {
    return this.#organDue() || this.#pieceDue() !== null;
  }

  #organDue(): boolean {
    const { organ } = this.#store.work;
    return organ !== null && !isAtSight(this.#store.work) && organ !== this.#store.desk().organFile?.text;
  }

  /**
   * The text that the piece's file should have, where it has another, or what keeps the piece from being written; `null` when
   * nothing is to be written.
   */
  #pieceDue(): { readonly text: string } | { readonly refused: string } | null {
    const { organ, piece, pieceBase } = this.#store.work;
    const { pieceFile } = this.#store.desk();
    const instrument = organ === null ? null : organOf(organ).instrument;
    if (!instrument || isAtSight(this.#store.work)) return null;
    if (!pieceFile && !isBegun(piece)) return null;
    const { text, troubles } = pieceTextAfter(pieceBase, piece, instrument);
    if (text === null) return { refused: troubles.map(troubleLine).join(" ") };
    return text === pieceFile?.text ? null : { text };
  }

  /** Writes what is due, after whatever is being written. */
  flush(): Promise<void> {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    this.#writing = this.#writing.then(() => this.#write());
    return this.#writing;
  }

  async #write(): Promise<void> {
    this.#isWriting = true;
    await this.#writeAll();
    this.#isWriting = false;
  }

  async #writeAll(): Promise<void> {
    if (this.#store.desk().saving.state === "conflict") return;
    try {
      if (this.#organDue()) await this.#writeOrgan();
      if (this.#store.desk().saving.state !== "conflict") await this.#writePiece();
      const { state } = this.#store.desk().saving;
      if (state !== "conflict" && state !== "saved" && !this.#isDue()) this.#store.set({ saving: { state: "saved" } });
    } catch (thrown) {
      this.#store.set({ saving: { state: "failed", words: troubleWords(thrown) } });
    }
  }

  async #writeOrgan(): Promise<void> {
    const text = this.#store.work.organ as string;
    const file = this.#store.desk().organFile;
    if (!file || file.demo) {
      const name = organOf(text).instrument?.name ?? "Organ";
      const made = await this.#store.host.create({ kind: "instrument", name, text });
      this.#store.set({ organFile: { id: made.id, version: made.version, text, demo: false } });
      return;
    }
    const result = await this.#store.host.save({ id: file.id, text, seen: file.version });
    if (result.done === "saved") this.#store.set({ organFile: { ...file, text, version: result.version } });
    else this.#store.set({ saving: { state: "conflict", of: "organ", now: result.now } });
  }

  async #writePiece(): Promise<void> {
    const due = this.#pieceDue();
    if (due === null) return;
    if ("refused" in due) {
      this.#store.set({ saving: { state: "failed", words: due.refused } });
      return;
    }
    const { text } = due;
    const { organ, piece } = this.#store.work;
    const { pieceFile } = this.#store.desk();
    const instrument = organ === null ? null : organOf(organ).instrument;
    if (!instrument) return;
    if (!pieceFile) {
      const name = piece.title === "" ? `Untitled, ${instrument.name}` : piece.title;
      const made = await this.#store.host.create({ kind: "piece", name, text });
      this.#store.set({ pieceFile: { id: made.id, version: made.version, text, demo: false, piece } });
      if (this.#store.work.pieceBase === null) this.#store.amend({ pieceBase: { text, piece } });
      return;
    }
    const result = await this.#store.host.save({ id: pieceFile.id, text, seen: pieceFile.version });
    if (result.done === "saved") {
      this.#store.set({ pieceFile: { ...pieceFile, text, version: result.version, piece } });
    } else this.#store.set({ saving: { state: "conflict", of: "piece", now: result.now } });
  }

  /** Another hand wrote. What was not changed here meanwhile is taken over, as a step that can be undone. */
  async #told(changes: readonly LibraryChange[]): Promise<void> {
    await this.#writing;
    const { organFile, pieceFile } = this.#store.desk();
    // None at all: something may have changed unheard.
    const concerns = (id: DocumentId): boolean => changes.length === 0 || changes.some((change) => change.id === id);
    if (organFile && concerns(organFile.id)) await this.#reread("organ", organFile.id);
    if (pieceFile && concerns(pieceFile.id)) await this.#reread("piece", pieceFile.id);
  }

  async #reread(of: "organ" | "piece", id: DocumentId): Promise<void> {
    const now = await this.#store.host.read(id).catch(() => null);
    const desk = this.#store.desk();
    const file = of === "organ" ? desk.organFile : desk.pieceFile;
    if (!file || now?.version === file.version) return;
    const isDue = of === "organ" ? this.#organDue() : this.#pieceDue() !== null;
    if (!now || isDue) this.#store.set({ saving: { state: "conflict", of, now } });
    else takeOver(this.#store, of, now.text, now.version);
  }
}

/** Puts on the desk what another program has written, as a step that can be undone. */
export function takeOver(store: Store, of: "organ" | "piece", text: string, version: string): void {
  const { organFile, pieceFile } = store.desk();
  if (of === "organ") {
    store.set({ organFile: organFile && { ...organFile, text, version }, saving: { state: "saved" } });
    store.act("what another program wrote", (draft) => {
      draft.organ = text;
    });
    return;
  }
  const { organ } = store.work;
  const instrument = organ === null ? null : organOf(organ).instrument;
  const { base, troubles } = openPieceText(text, "the piece", instrument);
  if (!base) {
    const words = `Another program wrote this piece, and it cannot be read so. ${troubles.map(troubleLine).join(" ")}`;
    store.set({ saving: { state: "failed", words } });
    return;
  }
  const { piece } = base;
  store.set({ pieceFile: pieceFile && { ...pieceFile, text, version, piece }, saving: { state: "saved" } });
  store.act("what another program wrote", (draft) => {
    Object.assign(draft, { piece, pieceBase: base, at: Math.min(draft.at, Math.max(0, piece.sections.length - 1)) });
  });
}

/** Keeps what the desk has in spite of what another program wrote: the next write goes over that, which was seen now. */
export function keepMine(store: Store): void {
  const { saving, organFile, pieceFile } = store.desk();
  if (saving.state !== "conflict") return;
  const { now } = saving;
  if (saving.of === "organ") {
    // A file that is gone is made anew.
    store.set({ organFile: now && organFile && { ...organFile, text: now.text, version: now.version } });
  } else {
    const { organ } = store.work;
    const read = now && openPieceText(now.text, "the piece", organ === null ? null : organOf(organ).instrument);
    store.set({
      pieceFile: now && pieceFile && { ...pieceFile, text: now.text, version: now.version },
    });
    if (read?.base) store.amend({ pieceBase: read.base });
  }
  store.set({ saving: { state: "waiting" } });
}
