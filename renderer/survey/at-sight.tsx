import { useMemo } from "react";
import { questionKey } from "../../shared-model/stoplist/reading/answers.ts";
import { answerQuestion, fromList, readCalmly } from "../entering/from-list.ts";
import { Ask } from "../entering/question.tsx";
import { keepOrgan } from "../state/at-sight.ts";
import { useStore } from "../state/use-store.tsx";
import type { Entry } from "../state/work.ts";
import { Act, Plain } from "../words/action.tsx";
import { counted, NumberWord } from "../words/typeset.tsx";

/** Of an organ that is only looked at: what its list leaves open, asked in place, and how it is kept. */
export function AtSight({ entry }: { entry: Entry }) {
  const store = useStore();
  const read = useMemo(() => readCalmly(entry.text), [entry.text]);
  const { open, file, isWhole } = useMemo(() => fromList(read, entry), [read, entry]);
  const isClear = isWhole && open.length === 0;
  return (
    <aside className="at-sight" aria-label="Not kept yet">
      <div className="row">
        <p>
          {isClear
            ? "This organ is in no file yet. You can look at everything; nothing is saved until you keep it."
            : `${NumberWord(open.length)} ${open.length === 1 ? "thing is" : "things are"} not clear in the list. Until you say, a stop that is not clear is left out: what is said here holds at least.`}
        </p>
        <div className="end">
          <Plain onClick={() => store.turnTo("organ")}>See the list as it was read</Plain>
          {isClear && <Act onClick={() => keepOrgan(store, file)}>Keep this organ</Act>}
        </div>
      </div>
      {open.map((question) => (
        <Ask
          key={questionKey(question)}
          question={question}
          answer={undefined}
          onAnswer={(choice) => answerQuestion(store, question, choice)}
        />
      ))}
      {open.length > 0 && (
        <p className="note quiet">
          Nothing is saved. When {open.length === 1 ? "this is" : `these ${counted(open.length, "thing")} are`} answered
          you can keep the organ.
        </p>
      )}
    </aside>
  );
}
