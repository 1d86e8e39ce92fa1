import { fileAtSight } from "../entering/from-list.ts";
import { type KeptEntry, keepEntry } from "./kept-entry.ts";
import { organOf } from "./organ.ts";
import { openPieceText, pieceTextAfter } from "./piece-text.ts";
import type { Page } from "./place.ts";
import type { Store } from "./store.ts";
import { EMPTY_WORK, isAtSight, isBegun, type Work } from "./work.ts";

const NO_FILES = { organFile: null, pieceFile: null } as const;

/**
 * Looks at an organ at sight, from a printed list to its survey, with nothing saved. A list of which nothing can be made yet
 * is entered as any other.
 */
export async function lookAtList(store: Store, text: string): Promise<void> {
  if (!(await store.leave())) return;
  const entry = { text, answers: {} };
  const organ = fileAtSight(entry);
  store.lay({ ...EMPTY_WORK, organ, entry }, NO_FILES, organ === null ? "organ" : "survey");
}

/** Keeps an organ that was only looked at: its list is put away, and the file is written from then on. */
export function keepOrgan(store: Store, file: string): void {
  store.act("keeping this organ", (draft) => {
    draft.organ = file;
    draft.entry = null;
  });
}

/** The text of a piece that was begun on an organ at sight; empty while there is none, or none that can be written. */
function pieceText({ organ, piece }: Work): string {
  const instrument = organ === null ? null : organOf(organ).instrument;
  return instrument && isBegun(piece) ? (pieceTextAfter(null, piece, instrument).text ?? "") : "";
}

/** Keeps lists and what is looked at through reloads of the window. Returns what is to be called at every change. */
export function keepingAtSight(store: Store): () => void {
  let last: Work | null = null;
  return () => {
    const { work } = store;
    if (work === last) return;
    last = work;
    const { entry } = work;
    keepEntry(entry && { entry, piece: isAtSight(work) ? pieceText(work) : null });
  };
}

/** Puts on the desk what {@link keepingAtSight} kept. */
export function layKept(store: Store, { entry, piece: text }: KeptEntry, page: Page, at: number): void {
  const organ = text === null ? null : fileAtSight(entry);
  const instrument = organ === null ? null : organOf(organ).instrument;
  const piece = text && instrument ? openPieceText(text, "the piece", instrument).base?.piece : null;
  const work = { ...EMPTY_WORK, entry, organ, ...(piece && piece.sections.length > 0 && { piece }) };
  store.lay({ ...work, at: Math.min(at, work.piece.sections.length - 1) }, NO_FILES, organ === null ? "organ" : page);
}
