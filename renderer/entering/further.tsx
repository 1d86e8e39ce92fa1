import { useState } from "react";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { Plain } from "../words/action.tsx";
import { RoomByEar } from "./by-ear.tsx";
import { type Edit, settingAids } from "./editing.ts";

/** What a list seldom says: the room, couplers, tremulants, pistons. */
export function Further({ instrument, edit }: { instrument: Instrument; edit: Edit }) {
  return (
    <div className="further">
      <RoomByEar instrument={instrument} edit={edit} />
      <Couplers instrument={instrument} edit={edit} />
      <Tremulants instrument={instrument} edit={edit} />
      <Aids instrument={instrument} edit={edit} />
    </div>
  );
}

function Couplers({ instrument, edit }: { instrument: Instrument; edit: Edit }) {
  const names = instrument.divisions.map((division) => division.name);
  const keyed = instrument.divisions
    .filter((division) => division.kind !== "floating")
    .map((division) => division.name);
  const [from, setFrom] = useState(names[1] ?? names[0] ?? "");
  const [to, setTo] = useState(keyed[0] ?? "");
  const [pitch, setPitch] = useState<16 | 8 | 4>(8);
  const name = `${from} to ${to}${pitch === 8 ? "" : ` ${pitch}`}`;
  const isNew = (from !== to || pitch !== 8) && !instrument.couplers.some((coupler) => coupler.name === name);
  const select = (label: string, value: string, all: readonly string[], onChoose: (value: string) => void) => (
    <select className="pick" aria-label={label} value={value} onChange={(event) => onChoose(event.target.value)}>
      {all.map((each) => (
        <option key={each}>{each}</option>
      ))}
    </select>
  );
  return (
    <section aria-labelledby="couplers">
      <h2 className="cap" id="couplers">
        Couplers
      </h2>
      <ul>
        {instrument.couplers.map((coupler) => (
          <li key={coupler.name}>
            {coupler.name}
            {coupler.fixed && <span className="note quiet"> always on</span>}
            <Plain
              aria-label={`Take out ${coupler.name}`}
              onClick={() => edit(`taking out ${coupler.name}`, { edit: "remove-coupler", coupler: coupler.name })}
            >
              Take out
            </Plain>
          </li>
        ))}
      </ul>
      <p className="new">
        {select("Coupler from", from, names, setFrom)} to {select("Coupler to", to, keyed, setTo)}
        {select("Pitch of the coupler", String(pitch), ["8", "4", "16"], (value) =>
          setPitch(Number(value) as 16 | 8 | 4),
        )}
        <Plain
          chosen
          disabled={!isNew}
          onClick={() => edit(`adding ${name}`, { edit: "add-coupler", coupler: { from, to, pitch } })}
        >
          Add
        </Plain>
      </p>
    </section>
  );
}

function Tremulants({ instrument, edit }: { instrument: Instrument; edit: Edit }) {
  const { tremulants } = instrument;
  const toggle = (name: string): void => {
    const next = tremulants.includes(name) ? tremulants.filter((each) => each !== name) : [...tremulants, name];
    edit("the tremulants", { edit: "set-tremulants", tremulants: next });
  };
  return (
    <section aria-labelledby="tremulants">
      <h2 className="cap" id="tremulants">
        Tremulants
      </h2>
      <ul>
        {["all", ...instrument.divisions.map((division) => division.name)].map((name) => (
          <li key={name}>
            <label className="check">
              <input type="checkbox" checked={tremulants.includes(name)} onChange={() => toggle(name)} />
              {name === "all" ? "one for the whole organ" : name}
            </label>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Aids({ instrument, edit }: { instrument: Instrument; edit: Edit }) {
  const { aids } = instrument;
  const set = settingAids(aids, edit);
  const number = (label: string, value: number, most: number, onNumber: (value: number) => void) => (
    <li key={label}>
      <label>
        <input
          type="number"
          min={0}
          max={most}
          value={value}
          onChange={(event) => {
            const said = Number(event.target.value);
            if (Number.isInteger(said) && said >= 0 && said <= most) onNumber(said);
          }}
        />{" "}
        {label}
      </label>
    </li>
  );
  return (
    <section aria-labelledby="aids">
      <h2 className="cap" id="aids">
        Pistons and aids
      </h2>
      <ul>
        {number("general pistons", aids.generals, 99, (generals) => set({ generals }))}
        {instrument.divisions.map(({ name }) =>
          number(`pistons of the ${name}`, aids.divisionals[name] ?? 0, 30, (count) =>
            set({
              divisionals: Object.fromEntries(
                Object.entries({ ...aids.divisionals, [name]: count }).filter(([, each]) => each > 0),
              ),
            }),
          ),
        )}
        {number("memory levels for you", aids.levels, 9999, (levels) => set({ levels }))}
        <li>
          <label className="check">
            <input
              type="checkbox"
              checked={aids.crescendoPedal}
              onChange={() => set({ crescendoPedal: !aids.crescendoPedal })}
            />
            a crescendo pedal or roller
          </label>
        </li>
      </ul>
    </section>
  );
}
