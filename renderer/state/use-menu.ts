import { useEffect } from "react";
import type { DocumentId, MenuCommand } from "../../shared-model/host-api.ts";
import { openDocument, openFolder } from "./opening.ts";
import { changeTheme, zoomBy } from "./settings.ts";
import type { Store } from "./store.ts";
import { findOnPage, isText } from "./use-keys.ts";
import { useDesk, useStore } from "./use-store.tsx";

/** Within a text undo and redo are the text's own; the browser keeps them. */
const inText = (what: "undo" | "redo", otherwise: () => void): void => {
  if (isText(document.activeElement)) document.execCommand(what);
  else otherwise();
};

/** What each command does; a command that nobody has thought of does not compile. */
const DOES: Readonly<Record<MenuCommand, (store: Store, document: DocumentId | null) => void>> = {
  "new-organ": (store) => store.turnTo("first"),
  "open-document": (store, document) => {
    if (document !== null) void openDocument(store, document);
  },
  "open-folder": (store) => void openFolder(store),
  undo: (store) => inText("undo", () => store.undo()),
  redo: (store) => inText("redo", () => store.redo()),
  find: () => void findOnPage(),
  "print-cards": (store) => store.turnTo(store.work.organ === null ? "first" : "cards"),
  "zoom-in": () => zoomBy(1),
  "zoom-out": () => zoomBy(-1),
  "zoom-usual": () => zoomBy(0),
  theme: () => changeTheme(),
  about: (store) => store.turnTo("about"),
};

/** Does what is chosen in the window's own menu, where there is one, and tells the host which organ lies open. */
export function useMenu(): void {
  const store = useStore();
  const { organFile } = useDesk();
  const organ = organFile?.id ?? null;
  useEffect(() => store.host.onMenu((command, document) => DOES[command](store, document)), [store]);
  useEffect(() => {
    // A list of recent organs that lacks one is no trouble worth a word.
    if (organ !== null) store.host.opened(organ).catch(() => {});
  }, [store, organ]);
}
