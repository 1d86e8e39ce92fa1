import { useEffect, useState } from "react";
import type { LibraryEntry } from "../../shared-model/host-api.ts";
import { modelWorker } from "../registrations/model-worker.ts";
import { Reckoner } from "../registrations/reckoner.ts";
import { useStore } from "../state/use-store.tsx";
import type { SuitsAnswer, SuitsAsk } from "./suiting.ts";

/** The one worker that weighs pieces against an organ. */
const weigher = new Reckoner<{ readonly wants: "suits" } & SuitsAsk, SuitsAnswer>(modelWorker);

/** A piece of the library with how it suits an organ. */
export interface SuitedEntry {
  readonly entry: LibraryEntry;
  readonly share: number;
  readonly text: string;
}

/** How far the pieces are weighed. */
export interface Suiting {
  /** The best first; a piece that is not weighed yet, or cannot be read, is not there. */
  readonly ranked: readonly SuitedEntry[];
  readonly done: number;
}

const NOTHING: Suiting = { ranked: [], done: 0 };

/** Weighs pieces of the library against an organ, one after the other; broken off when the page is left. `null` asks for nothing. */
export function useSuits(organ: string | null, entries: readonly LibraryEntry[]): Suiting {
  const store = useStore();
  const key = organ === null ? null : JSON.stringify([organ, entries.map(({ id, changed }) => [id, changed])]);
  const [told, setTold] = useState<{ readonly key: string | null; readonly suiting: Suiting }>({
    key: null,
    suiting: NOTHING,
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for the organ and the entries.
  useEffect(() => {
    if (organ === null || key === null) return undefined;
    let there = true;
    let suiting = NOTHING;
    const weigh = async (at: number): Promise<void> => {
      const entry = entries[at];
      if (!entry) return;
      const piece = await store.host.read(entry.id).then(
        ({ text }) => text,
        // What cannot be read is not ranked; it says why when it is opened.
        () => null,
      );
      const next = (suits: SuitsAnswer["suits"]): void => {
        if (!there) return;
        const ranked = suits ? [...suiting.ranked, { entry, ...suits }] : suiting.ranked;
        suiting = { ranked: ranked.toSorted((a, b) => b.share - a.share), done: at + 1 };
        setTold({ key, suiting });
        void weigh(at + 1);
      };
      if (!there) return;
      if (piece === null) return next(null);
      const asked = JSON.stringify([organ, piece]);
      const known = weigher.known(asked);
      if (known) return next(known.suits);
      weigher.ask(asked, { wants: "suits", organ, piece }, (reply) =>
        next("answer" in reply ? reply.answer.suits : null),
      );
    };
    void weigh(0);
    return () => {
      there = false;
      weigher.stop();
    };
  }, [key]);
  return told.key === key ? told.suiting : NOTHING;
}
