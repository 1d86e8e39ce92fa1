import { useMemo } from "react";
import { labelOf } from "../../shared-model/cards/label.ts";
import type { ChangeCard } from "../../shared-model/cards/piece-card.ts";
import { checkRegistration } from "../../shared-model/check/check.ts";
import type { Piece } from "../../shared-model/music/piece.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { type Cards, useCards } from "../cards/use-cards.ts";
import { saidPart } from "../registrations/part-words.ts";
import { plainParts } from "../registrations/proposed.ts";
import { problemFor } from "../state/organ.ts";
import { onOrgan, partsOf, stateOf, textureOf } from "../state/section.ts";
import { useStore, useWork } from "../state/use-store.tsx";
import { type DeskSection, freshSection } from "../state/work.ts";
import { inHandOrder } from "../texture/diagram.tsx";
import { Act, Plain } from "../words/action.tsx";
import { HAND_WORDS, HandMark } from "../words/hand-mark.tsx";
import { SCHOOL_WORDS } from "../words/schools.ts";
import { capital, counted, NumberWord, numberWord, Typeset } from "../words/typeset.tsx";
import { BeforeChoice } from "./before.tsx";
import { ChangeLine } from "./change-line.tsx";

/** The piece as a row of sections, each with its music and its registration. */
export function PiecePage({ instrument }: { instrument: Instrument }) {
  const store = useStore();
  const { piece, at } = useWork();
  const { sections } = piece;
  const registered = sections.filter((section) => section.registration !== null).length;
  const planned = useCards(instrument, null, registered > 1);
  const changes = registered > 1 ? changesOf(planned, sections) : NO_CHANGES;
  const add = (): void => {
    store.act("adding a section", (draft) => {
      const last = draft.piece.sections[draft.at];
      const number = Math.max(...draft.piece.sections.map((section) => Number(section.id) || 0)) + 1;
      // The music of the section before is the likeliest; its registration is not.
      draft.piece.sections.splice(draft.at + 1, 0, {
        ...(freshSection(String(number)) as (typeof draft.piece.sections)[number]),
        texture: last?.texture ?? null,
        tradition: last?.tradition ?? "neutral",
      });
      draft.at += 1;
    });
  };
  return (
    <main className="piece">
      <h1 className="sr">The piece</h1>
      <div className="opening tall">
        <label className="title">
          <span className="sr">Name of the piece</span>
          <input
            value={piece.title}
            placeholder="Name of the piece"
            spellCheck={false}
            maxLength={190}
            onChange={(event) =>
              store.act(
                "the name of the piece",
                (draft) => {
                  draft.piece.title = event.target.value;
                },
                "title",
              )
            }
          />
        </label>
        <p className="facts">
          {NumberWord(sections.length)} section{sections.length === 1 ? "" : "s"},{" "}
          {registered === sections.length ? "all registered" : `${counted(registered, "registration")}`}
        </p>
        <div className="end">
          <Act second onClick={add}>
            Add a section
          </Act>
          {registered > 0 && <Act onClick={() => store.turnTo("cards")}>Make the cards</Act>}
        </div>
      </div>
      <p className="help">
        <label>
          <span className="note quiet">assistant </span>
          <select
            className="pick"
            value={piece.assistant}
            onChange={(event) =>
              store.act("the assistant", (draft) => {
                draft.piece.assistant = event.target.value as Piece["assistant"];
              })
            }
          >
            <option value="none">none</option>
            <option value="left">at your left</option>
            <option value="right">at your right</option>
          </select>
        </label>
        <span className="note quiet" role="status">
          {verdictsInShort(registered > 1 ? planned : null)}
        </span>
      </p>
      <ol className="score">
        {sections.map((section, index) => (
          <li key={section.id} aria-current={index === at ? "true" : undefined}>
            {index > 0 && changes.get(section.id) && <ChangeLine change={changes.get(section.id) as ChangeCard} />}
            <SectionLine instrument={instrument} section={section} index={index} count={sections.length} />
          </li>
        ))}
      </ol>
    </main>
  );
}

const NO_CHANGES: ReadonlyMap<string, ChangeCard> = new Map();

/** The change into each section, by its id; a section that grows has more changes inside it, which the cards tell. */
function changesOf(planned: Cards, sections: readonly DeskSection[]): ReadonlyMap<string, ChangeCard> {
  const made = planned.state === "done" ? (planned.answer.cards?.changes ?? []) : [];
  const said = sections.filter((section) => partsOf(section).length > 0);
  if (made.length !== said.length) return NO_CHANGES;
  return new Map(said.map((section, at) => [section.id, made[at] as ChangeCard]));
}

/** `Four changes: two easy, one brisk, one needs the assistant.` */
function verdictsInShort(planned: Cards | null): string {
  if (!planned) return "";
  if (planned.state === "setting") return "looking at the changes …";
  if (planned.state === "failed") return planned.words;
  const { cards, troubles } = planned.answer;
  if (!cards) return troubles.join(" ");
  const verdicts = cards.changes.flatMap(({ verdict }) => (verdict ? [verdict.words] : []));
  if (verdicts.length === 0) return "";
  const kinds = [...new Set(verdicts)].map((kind) => {
    const count = verdicts.filter((each) => each === kind).length;
    return `${numberWord(count)} ${kind}`;
  });
  return `${capital(counted(verdicts.length, "change"))}: ${kinds.join(", ")}.`;
}

