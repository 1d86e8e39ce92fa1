import { useEffect } from "react";
import { zoomBy } from "./settings.ts";
import { useStore } from "./use-store.tsx";

/** Whether what has the focus is a text being written. */
export const isText = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.matches("textarea, input:not([type=radio])") || target.isContentEditable);

/** Puts the focus where one finds on this page; tells whether there is such a place. */
export function findOnPage(): boolean {
  const place = document.getElementById("find-texture");
  place?.focus();
  return place !== null;
}

/** The keys that hold on every page: undo, redo, size of print, find. */
export function useKeys(): void {
  const store = useStore();
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      // Within a text the keys belong to the text, its own undo above all.
      const inText = isText(event.target);
      if (key === "z" && !inText) {
        if (event.shiftKey) store.redo();
        else store.undo();
      } else if (key === "y" && !inText) store.redo();
      else if (key === "+" || key === "=") zoomBy(1);
      else if (key === "-") zoomBy(-1);
      else if (key === "0") zoomBy(0);
      else if (key !== "f" || !findOnPage()) return;
      event.preventDefault();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [store]);
}
