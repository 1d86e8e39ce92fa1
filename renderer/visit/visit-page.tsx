import { useMemo } from "react";
import { visitHandout } from "../../shared-model/cards/visit-handout.ts";
import { VISIT_CAUTIONS, visitParts } from "../../shared-model/carry/visit.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import type { VisitTopic } from "../../shared-model/stoplist/visit-topic.ts";
import { PrintHandout } from "../cards/print-handout.tsx";
import { type Edit, editOrgan } from "../entering/editing.ts";
import { useDesk, useStore, useWork } from "../state/use-store.tsx";
import { isAtSight } from "../state/work.ts";
import { TroubleNote } from "../words/trouble-note.tsx";
import { AnswerField } from "./answer-field.tsx";
import { Settled } from "./settled.tsx";

/** What to ask, see and hear on a visit: printed to be taken along, filled in afterwards, kept in the file of the organ. */
export function VisitPage({ instrument, text: file }: { instrument: Instrument; text: string }) {
  const store = useStore();
  const { trouble, organFile } = useDesk();
  // What is in no file has no place for answers.
  const isToAsk = isAtSight(useWork());
  const edit: Edit = (words, change) => editOrgan(store, words, change);
  const answer = (topic: VisitTopic, said: string): void => {
    // A field that goes since another organ was opened must not write into that one.
    if (store.work.organ === file)
      editOrgan(store, "an answer of the visit", { edit: "set-visit", topic, answer: said }, `visit ${topic}`);
  };
  const parts = visitParts(instrument);
  const all = parts.flatMap(({ questions }) => questions);
  const answered = all.filter(({ topic }) => instrument.visit?.[topic] !== undefined).length;
  const handout = useMemo(() => visitHandout(instrument), [instrument]);
  return (
    <main className="visit">
      <div className="opening">
        <h1>A visit</h1>
        <p className="facts" role="status">
          {isToAsk ? `${all.length} questions` : `${answered} of ${all.length} questions answered`}
        </p>
        <div className="end">
          <PrintHandout handout={handout} />
        </div>
      </div>
      <p className="note quiet">
        Print the sheet and take it along.{" "}
        {isToAsk
          ? "This organ is in no file yet: keep it, from its survey, and the answers can be written here afterwards."
          : "What you write here afterwards stands in the file of the organ and on the next sheet."}
        {organFile?.demo && " This is a demo organ: your first answer makes a copy of it in your library."}
      </p>
      {trouble !== null && <TroubleNote>{trouble}</TroubleNote>}
      {parts.map(({ head, questions }) => (
        <section key={head} aria-label={head}>
          <h2 className="cap">{head}</h2>
          <ul>
            {questions.map(({ topic, text, lines }) => (
              <li key={topic}>
                {isToAsk ? (
                  <p className="to-ask">{text}</p>
                ) : (
                  <>
                    <AnswerField
                      question={text}
                      lines={lines}
                      answer={instrument.visit?.[topic] ?? ""}
                      onAnswer={(said) => answer(topic, said)}
                    />
                    <div className="settled">
                      <Settled topic={topic} instrument={instrument} edit={edit} />
                    </div>
                  </>
                )}
              </li>
            ))}
          </ul>
        </section>
      ))}
      <section aria-label="Take care">
        <h2 className="cap">Take care</h2>
        <ul className="cautions">
          {VISIT_CAUTIONS.map(({ about, text }) => (
            <li key={about}>
              <i>{about}:</i> {text}
            </li>
          ))}
        </ul>
      </section>
    </main>
  );
}
