import { useEffect, useMemo, useState } from "react";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { modelWorker } from "../registrations/model-worker.ts";
import { Reckoner } from "../registrations/reckoner.ts";
import { pieceTextAfter } from "../state/piece-text.ts";
import { useDesk } from "../state/use-store.tsx";
import type { CardsAnswer, CardsAsk } from "./cards-ask.ts";
import type { PrintForm } from "./printing.ts";

/** Plans the piece and sets its pages. */
const setter = new Reckoner<CardsAsk, CardsAnswer>(modelWorker);
/** Writes PDF, apart from the pages that are looked at meanwhile. */
const printer = new Reckoner<CardsAsk, CardsAnswer>(modelWorker);

/** How planning and setting stand. */
export type Cards =
  | { readonly state: "setting" }
  | { readonly state: "failed"; readonly words: string }
  | { readonly state: "done"; readonly answer: CardsAnswer };

/** The text of the piece as the desk has it; words when it cannot be written. */
function usePieceText(instrument: Instrument): { readonly text: string | null; readonly words: string } {
  const { piece, pieceBase } = useDesk().history.value;
  return useMemo(() => {
    const { text, troubles } = pieceTextAfter(pieceBase, piece, instrument);
    return { text, words: troubles.map(troubleLine).join(" ") };
  }, [pieceBase, piece, instrument]);
}

/** The piece planned as it is registered, and with a form its pages; reckoned anew when the desk changes, if it is wanted. */
export function useCards(instrument: Instrument, form: PrintForm | null, isWanted = true): Cards {
  const { history } = useDesk();
  const organ = history.value.organ ?? "";
  const { text, words } = usePieceText(instrument);
  const key = JSON.stringify([organ, text, form]);
  const [told, setTold] = useState<{ readonly key: string; readonly cards: Cards } | null>(null);
  const known = setter.known(key);

  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for all that is asked.
  useEffect(() => {
    if (!isWanted || text === null || setter.known(key)) return undefined;
    const ask: CardsAsk = form ? { wants: "pages", organ, piece: text, form } : { wants: "cards", organ, piece: text };
    setter.ask(key, ask, (reply) => {
      const cards: Cards =
        "answer" in reply ? { state: "done", answer: reply.answer } : { state: "failed", words: reply.fault };
      setTold({ key, cards });
    });
    return () => setter.stop();
  }, [key, isWanted]);

  if (text === null) return { state: "failed", words };
  if (known) return { state: "done", answer: known };
  return told?.key === key ? told.cards : { state: "setting" };
}

/** Makes the PDF of what is on the page. */
export function usePdf(instrument: Instrument): (form: PrintForm) => Promise<Uint8Array> {
  const { history } = useDesk();
  const { text, words } = usePieceText(instrument);
  const organ = history.value.organ ?? "";
  return (form) =>
    new Promise((done, fail) => {
      if (text === null) {
        fail(new Error(words));
        return;
      }
      const key = JSON.stringify(["pdf", organ, text, form]);
      const known = printer.known(key)?.pdf;
      if (known) {
        done(known);
        return;
      }
      printer.ask(key, { wants: "pdf", organ, piece: text, form }, (reply) => {
        if ("answer" in reply && reply.answer.pdf) done(reply.answer.pdf);
        else fail(new Error("answer" in reply ? reply.answer.troubles.join(" ") : reply.fault));
      });
    });
}
