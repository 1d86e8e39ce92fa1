import { useEffect, useState } from "react";
import { COLOUR_WINDOW, isFarBehind, USUAL_COUNT } from "../../shared-model/propose/propose.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { toggled } from "../by-hand/toggled.ts";
import { problemFor } from "../state/problem.ts";
import { onOrgan, partsOf } from "../state/section.ts";
import { useSection, useStore, useWork } from "../state/use-store.tsx";
import type { DrawnByHand } from "../state/work.ts";
import { shakenBy, soundedBy } from "../stoplist/sounding.ts";
import { Stoplist } from "../stoplist/stoplist.tsx";
import { inHandOrder } from "../texture/diagram.tsx";
import { Plain } from "../words/action.tsx";
import { TroubleNote } from "../words/trouble-note.tsx";
import { NumberWord, numberWord, pointsText, Typeset } from "../words/typeset.tsx";
import { Bill } from "./bill.tsx";
import { Ledger } from "./ledger.tsx";
import { Pictures } from "./pictures.tsx";
import { CardAction, PinAction } from "./pin-action.tsx";
import type { Answer, Proposed } from "./proposed.ts";
import { SectionOpening } from "./section-opening.tsx";
import { useProposals } from "./use-proposals.ts";

const FIRST_COUNT = 5;
const EVERY_COUNT = 25;

/** Ranked registrations side by side, and the chosen one in reasons, pictures and stoplist. */
export function RegistrationsPage({ instrument }: { instrument: Instrument }) {
  const store = useStore();
  const work = useWork();
  const section = useSection();
  const [shown, setShown] = useState<"first" | "more" | "every">("first");
  const count = shown === "every" ? EVERY_COUNT : USUAL_COUNT;
  const { looking, stop, again } = useProposals(work.organ ?? "", section, count, shown === "every");

  if (partsOf(section).length === 0) {
    return (
      <main>
        <SectionOpening />
        <p className="none">
          Say first what hands and feet do. <Plain onClick={() => store.turnTo("texture")}>Choose a texture</Plain>
        </p>
      </main>
    );
  }
  const answer = looking.state === "done" ? looking.answer : null;
  const proposals = answer?.proposals ?? [];
  const best = proposals[0]?.score ?? 0;
  const first = proposals.slice(0, FIRST_COUNT).filter(({ score }) => !isFarBehind(score, best));
  const listed = shown === "first" && !answer?.ladder ? first : proposals;
  return (
    <main>
      <SectionOpening
        actions={
          <>
            {section.registration === null && listed.length > 0 && (
              <span className="note quiet">Touch the one that you want.</span>
            )}
            <Plain onClick={() => store.turnTo("by-hand")}>Draw by hand</Plain>
            <PinAction />
            <CardAction />
          </>
        }
      />
      {looking.state === "looking" && <Waiting since={looking.since} onStop={stop} />}
      {looking.state === "stopped" && (
        <p className="none">
          Stopped. <Plain onClick={again}>Look again</Plain>
          <Plain onClick={() => store.turnTo("by-hand")}>Draw by hand instead</Plain>
        </p>
      )}
      {looking.state === "failed" && (
        <TroubleNote actions={<Plain onClick={again}>Look again</Plain>}>
          The search broke off ({looking.fault}). What you have drawn is untouched.
        </TroubleNote>
      )}
      {answer && (
        <Lacks answer={answer} onByHand={() => store.turnTo("by-hand")} onTexture={() => store.turnTo("texture")} />
      )}
      {answer && listed.length > 0 && (
        <>
          <div className="order">
            <span>{orderWords(answer, listed.length, shown)}</span>
            {!answer.ladder && shown === "first" && proposals.length > first.length && (
              <Plain onClick={() => setShown("more")}>Show {proposals.length - first.length} more</Plain>
            )}
            {!answer.ladder && shown !== "every" && <Plain onClick={() => setShown("every")}>By points alone</Plain>}
            {shown !== "first" && (
              <Plain onClick={() => setShown("first")}>
                {first.length === 1 ? "The best alone" : `The ${numberWord(first.length)} that differ`}
              </Plain>
            )}
          </div>
          <Chosen instrument={instrument} answer={answer} listed={listed} />
        </>
      )}
    </main>
  );
}

function orderWords({ ladder, proposals }: Answer, count: number, shown: "first" | "more" | "every"): string {
  if (ladder) return `${NumberWord(count)} steps, softest first.`;
  if (shown === "every") return `The ${count} with the most points, near-twins and all.`;
  if (count === 1 && proposals.length > 1) return "The one that serves; what comes next is far behind it.";
  return (
    `${NumberWord(count)} that differ: the best of each colour first, unless more than ` +
    `${pointsText(COLOUR_WINDOW)} points behind; then by points.`
  );
}

const sameDrawing = (one: DrawnByHand, other: DrawnByHand): boolean =>
  JSON.stringify([
    [...one.drawn].sort(),
    [...one.couplers].sort(),
    [...one.tremulants].sort(),
    one.keyboards,
    one.octaves,
  ]) ===
  JSON.stringify([
    [...other.drawn].sort(),
    [...other.couplers].sort(),
    [...other.tremulants].sort(),
    other.keyboards,
    other.octaves,
  ]);

