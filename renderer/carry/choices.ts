import { useEffect, useMemo, useState } from "react";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { DocumentId } from "../../shared-model/host-api.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { organNamed, troubleWords } from "../state/opening.ts";
import { organOf } from "../state/organ.ts";
import { isSaid, pieceTextAfter } from "../state/piece-text.ts";
import { useStore, useWork } from "../state/use-store.tsx";

/** What lies open at the moment, as a choice beside documents of the library. */
export const ON_DESK = "desk";
/** A document of the library, what lies on the desk, or nothing yet. */
export type Choice = DocumentId | typeof ON_DESK | null;

/** Something that was chosen, read. */
export interface Chosen {
  readonly name: string;
  readonly text: string;
}

/** A piece and the organ it is registered on, or why there are none. */
export type ChosenPiece =
  | { readonly state: "none" | "reading" }
  | { readonly state: "failed"; readonly words: string }
  | { readonly state: "read"; readonly piece: Chosen; readonly from: Chosen };

/** The piece on the desk as its file would be; `null` while it has no section whose music is said. */
export function useDeskPiece(instrument: Instrument): ChosenPiece {
  const { organ, piece, pieceBase } = useWork();
  return useMemo(() => {
    if (organ === null || !piece.sections.some(isSaid)) return { state: "none" };
    const { text, troubles } = pieceTextAfter(pieceBase, piece, instrument);
    if (text === null) return { state: "failed", words: troubles.map(troubleLine).join(" ") };
    const name = piece.title === "" ? `Untitled, ${instrument.name}` : piece.title;
    return { state: "read", piece: { name, text }, from: { name: instrument.name, text: organ } };
  }, [organ, piece, pieceBase, instrument]);
}

/** Reads something that takes a moment; what was asked before and comes too late is passed over. */
function useRead<Value>(key: string | null, read: () => Promise<Value>): Value | null {
  const [told, setTold] = useState<{ readonly key: string; readonly value: Value } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for all that is read.
  useEffect(() => {
    if (key === null) return undefined;
    let there = true;
    read().then((value) => there && setTold({ key, value }));
    return () => {
      there = false;
    };
  }, [key]);
  return told !== null && told.key === key ? told.value : null;
}

/** A piece of the library, with the organ that it names. */
export function useLibraryPiece(id: DocumentId | null): ChosenPiece {
  const store = useStore();
  const read = async (): Promise<ChosenPiece> => {
    try {
      const { text } = await store.host.read(id ?? "");
      const { piece, troubles } = readPieceFile(text, "the piece", null);
      if (!piece) return { state: "failed", words: troubles.map(troubleLine).join(" ") };
      if (piece.organ === null)
        return {
          state: "failed",
          words: "This piece does not say on which organ it is registered. Open that organ, and begin the piece there.",
        };
      const organ = await organNamed(store, piece.organ);
      if (organ === null)
        return {
          state: "failed",
          words: `The organ of this piece, ${piece.organ}, is not in the library. Enter it, or put its file there.`,
        };
      const from = { name: piece.organ, text: (await store.host.read(organ)).text };
      return { state: "read", piece: { name: piece.name ?? "Untitled", text }, from };
    } catch (thrown) {
      return { state: "failed", words: troubleWords(thrown) };
    }
  };
  const told = useRead(id, read);
  return id === null ? { state: "none" } : (told ?? { state: "reading" });
}

/** An organ of the library, or words about what is wrong with it; `null` while it is being read, or none is chosen. */
export function useLibraryOrgan(id: DocumentId | null): Chosen | { readonly trouble: string } | null {
  const store = useStore();
  return useRead(id, async () => {
    try {
      const { text } = await store.host.read(id ?? "");
      const { instrument, troubles } = organOf(text);
      return instrument ? { name: instrument.name, text } : { trouble: troubles.map(troubleLine).join(" ") };
    } catch (thrown) {
      return { trouble: troubleWords(thrown) };
    }
  });
}
