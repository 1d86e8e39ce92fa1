import { stopLabel } from "../../shared-model/judging/listening.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import type { VisitTopic } from "../../shared-model/stoplist/visit-topic.ts";
import { RoomChoice } from "../entering/by-ear.tsx";
import { type Edit, settingAids } from "../entering/editing.ts";
import { Plain } from "../words/action.tsx";
import { NumberField } from "../words/number-field.tsx";

interface SettledProps {
  readonly topic: VisitTopic;
  readonly instrument: Instrument;
  readonly edit: Edit;
}

/** What an answer settles about the organ itself, set here in one step; nothing for a topic that settles nothing. */
export function Settled({ topic, instrument, edit }: SettledProps) {
  if (topic === "faults") return <StopsOff instrument={instrument} edit={edit} />;
  if (topic === "memory") return <Memory instrument={instrument} edit={edit} />;
  if (topic === "sides") return <Sides instrument={instrument} edit={edit} />;
  if (topic === "echo") return <RoomChoice instrument={instrument} edit={edit} />;
  if (topic === "pitch") {
    return (
      <NumberField
        label="Pitch of A4 in hertz"
        value={instrument.a4}
        least={370}
        most={500}
        onNumber={(a4) => a4 !== null && edit("the pitch", { edit: "set-pitch", a4 })}
      >
        Hz
      </NumberField>
    );
  }
  return null;
}

type SettingProps = Omit<SettledProps, "topic">;

function StopsOff({ instrument, edit }: SettingProps) {
  const off = instrument.divisions.flatMap(({ stops }) => stops.filter((stop) => stop.off));
  return (
    <>
      <select
        className="pick"
        aria-label="Mark a stop off"
        value=""
        onChange={({ target }) => {
          const stop = instrument.divisions.flatMap(({ stops }) => stops).find(({ id }) => id === target.value);
          if (stop) edit(`marking ${stopLabel(stop)} off`, { edit: "mark-off", stop: stop.id, note: null });
        }}
      >
        <option value="">mark a stop off …</option>
        {instrument.divisions.map(({ name, stops }) => (
          <optgroup key={name} label={name}>
            {stops
              .filter((stop) => !stop.off)
              .map((stop) => (
                <option key={stop.id} value={stop.id}>
                  {stopLabel(stop)}
                </option>
              ))}
          </optgroup>
        ))}
      </select>
      <ul className="note">
        {off.map((stop) => (
          <li key={stop.id}>
            <span>
              <s>{stopLabel(stop)}</s>, {stop.division}
              {stop.note === null ? "" : `: ${stop.note}`}
            </span>
            <Plain onClick={() => edit(`${stopLabel(stop)} in order again`, { edit: "mark-on", stop: stop.id })}>
              In order again<span className="sr">: {stopLabel(stop)}</span>
            </Plain>
          </li>
        ))}
      </ul>
    </>
  );
}

const SIDES = { left: "at your left", right: "at your right" } as const;
const ACTIONS = { electric: "light electric knobs", mechanical: "mechanical knobs", tabs: "tabs" } as const;

/** Where the knobs of each division stand and how they move: what a plan reckons with. */
function Sides({ instrument, edit }: SettingProps) {
  const { divisions, console: stated } = instrument;
  const sideOf = (name: string): keyof typeof SIDES | null =>
    stated?.left.includes(name) ? "left" : stated?.right.includes(name) ? "right" : null;
  return (
    <ul>
      {divisions
        .filter(({ stops }) => stops.length > 0)
        .map(({ name }) => (
          <li key={name}>
            <SaidOrNot
              lead={name}
              label={`Knobs of the ${name}`}
              words={SIDES}
              said={sideOf(name)}
              onSaid={(side) => edit(`the side of the ${name}`, { edit: "set-side", division: name, side })}
            />
          </li>
        ))}
      <li>
        <SaidOrNot
          lead="moved by"
          label="How stops are moved"
          words={ACTIONS}
          said={stated?.action ?? null}
          onSaid={(action) => edit("how stops are moved", { edit: "set-action", action })}
        />
      </li>
    </ul>
  );
}

interface SaidOrNotProps<Value extends string> {
  /** What stands before it on the page, and what it is called where that cannot be seen. */
  readonly lead: string;
  readonly label: string;
  readonly words: Readonly<Record<Value, string>>;
  readonly said: Value | null;
  readonly onSaid: (said: Value | null) => void;
}

function SaidOrNot<Value extends string>({ lead, label, words, said, onSaid }: SaidOrNotProps<Value>) {
  const values = Object.keys(words) as Value[];
  return (
    <label className="note">
      {lead}{" "}
      <select
        className="pick"
        aria-label={label}
        value={said ?? ""}
        onChange={({ target }) => onSaid(values.find((value) => value === target.value) ?? null)}
      >
        <option value="">not said</option>
        {values.map((value) => (
          <option key={value} value={value}>
            {words[value]}
          </option>
        ))}
      </select>
    </label>
  );
}

function Memory({ instrument, edit }: SettingProps) {
  const { aids } = instrument;
  const set = settingAids(aids, edit);
  return (
    <>
      <NumberField
        label="General pistons that may be used"
        value={aids.generals}
        least={0}
        most={99}
        onNumber={(generals) => generals !== null && Number.isInteger(generals) && set({ generals })}
      >
        generals that may be used
      </NumberField>
      <NumberField
        label="Memory levels for you"
        value={aids.levels}
        least={0}
        most={9999}
        onNumber={(levels) => levels !== null && Number.isInteger(levels) && set({ levels })}
      >
        memory levels for you
      </NumberField>
    </>
  );
}
