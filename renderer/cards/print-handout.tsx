import { useState } from "react";
import type { Handout } from "../../shared-model/cards/handout.ts";
import { PAPER_FORMS, type Paper } from "../../shared-model/cards/paper/paper.ts";
import { modelWorker } from "../registrations/model-worker.ts";
import { Reckoner } from "../registrations/reckoner.ts";
import { Act } from "../words/action.tsx";
import { TroubleNote } from "../words/trouble-note.tsx";
import type { HandoutAsk } from "./cards-ask.ts";
import { useHanding } from "./use-handing.ts";

/** Writes handouts as PDF, apart from whatever else is reckoned. */
const printer = new Reckoner<HandoutAsk, Uint8Array>(modelWorker);

const pdfFor = (handout: Handout, paper: Paper): Promise<Uint8Array> =>
  new Promise((done, fail) => {
    printer.ask(JSON.stringify([handout, paper]), { wants: "handout", handout, paper }, (reply) => {
      if ("answer" in reply) done(reply.answer);
      else fail(new Error(reply.fault));
    });
  });

/** Sheets that are read in the hand. */
const SHEETS: readonly Paper[] = ["a4", "letter", "a5"];

/** At the end of a page's opening: prints a handout, or saves it as PDF. */
export function PrintHandout({ handout }: { handout: Handout }) {
  const [paper, setPaper] = useState<Paper>("a4");
  const { busy, said, hand } = useHanding(handout.title, () => pdfFor(handout, paper));
  return (
    <>
      {(busy !== null || (said && !said.trouble)) && (
        <p className="note quiet" role="status">
          {busy ?? said?.words}
        </p>
      )}
      <select
        className="pick"
        aria-label="Paper"
        value={paper}
        onChange={({ target }) => setPaper(target.value as Paper)}
      >
        {SHEETS.map((each) => (
          <option key={each} value={each}>
            {PAPER_FORMS[each].name}
          </option>
        ))}
      </select>
      <Act second disabled={busy !== null} onClick={() => void hand("export")}>
        Save as PDF
      </Act>
      <Act second disabled={busy !== null} onClick={() => void hand("show")}>
        Print
      </Act>
      {said?.trouble && <TroubleNote>{said.words}</TroubleNote>}
    </>
  );
}
