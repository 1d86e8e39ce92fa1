import { useId } from "react";
import type { ChangeCard, PieceCards } from "../../shared-model/cards/piece-card.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { type Cards, useCards } from "../cards/use-cards.ts";
import { isSaid } from "../state/piece-text.ts";
import { useStore, useWork } from "../state/use-store.tsx";
import { type DeskSection, freshSection } from "../state/work.ts";
import { Act, Plain } from "../words/action.tsx";
import { capital, counted, NumberWord } from "../words/typeset.tsx";
import { Aids } from "./aids.tsx";
import { ChangeLine, InnerChanges, verdictCounts } from "./change-line.tsx";
import { Compare } from "./compare.tsx";
import { nameOf, Order, Ordered } from "./order.tsx";
import { SectionLine } from "./section-line.tsx";
import { TimeLine } from "./time-line.tsx";
import { usePlan } from "./use-plan.ts";

/** The piece as a row of sections, each with its music and its registration. */
export function PiecePage({ instrument }: { instrument: Instrument }) {
  const store = useStore();
  const { piece, at } = useWork();
  const { sections } = piece;
  const registered = sections.filter((section) => section.registration !== null).length;
  const planned = useCards(instrument, null, registered > 1);
  const plan = usePlan(instrument);
  const about = useId();
  const said = sections.filter(isSaid);
  const isOpen = said.some((section) => section.registration === null);
  const isFree = said.some((section) => !section.pinned || section.registration === null);
  const cards = registered > 1 && planned.state === "done" ? planned.answer.cards : null;
  const changes = changesOf(cards, said);
  const add = (): void => {
    store.act("adding a section", (draft) => {
      const last = draft.piece.sections[draft.at];
      const number = Math.max(...draft.piece.sections.map((section) => Number(section.id) || 0)) + 1;
      // The music of the section before is the likeliest; its registration is not.
      draft.piece.sections.splice(draft.at + 1, 0, {
        ...(freshSection(String(number)) as (typeof draft.piece.sections)[number]),
        texture: last?.texture ?? null,
        tradition: last?.tradition ?? draft.piece.tradition,
        pieceTempo: draft.piece.tempo,
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
          <Act
            second={!isOpen || plan.isPlanning}
            disabled={!isFree}
            aria-describedby={about}
            onClick={plan.isPlanning ? plan.giveUp : plan.begin}
          >
            {plan.isPlanning ? "Give up" : "Plan"}
          </Act>
          {registered > 0 && (
            <Act second={isOpen} onClick={() => store.turnTo("cards")}>
              Make the cards
            </Act>
          )}
        </div>
      </div>
      <div className="help">
        <Aids instrument={instrument} />
        <span className="note quiet" role="status">
          {verdictsInShort(registered > 1 ? planned : null)}
        </span>
      </div>
      <p className="plan note quiet">
        <span id={about}>
          {said.length === 0
            ? "Choose a texture for a section; then the piece can be planned."
            : isFree
              ? "A plan registers what is open, and may change what is not pinned, so that hands have time for the changes."
              : "Every section is pinned: there is nothing to plan."}
        </span>{" "}
        <span role="status" className="told">
          {plan.isPlanning ? "Planning …" : plan.words}
        </span>
      </p>
      {registered > 0 && said.length > 1 && <Compare instrument={instrument} />}
      {cards && cards.timeLine.length > 1 && <TimeLine cards={cards} sections={said} />}
      <Order sections={sections}>
        {sections.map((section, index) => (
          <Ordered key={section.id} id={section.id} index={index} who={nameOf(section, index)} isCurrent={index === at}>
            {(number) => (
              <>
                {index > 0 &&
                  changes
                    .get(section.id)
                    ?.slice(0, 1)
                    .map((each) => <ChangeLine key={each.number} change={each} />)}
                <SectionLine
                  instrument={instrument}
                  section={section}
                  number={number}
                  index={index}
                  count={sections.length}
                  planned={plan.lines.get(section.id) ?? null}
                />
                <InnerChanges changes={changes.get(section.id)?.slice(1) ?? []} />
              </>
            )}
          </Ordered>
        ))}
      </Order>
      {said.length > 0 && (
        <Plain chosen onClick={() => store.turnTo("carry")}>
          Carry it to another organ
        </Plain>
      )}
    </main>
  );
}

/** The changes of each section by its id: into it, and those inside it where it grows. */
function changesOf(cards: PieceCards | null, said: readonly DeskSection[]): ReadonlyMap<string, readonly ChangeCard[]> {
  const places = cards?.timeLine ?? [];
  return new Map(
    said.map(({ id }, at) => [id, cards?.changes.filter((_, index) => places[index]?.section === at) ?? []]),
  );
}

/** `Four changes: two easy, one brisk, one needs the assistant.` */
function verdictsInShort(planned: Cards | null): string {
  if (!planned) return "";
  if (planned.state === "setting") return "looking at the changes …";
  if (planned.state === "failed") return planned.words;
  const { cards, troubles } = planned.answer;
  if (!cards) return troubles.join(" ");
  const changes = cards.changes.filter(({ verdict }) => verdict !== null);
  return changes.length === 0 ? "" : `${capital(counted(changes.length, "change"))}: ${verdictCounts(changes)}.`;
}
