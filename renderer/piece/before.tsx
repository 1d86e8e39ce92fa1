import { type Before, HAPPENINGS, type Happening } from "../../shared-model/music/piece.ts";
import { NumberField } from "../words/number-field.tsx";

const WORDS: Readonly<Record<Happening, string>> = {
  attacca: "attacca",
  rest: "a rest",
  fermata: "a fermata",
  "page-turn": "a page turn",
  pause: "as long as you like",
};

/** Whether beats count there. */
const COUNTED: readonly Happening[] = ["rest", "fermata", "page-turn"];
const USUAL_BEATS = 2;

interface BeforeProps {
  readonly who: string;
  readonly before: Before | null;
  readonly onBefore: (before: Before | null) => void;
}

/** What happens just before a section: the time there is for the change into it. */
export function BeforeChoice({ who, before, onBefore }: BeforeProps) {
  const what = before?.what ?? "";
  return (
    <span className="before">
      <label>
        <span className="note quiet">before it </span>
        <select
          className="pick"
          aria-label={`What happens before ${who}`}
          value={what}
          onChange={(event) => {
            const next = HAPPENINGS.find((each) => each === event.target.value);
            if (!next) onBefore(null);
            else {
              const beats = COUNTED.includes(next) ? (before?.beats ?? USUAL_BEATS) : null;
              onBefore({ what: next, beats, free: before?.free ?? null, turnedBy: before?.turnedBy ?? "player" });
            }
          }}
        >
          <option value="">not said; two beats are taken</option>
          {HAPPENINGS.map((each) => (
            <option key={each} value={each}>
              {WORDS[each]}
            </option>
          ))}
        </select>
      </label>
      {before && COUNTED.includes(before.what) && (
        <NumberField
          label={`Beats before ${who}`}
          value={before.beats}
          least={0}
          most={99}
          onNumber={(beats) => beats !== null && onBefore({ ...before, beats })}
        >
          beats
        </NumberField>
      )}
      {before?.what === "page-turn" && (
        <label>
          <span className="note quiet">turned by </span>
          <select
            className="pick"
            aria-label={`Who turns the page before ${who}`}
            value={before.turnedBy}
            onChange={({ target }) =>
              onBefore({ ...before, turnedBy: target.value === "assistant" ? "assistant" : "player" })
            }
          >
            <option value="player">you</option>
            <option value="assistant">the assistant</option>
          </select>
        </label>
      )}
    </span>
  );
}