interface SectionLineProps {
  readonly instrument: Instrument;
  readonly section: DeskSection;
  readonly index: number;
  readonly count: number;
}

function SectionLine({ instrument, section, index, count }: SectionLineProps) {
  const store = useStore();
  const texture = textureOf(section);
  const who = section.name ?? `section ${index + 1}`;
  const set = (words: string, change: Partial<DeskSection>, run: string): void =>
    store.act(
      words,
      (draft) => {
        const own = draft.piece.sections[index];
        if (own) Object.assign(own, change);
      },
      run,
    );
  const turnTo = (page: "texture" | "registration" | "by-hand"): void => {
    store.act(`turning to ${who}`, (draft) => {
      draft.at = index;
    });
    store.turnTo(page);
  };
  const move = (by: -1 | 1): void =>
    store.act(`moving ${who}`, (draft) => {
      const [own] = draft.piece.sections.splice(index, 1);
      if (own) draft.piece.sections.splice(index + by, 0, own);
      if (draft.at === index) draft.at = index + by;
      else if (draft.at === index + by) draft.at = index;
    });
  const remove = (): void =>
    store.act(`taking out ${who}`, (draft) => {
      draft.piece.sections.splice(index, 1);
      if (draft.piece.sections.length === 0) {
        draft.piece.sections.push(freshSection("1") as (typeof draft.piece.sections)[number]);
      }
      draft.at = Math.max(0, Math.min(draft.at > index ? draft.at - 1 : draft.at, draft.piece.sections.length - 1));
    });
  return (
    <div className="sec">
      <span className="no">{index + 1}</span>
      <div className="sl">
        <label>
          <span className="sr">Name of section {index + 1}</span>
          <input
            className="name"
            value={section.name ?? ""}
            placeholder={`Section ${index + 1}`}
            maxLength={190}
            onChange={(event) =>
              set(
                `the name of section ${index + 1}`,
                { name: event.target.value === "" ? null : event.target.value },
                `name ${section.id}`,
              )
            }
          />
        </label>
        <label className="note bars">
          bars
          <input
            value={section.bars ?? ""}
            placeholder="such as 1–24"
            maxLength={30}
            onChange={(event) =>
              set(
                `the bars of ${who}`,
                { bars: event.target.value === "" ? null : event.target.value },
                `bars ${section.id}`,
              )
            }
          />
        </label>
        <p className="note quiet">
          <button type="button" className="plain pick" onClick={() => turnTo("texture")}>
            {texture?.title ?? (section.parts ? "own parts" : "choose a texture")}
          </button>
          {section.tradition !== "neutral" && `, ${SCHOOL_WORDS[section.tradition]}`}
          {section.dynamic && (
            <>
              , <i className="b">{section.dynamic}</i>
            </>
          )}
          {section.tempo && `, ${section.tempo}`}
        </p>
        {index > 0 && (
          <BeforeChoice
            who={who}
            before={section.before}
            onBefore={(before) => set(`the time before ${who}`, { before }, `before ${section.id}`)}
          />
        )}
      </div>
      <Registered
        instrument={instrument}
        section={section}
        onOpen={() => turnTo(section.registration ? "by-hand" : "registration")}
      />
      <div className="do">
        {section.registration && (
          <Plain
            aria-pressed={section.kept}
            onClick={() => set(section.kept ? `letting go of ${who}` : `keeping ${who}`, { kept: !section.kept }, "")}
            title="A plan leaves a kept registration as it is"
          >
            {section.kept ? "Kept" : "Keep"}
          </Plain>
        )}
        {count > 1 && (
          <>
            <Plain disabled={index === 0} onClick={() => move(-1)} aria-label={`Move ${who} up`}>
              Up
            </Plain>
            <Plain disabled={index === count - 1} onClick={() => move(1)} aria-label={`Move ${who} down`}>
              Down
            </Plain>
          </>
        )}
        <Plain onClick={remove} aria-label={`Take out ${who}`}>
          Take out
        </Plain>
      </div>
    </div>
  );
}

interface RegisteredProps {
  readonly instrument: Instrument;
  readonly section: DeskSection;
  readonly onOpen: () => void;
}

/** The registration of a section in short: its label, and what each hand has. */
function Registered({ instrument, section, onOpen }: RegisteredProps) {
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
      {said.errors > 0 && <span className="sev sev-must">{counted(said.errors, "error")}</span>}
      <ul className="note">
        {inHandOrder(partsOf(section)).map((part) => {
          const words = saidPart(instrument, { parts: said.parts }, part.id);
          return (
            <li key={part.id}>
              <HandMark hands={part.hands} />
              <span>
                <span className="sr">{HAND_WORDS[part.hands]}: </span>
                {words.keyboard && <i>{words.keyboard} </i>}
                <Typeset>{words.stops}</Typeset>
              </span>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
