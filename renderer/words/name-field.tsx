import { useState } from "react";

interface NameFieldProps {
  readonly label: string;
  readonly text: string;
  /** Returns whether the name was taken. */
  readonly onName: (name: string) => boolean;
}

/** A name that is written over and takes effect when it is left, or with Enter; Escape puts it back. */
export function NameField({ label, text, onName }: NameFieldProps) {
  const [said, setSaid] = useState(text);
  const settle = (): void => {
    const name = said.trim();
    if (name === text) return;
    if (name === "" || !onName(name)) setSaid(text);
  };
  return (
    <input
      aria-label={label}
      value={said}
      maxLength={120}
      spellCheck={false}
      onChange={(event) => setSaid(event.target.value)}
      onBlur={settle}
      onKeyDown={(event) => {
        if (event.key === "Enter") settle();
        if (event.key === "Escape") setSaid(text);
      }}
    />
  );
}
