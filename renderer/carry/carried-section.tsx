import type { Part } from "../../shared-model/music/texture.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { PartLines } from "../registrations/part-lines.tsx";
import { Plain } from "../words/action.tsx";
import { capital, counted, numberWord, pointsText, Typeset } from "../words/typeset.tsx";
import type { CarriedLine, CarriedSide, Fate } from "./carrying.ts";

/** What becomes of a section, in the fewest words. */
const FATE_WORDS: Readonly<Record<Fate, string>> = {
  "as-it-was": "as it was",
  "in-meaning": "the same by other stops",
  otherwise: "otherwise",
  lost: "lost",
};

interface CarriedSectionProps {
  readonly line: CarriedLine;
  readonly at: number;
  readonly from: Instrument;
  readonly to: Instrument;
  /** Whether the person chose another registration than the one that is worth most. */
  readonly isChosen: boolean;
  /** Another registration by its signature; `null` for the one that is worth most. */
  readonly onOther: (signature: string | null) => void;
  readonly isTaken: boolean;
  readonly onTake: (isTaken: boolean) => void;
}

/** One section on both organs side by side, what became of it beside that, and whether it is taken. */
export function CarriedSection({ line, at, from, to, isChosen, onOther, isTaken, onTake }: CarriedSectionProps) {
  const { name, bars, fate, music, before, after, missing, remarks, unpractised } = line;
  return (
    <li className="carried" aria-label={name}>
      <div className="head">
        <span className="no">{at + 1}</span>
        <h2>{name}</h2>
        {bars !== null && <span className="note quiet">bars {bars}</span>}
        <span className={`fate fate-${fate}`}>{FATE_WORDS[fate]}</span>
        {after && (
          <label className="check">
            <input type="checkbox" checked={isTaken} onChange={(event) => onTake(event.target.checked)} />
            take it over<span className="sr">: {name}</span>
          </label>
        )}
      </div>
      <Side organ={from} side={before} music={music} words="was" />
      {after ? (
        <Side organ={to} side={after} music={music} words="becomes" />
      ) : (
        <div className="side">
          <p className="note quiet">becomes</p>
          <p className="label">Nothing: {to.name} has no means for it</p>
          <ul className="note">
            {missing.map((each) => (
              <li key={each} className="bare">
                <Typeset>{each}</Typeset>
              </li>
            ))}
          </ul>
        </div>
      )}
      <div className="why">
        {after && <Differences line={line} />}
        {after && unpractised.length > 0 && (
          <p className="note">
            <Typeset>{`Not practised here: ${unpractised.join("; ")}.`}</Typeset>
          </p>
        )}
        {remarks.map((each) => (
          <p className="note" key={each}>
            <Typeset>{each}</Typeset>
          </p>
        ))}
      </div>
      {after && (line.others.length > 0 || isChosen) && (
        <Others line={line} to={to} isChosen={isChosen} onOther={onOther} />
      )}
    </li>
  );
}

interface OthersProps {
  readonly line: CarriedLine;
  readonly to: Instrument;
  readonly isChosen: boolean;
  readonly onOther: (signature: string | null) => void;
}

/** Costs that are told of another registration, dearest first. */
const MOST_COSTS = 4;

/** The next best registrations of a section, each with what it costs, to be taken instead. */
function Others({ line: { name, music, others }, to, isChosen, onOther }: OthersProps) {
  return (
    <details className="next-best">
      <summary>
        {others.length > 0
          ? `or ${others.length === 1 ? "another" : `one of ${numberWord(others.length)} others`}`
          : "chosen by you"}
        <span className="sr">: {name}</span>
      </summary>
      <ul>
        {others.map((other) => (
          <li key={other.signature}>
            <p className="label">
              <Typeset>{other.label}</Typeset>
            </p>
            <PartLines organ={to} registered={other} music={music} />
            <p className="note quiet">
              {pointsText(-other.behind, true)} points{other.behind < 0 && " by itself"}
              {other.costs.length > 0 && (
                <>
                  : <Typeset>{costWords(other.costs)}</Typeset>
                </>
              )}
            </p>
            <Plain chosen onClick={() => onOther(other.signature)}>
              Take this one<span className="sr">: {other.label}</span>
            </Plain>
          </li>
        ))}
      </ul>
      {isChosen && (
        <Plain onClick={() => onOther(null)}>
          Back to what is worth most<span className="sr">: {name}</span>
        </Plain>
      )}
    </details>
  );
}

const costWords = (costs: readonly string[]): string =>
  costs.length > MOST_COSTS + 1
    ? `${costs.slice(0, MOST_COSTS).join("; ")}; and ${costs.length - MOST_COSTS} more`
    : costs.join("; ");

interface SideProps {
  readonly organ: Instrument;
  readonly side: CarriedSide;
  readonly music: readonly Part[];
  readonly words: string;
}

function Side({ organ, side, music, words }: SideProps) {
  return (
    <div className="side">
      <p className="note quiet">{words}</p>
      <p className="label">
        <Typeset>{side.label}</Typeset>
        {side.steps > 0 && <span className="note quiet"> and {counted(side.steps, "further step")}</span>}
      </p>
      <PartLines organ={organ} registered={side} music={music} />
    </div>
  );
}

/** What stops became, then what is meant otherwise with its price, as a ledger. */
function Differences({ line: { stops, differences, fate } }: { line: CarriedLine }) {
  if (stops.length + differences.length === 0) {
    return (
      <p className="note quiet">
        {fate === "as-it-was" ? "Set as it was: every stop has its like there." : "Nothing is meant otherwise."}
      </p>
    );
  }
  return (
    <>
      {stops.map(({ part, text }) => (
        <p className="note" key={`${part} ${text}`}>
          <i>{capital(part)}:</i> <Typeset>{text}</Typeset>
        </p>
      ))}
      {differences.length > 0 && (
        <table className="cost note">
          <caption className="sr">What is meant otherwise, and what that counts against it</caption>
          <tbody>
            {differences.map(({ part, text, points }) => (
              <tr key={`${part} ${text}`}>
                <td>
                  {part !== null && <i>{capital(part)}: </i>}
                  <Typeset>{part === null ? capital(text) : text}</Typeset>
                </td>
                <td>{pointsText(-points)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}
