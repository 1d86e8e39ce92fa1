import { memo, useMemo, useRef, useState } from "react";
import type { Change } from "../../shared-model/check/change.ts";
import type { CheckedRegistration } from "../../shared-model/check/check.ts";
import { stopLabel } from "../../shared-model/judging/listening.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { Ledger } from "../registrations/ledger.tsx";
import { Pictures } from "../registrations/pictures.tsx";
import { CardAction, PinAction } from "../registrations/pin-action.tsx";
import { type ProposedPart, plainParts } from "../registrations/proposed.ts";
import { SectionOpening } from "../registrations/section-opening.tsx";
import { problemFor } from "../state/problem.ts";
import { onOrgan } from "../state/section.ts";
import { useSection, useStore, useWork } from "../state/use-store.tsx";
import { type DrawnByHand, NOTHING_DRAWN } from "../state/work.ts";
import { shakenBy, soundedBy } from "../stoplist/sounding.ts";
import { Stoplist } from "../stoplist/stoplist.tsx";
import { inHandOrder } from "../texture/diagram.tsx";
import { Plain } from "../words/action.tsx";
import { counted, numberWord, pointsText } from "../words/typeset.tsx";
import { Boxes } from "./boxes.tsx";
import { checkedFor } from "./checked.ts";
import { FindingWords, glossesOf, Margin, useHungGlosses } from "./glosses.tsx";
import { HandLine } from "./hand-line.tsx";
import { Remedies } from "./remedies.tsx";
import { toggled } from "./toggled.ts";
import { useAfterPaint } from "./use-after-paint.ts";
import { useStillList } from "./use-still-list.ts";
import { useWays } from "./use-ways.ts";

/** Drawing stops in the stoplist itself, with what is to be said of it as one draws. */
export function ByHandPage({ instrument }: { instrument: Instrument }) {
  const store = useStore();
  const section = useSection();
  const problem = problemFor(instrument, section);
  if (!problem) {
    return (
      <main>
        <SectionOpening title="By hand" />
        <p className="none">
          Say first what hands and feet do, or there is nothing to judge by.{" "}
          <Plain onClick={() => store.turnTo("texture")}>Choose a texture</Plain>
        </p>
      </main>
    );
  }
  return <Bench instrument={instrument} problem={problem} />;
}

