import { type FSWatcher, watch } from "node:fs";

/** Milliseconds: writers need a moment to end, and a burst of events is one change. */
const CALM = 120;
/** Milliseconds: folders on a network tell nothing, so everything is looked at now and then. */
const ROUND = 4000;

/** Calls when something in folders may have changed. */
export interface Watcher {
  /** The folders to listen at from now on. */
  readonly listenAt: (folders: readonly string[]) => void;
  readonly end: () => void;
}

/** Begins to listen: to what the system tells of folders, and every few seconds in case it does not. */
export function startWatcher(look: () => void): Watcher {
  const listening = new Map<string, FSWatcher>();
  let soon: NodeJS.Timeout | null = null;
  const stir = (): void => {
    soon ??= setTimeout(() => {
      soon = null;
      look();
    }, CALM).unref();
  };
  const round = setInterval(look, ROUND).unref();
  const leave = (folder: string): void => {
    listening.get(folder)?.close();
    listening.delete(folder);
  };
  const listen = (folder: string): void => {
    try {
      const watcher = watch(folder, { persistent: false }, stir);
      watcher.on("error", () => leave(folder));
      listening.set(folder, watcher);
    } catch {
      // Too many watched already, or gone: the round finds it.
    }
  };
  return {
    listenAt(folders) {
      for (const folder of [...listening.keys()]) if (!folders.includes(folder)) leave(folder);
      for (const folder of folders) if (!listening.has(folder)) listen(folder);
    },
    end() {
      clearInterval(round);
      if (soon) clearTimeout(soon);
      for (const folder of [...listening.keys()]) leave(folder);
    },
  };
}
