import type { Handout } from "../../shared-model/cards/handout.ts";
import { surveyHandout } from "../../shared-model/cards/survey-handout.ts";
import { observationsOf } from "../../shared-model/carry/observations.ts";
import { surveyedSchool } from "../../shared-model/carry/organ-survey.ts";
import type { SurveyedTexture } from "../../shared-model/carry/survey.ts";
import { TRADITIONS } from "../../shared-model/music/texture.ts";
import { texturesOf } from "../../shared-model/music/textures/catalogue.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { organFacts } from "../../shared-model/stoplist/organ-facts.ts";
import { PrintHandout } from "../cards/print-handout.tsx";
import { useStore, useWork } from "../state/use-store.tsx";
import { Act, Plain } from "../words/action.tsx";
import { organWords } from "../words/organ-words.ts";
import { TroubleNote } from "../words/trouble-note.tsx";
import { counted, Typeset } from "../words/typeset.tsx";
import { AtSight } from "./at-sight.tsx";
import { School } from "./school.tsx";
import { TEXTURES_IN_ALL } from "./surveyor.ts";
import { useSurvey } from "./use-survey.ts";

/** The whole survey as a sheet. */
const handoutOf = (instrument: Instrument, surveyed: readonly SurveyedTexture[]): Handout =>
  surveyHandout({
    instrument,
    observations: observationsOf(instrument),
    schools: TRADITIONS.map((tradition) =>
      surveyedSchool(
        tradition,
        surveyed.filter((each) => each.tradition === tradition),
      ),
    ),
  });

/** What is possible on this organ, school by school and texture by texture, and what its list shows at first sight. */
export function SurveyPage({ instrument, text }: { instrument: Instrument; text: string }) {
  const store = useStore();
  const { entry } = useWork();
  const { standing, stop, goOn } = useSurvey(text);
  const { state, surveyed, fault } = standing;
  const stops = instrument.divisions.reduce((sum, each) => sum + each.stops.length, 0);
  return (
    <main className="survey">
      <div className="opening">
        <h1>What this organ can do</h1>
        <p className="facts">
          {organWords(organFacts(instrument))}, {counted(stops, "stop")}
        </p>
        <div className="end">
          <p className="note quiet" role="status">
            {state === "done"
              ? `All ${TEXTURES_IN_ALL} textures looked at`
              : state === "looking"
                ? "Looking at the textures …"
                : `${surveyed.length} of ${TEXTURES_IN_ALL} textures looked at`}
          </p>
          <Plain onClick={() => store.turnTo("carry")}>Carry a piece here</Plain>
          <Plain onClick={() => store.turnTo("visit")}>A visit</Plain>
          {state === "done" && <PrintHandout handout={handoutOf(instrument, surveyed)} />}
          {state === "looking" && (
            <Act second onClick={stop}>
              Stop
            </Act>
          )}
          {(state === "resting" || state === "failed") && (
            <Act second onClick={goOn}>
              {surveyed.length > 0 ? "Go on" : "Begin"}
            </Act>
          )}
        </div>
      </div>
      <progress
        className="come"
        aria-label="Textures looked at"
        value={surveyed.length}
        max={TEXTURES_IN_ALL}
        hidden={state !== "looking"}
      />
      {entry && <AtSight entry={entry} />}
      {fault !== null && <TroubleNote>The survey broke off ({fault}). What was found stays.</TroubleNote>}
      <div className="surveyed">
        <section className="seen" aria-labelledby="seen">
          <h2 className="cap" id="seen">
            Seen from the list
          </h2>
          <ul>
            {observationsOf(instrument).map(({ text: said }) => (
              <li key={said}>
                <Typeset>{said}</Typeset>
              </li>
            ))}
          </ul>
          <p className="note quiet">A list does not say how the pipes speak. Hear each thing before you count on it.</p>
          <p className="note quiet legend">
            <svg width="50" height="22" aria-hidden="true">
              <rect x="0" y="1" width="5" height="20" />
              <rect x="22" y="12" width="5" height="9" />
              <rect x="44" y="19" width="5" height="2" />
            </svg>
            A stroke is a texture: tall where it is served well, half as tall with a compromise, a dot where it is not
            possible.
          </p>
        </section>
        <div className="verdicts">
          {TRADITIONS.map((tradition) => (
            <School
              key={tradition}
              tradition={tradition}
              textures={surveyed.filter((each) => each.tradition === tradition)}
              of={texturesOf(tradition).length}
            />
          ))}
        </div>
      </div>
    </main>
  );
}
