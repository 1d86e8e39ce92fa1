import { useEffect, useState } from "react";
import type { LibraryEntry } from "../../shared-model/host-api.ts";
import { troubleWords } from "./opening.ts";
import { useStore } from "./use-store.tsx";

/**
 * Every document of the library, looked up anew when the library changes; `null` before it is known. Trouble is shown on
 * the page.
 *
 * @param round another number looks into the library again, as after its folder was opened.
 */
export function useLibrary(round = 0): readonly LibraryEntry[] | null {
  const store = useStore();
  const [entries, setEntries] = useState<readonly LibraryEntry[] | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another round looks into the library again.
  useEffect(() => {
    let there = true;
    const look = (): void => {
      store.host.list().then(
        (found) => there && setEntries(found),
        (thrown) => there && store.set({ trouble: troubleWords(thrown) }),
      );
    };
    look();
    const end = store.host.watch(look);
    return () => {
      there = false;
      end();
    };
  }, [store, round]);
  return entries;
}
