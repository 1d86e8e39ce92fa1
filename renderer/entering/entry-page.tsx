import { useEffect, useMemo, useState } from "react";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import { pitchName } from "../../shared-model/pitch/reading.ts";
import { FAMILY_WORDS } from "../../shared-model/stoplist/kind.ts";
import { questionKey } from "../../shared-model/stoplist/reading/answers.ts";
import { type LineSaying, lineSayings } from "../../shared-model/stoplist/reading/line-sayings.ts";
import type { Question } from "../../shared-model/stoplist/reading/question.ts";
import type { Reading } from "../../shared-model/stoplist/reading/reading.ts";
import { keepOrgan } from "../state/at-sight.ts";
import { useStore } from "../state/use-store.tsx";
import type { Entry } from "../state/work.ts";
import { Act, Plain } from "../words/action.tsx";
import { FamilySign } from "../words/family-sign.tsx";
import { TroubleNote } from "../words/trouble-note.tsx";
import { counted, NumberWord, roman, Typeset } from "../words/typeset.tsx";
import { Booklet } from "./booklet.tsx";
import { answerQuestion, changeEntry, fromList, readCalmly } from "./from-list.ts";
import { type ReadAs, sayingWords, stopsByLine } from "./line-words.ts";
import { Ask } from "./question.tsx";

/** A printed list on its way to an organ: the evidence at the left, what was understood at the right. */
export function EntryPage({ entry }: { entry: Entry }) {
  const store = useStore();
  const [mending, setMending] = useState<string | null>(null);
  const read = useMemo(() => readCalmly(entry.text), [entry.text]);
  const { reading, questions, open, file, errors, isWhole } = useMemo(() => fromList(read, entry), [read, entry]);
  const sayings = useSayings(entry.text);
  const answer = (question: Question, choice: string | null): void => answerQuestion(store, question, choice);
  return (
    <>
      <main className="enter">
        <section aria-labelledby="pasted">
          <div className="opening">
            <h2 id="pasted">As you pasted it</h2>
            <p className="facts" role="status">
              {understoodWords(entry.text, open.length)}
            </p>
            <div className="end">
              <Plain onClick={() => setMending(mending === null ? entry.text : null)}>
                {mending === null ? "Mend the list" : "Leave it as it was"}
              </Plain>
            </div>
          </div>
          {mending === null ? (
            <Lines entry={entry} reading={reading} sayings={sayings} questions={questions} onAnswer={answer} />
          ) : (
            <form
              className="mend"
              onSubmit={(event) => {
                event.preventDefault();
                changeEntry(store, "mending the list", (draft) => {
                  draft.text = mending;
                });
                setMending(null);
              }}
            >
              <label className="sr" htmlFor="mend">
                The list
              </label>
              <textarea
                id="mend"
                rows={Math.min(40, mending.split("\n").length + 2)}
                value={mending}
                spellCheck={false}
                onChange={(event) => setMending(event.target.value)}
              />
              <button type="submit" className="act">
                Read it again
              </button>
            </form>
          )}
        </section>
        <Booklet reading={reading} open={open}>
          <p className="note quiet">
            The number after each stop is the line it comes from; touch the stop to see it there.
          </p>
          {!isWhole && open.length === 0 && (
            <TroubleNote actions={<Plain onClick={() => setMending(entry.text)}>Mend the list</Plain>}>
              {errors.length > 0
                ? errors
                    .map((trouble) => troubleLine(trouble).replace(/^[^:]*, line \d+, column \d+: error: /, ""))
                    .join(" ")
                : "No stops were found in this text."}
            </TroubleNote>
          )}
        </Booklet>
      </main>
      <aside className="chosen" aria-label="The organ as far as it is understood">
        <div className="line">
          <p>
            {open.length === 0
              ? isWhole && "Every line is understood."
              : `${NumberWord(open.length)} question${open.length === 1 ? " is" : "s are"} still open.`}
            {open.length > 0 && <Plain onClick={showQuestion}>{open.length === 1 ? "Show it" : "Show the next"}</Plain>}
          </p>
          {isWhole && (
            <Act onClick={() => keepOrgan(store, file)} second={open.length > 0}>
              Use this organ
            </Act>
          )}
        </div>
      </aside>
    </>
  );
}

