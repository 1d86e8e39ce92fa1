import { fileKindOf } from "../../shared-model/files/file-kind.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { DocumentId, HostTrouble } from "../../shared-model/host-api.ts";
import { layKept } from "./at-sight.ts";
import { keptEntry } from "./kept-entry.ts";
import { organOf } from "./organ.ts";
import { openPieceText } from "./piece-text.ts";
import type { Place } from "./place.ts";
import type { Filed, Store } from "./store.ts";
import { EMPTY_WORK } from "./work.ts";

/** Words of a trouble that a host told; anything else that was thrown is a fault of ours and says so. */
export function troubleWords(thrown: unknown): string {
  if (typeof thrown === "object" && thrown !== null && "words" in thrown) return (thrown as HostTrouble).words;
  const what = thrown instanceof Error ? thrown.message : String(thrown);
  return `Something went wrong in Registrant itself (${what}). Nothing of yours is lost; try once more.`;
}

const isDemo = (id: DocumentId): boolean => id.startsWith("demo:");

async function filed(store: Store, id: DocumentId): Promise<Filed> {
  const { text, version } = await store.host.read(id);
  return { id, text, version, demo: isDemo(id) };
}

/** Leaves the desk and does something that a host may refuse; what it says then stands on the page. */
async function tryTo(store: Store, act: () => Promise<void>): Promise<void> {
  try {
    if (await store.leave()) await act();
  } catch (thrown) {
    store.set({ trouble: troubleWords(thrown) });
  }
}

/** Puts an organ on an empty desk. */
async function layOrgan(store: Store, id: DocumentId, page: Place["page"]): Promise<void> {
  const organFile = await filed(store, id);
  store.lay({ ...EMPTY_WORK, organ: organFile.text }, { organFile, pieceFile: null }, page);
}

/** Begins to enter an organ from a printed list. */
export async function enterList(store: Store, text: string): Promise<void> {
  if (!(await store.leave())) return;
  store.lay({ ...EMPTY_WORK, entry: { text, answers: {} } }, { organFile: null, pieceFile: null }, "organ");
}

/** The organ in the library, else among the demo organs, that calls itself so; `null` when there is none. */
export async function organNamed(store: Store, name: string): Promise<DocumentId | null> {
  const entries = (await store.host.list()).filter((each) => each.kind === "instrument" && each.name === name);
  return (entries.find((each) => !each.demo) ?? entries[0])?.id ?? null;
}

/** Puts a piece and the organ it was registered on (or the one given) on the desk. */
async function layPiece(store: Store, id: DocumentId, organ: DocumentId | null, place: Omit<Place, "organ" | "piece">) {
  const pieceFile = await filed(store, id);
  const said = readPieceFile(pieceFile.text, id, null);
  if (!said.piece) {
    store.set({ trouble: said.troubles.map(troubleLine).join(" ") });
    return;
  }
  const organId = organ ?? (said.piece.organ === null ? null : await organNamed(store, said.piece.organ));
  if (organId === null) {
    const name = said.piece.organ;
    store.set({
      trouble:
        name === null
          ? "This piece does not say on which organ it is to be played. Open the organ, and begin the piece there."
          : `The organ of this piece, ${name}, is not in the library. Enter it, or put its file there.`,
    });
    return;
  }
  const organFile = await filed(store, organId);
  const { instrument } = organOf(organFile.text);
  const { base, troubles, otherOrgan } = openPieceText(pieceFile.text, id, instrument);
  if (!base) {
    store.set({ trouble: troubles.map(troubleLine).join(" ") });
    return;
  }
  const sections = base.piece.sections.length > 0 ? base.piece.sections : EMPTY_WORK.piece.sections;
  // A piece that was registered on another organ stays as it is; here it begins as a new one.
  const isOwn = otherOrgan === null;
  const title = isOwn ? base.piece.title : `${base.piece.title}, ${instrument?.name ?? ""}`;
  const piece = { ...base.piece, title, sections };
  store.lay(
    {
      organ: organFile.text,
      entry: null,
      piece,
      pieceBase: isOwn ? base : null,
      at: Math.min(place.at, sections.length - 1),
    },
    { organFile, pieceFile: isOwn ? { ...pieceFile, piece } : null },
    place.page,
  );
}

/** Opens a document of the library by its kind. */
export const openDocument = (store: Store, id: DocumentId): Promise<void> =>
  tryTo(store, async () => {
    const { text } = await store.host.read(id);
    if (fileKindOf(text) === "piece") await layPiece(store, id, null, { page: "piece", at: 0 });
    else await layOrgan(store, id, "texture");
  });

/** Asks for another folder as the library; the first page then shows what is in it. */
export const openFolder = (store: Store): Promise<void> =>
  tryTo(store, async () => {
    if (await store.host.chooseLibrary()) store.lay(EMPTY_WORK, { organFile: null, pieceFile: null }, "first");
  });

/** Comes back to where an address says the person was. */
export const openPlace = (store: Store, place: Place): Promise<void> =>
  tryTo(store, async () => {
    if (place.piece !== null) await layPiece(store, place.piece, place.organ, place);
    else if (place.organ !== null) await layOrgan(store, place.organ, place.page);
    else if (place.page === "about") store.turnTo("about");
    else {
      const kept = keptEntry();
      if (kept && (kept.piece !== null || place.page === "organ")) layKept(store, kept, place.page, place.at);
    }
  });
