import { useEffect, useState } from "react";
import type { PieceCards } from "../../shared-model/cards/piece-card.ts";
import { type PrintedSince, type PrintMark, printedNow, printedSince } from "../../shared-model/cards/print-marks.ts";
import { useDesk, useStore } from "../state/use-store.tsx";
import type { PrintForm } from "./printing.ts";

/** What the library knows of cards that were printed of the piece on the desk. */
export interface Printed {
  /** `null` where none were, or while nobody knows. */
  readonly since: PrintedSince | null;
  /** Notes that cards were handed out. A library that cannot note it is no reason to hold them back. */
  note(form: PrintForm): Promise<void>;
}

export function usePrinted(cards: PieceCards | null): Printed {
  const { host } = useStore();
  const id = useDesk().pieceFile?.id ?? null;
  const [known, setKnown] = useState<{ readonly id: string; readonly marks: readonly PrintMark[] } | null>(null);
  useEffect(() => {
    let isWanted = true;
    if (id !== null) {
      host.printed(id).then(
        (marks) => isWanted && setKnown({ id, marks }),
        () => {},
      );
    }
    return () => {
      isWanted = false;
    };
  }, [host, id]);
  const marks = known?.id === id ? known.marks : null;
  return {
    since: cards && marks && printedSince(marks, cards),
    note: async ({ parts, only }) => {
      if (id === null || !cards) return;
      const printed = printedNow(marks ?? [], cards, parts, only, Date.now());
      await host.notePrinted({ id, printed }).then(
        () => setKnown({ id, marks: printed }),
        () => {},
      );
    },
  };
}