/** Brings the first question that is open to the middle of the window, and the focus to its first answer. */
function showQuestion(): void {
  const question = document.querySelector(".quest:not(.done)");
  question?.scrollIntoView({ block: "center" });
  question?.querySelector<HTMLElement>("button")?.focus({ preventScroll: true });
}

function understoodWords(text: string, open: number): string {
  const lines = text.split(/\r\n|\r|\n/u).length;
  return `${lines} lines, ${open === 0 ? "all understood" : `${counted(open, "question")} to answer`}`;
}

/** What lines without stops say; reckoned after the page stands, since it reads the list many times. */
function useSayings(text: string): ReadonlyMap<number, LineSaying> | null {
  const [sayings, setSayings] = useState<ReadonlyMap<number, LineSaying> | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setSayings(lineSayings(text, readCalmly)), 30);
    return () => clearTimeout(timer);
  }, [text]);
  return sayings;
}

interface LinesProps {
  readonly entry: Entry;
  readonly reading: Reading;
  readonly sayings: ReadonlyMap<number, LineSaying> | null;
  readonly questions: readonly Question[];
  readonly onAnswer: (question: Question, choice: string | null) => void;
}

function Lines({ entry, reading, sayings, questions, onAnswer }: LinesProps) {
  const stops = stopsByLine(reading);
  return (
    <ol className="lines">
      {entry.text.split(/\r\n|\r|\n/u).map((line, index) => {
        const number = index + 1;
        const here = stops.get(number) ?? [];
        const asked = questions.filter((question) => question.line === number);
        const isOpen = asked.some((question) => entry.answers[questionKey(question)] === undefined);
        const saying = sayings?.get(number);
        const said = sayingWords(saying, reading);
        return (
          <li className={saying?.heads.length ? "ln dv" : "ln"} id={`line-${number}`} key={number} tabIndex={-1}>
            <span className="no">{number}</span>
            <span className="said">{line}</span>
            <span className="un">
              {isOpen && <span className="ask">{here.length > 0 ? "One question" : "Question"}</span>}
              {!isOpen && here.map((each) => <Understood key={`${each.stop.name} ${each.stop.half}`} read={each} />)}
              {!isOpen && here.length === 0 && said !== null && <i>{said}</i>}
              {!isOpen && here.length === 0 && said === null && sayings && (
                <span className="quiet">{line.trim() === "" ? "" : "not used"}</span>
              )}
            </span>
            {asked.map((question) => (
              <Ask
                key={questionKey(question)}
                question={question}
                answer={entry.answers[questionKey(question)]}
                onAnswer={(choice) => onAnswer(question, choice)}
              />
            ))}
          </li>
        );
      })}
    </ol>
  );
}

/** A stop of a line in words, with what was mended. */
function Understood({ read: { stop, family } }: { read: ReadAs }) {
  const mended = stop.pitch !== null && stop.printed !== null && isMended(stop.printed, pitchName(stop.pitch));
  return (
    <>
      {family && <FamilySign family={family} />}
      <span>
        {family ? FAMILY_WORDS[family] : "a stop"} <b>{stop.pitch && <Typeset>{pitchName(stop.pitch)}</Typeset>}</b>
        {stop.pitch === null && stop.ranks !== null && <b>{roman(stop.ranks)}</b>}
        {stop.half && `, ${stop.half === "both" ? "bass and treble" : stop.half}`}
        {stop.prepared && ", prepared for only"}
      </span>
      {mended && <i className="quiet">old rounding mended</i>}
    </>
  );
}

/** Whether what sounds is another number than what is printed, not only written differently. */
function isMended(printed: string, sounds: string): boolean {
  const whole = /^(\d+)\b(?!\s*[/⁄½⅓⅔¼¾⅕⅖⅗⅐])/u.exec(printed.trim())?.[1];
  return whole !== undefined && whole !== sounds && /^\D*\d+\D*$/u.test(printed);
}
