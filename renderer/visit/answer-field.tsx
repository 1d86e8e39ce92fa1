import { useEffect, useId, useRef, useState } from "react";

/** So long after the last key an answer is taken, if the field is not left before. */
const PAUSE_MS = 700;

interface AnswerFieldProps {
  readonly question: string;
  readonly lines: number;
  /** As it stands in the file; `""` for none. */
  readonly answer: string;
  readonly onAnswer: (answer: string) => void;
}

/** An answer in any number of lines: taken after a pause, and when the field is left; Escape puts back what the file says. */
export function AnswerField({ question, lines, answer, onAnswer }: AnswerFieldProps) {
  const [said, setSaid] = useState(answer);
  const [known, setKnown] = useState(answer);
  const id = useId();
  if (known !== answer) {
    // What comes from outside (undo, another hand in the file) is shown; what was just taken from here stays as it is typed.
    setKnown(answer);
    if (said.trim() !== answer) setSaid(answer);
  }
  const isNew = said.trim() !== answer;
  const settle = useRef(() => {});
  settle.current = () => {
    if (isNew) onAnswer(said);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: another key begins the pause anew.
  useEffect(() => {
    if (!isNew) return undefined;
    const pause = setTimeout(() => settle.current(), PAUSE_MS);
    return () => clearTimeout(pause);
  }, [isNew, said]);
  // Who turns the page in the middle of a word loses nothing.
  useEffect(() => () => settle.current(), []);
  return (
    <>
      <label htmlFor={id}>{question}</label>
      <textarea
        id={id}
        rows={Math.max(lines, said.split("\n").length)}
        maxLength={5000}
        value={said}
        onChange={({ target }) => setSaid(target.value)}
        onBlur={() => settle.current()}
        onKeyDown={({ key }) => {
          if (key === "Escape") setSaid(answer);
        }}
      />
    </>
  );
}
