import { tempoAt } from "../../shared-model/files/music-entry.ts";
import { BEATS } from "../../shared-model/files/music-schema.ts";
import type { Metronome } from "../../shared-model/music/piece.ts";
import type { Tempo } from "../../shared-model/music/texture.ts";
import { NumberField } from "../words/number-field.tsx";
import { TEMPI } from "../words/schools.ts";

/** A tempo as it is said: in a word, counted, or not at all. */
export interface SaidTempo {
  readonly tempo: Tempo | null | undefined;
  readonly metronome: Metronome | null;
}

const COUNTED = "counted";
const USUAL: Metronome = { bpm: 72, quarters: BEATS.quarter };

/** `72 to the quarter`. */
export function tempoWords({ tempo, metronome }: SaidTempo): string | null {
  if (!metronome) return tempo ?? null;
  const [beat = "quarter"] = Object.entries(BEATS).find(([, quarters]) => quarters === metronome.quarters) ?? [];
  return `${beat} = ${metronome.bpm}`;
}

interface TempoChoiceProps {
  readonly who: string;
  readonly said: SaidTempo;
  /** What holds where nothing is said. */
  readonly unsaid: string;
  readonly onTempo: (said: { readonly tempo: Tempo | null; readonly metronome: Metronome | null }) => void;
}

/** How fast: in a word, or in beats a minute, from which the seconds for a change are counted. */
export function TempoChoice({ who, said: { tempo, metronome }, unsaid, onTempo }: TempoChoiceProps) {
  const count = (next: Metronome): void => onTempo({ tempo: tempoAt(next.bpm), metronome: next });
  return (
    <span className="before">
      <label>
        <span className="note quiet">tempo </span>
        <select
          className="pick"
          aria-label={`Tempo of ${who}`}
          value={metronome ? COUNTED : (tempo ?? "")}
          onChange={({ target }) => {
            if (target.value === COUNTED) count(USUAL);
            else onTempo({ tempo: TEMPI.find((each) => each === target.value) ?? null, metronome: null });
          }}
        >
          <option value="">{unsaid}</option>
          {TEMPI.map((each) => (
            <option key={each}>{each}</option>
          ))}
          <option value={COUNTED}>counted</option>
        </select>
      </label>
      {metronome && (
        <>
          <select
            className="pick"
            aria-label={`Beat of ${who}`}
            value={String(metronome.quarters)}
            onChange={({ target }) => count({ ...metronome, quarters: Number(target.value) })}
          >
            {Object.entries(BEATS).map(([name, quarters]) => (
              <option key={name} value={quarters}>
                {name}
              </option>
            ))}
          </select>
          <NumberField
            label={`Beats a minute of ${who}`}
            value={metronome.bpm}
            least={10}
            most={400}
            onNumber={(bpm) => bpm !== null && count({ ...metronome, bpm })}
          >
            a minute
          </NumberField>
        </>
      )}
    </span>
  );
}
