import { useState } from "react";
import type { Change } from "../../shared-model/check/change.ts";
import { Act, Plain } from "../words/action.tsx";
import { counted, numberWord, pointsText, Typeset } from "../words/typeset.tsx";
import type { Way } from "./ways.ts";

interface RemediesProps {
  /** `null` while they are being reckoned. */
  readonly ways: readonly Way[] | null;
  readonly score: number;
  readonly onSuggest: (change: Change | null) => void;
  readonly onTake: (way: Way) => void;
}

/** What would improve this: the best single change, the others behind a word. */
export function Remedies({ ways, score, onSuggest, onTake }: RemediesProps) {
  const [open, setOpen] = useState(false);
  const [first, ...others] = ways ?? [];
  return (
    <section className="remedy" aria-labelledby="remedy-head">
      <h2 className="cap" id="remedy-head">
        One change helps most
      </h2>
      {ways === null && <p className="note quiet">Trying every single change …</p>}
      {ways !== null && !first && <p>No single change is better by the rules; your ears decide.</p>}
      {first && (
        <>
          <WayLine way={first} score={score} onSuggest={onSuggest} big />
          <div className="acts">
            <Act onClick={() => onTake(first)}>Do it</Act>
            {others.length > 0 && (
              <Plain aria-expanded={open} onClick={() => setOpen(!open)}>
                {open
                  ? "Only this"
                  : `${others.length === 1 ? "One other way" : `${numberWord(others.length)} other ways`}`}
              </Plain>
            )}
          </div>
          {open && (
            <ul className="others">
              {others.map((way) => (
                <li key={way.words}>
                  <WayLine way={way} score={score} onSuggest={onSuggest} />
                  <Plain chosen onClick={() => onTake(way)} aria-label={`Do it: ${way.words}`}>
                    Do it
                  </Plain>
                </li>
              ))}
            </ul>
          )}
        </>
      )}
    </section>
  );
}

interface WayLineProps {
  readonly way: Way;
  readonly score: number;
  readonly onSuggest: (change: Change | null) => void;
  readonly big?: boolean;
}

function WayLine({ way, score, onSuggest, big = false }: WayLineProps) {
  const errors = way.errorsLess > 0 ? `${counted(way.errorsLess, "error")} less; ` : "";
  return (
    <p onMouseEnter={() => onSuggest(way.change)} onMouseLeave={() => onSuggest(null)}>
      <span className={big ? "big" : ""}>
        <Typeset>{way.words}</Typeset>
      </span>{" "}
      <span className="note quiet">
        {errors}
        {pointsText(score)} becomes <b>{pointsText(way.score)}</b>
      </span>
    </p>
  );
}
