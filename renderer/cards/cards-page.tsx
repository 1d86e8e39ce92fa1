import { useState } from "react";
import { PIECE_PARTS, type PiecePart } from "../../shared-model/cards/pages.ts";
import type { Page } from "../../shared-model/cards/paper/page.ts";
import { PAPER_FORMS, PAPERS, type Paper } from "../../shared-model/cards/paper/paper.ts";
import type { PieceCards } from "../../shared-model/cards/piece-card.ts";
import { type PrintedSince, sinceWords } from "../../shared-model/cards/print-marks.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { useStore, useWork } from "../state/use-store.tsx";
import { Act, Plain } from "../words/action.tsx";
import { TroubleNote } from "../words/trouble-note.tsx";
import { capital, counted } from "../words/typeset.tsx";
import { PageDrawing } from "./page-drawing.tsx";
import type { PrintForm } from "./printing.ts";
import { useCards, usePdf } from "./use-cards.ts";
import { useHanding } from "./use-handing.ts";
import { usePrinted } from "./use-printed.ts";

const PART_WORDS: Readonly<Record<PiecePart, string>> = {
  overview: "overview",
  pistons: "setting the pistons",
  changes: "a card for each change",
  assistant: "the assistant’s card",
  pictures: "pictures of what sounds",
};

/** Sheets on which smaller cards are printed side by side and cut. */
const SHEETS: readonly (Paper | null)[] = [null, "a4", "letter"];

/** Which parts there is anything to print of. */
const partsIn = (cards: PieceCards | null): readonly PiecePart[] =>
  PIECE_PARTS.filter(
    (part) =>
      (part !== "pistons" || (cards?.pistons.length ?? 0) > 0) && (part !== "assistant" || cards?.assistant !== null),
  );

const numbered = (pages: readonly Page[]): readonly { readonly page: Page; readonly name: string }[] =>
  pages.map((page, at) => ({ page, name: `Page ${at + 1} of ${pages.length}` }));

/** Cue cards for the desk: seen here at their true size, printed, or saved as PDF. */
export function CardsPage({ instrument }: { instrument: Instrument }) {
  const store = useStore();
  const { piece } = useWork();
  const [form, setForm] = useState<PrintForm>({ paper: "a5", sheet: null, parts: ["changes"], only: null });
  const registered = piece.sections.filter((section) => section.registration !== null).length;
  if (registered === 0) {
    return (
      <main>
        <h1 className="sr">Cue cards</h1>
        <p className="none">
          There is nothing on the cards yet. Choose a registration for a section first.{" "}
          <Plain onClick={() => store.turnTo("registration")}>See registrations</Plain>
        </p>
      </main>
    );
  }
  return <Desk instrument={instrument} form={form} onForm={setForm} open={piece.sections.length - registered} />;
}

interface DeskProps {
  readonly instrument: Instrument;
  readonly form: PrintForm;
  readonly onForm: (form: PrintForm) => void;
  /** Sections without a registration. */
  readonly open: number;
}

