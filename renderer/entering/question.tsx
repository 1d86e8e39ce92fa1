import type { Question } from "../../shared-model/stoplist/reading/question.ts";
import { Plain } from "../words/action.tsx";
import { Typeset } from "../words/typeset.tsx";

interface AskProps {
  readonly question: Question;
  /** `undefined` while it is open. */
  readonly answer: string | undefined;
  readonly onAnswer: (choice: string | null) => void;
}

/** More answers than stand in one row: then the rarer ones are a list to choose from. */
const IN_A_ROW = 5;

/** A question of the list under its line: asked with its answers, or answered in one line. */
export function Ask({ question, answer, onAnswer }: AskProps) {
  const { text, choices } = question;
  if (answer !== undefined) {
    return (
      <div className="quest done">
        <span className="sevd">Answered</span>
        <span>
          <Typeset>{text}</Typeset> You said:{" "}
          <b>
            <Typeset>{answer}</Typeset>
          </b>
          .
        </span>
        <Plain onClick={() => onAnswer(null)} aria-label={`Change the answer to: ${text}`}>
          Change
        </Plain>
      </div>
    );
  }
  const quiet = choices.at(-1) as string;
  const offered = choices.slice(0, -1);
  const [row, rest] =
    offered.length > IN_A_ROW + 1 ? [offered.slice(0, IN_A_ROW), offered.slice(IN_A_ROW)] : [offered, []];
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot span the columns of the list in every browser.
    <div className="quest" role="group" aria-label={text}>
      <p>
        <Typeset>{text}</Typeset>
      </p>
      <div className="opts">
        {row.map((choice) => (
          <button type="button" className="opt" key={choice} onClick={() => onAnswer(choice)}>
            <Choice text={choice} />
          </button>
        ))}
        {rest.length > 0 && (
          <select
            className="opt"
            aria-label={`Other answers: ${text}`}
            value=""
            onChange={(event) => onAnswer(event.target.value)}
          >
            <option value="" disabled>
              something else …
            </option>
            {rest.map((choice) => (
              <option key={choice}>{choice}</option>
            ))}
          </select>
        )}
        <Plain onClick={() => onAnswer(quiet)}>{quiet}</Plain>
      </div>
    </div>
  );
}

/** A pitch is set larger, with its unit. */
function Choice({ text }: { text: string }) {
  const [, pitch] = /^(\d+(?: \d\/\d)?|\d\/\d)['′]?$/u.exec(text) ?? [];
  if (pitch === undefined) return <Typeset>{text}</Typeset>;
  return (
    <>
      <b>
        <Typeset>{pitch}</Typeset>
      </b>{" "}
      foot
    </>
  );
}
