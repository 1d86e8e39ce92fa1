import { type CardMove, type ChangeCard, pressWords } from "../../shared-model/cards/piece-card.ts";
import { unparted } from "../registrations/part-words.ts";
import { capital, counted, numberWord, Typeset } from "../words/typeset.tsx";

/** Strokes through a stem: the more of them, the harder it is. A word beside it says the same. */
function Effort({ strokes }: { strokes: number }) {
  return (
    <svg className="effort" viewBox="0 0 18 20" aria-hidden="true">
      <path d="M9 1v18" stroke="currentColor" strokeWidth="1.6" />
      {[1, 2, 3, 4].slice(0, strokes).map((stroke) => (
        <path
          key={stroke}
          d={`M3 ${12 + (stroke - (strokes + 1) / 2) * 3.6}l12 -4`}
          stroke="currentColor"
          strokeWidth="2"
        />
      ))}
    </svg>
  );
}

const STROKES: Readonly<Record<string, number>> = { easy: 1, brisk: 2, "needs the assistant": 3 };
const CLASS: Readonly<Record<string, string>> = { easy: "sev-note", brisk: "sev-weigh" };

const SIGN: Readonly<Record<CardMove["act"], string>> = { draw: "+", cancel: "−", set: "" };

const moveWords = ({ act, what, name }: CardMove): string =>
  unparted([SIGN[act], what ?? "", name].filter((each) => each !== "").join("\u00A0"));

/** A change, told before its section, where the time for it lies: how it goes, what is pressed and what is moved. */
export function ChangeLine({ change }: { change: ChangeCard }) {
  const { verdict } = change;
  if (!verdict) return null;
  const moves = change.tasks.flatMap((task) => task.moves);
  const done = [...change.presses.map(pressWords), ...moves.map(moveWords)];
  return (
    <div className="chg">
      <Effort strokes={STROKES[verdict.words] ?? 4} />
      <p>
        <span className={`sev ${CLASS[verdict.words] ?? "sev-must"}`}>{verdict.words}</span>{" "}
        <Typeset>{done.length === 0 ? "nothing to move" : done.join(", ")}</Typeset>.{" "}
        {verdict.detail !== null && (
          <span className="note quiet">
            <Typeset>{verdict.detail}</Typeset>
          </span>
        )}
      </p>
    </div>
  );
}

/** The changes inside a section that grows, folded away: `Eight changes inside it: ...`. */
export function InnerChanges({ changes }: { changes: readonly ChangeCard[] }) {
  if (changes.length === 0) return null;
  return (
    <details className="inner">
      <summary className="note">
        {capital(counted(changes.length, "change"))} inside it: {verdictCounts(changes)}
      </summary>
      {changes.map((change) => (
        <ChangeLine key={change.number} change={change} />
      ))}
    </details>
  );
}

/** How many changes go how: `two easy, one brisk`. */
export function verdictCounts(changes: readonly ChangeCard[]): string {
  const verdicts = changes.flatMap(({ verdict }) => (verdict ? [verdict.words] : []));
  const kinds = [...new Set(verdicts)].map((kind) => {
    const count = verdicts.filter((each) => each === kind).length;
    return `${numberWord(count)} ${count > 1 ? kind.replace(/^needs/, "need") : kind}`;
  });
  return kinds.join(", ");
}
