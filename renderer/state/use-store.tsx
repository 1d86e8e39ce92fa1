import { createContext, type ReactNode, useContext, useSyncExternalStore } from "react";
import type { Desk, Store } from "./store.ts";
import type { DeskSection, Work } from "./work.ts";

const StoreContext = createContext<Store | null>(null);

/** Hands the store to every screen below. */
export function StoreProvider({ store, children }: { store: Store; children: ReactNode }) {
  return <StoreContext value={store}>{children}</StoreContext>;
}

/** The store itself, for acting. */
export function useStore(): Store {
  const store = useContext(StoreContext);
  if (!store) throw new Error("No store is provided above this screen.");
  return store;
}

/** The desk as it stands; the screen is drawn anew when it changes. */
export function useDesk(): Desk {
  const store = useStore();
  return useSyncExternalStore(store.subscribe, store.desk);
}

/** The document on the desk. */
export const useWork = (): Work => useDesk().history.value;

/** The section on the desk. */
export function useSection(): DeskSection {
  const { piece, at } = useWork();
  const section = piece.sections[at] ?? piece.sections[0];
  if (!section) throw new Error("A piece on the desk has a section always.");
  return section;
}
