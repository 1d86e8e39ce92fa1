import { useRef, useState } from "react";
import type { Aim } from "../../shared-model/carry/meaning.ts";
import type { LibraryEntry } from "../../shared-model/host-api.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { openPlace, troubleWords } from "../state/opening.ts";
import { organOf } from "../state/organ.ts";
import { useLibrary } from "../state/use-library.ts";
import { useStore, useWork } from "../state/use-store.tsx";
import { isAtSight, isBegun } from "../state/work.ts";
import { Act, Plain } from "../words/action.tsx";
import { TroubleNote } from "../words/trouble-note.tsx";
import { capital, counted, numberWord } from "../words/typeset.tsx";
import { CarriedSection } from "./carried-section.tsx";
import type { CarriedLine, CarryAnswer, CarryAsk } from "./carrying.ts";
import { type Choice, type Chosen, ON_DESK, useDeskPiece, useLibraryOrgan, useLibraryPiece } from "./choices.ts";
import { Suited } from "./suited.tsx";
import { carriedFile, useCarry } from "./use-carry.ts";

/** A piece as it is registered on one organ, carried to another: what comes over, what changes and why, what is lost. */
export function CarryPage({ instrument, text }: { instrument: Instrument; text: string }) {
  const { piece } = useWork();
  const library = useLibrary();
  const entries = library ?? [];
  const onDesk = useDeskPiece(instrument);
  const [pieceChoice, setPieceChoice] = useState<Choice>(isBegun(piece) ? ON_DESK : null);
  const [organChoice, setOrganChoice] = useState<Choice>(isBegun(piece) ? null : ON_DESK);
  const [aim, setAim] = useState<Aim>("playing");
  const pieces = entries.filter((each) => each.kind === "piece");
  const ofLibrary = useLibraryPiece(pieceChoice === ON_DESK ? null : pieceChoice);
  const other = useLibraryOrgan(organChoice === ON_DESK ? null : organChoice);
  const chosen = pieceChoice === ON_DESK ? onDesk : ofLibrary;
  const to = organChoice === ON_DESK ? { name: instrument.name, text } : other;
  const target: Chosen | null = to && "text" in to ? to : null;
  const isSame = chosen.state === "read" && target !== null && chosen.from.text === target.text;
  const ask =
    chosen.state === "read" && target && !isSame
      ? { piece: chosen.piece.text, from: chosen.from.text, to: target.text, aim, others: {} }
      : null;
  const { carrying, stop, again } = useCarry(ask);
  const lines = carrying.state === "done" ? carrying.answer.lines : null;
  return (
    <main className="carry">
      <div className="opening">
        <h1>To another organ</h1>
        <p className="facts" role="status">
          {carrying.state === "carrying" ? "Carrying …" : lines ? outcome(lines) : ""}
        </p>
        <div className="end">
          {carrying.state === "carrying" && (
            <Act second onClick={stop}>
              Stop
            </Act>
          )}
          {(carrying.state === "stopped" || carrying.state === "failed") && (
            <Act second onClick={again}>
              Begin again
            </Act>
          )}
        </div>
      </div>
      <p className="choose">
        Carry{" "}
        <PickDocument
          label="Piece"
          none="a piece …"
          onDesk={onDesk.state === "read" ? onDesk.piece.name : null}
          entries={pieces}
          choice={pieceChoice}
          onChoice={setPieceChoice}
        />{" "}
        {chosen.state === "read" && (
          <>
            from <i>{chosen.from.name}</i>{" "}
          </>
        )}
        to{" "}
        <PickDocument
          label="Organ"
          none="an organ …"
          onDesk={instrument.name}
          entries={entries.filter((each) => each.kind === "instrument" && each.name !== instrument.name)}
          choice={organChoice}
          onChoice={setOrganChoice}
        />{" "}
        <select
          className="pick"
          aria-label="What for"
          value={aim}
          onChange={({ target }) => setAim(target.value as Aim)}
        >
          <option value="playing">to play it there</option>
          <option value="practice">to practise it there</option>
        </select>
      </p>
      {chosen.state === "failed" && <TroubleNote>{chosen.words}</TroubleNote>}
      {to && "trouble" in to && <TroubleNote>{to.trouble}</TroubleNote>}
      {carrying.state === "failed" && <TroubleNote>{carrying.words}</TroubleNote>}
      {carrying.state === "done" && carrying.answer.troubles.length > 0 && (
        <TroubleNote>{carrying.answer.troubles.join(" ")}</TroubleNote>
      )}
      {isSame && <p className="none">That is the organ it is registered on: there is nothing to carry.</p>}
      {chosen.state === "none" && target && (
        <Suited organ={target} pieces={ownBefore(pieces)} onPiece={setPieceChoice} />
      )}
      {chosen.state === "none" && library !== null && pieces.length === 0 && (
        <p className="none quiet">
          There is no piece in your library yet. Make one on the page of the piece, or put its file there: then it
          stands here with how well it suits.
        </p>
      )}
      {ask === null && !isSame && chosen.state !== "failed" && (
        <p className="none quiet">
          Choose a piece and an organ. Stops are matched by what they are, not by their names; each section is set anew
          as near as can be to what it meant.
        </p>
      )}
      {carrying.state === "carrying" && (
        <div className="waiting">
          <progress aria-label="Carrying the piece" />
        </div>
      )}
      {carrying.state === "done" && lines && ask && chosen.state === "read" && target && (
        <Carried
          key={JSON.stringify(ask)}
          ask={ask}
          best={carrying.answer}
          piece={chosen.piece}
          from={chosen.from}
          to={target}
          isToSight={organChoice === ON_DESK}
        />
      )}
    </main>
  );
}

