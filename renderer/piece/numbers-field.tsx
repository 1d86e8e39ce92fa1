import { useId, useState } from "react";
import { numbersIn, numbersText } from "./numbers.ts";

interface NumbersFieldProps {
  readonly label: string;
  readonly numbers: readonly number[];
  readonly most: number;
  readonly onNumbers: (numbers: readonly number[]) => void;
}

/** Numbers written as `1-4, 6`; what is none of the organ's stays to be mended and changes nothing. */
export function NumbersField({ label, numbers, most, onNumbers }: NumbersFieldProps) {
  const text = numbersText(numbers);
  const [said, setSaid] = useState(text);
  const [known, setKnown] = useState(text);
  const note = useId();
  if (known !== text) {
    setKnown(text);
    setSaid(text);
  }
  const isRight = numbersIn(said, most) !== null;
  return (
    <span className="note number">
      <label>
        {label}{" "}
        <input
          className="row-of-numbers"
          value={said}
          placeholder="none"
          maxLength={60}
          spellCheck={false}
          aria-invalid={!isRight}
          aria-describedby={isRight ? undefined : note}
          onChange={({ target }) => {
            setSaid(target.value);
            const found = numbersIn(target.value, most);
            if (!found) return;
            setKnown(numbersText(found));
            onNumbers(found);
          }}
          onKeyDown={({ key }) => {
            if (key === "Escape") setSaid(text);
          }}
        />
      </label>
      {!isRight && (
        <span className="sev sev-must" id={note}>
          numbers from 1 to {most}, such as 1-4
        </span>
      )}
    </span>
  );
}
