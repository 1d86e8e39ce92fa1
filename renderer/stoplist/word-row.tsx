import type { Hands } from "../../shared-model/music/texture.ts";
import { handsInWords, Marks } from "./stop-row.tsx";

interface WordRowProps {
  readonly id: string;
  readonly words: string;
  readonly on: boolean;
  readonly hands: readonly Hands[];
  readonly tabIndex: number;
  readonly onFocus: () => void;
  readonly onToggle: () => void;
}

/** A coupler or a tremulant in the stoplist: a knob without pipes of its own. */
export function WordRow({ id, words, on, hands, tabIndex, onFocus, onToggle }: WordRowProps) {
  return (
    <button
      type="button"
      id={id}
      data-row={words.toLocaleLowerCase()}
      className="stop word"
      aria-pressed={on}
      tabIndex={tabIndex}
      onFocus={onFocus}
      onClick={onToggle}
    >
      <Marks hands={on ? hands : []} />
      <span className="n">{words}</span>
      <span className="sr">{on ? handsInWords(hands) : ""}</span>
    </button>
  );
}