/** The pieces that are one's own; ours where there are none. */
function ownBefore(pieces: readonly LibraryEntry[]): readonly LibraryEntry[] {
  const own = pieces.filter((each) => !each.demo);
  return own.length > 0 ? own : pieces;
}

interface PickDocumentProps {
  readonly label: string;
  /** What stands there while nothing is chosen. */
  readonly none: string;
  /** What lies open, by its name; `null` where nothing does. */
  readonly onDesk: string | null;
  readonly entries: readonly LibraryEntry[];
  readonly choice: Choice;
  readonly onChoice: (choice: Choice) => void;
}

/** What lies open, or a document of the library. */
function PickDocument({ label, none, onDesk, entries, choice, onChoice }: PickDocumentProps) {
  return (
    <select
      className="pick"
      aria-label={label}
      value={choice ?? ""}
      onChange={({ target }) => onChoice(target.value === "" ? null : target.value)}
    >
      <option value="">{none}</option>
      {onDesk !== null && <option value={ON_DESK}>{onDesk}, which lies open</option>}
      <Options entries={entries} />
    </select>
  );
}

/** Documents as choices, one's own before ours. */
function Options({ entries }: { entries: readonly LibraryEntry[] }) {
  const option = ({ id, name }: LibraryEntry) => (
    <option key={id} value={id}>
      {name}
    </option>
  );
  const [own, demo] = [entries.filter((each) => !each.demo), entries.filter((each) => each.demo)];
  return (
    <>
      {own.length > 0 && <optgroup label="Your own">{own.map(option)}</optgroup>}
      {demo.length > 0 && <optgroup label="Ours, invented for trying">{demo.map(option)}</optgroup>}
    </>
  );
}

/** `Four sections: one as it was, two otherwise, one lost`. */
function outcome(lines: readonly CarriedLine[]): string {
  const count = (fate: CarriedLine["fate"], words: string): readonly string[] => {
    const found = lines.filter((line) => line.fate === fate).length;
    return found > 0 ? [`${numberWord(found)} ${words}`] : [];
  };
  const parts = [
    ...count("as-it-was", "as it was"),
    ...count("in-meaning", "the same by other stops"),
    ...count("otherwise", "otherwise"),
    ...count("lost", "lost"),
  ];
  return `${capital(counted(lines.length, "section"))}: ${parts.join(", ")}`;
}

interface CarriedProps {
  readonly ask: CarryAsk;
  /** What comes of it where for each section what is worth most is taken. */
  readonly best: CarryAnswer;
  readonly piece: Chosen;
  readonly from: Chosen;
  readonly to: Chosen;
  /** Whether the organ is the one on the desk, which may be in no file yet. */
  readonly isToSight: boolean;
}

