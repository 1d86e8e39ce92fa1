import { useState } from "react";
import type { Division, Instrument } from "../../shared-model/stoplist/instrument.ts";
import { FAMILY_WORDS } from "../../shared-model/stoplist/kind.ts";
import { organFacts } from "../../shared-model/stoplist/organ-facts.ts";
import { useDesk, useStore } from "../state/use-store.tsx";
import { Act, Plain } from "../words/action.tsx";
import { FamilyLegend, FamilySign } from "../words/family-sign.tsx";
import { NameField } from "../words/name-field.tsx";
import { organWords } from "../words/organ-words.ts";
import { PitchOrRanks } from "../words/pitch.tsx";
import { TroubleNote } from "../words/trouble-note.tsx";
import { counted, roman } from "../words/typeset.tsx";
import { DivisionFacts } from "./division-facts.tsx";
import { type Edit, editOrgan } from "./editing.ts";
import { Further } from "./further.tsx";
import { StopEditor } from "./stop-editor.tsx";

/** The organ as a booklet in which everything can be mended, and the few things that a list does not say. */
export function OrganPage({ instrument }: { instrument: Instrument }) {
  const store = useStore();
  const { trouble, organFile } = useDesk();
  const [open, setOpen] = useState<string | null>(null);
  const edit: Edit = (words, change) => editOrgan(store, words, change);
  const stops = instrument.divisions.flatMap((division) => division.stops);
  return (
    <main className="organ">
      <h1 className="sr">The organ</h1>
      <div className="opening tall">
        <div className="title">
          <NameField
            label="Name of the organ"
            key={instrument.name}
            text={instrument.name}
            onName={(name) => edit("the name of the organ", { edit: "set-name", name })}
          />
        </div>
        <p className="facts">
          {organWords(organFacts(instrument))}, {counted(stops.length, "stop")}
        </p>
        <div className="end">
          <Plain onClick={() => store.turnTo("visit")}>A visit</Plain>
          <Act onClick={() => store.turnTo("texture")}>Choose a texture</Act>
        </div>
      </div>
      <p className="note quiet">
        Touch a stop to rename it, mark it off, say how strong and bright it is by ear, or take it out.
        {organFile?.demo && " This is a demo organ: your first change makes a copy of it in your library."}
      </p>
      {trouble !== null && <TroubleNote>{trouble}</TroubleNote>}
      <div className="disp">
        {instrument.divisions.map((division) => (
          <DivisionColumn
            key={division.name}
            instrument={instrument}
            division={division}
            open={open}
            onOpen={setOpen}
            edit={edit}
          />
        ))}
      </div>
      <FamilyLegend families={stops.map((stop) => stop.family)} />
      <Further instrument={instrument} edit={edit} />
    </main>
  );
}

interface DivisionColumnProps {
  readonly instrument: Instrument;
  readonly division: Division;
  readonly open: string | null;
  readonly onOpen: (stop: string | null) => void;
  readonly edit: Edit;
}

function DivisionColumn({ instrument, division, open, onOpen, edit }: DivisionColumnProps) {
  const { name, stops, keyboard } = division;
  return (
    <section className="div" aria-label={name}>
      <h2>
        {name}
        <small>{keyboard === null ? "" : roman(keyboard)}</small>
      </h2>
      <DivisionFacts division={division} edit={edit} />
      {stops.map((stop, at) => (
        <div key={stop.id}>
          <button
            type="button"
            className={`set${open === stop.id ? " open" : ""}${stop.off ? " off" : ""}`}
            aria-expanded={open === stop.id}
            onClick={() => onOpen(open === stop.id ? null : stop.id)}
          >
            <FamilySign family={stop.family} />
            <span className="n">
              {stop.name}
              {stop.half && <small className="half"> {stop.half}</small>}
            </span>
            <PitchOrRanks pitch={stop.pitch} ranks={stop.ranks} />
            <span className="sr">
              , {FAMILY_WORDS[stop.family]}
              {stop.off ? ", off" : ""}
            </span>
            {stop.off && <span className="remark">{stop.note ?? "off"}</span>}
          </button>
          {open === stop.id && (
            <StopEditor
              instrument={instrument}
              stop={stop}
              at={at}
              count={stops.length}
              edit={edit}
              onClose={() => onOpen(null)}
            />
          )}
        </div>
      ))}
      <AddStop division={name} edit={edit} />
    </section>
  );
}

/** A stop is added as a list prints it: `Flageolet 2`. */
function AddStop({ division, edit }: { division: string; edit: Edit }) {
  const [text, setText] = useState("");
  return (
    <form
      className="add"
      onSubmit={(event) => {
        event.preventDefault();
        const stop = text.trim();
        if (stop !== "" && edit(`adding ${stop}`, { edit: "add-stop", division, stop })) setText("");
      }}
    >
      <label>
        <span className="sr">Add a stop to the {division}, with its pitch</span>
        <input
          value={text}
          placeholder="Add: Flageolet 2"
          maxLength={120}
          spellCheck={false}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      {text.trim() !== "" && (
        <button type="submit" className="plain pick">
          Add
        </button>
      )}
    </form>
  );
}