interface ChosenProps {
  readonly instrument: Instrument;
  readonly answer: Answer;
  readonly listed: readonly Proposed[];
}

function Chosen({ instrument, answer, listed }: ChosenProps) {
  const store = useStore();
  const section = useSection();
  const registration = section.registration && onOrgan(section.registration, instrument, section);
  const chosen = registration ? (listed.find((each) => sameDrawing(each.drawn, registration)) ?? null) : null;
  const shown = chosen ?? (registration ? null : (listed[0] ?? null));

  const choose = (place: number): void => {
    const proposal = listed.find((each) => each.place === place);
    if (!proposal) return;
    store.act(
      `choosing ${proposal.label}`,
      (draft) => {
        const own = draft.piece.sections[draft.at];
        if (own) Object.assign(own, { registration: proposal.drawn });
      },
      "choosing",
    );
  };
  const byHand = (words: string, id: string, change: (drawn: DrawnByHand) => DrawnByHand): void => {
    const from = registration ?? shown?.drawn;
    if (!from) return;
    store.act(words, (draft) => {
      const own = draft.piece.sections[draft.at];
      if (own) Object.assign(own, { registration: change(from) });
    });
    store.turnTo("by-hand");
    // The same stop has the focus on the page for drawing: nobody loses his place.
    requestAnimationFrame(() => document.getElementById(id)?.focus());
  };

  const drawn = shown?.drawn ?? registration;
  const problem = problemFor(instrument, section);
  return (
    <>
      <Bill
        instrument={instrument}
        rows={inHandOrder(partsOf(section)).map(({ id, hands, role }) => ({
          part: id,
          hands,
          role: role.replace("-", " "),
        }))}
        proposals={listed}
        chosen={chosen?.place ?? null}
        ladder={answer.ladder}
        onChoose={choose}
      />
      <div className="spread">
        {shown ? (
          <section aria-labelledby="why">
            <h2 className="cap" id="why">
              {answer.ladder ? `Why step ${shown.place}` : `Why ${shown.place === 1 ? "it comes first" : "it is here"}`}
            </h2>
            <Ledger key={shown.label} reasons={shown.reasons} score={shown.score} />
          </section>
        ) : (
          <section>
            <h2 className="cap">Yours</h2>
            <p className="note">
              What is drawn is none of these.{" "}
              <Plain onClick={() => store.turnTo("by-hand")}>See what is said of it</Plain>
            </p>
          </section>
        )}
        <section className="list" aria-label="Stoplist">
          {drawn && (
            <Stoplist
              instrument={instrument}
              drawn={new Set(drawn.drawn)}
              couplers={new Set(drawn.couplers)}
              tremulants={new Set(drawn.tremulants)}
              soundedBy={soundedBy(shown?.parts ?? [])}
              shakes={shakenBy(shown?.parts ?? [], drawn.tremulants)}
              onStop={(id) => byHand("drawing", `stop-${id}`, (from) => ({ ...from, drawn: toggled(from.drawn, id) }))}
              onCoupler={(name) =>
                byHand(name, `coupler-${name}`, (from) => ({ ...from, couplers: toggled(from.couplers, name) }))
              }
              onTremulant={(name) =>
                byHand("the tremulant", `tremulant-${name}`, (from) => ({
                  ...from,
                  tremulants: toggled(from.tremulants, name),
                }))
              }
            />
          )}
        </section>
      </div>
      {shown && problem && <Pictures problem={problem} drawn={shown.drawn} parts={shown.parts} />}
    </>
  );
}

function Lacks({ answer, onByHand, onTexture }: { answer: Answer; onByHand: () => void; onTexture: () => void }) {
  if (answer.lacks.length === 0 && answer.proposals.length > 0) return null;
  return (
    <div className="lacks">
      {answer.proposals.length === 0 && <p className="lead">Nothing on this organ serves for this.</p>}
      <ul>
        {answer.lacks.map(({ text }) => (
          <li key={text}>
            <Typeset>{text}</Typeset>
          </li>
        ))}
      </ul>
      {answer.proposals.length === 0 && (
        <p>
          <Plain onClick={onTexture}>Choose another texture</Plain>
          <Plain onClick={onByHand}>Draw by hand</Plain>
        </p>
      )}
    </div>
  );
}

/** Says that the organ is being looked through and for how long, and offers to stop. Silent for the first moment. */
function Waiting({ since, onStop }: { since: number; onStop: () => void }) {
  const [now, setNow] = useState(since);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 250);
    return () => clearInterval(timer);
  }, []);
  const seconds = Math.floor((now - since) / 1000);
  return (
    <div className="waiting" role="status">
      <p>
        Looking through the organ{seconds > 0 ? ` for ${seconds} s` : ""} … <Plain onClick={onStop}>Stop</Plain>
      </p>
      <progress aria-label="Looking through the organ" />
    </div>
  );
}
