import type { CSSProperties, KeyboardEvent } from "react";
import type { Hands } from "../../shared-model/music/texture.ts";
import { isFarBehind } from "../../shared-model/propose/propose.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { HAND_SHORT, HAND_WORDS, HandMark } from "../words/hand-mark.tsx";
import { capital, pointsText, Typeset } from "../words/typeset.tsx";
import { type SaidPart, saidPart } from "./part-words.ts";
import type { Proposed } from "./proposed.ts";

/** How many stand side by side before the next row begins. */
const SIDE_BY_SIDE = 5;

interface Row {
  readonly part: string;
  readonly hands: Hands;
  readonly role: string;
}

interface BillProps {
  readonly instrument: Instrument;
  readonly rows: readonly Row[];
  readonly proposals: readonly Proposed[];
  readonly chosen: number | null;
  readonly ladder: boolean;
  readonly onChoose: (place: number) => void;
}

const ORDINALS = ["1st", "2nd", "3rd"];
const ordinal = (place: number): string => ORDINALS[place - 1] ?? `${place}th`;

/** `1st`, `equal 4th` where scores are the same, or `far behind` where the place would say too much. */
function placeWords(proposals: readonly Proposed[], { place, score }: Proposed, ladder: boolean): string {
  if (ladder) return `step ${place}`;
  const same = proposals.filter((each) => each.score === score);
  if (isFarBehind(score, Math.max(...proposals.map((each) => each.score)))) return "far behind";
  return same.length > 1 ? `equal ${ordinal(Math.min(...same.map((each) => each.place)))}` : ordinal(place);
}

/**
 * Registrations as columns of a bill of fare: what the right hand, the left hand and the feet draw runs across all of
 * them. One group of choices; arrows go from one to the next.
 */
export function Bill({ instrument, rows, proposals, chosen, ladder, onChoose }: BillProps) {
  const chunks: (readonly Proposed[])[] = [];
  for (let at = 0; at < proposals.length; at += SIDE_BY_SIDE) chunks.push(proposals.slice(at, at + SIDE_BY_SIDE));
  const entry = proposals.some((each) => each.place === chosen) ? chosen : (proposals[0]?.place ?? null);

  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    const here = proposals.findIndex((each) => `proposal-${each.place}` === (event.target as HTMLElement).id);
    if (here < 0) return;
    if (event.key === " " || event.key === "Enter") {
      event.preventDefault();
      onChoose((proposals[here] as Proposed).place);
    }
    if (step === undefined) return;
    event.preventDefault();
    const next = proposals[(here + step + proposals.length) % proposals.length] as Proposed;
    onChoose(next.place);
    document.getElementById(`proposal-${next.place}`)?.focus();
  };

  return (
    <div role="radiogroup" aria-label={ladder ? "Steps, softest first" : "Registrations"} className="bills">
      {chunks.map((chunk, index) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: arrows move between the choices inside.
        <div
          className="bill"
          key={chunk[0]?.place}
          style={
            {
              "--bill-rows": `repeat(${rows.length + 1}, auto)`,
              "--bill-turned": `minmax(0, 1.3fr) repeat(${rows.length}, minmax(0, 1fr))`,
            } as CSSProperties
          }
          onKeyDown={onKeyDown}
        >
          <div className="rows" aria-hidden="true">
            <span className="note quiet">{index === 0 ? "" : "and further"}</span>
            {rows.map(({ part, hands, role }) => (
              <span className="who" key={part}>
                <HandMark hands={hands} />
                <span>
                  {HAND_SHORT[hands]}
                  <small>{role}</small>
                </span>
              </span>
            ))}
          </div>
          {chunk.map((proposal) => (
            // biome-ignore lint/a11y/useSemanticElements: a whole column is the choice; a radio button cannot hold one.
            <div
              className="card"
              key={proposal.place}
              id={`proposal-${proposal.place}`}
              role="radio"
              aria-checked={proposal.place === chosen}
              tabIndex={proposal.place === entry ? 0 : -1}
              onClick={() => onChoose(proposal.place)}
              onKeyDown={undefined}
            >
              <div className="label">
                <span className="pl">{placeWords(proposals, proposal, ladder)}</span>
                <span className="sc">
                  <b>{pointsText(proposal.score)}</b> points
                </span>
                <span className="t">
                  <Typeset>{proposal.label}</Typeset>
                </span>
              </div>
              {rows.map((row) => (
                <PartCell key={row.part} row={row} said={saidPart(instrument, proposal, row.part)} />
              ))}
            </div>
          ))}
        </div>
      ))}
    </div>
  );
}

function PartCell({ row, said }: { row: Row; said: SaidPart }) {
  return (
    <div>
      <HandMark hands={row.hands} />
      <span className="sr">
        {capital(HAND_WORDS[row.hands])}, {row.role}:{" "}
      </span>
      <span className="st">
        {said.keyboard !== null && <span className="kb">{said.keyboard} </span>}
        <Typeset>{said.stops}</Typeset>
      </span>
    </div>
  );
}
