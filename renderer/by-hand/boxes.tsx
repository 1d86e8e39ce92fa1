import type { BoxPosition } from "../../shared-model/console/state.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

const POSITIONS: readonly BoxPosition[] = ["open", "half", "closed"];

interface BoxesProps {
  readonly instrument: Instrument;
  readonly boxes: Readonly<Record<string, BoxPosition>>;
  readonly onBox: (box: string, position: BoxPosition) => void;
}

/** The swell boxes of the organ, each in one of three positions. Nothing where the organ has none. */
export function Boxes({ instrument, boxes, onBox }: BoxesProps) {
  const names = [...new Set(instrument.divisions.flatMap(({ box }) => (box === null ? [] : [box])))];
  if (names.length === 0) return null;
  return (
    <div className="boxes">
      {names.map((name) => (
        <fieldset key={name}>
          <legend>Box of the {name}</legend>
          {POSITIONS.map((position) => (
            <label className="pick1" key={position} data-on={(boxes[name] ?? "open") === position}>
              <input
                type="radio"
                name={`box ${name}`}
                checked={(boxes[name] ?? "open") === position}
                onChange={() => onBox(name, position)}
              />
              {position}
            </label>
          ))}
        </fieldset>
      ))}
    </div>
  );
}
