import { type ReactNode, useState } from "react";
import { barsFaults } from "../../shared-model/music/piece.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { textureOf } from "../state/section.ts";
import { useStore, useWork } from "../state/use-store.tsx";
import { type DeskSection, freshSection } from "../state/work.ts";
import { Plain } from "../words/action.tsx";
import { SCHOOL_WORDS } from "../words/schools.ts";
import { BeforeChoice } from "./before.tsx";
import { LinkChoice } from "./link-choice.tsx";
import { moveSection, nameOf } from "./order.tsx";
import type { PlannedLine } from "./planning.ts";
import { Registered } from "./registered.tsx";
import { SectionMore } from "./section-more.tsx";
import { tempoWords } from "./tempo-choice.tsx";

interface SectionLineProps {
  readonly instrument: Instrument;
  readonly section: DeskSection;
  /** Its number, by which it is taken up. */
  readonly number: ReactNode;
  readonly index: number;
  readonly count: number;
  /** What the plan says of it, while the piece stands as planned. */
  readonly planned: PlannedLine | null;
}

/** A section of the piece: its music at the left, its registration beside it, and what can be done with it. */
export function SectionLine({ instrument, section, number, index, count, planned }: SectionLineProps) {
  const store = useStore();
  const [open, setOpen] = useState(false);
  const texture = textureOf(section);
  const tempo = tempoWords(section);
  const who = nameOf(section, index);
  const set = (words: string, change: Partial<DeskSection>, run: string | null): void =>
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
      draft.at = moveSection(draft, index, index + by);
    });
  const remove = (): void =>
    store.act(`taking out ${who}`, (draft) => {
      draft.piece.sections.splice(index, 1);
      if (draft.piece.sections.length === 0) {
        const { tradition, tempo } = draft.piece;
        draft.piece.sections.push({
          ...(freshSection("1") as (typeof draft.piece.sections)[number]),
          tradition,
          pieceTempo: tempo,
        });
      }
      draft.at = Math.max(0, Math.min(draft.at > index ? draft.at - 1 : draft.at, draft.piece.sections.length - 1));
    });
  return (
    <div className="sec">
      {number}
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
        <BarsNote index={index} onAgain={() => set(`whether ${who} is played again`, { again: true }, null)} />
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
          {tempo && `, ${tempo}`}
        </p>
        {index > 0 && (
          <BeforeChoice
            who={who}
            before={section.before}
            onBefore={(before) => set(`the time before ${who}`, { before }, `before ${section.id}`)}
          />
        )}
        <LinkChoice instrument={instrument} section={section} who={who} />
        <Plain chosen aria-expanded={open} aria-label={`More of ${who}`} onClick={() => setOpen(!open)}>
          More
        </Plain>
        {open && <SectionMore who={who} section={section} index={index} set={set} />}
      </div>
      <Registered
        instrument={instrument}
        section={section}
        planned={planned}
        onOpen={() => turnTo(section.registration ? "by-hand" : "registration")}
      />
      <div className="do">
        {section.registration && (
          <Plain
            aria-label={`${section.pinned ? "Unpin" : "Pin"} ${who}`}
            onClick={() => set(`${section.pinned ? "unpinning" : "pinning"} ${who}`, { pinned: !section.pinned }, null)}
          >
            {section.pinned ? "Unpin" : "Pin"}
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

/** What is odd about the bars of a section, quietly: they are only how it is found, and everything is kept as it stands. */
function BarsNote({ index, onAgain }: { index: number; onAgain: () => void }) {
  const { sections } = useWork().piece;
  const fault = barsFaults(sections).find((each) => each.section === index);
  if (!fault) return null;
  if (fault.fault === "backwards")
    return <p className="note quiet">These bars run backwards: write the first one first.</p>;
  const before = sections[fault.before];
  return (
    <p className="note quiet">
      These bars come before those of {before ? nameOf(before, fault.before) : "the section above"}.{" "}
      <Plain chosen onClick={onAgain}>
        They are played again
      </Plain>
    </p>
  );
}