function Bench({ instrument, problem }: { instrument: Instrument; problem: Problem }) {
  const store = useStore();
  const section = useSection();
  const drawn = useMemo(
    () => onOrgan(section.registration ?? NOTHING_DRAWN, instrument, section),
    [section, instrument],
  );
  const checked = checkedFor(problem, drawn);
  const playable = "unplayable" in checked ? null : checked;
  const parts = useMemo(() => (playable ? plainParts(playable.judgement) : []), [playable]);
  const pictured = useAfterPaint(
    useMemo(() => (playable ? { problem, drawn, parts } : null), [playable, problem, drawn, parts]),
  );
  const { beside, elsewhere } = useMemo(
    () => glossesOf(instrument.divisions, playable?.findings ?? []),
    [instrument, playable],
  );
  const list = useHungGlosses(instrument, beside);
  const yours = useRef<HTMLElement>(null);
  useStillList(list, yours);
  const ways = useWays(useWork().organ ?? "", section, drawn, playable?.placings ?? NO_PLACINGS);
  const [suggested, setSuggested] = useState<Change | null>(null);

  const set = (words: string, change: (from: DrawnByHand) => DrawnByHand, run: string | null = null): void =>
    store.act(
      words,
      (draft) => {
        const own = draft.piece.sections[draft.at];
        if (own) Object.assign(own, { registration: change(drawn) });
      },
      run,
    );
  const nameOf = (id: string): string => {
    const stop = problem.stops.find((each) => each.id === id);
    return stop ? stopLabel(stop) : id;
  };
  const offered = suggested ?? ways?.[0]?.change ?? null;
  const suggestedStops = new Set(offered?.what === "draw" ? [offered.stop] : []);
  return (
    <main>
      <SectionOpening
        title="By hand"
        actions={
          <>
            {drawn.drawn.length > 0 && (
              <Plain onClick={() => set("putting all in", () => NOTHING_DRAWN)}>Put all in</Plain>
            )}
            <Plain onClick={() => store.turnTo("registration")}>See what is proposed</Plain>
            {drawn.drawn.length > 0 && <PinAction />}
            {drawn.drawn.length > 0 && <CardAction />}
          </>
        }
      />
      <div className="strip">
        <section className="yours" ref={yours} aria-labelledby="yours-head">
          <h2 className="cap" id="yours-head">
            As you drew it
            {playable && (
              <span className="sc">
                <b>{pointsText(playable.judgement.score)}</b> points
              </span>
            )}
          </h2>
          {inHandOrder(problem.section.parts).map((part) => (
            <HandLine
              key={part.id}
              instrument={instrument}
              problem={problem}
              part={part.id}
              parts={parts}
              drawn={drawn}
              onKeyboard={(keyboard) =>
                set(`the ${part.id} on another keyboard`, (from) => ({
                  ...from,
                  keyboards: keyboardsWith(problem, from, parts, part.id, keyboard),
                }))
              }
              onOctave={(octave) =>
                set(`the octave of the ${part.id}`, (from) => ({
                  ...from,
                  octaves: { ...from.octaves, [part.id]: octave },
                }))
              }
            />
          ))}
          <p className="note" role="status">
            {playable ? findingsInShort(playable) : (checked as { unplayable: string }).unplayable}
          </p>
          {elsewhere.map((finding) => (
            <p className="note whole" key={`${finding.rule} ${finding.text}`}>
              <FindingWords finding={finding} />
            </p>
          ))}
        </section>
        {playable && (
          <Remedies
            ways={ways}
            score={playable.judgement.score}
            onSuggest={setSuggested}
            onTake={(way) => {
              set(way.words.toLowerCase(), () => way.drawn);
              setSuggested(null);
            }}
          />
        )}
        {playable && playable.judgement.reasons.length > 0 && (
          <section aria-label="The score, reason by reason">
            <Reckoning checked={playable} />
          </section>
        )}
      </div>
      <Stoplist
        place={list}
        instrument={instrument}
        drawn={new Set(drawn.drawn)}
        couplers={new Set(drawn.couplers)}
        tremulants={new Set(drawn.tremulants)}
        soundedBy={soundedBy(parts)}
        shakes={shakenBy(parts, drawn.tremulants)}
        suggested={suggestedStops}
        onPress={(id) => void checkedFor(problem, { ...drawn, drawn: toggled(drawn.drawn, id) })}
        onStop={(id) =>
          set(`${drawn.drawn.includes(id) ? "putting in" : "drawing"} ${nameOf(id)}`, (from) => ({
            ...from,
            drawn: toggled(from.drawn, id),
          }))
        }
        onCoupler={(name) => set(name, (from) => ({ ...from, couplers: toggled(from.couplers, name) }))}
        onTremulant={(name) =>
          set("the tremulant", (from) => ({ ...from, tremulants: toggled(from.tremulants, name) }))
        }
        margin={(division) => <Margin glosses={beside.get(division.name) ?? NO_GLOSSES} />}
      />
      <Boxes
        instrument={instrument}
        boxes={drawn.boxes}
        onBox={(box, position) =>
          set(`the box of the ${box}`, (from) => ({ ...from, boxes: { ...from.boxes, [box]: position } }))
        }
      />
      {playable && pictured && <LaterPictures {...pictured} />}
    </main>
  );
}

/** Drawn anew only when what they show has changed. */
const LaterPictures = memo(Pictures);

const NO_GLOSSES: readonly never[] = [];
const NO_PLACINGS: readonly never[] = [];

/** The points behind a word. The ledger is long: it is set only while it lies open. */
function Reckoning({ checked: { judgement } }: { checked: CheckedRegistration }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="reasons" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Its points, reason by reason</summary>
      {open && <Ledger reasons={judgement.reasons} score={judgement.score} />}
    </details>
  );
}

/** Keyboards as they are played now, with one part moved; once one is said, all are, so that none jumps elsewhere. */
function keyboardsWith(
  problem: Problem,
  from: DrawnByHand,
  parts: readonly ProposedPart[],
  part: string,
  keyboard: string,
): Readonly<Record<string, string>> {
  const now = Object.fromEntries(parts.map((each) => [each.part, each.keyboard]));
  const next = { ...now, ...from.keyboards, [part]: keyboard };
  const known = problem.section.parts.map((each) => each.id);
  return Object.fromEntries(Object.entries(next).filter(([id, where]) => known.includes(id) && where !== ""));
}

function findingsInShort({ findings }: CheckedRegistration): string {
  const count = (severity: string): number => findings.filter((each) => each.severity === severity).length;
  const [must, weigh, notes] = [count("error"), count("warning"), count("note")];
  const said = [
    must > 0 ? `${numberWord(must)} must change` : "",
    weigh > 0 ? `${numberWord(weigh)} to weigh` : "",
    notes > 0 ? counted(notes, "note") : "",
  ].filter((each) => each !== "");
  const text = said.join(", ");
  return text === "" ? "Nothing speaks against it." : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
