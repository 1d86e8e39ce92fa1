import type { Draft } from "immer";
import type { DocumentId, Host, StoredDocument, Version } from "../../shared-model/host-api.ts";
import { amended, type History, historyOf, redone, stepped, undone } from "./history.ts";
import { type Place, START } from "./place.ts";
import { type DeskPiece, EMPTY_WORK, type Work } from "./work.ts";

/** A document of the desk as the library holds it. */
export interface Filed {
  readonly id: DocumentId;
  readonly version: Version;
  /** Text last read or written. */
  readonly text: string;
  /** Demo organs can be read, not saved. */
  readonly demo: boolean;
}

/** The file of the piece, with the very value of the desk that it holds: another one may be due to be written. */
export interface FiledPiece extends Filed {
  readonly piece: DeskPiece;
}

/** Where a file on the desk stands with the library. */
export type Saving =
  | { readonly state: "saved" }
  | { readonly state: "waiting" }
  | { readonly state: "failed"; readonly words: string }
  /** Somebody else wrote the file; `now` is what stands there, `null` when it is gone. */
  | { readonly state: "conflict"; readonly of: "organ" | "piece"; readonly now: StoredDocument | null };

/** All that the screens show: the document with its past, and what undo does not reach. */
export interface Desk {
  readonly history: History<Work, Place["page"]>;
  readonly page: Place["page"];
  readonly organFile: Filed | null;
  readonly pieceFile: FiledPiece | null;
  readonly saving: Saving;
  /** A trouble to be shown on the page where it arose, in words for an organist; `null` when there is none. */
  readonly trouble: string | null;
}

const EMPTY_DESK: Desk = {
  history: historyOf(EMPTY_WORK),
  page: START.page,
  organFile: null,
  pieceFile: null,
  saving: { state: "saved" },
  trouble: null,
};

/** Holds the desk and tells who listens. There is one in the app; tests make their own. */
export class Store {
  #desk: Desk = EMPTY_DESK;
  readonly #listeners = new Set<() => void>();
  #writeAll: () => Promise<void> = () => Promise.resolve();
  readonly host: Host;

  constructor(host: Host) {
    this.host = host;
  }

  readonly desk = (): Desk => this.#desk;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  get work(): Work {
    return this.#desk.history.value;
  }

  /** Changes what undo does not reach. */
  set(change: Partial<Desk>): void {
    this.#desk = { ...this.#desk, ...change };
    for (const listener of this.#listeners) listener();
  }

  /**
   * One step of the person's work.
   *
   * @param words what undo will say it takes back: `drawing Oboe 8`.
   * @param run steps of the same run are taken back together.
   */
  act(words: string, recipe: (draft: Draft<Work>) => void, run: string | null = null): void {
    const history = stepped(this.#desk.history, words, this.#desk.page, recipe, run);
    if (history !== this.#desk.history) this.set({ history, trouble: null });
  }

  /** Changes the work without a step, where there is nothing of the person's to be taken back. */
  amend(change: Partial<Work>): void {
    this.set({ history: amended(this.#desk.history, change) });
  }

  /** Says how everything that waits to be written is written now. */
  writesBy(writeAll: () => Promise<void>): void {
    this.#writeAll = writeAll;
  }

  /**
   * Makes the desk free for other documents: what waits to be written is written. What cannot be stays where it is, and the
   * person is told.
   *
   * @returns whether other documents may be laid on the desk.
   */
  async leave(): Promise<boolean> {
    if (this.#desk.saving.state !== "saved") await this.#writeAll();
    if (this.#desk.saving.state === "saved") return true;
    this.set({ trouble: "What lies open is not saved yet: see above. Settle that first, or undo it; then go on." });
    return false;
  }

  /** Puts other documents on the desk, which was left before; their past begins now. */
  lay(work: Work, files: Pick<Desk, "organFile" | "pieceFile">, page: Place["page"]): void {
    this.set({ history: historyOf(work), ...files, page, saving: { state: "saved" }, trouble: null });
  }

  undo(): void {
    const step = undone(this.#desk.history);
    if (step) this.set({ history: step.history, page: step.where, trouble: null });
  }

  redo(): void {
    const step = redone(this.#desk.history);
    if (step) this.set({ history: step.history, page: step.where, trouble: null });
  }

  /** Turns to another page. */
  turnTo(page: Place["page"]): void {
    this.set({ page, trouble: null });
  }
}
