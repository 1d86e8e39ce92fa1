import { useSyncExternalStore } from "react";

/** How a person likes to read: kept by this window's own store, apart from the documents. */
export interface Settings {
  readonly theme: "paper" | "loft";
  /** Per cent, one of {@link ZOOMS}. */
  readonly zoom: number;
}

const ZOOMS = [80, 90, 100, 110, 125, 150, 175, 200] as const;

const KEY = "registrant-reading";

function kept(): Settings {
  const usual: Settings = { theme: "paper", zoom: 100 };
  try {
    const said: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    if (typeof said !== "object" || said === null) return usual;
    const theme = "theme" in said && said.theme === "loft" ? "loft" : "paper";
    const zoom = ("zoom" in said && ZOOMS.find((each) => each === said.zoom)) || 100;
    return { theme, zoom };
  } catch {
    // A window without a store of its own, or one with something else in it: nothing is lost but a preference.
    return usual;
  }
}

let current: Settings | null = null;
const listeners = new Set<() => void>();

const settings = (): Settings => {
  current ??= kept();
  return current;
};

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** Changes how the book is read, at once and for the next time. */
function setSettings(change: Partial<Settings>): void {
  current = { ...settings(), ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(current));
  } catch {
    // As above: it holds for this window then.
  }
  for (const listener of listeners) listener();
}

/** One step larger (1), smaller (-1), or back to the usual size (0). */
export function zoomBy(direction: -1 | 0 | 1): void {
  if (direction === 0) {
    setSettings({ zoom: 100 });
    return;
  }
  const at = (ZOOMS as readonly number[]).indexOf(settings().zoom);
  setSettings({ zoom: ZOOMS[Math.max(0, Math.min(ZOOMS.length - 1, at + direction))] ?? 100 });
}

/** The other light. */
export const changeTheme = (): void => setSettings({ theme: settings().theme === "paper" ? "loft" : "paper" });

/** How the book is read now. */
export const useSettings = (): Settings => useSyncExternalStore(subscribe, settings);
