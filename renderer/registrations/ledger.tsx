import { useState } from "react";
import type { Reason } from "../../shared-model/judging/reason.ts";
import { citations } from "../../shared-model/music/prescriptions/citation.ts";
import { capital, pointsText, Typeset } from "../words/typeset.tsx";

/** Reasons of one rule: a line of the ledger. */
interface Line {
  readonly rule: string;
  readonly points: number;
  readonly reasons: readonly Reason[];
}

/** The ledger's lines: reasons gathered by rule, dearest first, those that move no points last. */
function linesOf(reasons: readonly Reason[]): readonly Line[] {
  const lines = new Map<string, Reason[]>();
  for (const reason of reasons) lines.set(reason.rule, [...(lines.get(reason.rule) ?? []), reason]);
  return [...lines]
    .map(([rule, own]) => ({ rule, points: own.reduce((sum, each) => sum + each.points, 0), reasons: own }))
    .sort((a, b) => Number(b.points !== 0) - Number(a.points !== 0) || b.points - a.points);
}

/** A rule by its id in words: `solo-clear` is `Solo clear`. */
const ruleWords = (rule: string): string => capital(rule.replaceAll("-", " "));

/** A score as a book sets one: reasons with their points, a ruled sum, sentences and sources on demand. */
export function Ledger({ reasons, score }: { reasons: readonly Reason[]; score: number }) {
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const toggle = (rule: string): void =>
    setOpen((before) =>
      before.has(rule) ? new Set([...before].filter((each) => each !== rule)) : new Set([...before, rule]),
    );
  return (
    <table className="ledger">
      <tbody>
        {linesOf(reasons).map(({ rule, points, reasons: own }) => (
          <tr className={points < 0 ? "minus" : ""} key={rule}>
            <td>
              <button type="button" aria-expanded={open.has(rule)} onClick={() => toggle(rule)}>
                <span className="why">{ruleWords(rule)}</span>
                <span className="pt">{points === 0 ? "–" : pointsText(points, true)}</span>
              </button>
              {open.has(rule) && (
                <div className="src">
                  {own.map((reason) => (
                    <p className="note" key={`${reason.text} ${reason.parts.join()}`}>
                      <Typeset>{reason.text}</Typeset>{" "}
                      {own.length > 1 && reason.points !== 0 && <b>{pointsText(reason.points, true)}. </b>}
                      <span className="quiet">{citations(reason.source)}.</span>
                    </p>
                  ))}
                </div>
              )}
            </td>
          </tr>
        ))}
        <tr className="sum">
          <td>
            <div>
              <span>together</span>
              <span className="pt">{pointsText(score)}</span>
            </div>
          </td>
        </tr>
      </tbody>
    </table>
  );
}
