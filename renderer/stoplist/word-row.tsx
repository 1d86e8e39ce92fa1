import { memo } from "react";
import type { Hands } from "../../shared-model/music/texture.ts";
import { handsInWords, isSame, Marks } from "./stop-row.tsx";

interface WordRowProps {
  readonly kind: "tremulant" | "coupler";
  readonly name: string;
  readonly words: string;
  readonly on: boolean;
  /** Whoever is heard through it. */
  readonly hands: readonly Hands[];
  readonly tabIndex: number;
  /** Takes the id of the row. */
  readonly onFocus: (row: string) => void;
  readonly onToggle: (name: string) => void;
}

/** A coupler or a tremulant in the stoplist: a knob without pipes of its own. Drawn anew only when something on it changes. */
export const WordRow = memo(function WordRow(props: WordRowProps) {
  const { kind, name, words, on, hands, tabIndex, onFocus, onToggle } = props;
  const id = `${kind}-${name}`;
  return (
    <button
      type="button"
      id={id}
      data-row={words.toLocaleLowerCase()}
      className="stop word"
      aria-pressed={on}
      tabIndex={tabIndex}
      onFocus={() => onFocus(id)}
      onClick={() => onToggle(name)}
    >
      <Marks hands={on ? hands : []} />
      <span className="n">{words}</span>
      <span className="sr">{on ? handsInWords(hands) : ""}</span>
    </button>
  );
}, isSame);
