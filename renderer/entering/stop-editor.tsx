import { useState } from "react";
import { stopLabel } from "../../shared-model/judging/listening.ts";
import type { Instrument, Stop } from "../../shared-model/stoplist/instrument.ts";
import { Plain } from "../words/action.tsx";
import { NameField } from "../words/name-field.tsx";
import { ByEar } from "./by-ear.tsx";
import type { Edit } from "./editing.ts";

interface StopEditorProps {
  readonly instrument: Instrument;
  readonly stop: Stop;
  readonly at: number;
  readonly count: number;
  readonly edit: Edit;
  readonly onClose: () => void;
}

/** Everything about one stop that a person may want to mend, under its row. */
export function StopEditor({ instrument, stop, at, count, edit, onClose }: StopEditorProps) {
  const label = stopLabel(stop);
  const [note, setNote] = useState(stop.note ?? "");
  const others = instrument.divisions.flatMap((division) => division.stops.filter((each) => each !== stop));
  const lender = others.find((each) => each.uses.length > 0 && sameUses(each, stop));
  const move = (by: number): void => {
    if (edit(`moving ${label}`, { edit: "move-stop", stop: stop.id, division: stop.division, at: at + by })) onClose();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw its own frame round the row.
    <div className="mend-stop" role="group" aria-label={label}>
      <div className="field">
        <span className="note quiet">name</span>
        <NameField
          label={`Name of ${label}`}
          text={stop.name}
          onName={(name) => {
            const done = edit(`renaming ${label}`, { edit: "rename-stop", stop: stop.id, name });
            if (done) onClose();
            return done;
          }}
        />
      </div>
      <ByEar stop={stop} label={label} edit={edit} />
      <label>
        <span className="note quiet">pipes</span>
        <select
          className="pick"
          value={lender?.id ?? ""}
          onChange={(event) =>
            edit(`the pipes of ${label}`, {
              edit: "set-same-as",
              stop: stop.id,
              lender: event.target.value === "" ? null : event.target.value,
            })
          }
        >
          <option value="">its own</option>
          {others.map((each) => (
            <option key={each.id} value={each.id}>
              those of {stopLabel(each)}, {each.division}
            </option>
          ))}
        </select>
      </label>
      {stop.off ? (
        <Plain chosen onClick={() => edit(`${label} in order again`, { edit: "mark-on", stop: stop.id })}>
          In order again
        </Plain>
      ) : (
        <label className="off-note">
          <span className="note quiet">out of order</span>
          <input
            value={note}
            placeholder="ciphers on f♯′"
            maxLength={200}
            onChange={(event) => setNote(event.target.value)}
          />
          <Plain
            chosen
            onClick={() =>
              edit(`marking ${label} off`, {
                edit: "mark-off",
                stop: stop.id,
                note: note.trim() === "" ? null : note.trim(),
              })
            }
          >
            Mark off
          </Plain>
        </label>
      )}
      <div className="acts">
        <Plain disabled={at === 0} onClick={() => move(-1)}>
          Up
        </Plain>
        <Plain disabled={at === count - 1} onClick={() => move(1)}>
          Down
        </Plain>
        <Plain
          onClick={() => {
            if (edit(`taking out ${label}`, { edit: "remove-stop", stop: stop.id })) onClose();
          }}
        >
          Take out
        </Plain>
        <Plain onClick={onClose}>Done</Plain>
      </div>
    </div>
  );
}

/** Whether two stops draw the very same pipes on the same keys. */
const sameUses = (one: Stop, other: Stop): boolean => JSON.stringify(one.uses) === JSON.stringify(other.uses);