function Desk({ instrument, form, onForm, open }: DeskProps) {
  const made = useCards(instrument, form);
  const pdf = usePdf(instrument);
  const answer = made.state === "done" ? made.answer : null;
  const parts = partsIn(answer?.cards ?? null);
  const printed = usePrinted(answer?.cards ?? null);
  const pages = answer?.printed?.pages ?? [];
  const { busy, said, hand } = useHanding(
    answer?.printed?.title ?? "Cue cards",
    () => pdf(form),
    () => printed.note(form),
  );
  return (
    <main className="cards">
      <div className="opening">
        <h1>Cue cards</h1>
        <p className="facts" role="status">
          {busy ?? (answer ? counted(pages.length, form.sheet === null ? "page" : "sheet") : "setting the pages …")}
        </p>
        <div className="end">
          <Act second onClick={() => void hand("export")} disabled={pages.length === 0 || busy !== null}>
            Save as PDF
          </Act>
          <Act onClick={() => void hand("show")} disabled={pages.length === 0 || busy !== null}>
            Print
          </Act>
        </div>
      </div>
      <div className="forms">
        <fieldset>
          <legend>Size</legend>
          {PAPERS.map((paper) => (
            <Pick
              key={paper}
              name="paper"
              words={PAPER_FORMS[paper].name}
              on={form.paper === paper}
              onPick={() => onForm({ ...form, paper })}
            />
          ))}
        </fieldset>
        <fieldset>
          <legend>Printed</legend>
          {SHEETS.map((sheet) => (
            <Pick
              key={sheet ?? "own"}
              name="sheet"
              words={sheet === null ? "each by itself" : `together on ${PAPER_FORMS[sheet].name}, to be cut`}
              on={form.sheet === sheet}
              onPick={() => onForm({ ...form, sheet })}
            />
          ))}
        </fieldset>
        <fieldset>
          <legend>What</legend>
          {parts.map((part) => (
            <label className="check" key={part}>
              <input
                type="checkbox"
                checked={form.parts.includes(part)}
                onChange={() =>
                  onForm({
                    ...form,
                    parts: form.parts.includes(part)
                      ? form.parts.filter((each) => each !== part)
                      : PIECE_PARTS.filter((each) => each === part || form.parts.includes(each)),
                  })
                }
              />
              {PART_WORDS[part]}
            </label>
          ))}
        </fieldset>
      </div>
      {said?.trouble && <TroubleNote>{said.words}</TroubleNote>}
      {said && !said.trouble && (
        <p className="note" role="status">
          {said.words}
        </p>
      )}
      {printed.since && <Since since={printed.since} form={form} onForm={onForm} />}
      {open > 0 && (
        <p className="note">
          {capital(counted(open, "section"))} without a registration: planned for these cards round what you chose.
        </p>
      )}
      {form.parts.includes("pistons") && parts.includes("pistons") && (
        <p className="note">
          Ask the organ’s keeper which memory level is free before you set anything, use only that, and put back what
          was there.
        </p>
      )}
      {made.state === "failed" && <TroubleNote>{made.words}</TroubleNote>}
      {answer && answer.troubles.length > 0 && <TroubleNote>{answer.troubles.join(" ")}</TroubleNote>}
      {made.state === "setting" && (
        <div className="waiting">
          <progress aria-label="Setting the pages" />
        </div>
      )}
      {answer && form.parts.length === 0 && <p className="none">Choose what is to be printed.</p>}
      <div className="sheets">
        {numbered(pages).map(({ page, name: said }) => (
          <PageDrawing key={said} page={page} name={said} />
        ))}
      </div>
      {pages.length > 0 && (
        <p className="note quiet">
          Shown at true size where the window is wide enough. Set to be read from the bench at 80 cm: what is drawn in
          22 points or more, nothing under 15, black on white by any light.
        </p>
      )}
    </main>
  );
}

const DAY = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long", year: "numeric" });

interface SinceProps {
  readonly since: PrintedSince;
  readonly form: PrintForm;
  readonly onForm: (form: PrintForm) => void;
}

/** What differs from the cards that lie printed, with a way to print no more than that. */
function Since({ since, form, onForm }: SinceProps) {
  const wanted = [...since.changed, ...since.fresh].sort((a, b) => a - b);
  const isOnly = form.only !== null;
  return (
    <p className="note">
      <span role="status">{sinceWords(since, DAY.format(since.when))}</span>{" "}
      {isOnly ? (
        <Plain chosen onClick={() => onForm({ ...form, only: null })}>
          Print all cards
        </Plain>
      ) : (
        wanted.length + since.parts.length > 0 && (
          <Plain
            chosen
            onClick={() =>
              onForm({
                ...form,
                only: wanted,
                parts: PIECE_PARTS.filter((part) =>
                  part === "changes" ? wanted.length > 0 : since.parts.includes(part),
                ),
              })
            }
          >
            Print only these
          </Plain>
        )
      )}
    </p>
  );
}

interface PickProps {
  readonly name: string;
  readonly words: string;
  readonly on: boolean;
  readonly onPick: () => void;
}

/** One of a few forms, chosen by its words. */
function Pick({ name, words, on, onPick }: PickProps) {
  return (
    <label className="pick1" data-on={on}>
      <input type="radio" name={name} checked={on} onChange={onPick} />
      {words}
    </label>
  );
}
