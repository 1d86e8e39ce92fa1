import type { DocumentId, HostTrouble } from "../../shared-model/host-api.ts";
import type { Place } from "./place.ts";
import type { Filed, Store } from "./store.ts";
import { EMPTY_WORK } from "./work.ts";

/** Words of a trouble that a host told; anything else that was thrown is a fault of ours and says so. */
export function troubleWords(thrown: unknown): string {
  if (typeof thrown === "object" && thrown !== null && "words" in thrown) return (thrown as HostTrouble).words;
  const what = thrown instanceof Error ? thrown.message : String(thrown);
  return `Something went wrong in Registrant itself (${what}). Nothing of yours is lost; try once more.`;
}

/** Whether a document is one of the demo organs, which are read and never written. */
const isDemo = (id: DocumentId): boolean => id.startsWith("demo:");

async function filed(store: Store, id: DocumentId): Promise<Filed> {
  const { text, version } = await store.host.read(id);
  return { id, text, version, demo: isDemo(id) };
}

/** Opens an organ on an empty desk and turns to the textures. */
export async function openOrgan(store: Store, id: DocumentId): Promise<void> {
  try {
    const organFile = await filed(store, id);
    store.lay({ ...EMPTY_WORK, organ: organFile.text }, { organFile, pieceFile: null }, "texture");
  } catch (thrown) {
    store.set({ trouble: troubleWords(thrown) });
  }
}

/** Begins to enter an organ from a printed list. */
export function enterList(store: Store, text: string): void {
  store.lay({ ...EMPTY_WORK, entry: { text, answers: {} } }, { organFile: null, pieceFile: null }, "organ");
}

/** Comes back to where an address says the person was. */
export async function openPlace(store: Store, place: Place): Promise<void> {
  if (place.organ === null) {
    if (place.page === "about") store.turnTo("about");
    return;
  }
  try {
    const organFile = await filed(store, place.organ);
    store.lay({ ...EMPTY_WORK, organ: organFile.text }, { organFile, pieceFile: null }, place.page);
  } catch (thrown) {
    store.set({ trouble: troubleWords(thrown) });
  }
}
