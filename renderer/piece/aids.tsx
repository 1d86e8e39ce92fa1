import { useId, useState } from "react";
import { PACES, type Pace, type Piece, type PistonsAllowed } from "../../shared-model/music/piece.ts";
import { pistonsOn } from "../../shared-model/plan/change-costs.ts";
import { layoutOf } from "../../shared-model/plan/console-layout.ts";
import { type ConsoleAids, hasPistons, type Instrument } from "../../shared-model/stoplist/instrument.ts";
import { useStore, useWork } from "../state/use-store.tsx";
import type { DeskPiece } from "../state/work.ts";
import { Plain } from "../words/action.tsx";
import { NumberField } from "../words/number-field.tsx";
import { NumbersField } from "./numbers-field.tsx";
import { TempoChoice } from "./tempo-choice.tsx";

const PACE_WORDS: Readonly<Record<Pace, string>> = { brisk: "brisk", normal: "usual", careful: "careful" };

const ALL: PistonsAllowed = { generals: null, divisionals: null, levels: null };
const NONE: PistonsAllowed = { generals: [], divisionals: {}, levels: null };

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => at + 1);
const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? "" : "s"}`;

function choiceOf({ generals, divisionals, levels }: PistonsAllowed): "all" | "none" | "these" {
  if (generals === null && divisionals === null && levels === null) return "all";
  // One who is just writing other numbers has none for a moment; a level that is named stays named.
  const isNone = generals?.length === 0 && divisionals !== null && Object.keys(divisionals).length === 0;
  return isNone && levels === null ? "none" : "these";
}

/** What a plan may press here: `8 generals on 4 levels, 4 of the Great`. */
function pistonsWords(instrument: Instrument, pistons: PistonsAllowed): string {
  if (!hasPistons(instrument.aids)) return "no pistons on this organ";
  const { generals, levels, divisionals } = pistonsOn(instrument, { pistons });
  const words = [
    ...(generals.length > 0 ? [counted(generals.length, "general")] : []),
    ...[...divisionals].map(([name, numbers]) => `${numbers.length} of ${name}`),
  ];
  if (words.length === 0 || levels.length === 0) return "no pistons";
  return `${words.join(", ")}, on ${counted(levels.length, "level")}`;
}

/** Whose knobs an assistant can move in the time of a change, standing at one side. */
function reachWords(instrument: Instrument, assistant: Piece["assistant"]): string | null {
  if (assistant === "none") return null;
  const { jambs, stated } = layoutOf(instrument);
  const at = (side: boolean): string =>
    [...jambs]
      .filter(([, jamb]) => (jamb === assistant) === side)
      .map(([name]) => name)
      .join(", ");
  const near = at(true);
  const far = at(false);
  const guess = stated.size < jambs.size ? " (by custom: nobody has said where the knobs stand)" : "";
  const reach = near === "" ? "no knobs stand at that side" : `reaches ${near}`;
  return `${reach}${far === "" ? "" : `; ${far} only beforehand`}${guess}`;
}

/** Who and what helps through the piece: the assistant and what is in reach, the pistons, the pace, the tempo of all. */
export function Aids({ instrument }: { instrument: Instrument }) {
  const store = useStore();
  const { piece } = useWork();
  const [open, setOpen] = useState(false);
  const panel = useId();
  const set = (words: string, change: Partial<DeskPiece>, run: string | null = null): void =>
    store.act(
      words,
      (draft) => {
        Object.assign(draft.piece, change);
        // Sections that name no tempo follow the piece.
        if (change.tempo !== undefined) for (const each of draft.piece.sections) each.pieceTempo = change.tempo;
      },
      run,
    );
  return (
    <>
      <label>
        <span className="note quiet">assistant </span>
        <select
          className="pick"
          value={piece.assistant}
          onChange={({ target }) => set("the assistant", { assistant: target.value as Piece["assistant"] })}
        >
          <option value="none">none</option>
          <option value="left">at your left</option>
          <option value="right">at your right</option>
        </select>
      </label>
      <span className="note quiet">{reachWords(instrument, piece.assistant)}</span>
      <Plain chosen aria-expanded={open} aria-controls={panel} onClick={() => setOpen(!open)}>
        Pistons, pace, tempo
      </Plain>
      <span className="note quiet">{pistonsWords(instrument, piece.pistons)}</span>
      <div className="aids" id={panel} hidden={!open}>
        {open && (
          <>
            <Pistons
              aids={instrument.aids}
              pistons={piece.pistons}
              onPistons={(pistons, run) => set("the pistons to use", { pistons }, run)}
            />
            <div className="before">
              <label>
                <span className="note quiet">pace of the hands </span>
                <select
                  className="pick"
                  aria-label="Pace of the hands"
                  value={piece.pace}
                  onChange={({ target }) => {
                    const pace = PACES.find((each) => each === target.value);
                    if (pace) set("the pace of the hands", { pace });
                  }}
                >
                  {PACES.map((each) => (
                    <option key={each} value={each}>
                      {PACE_WORDS[each]}
                    </option>
                  ))}
                </select>
              </label>
              <label className="check">
                <input
                  type="checkbox"
                  checked={piece.practised}
                  onChange={({ target }) => set("whether the changes are practised", { practised: target.checked })}
                />
                changes practised: no label has to be read
              </label>
            </div>
            <div className="before">
              <TempoChoice
                who="the piece"
                said={piece}
                unsaid="not said"
                onTempo={(tempo) => set("the tempo of the piece", tempo, "tempo of the piece")}
              />
              <NumberField
                label="Beats in a bar of the piece"
                value={piece.beatsInBar}
                least={0.5}
                most={64}
                mayBeEmpty
                placeholder="?"
                onNumber={(beatsInBar) => set("the beats in a bar", { beatsInBar }, "beats in a bar")}
              >
                beats in a bar
              </NumberField>
            </div>
          </>
        )}
      </div>
    </>
  );
}

interface PistonsProps {
  readonly aids: ConsoleAids;
  readonly pistons: PistonsAllowed;
  readonly onPistons: (pistons: PistonsAllowed, run: string | null) => void;
}

/** Which pistons are the player's to use. */
function Pistons({ aids, pistons, onPistons }: PistonsProps) {
  const about = useId();
  if (!hasPistons(aids)) return <p className="note quiet">This organ has no pistons: every change is made by hand.</p>;
  const choice = choiceOf(pistons);
  const levels = Math.max(1, aids.levels);
  const divisions = Object.entries(aids.divisionals).filter(([, count]) => count > 0);
  const begin = (): PistonsAllowed => ({
    generals: upTo(aids.generals),
    divisionals: Object.fromEntries(divisions.map(([name, count]) => [name, upTo(count)])),
    levels: [1],
  });
  return (
    <fieldset className="before" aria-describedby={about}>
      <legend className="sr">Pistons</legend>
      <label>
        <span className="note quiet">pistons </span>
        <select
          className="pick"
          aria-label="Pistons to use"
          value={choice}
          onChange={({ target }) =>
            onPistons(target.value === "all" ? ALL : target.value === "none" ? NONE : begin(), null)
          }
        >
          <option value="all">all that the organ has</option>
          <option value="none">none</option>
          <option value="these">these alone</option>
        </select>
      </label>
      {choice === "these" && (
        <>
          {aids.generals > 0 && (
            <NumbersField
              label="generals"
              numbers={pistons.generals ?? upTo(aids.generals)}
              most={aids.generals}
              onNumbers={(generals) => onPistons({ ...pistons, generals }, "generals")}
            />
          )}
          {divisions.map(([name, count]) => (
            <NumbersField
              key={name}
              label={name}
              numbers={pistons.divisionals === null ? upTo(count) : (pistons.divisionals[name] ?? [])}
              most={count}
              onNumbers={(numbers) => {
                const all = pistons.divisionals ?? begin().divisionals ?? {};
                onPistons({ ...pistons, divisionals: { ...all, [name]: numbers } }, name);
              }}
            />
          ))}
          <NumbersField
            label={levels === 1 ? "level" : "levels"}
            numbers={pistons.levels ?? upTo(levels)}
            most={levels}
            onNumbers={(numbers) => onPistons({ ...pistons, levels: numbers }, "levels")}
          />
        </>
      )}
      {choice !== "none" && (
        <p className="note quiet" id={about}>
          On an organ that is not yours ask the keeper which level is free, use only that, and put back what was there.
        </p>
      )}
    </fieldset>
  );
}
