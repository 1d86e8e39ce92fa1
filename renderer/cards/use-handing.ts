import { useState } from "react";
import { troubleWords } from "../state/opening.ts";
import { useStore } from "../state/use-store.tsx";

/** How a PDF is handed over, and what is to be said of it. */
export interface Handing {
  /** Words while it is being made, else `null`. */
  readonly busy: string | null;
  readonly said: { readonly words: string; readonly trouble: boolean } | null;
  /** Opens it where it is looked at and printed, or hands it over as a file. */
  hand(way: "show" | "export"): Promise<void>;
}

/** A name that every system takes for a file. */
const fileName = (title: string): string => `${title.replace(/[\\/:*?"<>|]+/gu, " ").slice(0, 100)}.pdf`;

/** Has a PDF made and hands it to the person. `onHanded`: once that is done, and not when they thought better of it. */
export function useHanding(
  title: string,
  make: () => Promise<Uint8Array>,
  onHanded: () => Promise<void> = async () => {},
): Handing {
  const store = useStore();
  const [busy, setBusy] = useState<string | null>(null);
  const [said, setSaid] = useState<Handing["said"]>(null);
  const hand = async (way: "show" | "export"): Promise<void> => {
    const name = fileName(title);
    setBusy("making the PDF …");
    setSaid(null);
    try {
      const bytes = await make();
      if (way === "show") {
        await store.host.showPdf({ name, bytes });
        await onHanded();
      } else {
        const file = await store.host.exportFile({ name, bytes });
        if (file) await onHanded();
        if (file)
          setSaid({ words: file.where === null ? `${name} is saved.` : `Saved as ${file.where}.`, trouble: false });
      }
    } catch (thrown) {
      setSaid({ words: troubleWords(thrown), trouble: true });
    }
    setBusy(null);
  };
  return { busy, said, hand };
}