/** The choices with another one for a section; `null` takes it back to what is worth most. */
function withChoice(others: CarryAsk["others"], at: number, signature: string | null): CarryAsk["others"] {
  const { [at]: _, ...rest } = others;
  return signature === null ? rest : { ...rest, [at]: signature };
}

/** The sections on both organs, and what can be made of them. */
function Carried({ ask, best, piece, from, to, isToSight }: CarriedProps) {
  const store = useStore();
  const work = useWork();
  const [others, setOthers] = useState<CarryAsk["others"]>({});
  const isChosen = Object.keys(others).length > 0;
  const { carrying } = useCarry(isChosen ? { ...ask, others } : null);
  // While another choice is worked out, what stands there stays.
  const shown = useRef(best);
  if (!isChosen) shown.current = best;
  else if (carrying.state === "done") shown.current = carrying.answer;
  const { plannedFirst, practice } = shown.current;
  const lines = shown.current.lines ?? [];
  const [left, setLeft] = useState<readonly number[]>([]);
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [old, other] = [organOf(from.text).instrument, organOf(to.text).instrument];
  const mustKeep = isToSight && isAtSight(work);
  const taken = lines.map((line, at) => line.after !== null && !left.includes(at));
  const name = `${piece.name}, ${to.name}`.slice(0, 190);
  const isNothing = !taken.includes(true);

  const save = async (page: "piece" | "cards"): Promise<void> => {
    setBusy(true);
    setTrouble(null);
    try {
      const { text, troubles } = await carriedFile({ ...ask, others, taken, name });
      if (text === null) setTrouble(troubles.join(" "));
      else {
        const { id } = await store.host.create({ kind: "piece", name, text });
        await openPlace(store, { page, organ: null, piece: id, at: 0 });
        return;
      }
    } catch (thrown) {
      setTrouble(troubleWords(thrown));
    }
    setBusy(false);
  };
  if (!old || !other) return null;
  return (
    <>
      {plannedFirst > 0 && (
        <p className="note quiet first-planned">
          {capital(counted(plannedFirst, "section"))} without a registration: planned for {from.name} first, then
          carried.
        </p>
      )}
      {practice && (practice.on !== null || practice.never.length > 0) && (
        <div className="practice">
          {practice.on !== null && <p>{practice.on}.</p>}
          {practice.never.length > 0 && <p>Cannot be practised here: {practice.never.join("; ")}.</p>}
        </div>
      )}
      <ol className="both">
        {lines.map((line, at) => (
          <CarriedSection
            // biome-ignore lint/suspicious/noArrayIndexKey: sections stand in their order, and names may be alike.
            key={at}
            line={line}
            at={at}
            from={old}
            to={other}
            isChosen={others[at] !== undefined}
            onOther={(signature) => setOthers(withChoice(others, at, signature))}
            isTaken={taken[at] === true}
            onTake={(isTaken) => setLeft(isTaken ? left.filter((each) => each !== at) : [...left, at])}
          />
        ))}
      </ol>
      <p className="note quiet">
        Figures at the right are what a difference counts against the registration, our own setting. Ask the organ’s
        keeper before you change its memory, and hear everything in the room first.
      </p>
      {trouble !== null && <TroubleNote>{trouble}</TroubleNote>}
      <div className="row save">
        {mustKeep ? (
          <>
            <p>This organ is in no file yet. Keep it, and the piece can be saved for it.</p>
            <Plain chosen onClick={() => store.turnTo("survey")}>
              To its survey
            </Plain>
          </>
        ) : (
          <>
            <Act disabled={busy || isNothing} onClick={() => void save("piece")}>
              Save as the piece for this organ
            </Act>
            <Act second disabled={busy || isNothing} onClick={() => void save("cards")}>
              Save and make the cards
            </Act>
            <p className="note quiet">
              A new piece, “{name}”; the old one stays as it is. What you do not take over is left open there.
            </p>
          </>
        )}
      </div>
    </>
  );
}
