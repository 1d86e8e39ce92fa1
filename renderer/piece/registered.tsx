import { useMemo } from "react";
import { labelOf } from "../../shared-model/cards/label.ts";
import { checkRegistration } from "../../shared-model/check/check.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { PartLines } from "../registrations/part-lines.tsx";
import { plainParts } from "../registrations/proposed.ts";
import { problemFor } from "../state/problem.ts";
import { onOrgan, partsOf, stateOf } from "../state/section.ts";
import type { DeskSection } from "../state/work.ts";
import { counted, pointsText, Typeset } from "../words/typeset.tsx";
import type { PlannedLine } from "./planning.ts";

interface RegisteredProps {
  readonly instrument: Instrument;
  readonly section: DeskSection;
  readonly planned: PlannedLine | null;
  readonly onOpen: () => void;
}

/** The registration of a section in short: its label, and what each hand has. */
export function Registered({ instrument, section, planned, onOpen }: RegisteredProps) {
  const said = useMemo(() => {
    const problem = problemFor(instrument, section);
    if (!problem || !section.registration) return null;
    const drawn = onOrgan(section.registration, instrument, section);
    const checked = checkRegistration(problem, {
      state: stateOf(drawn),
      keyboards: Object.keys(drawn.keyboards).length > 0 ? drawn.keyboards : null,
      octaves: drawn.octaves,
    });
    if ("unplayable" in checked) return { label: "Cannot be played so", parts: [], errors: 1 };
    return {
      label: labelOf(problem, checked.judgement.parts),
      parts: plainParts(checked.judgement),
      errors: checked.findings.filter((each) => each.severity === "error").length,
    };
  }, [instrument, section]);
  if (!said) {
    return (
      <div className="reg">
        <button type="button" className="plain pick" onClick={onOpen} disabled={partsOf(section).length === 0}>
          {partsOf(section).length === 0 ? "Nothing yet" : "See registrations"}
        </button>
      </div>
    );
  }
  return (
    <div className="reg">
      <button type="button" className="open" onClick={onOpen}>
        <Typeset>{said.label}</Typeset>
      </button>
      {section.steps.length > 0 && (
        <span className="note quiet"> and {counted(section.steps.length, "further step")}</span>
      )}
      {section.pinned && <span className="sev pinned">pinned</span>}
      {said.errors > 0 && <span className="sev sev-must">{counted(said.errors, "error")}</span>}
      <PartLines organ={instrument} registered={said} music={partsOf(section)} />
      {planned && <PlanRemarks planned={planned} />}
    </div>
  );
}

/** What a section gave up for the whole piece, and what of the piece's wishes cannot be had: quietly, under it. */
function PlanRemarks({ planned: { givenUp, unkept } }: { planned: PlannedLine }) {
  return (
    <>
      {unkept.map((words) => (
        <p className="note remark" key={words}>
          {words}
        </p>
      ))}
      {givenUp && (
        <p className="note quiet remark">
          Given up: <Typeset>{givenUp.best}</Typeset>, by itself {pointsText(givenUp.points)} points better.{" "}
          <Typeset>{givenUp.why.join(" ")}</Typeset>
        </p>
      )}
    </>
  );
}
