import { type ReactNode, useId, useState } from "react";

interface NumberFieldProps {
  /** Read out before the field; what stands beside it is `children`. */
  readonly label: string;
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  /** Whether it may be left empty: then `null` is told. */
  readonly mayBeEmpty?: boolean;
  readonly placeholder?: string;
  readonly onNumber: (value: number | null) => void;
  readonly children?: ReactNode;
}

/** A number that is written: what is none, or out of bounds, stays to be mended and changes nothing. */
export function NumberField(props: NumberFieldProps) {
  const { label, value, least, most, mayBeEmpty = false, placeholder, onNumber, children } = props;
  const [said, setSaid] = useState(value === null ? "" : String(value));
  const [known, setKnown] = useState(value);
  const note = useId();
  if (known !== value) {
    setKnown(value);
    if (Number(said) !== value || said === "") setSaid(value === null ? "" : String(value));
  }
  const number = Number(said.replace(",", "."));
  const isRight = said.trim() === "" ? mayBeEmpty : Number.isFinite(number) && number >= least && number <= most;
  return (
    <span className="note number">
      <label>
        <span className="sr">{label}</span>
        <input
          inputMode="decimal"
          value={said}
          placeholder={placeholder}
          maxLength={7}
          aria-invalid={!isRight}
          aria-describedby={isRight ? undefined : note}
          onChange={({ target }) => {
            setSaid(target.value);
            const text = target.value.trim();
            const next = text === "" ? null : Number(text.replace(",", "."));
            if (next === null ? mayBeEmpty : Number.isFinite(next) && next >= least && next <= most) {
              setKnown(next);
              onNumber(next);
            }
          }}
          onKeyDown={({ key }) => {
            if (key === "Escape") setSaid(value === null ? "" : String(value));
          }}
        />
      </label>
      {children !== undefined && <span>{children}</span>}
      {!isRight && (
        <span className="sev sev-must" id={note}>
          a number from {least} to {most}
        </span>
      )}
    </span>
  );
}
