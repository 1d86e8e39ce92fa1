import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { lookAtList } from "../../renderer/state/at-sight.ts";
import { Autosave } from "../../renderer/state/autosave.ts";
import { enterList, openDocument, openFolder } from "../../renderer/state/opening.ts";
import { Store } from "../../renderer/state/store.ts";
import type { DocumentId, Host, HostTrouble, SaveRequest } from "../../shared-model/host-api.ts";

const ORGAN = readFileSync(join(import.meta.dirname, "..", "..", "instruments", "sallowby.yaml"), "utf8");
const PIECE = `registrant: piece/1
name: Lantern Partita
organ: All Saints, Sallowby
sections:
  - name: First verse
    texture: melody-over-accompaniment
`;

/** A library in memory, whose disk may be full. */
class Shelf {
  readonly texts = new Map<DocumentId, string>([
    ["library:organs/sallowby.yaml", ORGAN],
    ["library:pieces/lantern.yaml", PIECE],
  ]);
  isFull = false;

  readonly host = {
    watch: () => () => undefined,
    list: async () => [{ id: "library:organs/sallowby.yaml", kind: "instrument", name: "All Saints, Sallowby" }],
    read: async (id: DocumentId) => ({ id, text: this.texts.get(id), version: `${this.texts.get(id)}` }),
    save: async ({ id, text }: SaveRequest) => {
      if (this.isFull) throw { code: "disk", words: "The disk is full." } as unknown as HostTrouble;
      this.texts.set(id, text);
      return { done: "saved", version: text };
    },
    chooseLibrary: async () => {
      this.texts.clear();
      return {};
    },
  } as unknown as Host;
}

let shelf: Shelf;
let store: Store;
let end: () => void;

beforeEach(async () => {
  shelf = new Shelf();
  store = new Store(shelf.host);
  end = new Autosave(store).start();
  await openDocument(store, "library:pieces/lantern.yaml");
});
afterEach(() => end());

const title = (words: string): void =>
  store.act("the name of the piece", (draft) => {
    draft.piece.title = words;
  });
const kept = (): string => shelf.texts.get("library:pieces/lantern.yaml") ?? "";

describe("what was changed a moment before other documents are opened", () => {
  const ways: readonly (readonly [string, () => Promise<void>])[] = [
    ["a list to be entered", () => enterList(store, "Manual: Gedackt 8")],
    ["a list to be looked at", () => lookAtList(store, "Manual: Gedackt 8")],
    ["an organ", () => openDocument(store, "library:organs/sallowby.yaml")],
  ];
  test.each(ways)("is written before %s takes the desk", async (_, open) => {
    title("Harbour Partita");
    await open();
    expect(kept()).toBe(PIECE.replace("Lantern", "Harbour"));
    expect(store.desk().pieceFile).toBeNull();
    expect(store.desk().saving.state).toBe("saved");
  });

  test("is there when the same piece is opened again", async () => {
    title("Harbour Partita");
    await openDocument(store, "library:pieces/lantern.yaml");
    expect(store.work.piece.title).toBe("Harbour Partita");
    title("Evening Partita");
    await store.leave();
    expect(kept()).toContain("name: Evening Partita");
  });

  test("is written into the library that it came from", async () => {
    title("Harbour Partita");
    const before = new Map(shelf.texts);
    shelf.texts.clear = () => {
      expect(kept()).toContain("Harbour");
    };
    await openFolder(store);
    expect([...shelf.texts.keys()]).toEqual([...before.keys()]);
  });

  test("stays on the desk when it cannot be written, and undo sets the desk free", async () => {
    shelf.isFull = true;
    title("Harbour Partita");
    await openDocument(store, "library:organs/sallowby.yaml");
    expect(store.work.piece.title).toBe("Harbour Partita");
    expect(store.desk().saving).toEqual({ state: "failed", words: "The disk is full." });
    expect(store.desk().trouble).toMatch(/^What lies open is not saved yet/);
    store.undo();
    await openDocument(store, "library:organs/sallowby.yaml");
    expect(store.desk().pieceFile).toBeNull();
    expect(kept()).toBe(PIECE);
  });
});

test("a piece that could not be written says so no longer once it was", async () => {
  shelf.isFull = true;
  title("Harbour Partita");
  await store.leave();
  expect(store.desk().saving.state).toBe("failed");
  shelf.isFull = false;
  title("Evening Partita");
  await store.leave();
  expect(store.desk().saving.state).toBe("saved");
  expect(kept()).toContain("Evening");
});
