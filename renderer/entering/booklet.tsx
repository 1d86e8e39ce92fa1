import type { ReactNode } from "react";
import type { Question } from "../../shared-model/stoplist/reading/question.ts";
import type { Reading } from "../../shared-model/stoplist/reading/reading.ts";
import { FamilySign } from "../words/family-sign.tsx";
import { PitchOrRanks } from "../words/pitch.tsx";
import { counted, NumberWord, roman } from "../words/typeset.tsx";
import { familyOf } from "./line-words.ts";

interface BookletProps {
  readonly reading: Reading;
  readonly open: readonly Question[];
  readonly children: ReactNode;
}

/** The disposition as understood, set as an opening booklet sets it. */
export function Booklet({ reading, open, children }: BookletProps) {
  const stops = reading.divisions.flatMap((division) => division.stops).length;
  const manuals = reading.divisions.filter((division) => division.kind === "manual").length;
  const pedal = reading.divisions.some((division) => division.kind === "pedal");
  const show = (line: number): void => {
    const row = document.getElementById(`line-${line}`);
    row?.scrollIntoView({ block: "center" });
    row?.focus();
  };
  return (
    <section className="booklet" aria-label="The organ as understood">
      <h1>{reading.name ?? "An organ"}</h1>
      <p className="sub">
        {NumberWord(manuals)} keyboard{manuals === 1 ? "" : "s"}
        {pedal ? " and pedal" : ""}, {counted(stops, "stop")}
      </p>
      <div className="two">
        {reading.divisions.map((division) => (
          <div className="div plainlist" key={`${division.name} ${division.stops[0]?.line}`}>
            <h2>
              {division.name ?? "Manual"}
              <small>
                {[division.keyboard === null ? "" : roman(division.keyboard), division.enclosed ? "in a box" : ""]
                  .filter((each) => each !== "")
                  .join(", ")}
              </small>
            </h2>
            {division.stops.map((stop) => {
              const family = familyOf(stop, division);
              const isOpen = open.some(
                (question) => question.line === stop.line && question.stops.some((name) => stop.name.startsWith(name)),
              );
              return (
                <button
                  type="button"
                  className={isOpen ? "set open" : "set"}
                  key={`${stop.line} ${stop.name} ${stop.half} ${stop.printed}`}
                  onClick={() => show(stop.line)}
                >
                  {family ? <FamilySign family={family} /> : <span />}
                  <span className="n">{stop.name}</span>
                  {isOpen ? (
                    <span className="ft ro">?</span>
                  ) : (
                    <PitchOrRanks pitch={stop.pitch} ranks={stop.ranks ?? 0} />
                  )}
                  <span className="no">
                    <span className="sr">, line </span>
                    {stop.line}
                  </span>
                </button>
              );
            })}
          </div>
        ))}
        {reading.couplers.length + reading.tremulants.length > 0 && (
          <div className="div plainlist">
            <h2>Couplers</h2>
            <ul className="words">
              {reading.couplers.map(({ from, to, pitch }) => (
                <li key={`${from} ${to} ${pitch}`}>
                  {from} to {to}
                  {pitch === 8 ? "" : ` ${pitch}`}
                </li>
              ))}
              {reading.tremulants.map((name) => (
                <li key={name}>Tremulant, {name === "all" ? "whole organ" : name}</li>
              ))}
            </ul>
          </div>
        )}
      </div>
      {children}
    </section>
  );
}
