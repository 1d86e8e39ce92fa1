import { keyboardsFor, type Problem } from "../../shared-model/judging/problem.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { saidPart } from "../registrations/part-words.ts";
import type { ProposedPart } from "../registrations/proposed.ts";
import type { DrawnByHand } from "../state/work.ts";
import { HAND_SHORT, HAND_WORDS, HandMark } from "../words/hand-mark.tsx";
import { Typeset } from "../words/typeset.tsx";

interface HandLineProps {
  readonly instrument: Instrument;
  readonly problem: Problem;
  readonly part: string;
  readonly parts: readonly ProposedPart[];
  readonly drawn: DrawnByHand;
  readonly onKeyboard: (keyboard: string) => void;
  readonly onOctave: (octave: -1 | 0 | 1) => void;
}

/** One part: who plays it, on which keyboard, what sounds there. */
export function HandLine({ instrument, problem, part: id, parts, drawn, onKeyboard, onOctave }: HandLineProps) {
  const index = problem.section.parts.findIndex((each) => each.id === id);
  const part = problem.section.parts[index];
  if (!part) return null;
  const played = parts.find((each) => each.part === id);
  const keyboards = keyboardsFor(problem, index).map((each) => each.name);
  const octave = drawn.octaves[id] ?? 0;
  const who = `${HAND_WORDS[part.hands]}, ${id.replace("-", " ")}`;
  const said = saidPart(instrument, { parts: parts.map((each) => ({ ...each, octave: 0 as const })) }, id);
  return (
    <div className="hand">
      <HandMark hands={part.hands} />
      <span>
        <i>{HAND_SHORT[part.hands]}</i> <small>{id.replace("-", " ")}</small>
      </span>
      <span className="at">
        {keyboards.length > 1 || part.optional ? (
          <select
            className="pick"
            aria-label={`Keyboard for the ${who}`}
            value={played?.keyboard ?? ""}
            onChange={(event) => onKeyboard(event.target.value)}
          >
            {(part.optional || !played) && <option value="">rests</option>}
            {keyboards.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        ) : (
          <span className="kb">{keyboards[0] ?? "no keyboard"}</span>
        )}{" "}
        <Typeset>{said.stops}</Typeset>
      </span>
      {octave !== 0 || part.hands !== "feet" ? (
        <select
          className="pick octave"
          aria-label={`Octave of the ${who}`}
          value={octave}
          onChange={(event) => onOctave(Number(event.target.value) as -1 | 0 | 1)}
        >
          <option value={0}>as written</option>
          <option value={-1}>an octave lower</option>
          <option value={1}>an octave higher</option>
        </select>
      ) : null}
    </div>
  );
}
