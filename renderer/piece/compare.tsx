import { useEffect, useId, useState } from "react";
import {
  type ComparedSection,
  type ComparedSide,
  type ComparedWork,
  verdictsWords,
  workWords,
} from "../../shared-model/cards/plan-comparison.ts";
import { VARIANT_WORDS, type Variant, variantsFor } from "../../shared-model/plan/variants.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { modelWorker } from "../registrations/model-worker.ts";
import { Reckoner } from "../registrations/reckoner.ts";
import { isSaid, pieceTextAfter } from "../state/piece-text.ts";
import { useStore, useWork } from "../state/use-store.tsx";
import { Plain } from "../words/action.tsx";
import { TroubleNote } from "../words/trouble-note.tsx";
import { capital, counted, pointsText, Typeset } from "../words/typeset.tsx";
import type { CompareAnswer, CompareAsk } from "./comparing.ts";
import type { PlannedLine } from "./planning.ts";
import { putOnDesk } from "./use-plan.ts";

/** The one worker that compares. */
const comparer = new Reckoner<{ readonly wants: "compare" } & CompareAsk, CompareAnswer>(modelWorker);

/** The text of a piece that was kept to compare with, while the window is open. */
interface Kept {
  readonly organ: string;
  readonly title: string;
  readonly text: string;
  /** As a person says it: `10:42`. */
  readonly time: string;
}
let kept: Kept | null = null;

const TIME = new Intl.DateTimeFormat("en-GB", { hour: "2-digit", minute: "2-digit" });

type Choice = Variant | "kept" | "";
type Told = { readonly key: string; readonly answer: CompareAnswer } | { readonly key: string; readonly fault: string };

/** The piece as it stands beside another plan of it: other helpers, other pistons, another weight, or as it was before. */
export function Compare({ instrument }: { instrument: Instrument }) {
  const store = useStore();
  const { organ, piece, pieceBase } = useWork();
  const id = useId();
  const [choice, setChoice] = useState<Choice>("");
  const [known, setKnown] = useState(kept);
  const [told, setTold] = useState<Told | null>(null);
  const own = known && known.organ === instrument.name && known.title === piece.title ? known : null;
  const text = choice === "" ? null : pieceTextAfter(pieceBase, piece, instrument).text;
  const against = choice === "kept" ? { kept: own?.text ?? "" } : { variant: choice as Variant };
  const key = JSON.stringify([organ, text, against]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for all that is asked.
  useEffect(() => {
    if (choice === "" || text === null || organ === null) return undefined;
    comparer.ask(key, { wants: "compare", organ, piece: text, against }, (reply) =>
      setTold("answer" in reply ? { key, answer: reply.answer } : { key, fault: reply.fault }),
    );
    return () => comparer.stop();
  }, [key, choice]);

  const keep = (): void => {
    const now = pieceTextAfter(pieceBase, piece, instrument).text;
    if (now === null) return;
    kept = { organ: instrument.name, title: piece.title, text: now, time: TIME.format(new Date()) };
    setKnown(kept);
  };
  const take = (answer: CompareAnswer): void => {
    const said = piece.sections.filter(isSaid);
    const lines = new Map<string, PlannedLine>();
    for (const { one, other } of answer.comparison?.sections ?? []) {
      const section = one && said[one.section];
      const line = other && answer.lines[other.section];
      if (section && line) lines.set(section.id, line);
    }
    store.act("taking the other plan", (draft) => putOnDesk(draft, lines));
  };
  const hasPins = piece.sections.some((section) => section.pinned && section.registration !== null);
  const answer = told?.key === key && "answer" in told ? told.answer : null;
  const fault = told?.key === key && "fault" in told ? told.fault : null;
  return (
    <section className="compare" aria-label="Compare">
      <p className="note">
        <label htmlFor={id}>Compare the plan with </label>
        <select id={id} value={choice} onChange={({ target }) => setChoice(target.value as Choice)}>
          <option value="">choose …</option>
          {own && <option value="kept">as it was kept at {own.time}</option>}
          {variantsFor(instrument, piece, hasPins).map((each) => (
            <option key={each} value={each}>
              {VARIANT_WORDS[each]}
            </option>
          ))}
        </select>{" "}
        <Plain onClick={keep}>Keep this plan to compare with</Plain>
        <span role="status">{own ? ` kept at ${own.time}` : ""}</span>
      </p>
      {choice !== "" && (
        <div role="status">
          {fault !== null && <TroubleNote>{`They could not be compared (${fault}).`}</TroubleNote>}
          {answer && answer.troubles.length > 0 && <TroubleNote>{answer.troubles.join(" ")}</TroubleNote>}
          {!answer && fault === null && <p className="note quiet">Comparing …</p>}
          {answer?.comparison && (
            <p className="note">
              {answer.words}{" "}
              {answer.comparison.sections.some((each) => !each.isSame) && (
                <Plain chosen onClick={() => take(answer)}>
                  Take the other
                </Plain>
              )}
            </p>
          )}
        </div>
      )}
      {choice !== "" && answer?.comparison && <Differences sections={answer.comparison.sections} />}
    </section>
  );
}

/** Section by section what differs; those registered alike in a word. */
function Differences({ sections }: { sections: readonly ComparedSection[] }) {
  const others = sections.filter((each) => !each.isSame);
  const alike = sections.length - others.length;
  if (others.length === 0) return null;
  return (
    <div className="compared">
      <table>
        <thead>
          <tr>
            <th scope="col">Section</th>
            <th scope="col">As it stands</th>
            <th scope="col">The other</th>
            <th scope="col">To come from one to the other</th>
          </tr>
        </thead>
        <tbody>
          {others.map((each, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two sections may bear one name, and rows keep their order.
            <tr key={at}>
              <th scope="row">{each.name}</th>
              <Side side={each.one} />
              <Side side={each.other} />
              <td>
                <Typeset>{each.moves.join("; ").replace(/(?<=^|[ ;])-(?=\p{Lu})/gu, "−")}</Typeset>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {alike > 0 && <p className="note quiet">{capital(counted(alike, "section"))} registered alike.</p>}
    </div>
  );
}

/** The first section has no change into it. */
const hasChange = ({ verdicts }: ComparedWork): boolean => Object.values(verdicts).some((count) => count > 0);

function Side({ side }: { side: ComparedSide | null }) {
  if (!side) return <td className="quiet">no such section</td>;
  const { work } = side;
  return (
    <td>
      <Typeset>{side.label}</Typeset>, {pointsText(side.points)} points
      {hasChange(work) && (
        <span className="note quiet">
          {verdictsWords(work)}
          {work.knobs + work.presses > 0 && `; ${workWords(work)}`}
        </span>
      )}
    </td>
  );
}
