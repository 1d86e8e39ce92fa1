import type { Draft } from "immer";
import { produce } from "immer";
import { useState } from "react";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import { LINK_KINDS, LINK_WORDS } from "../../shared-model/music/piece.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { isSaid, pieceTextAfter } from "../state/piece-text.ts";
import { useDesk, useStore } from "../state/use-store.tsx";
import type { DeskLink, DeskSection, Work } from "../state/work.ts";

interface LinkChoiceProps {
  readonly instrument: Instrument;
  readonly section: DeskSection;
  readonly who: string;
}

/** How a section is to sound beside others: `softer than First verse`. A plan keeps to it. */
export function LinkChoice({ instrument, section, who }: LinkChoiceProps) {
  const store = useStore();
  const { history } = useDesk();
  const [trouble, setTrouble] = useState("");
  const { sections } = history.value.piece;
  const others = sections.flatMap((each, at) =>
    isSaid(each) && each.id !== section.id ? [{ id: each.id, name: each.name ?? `section ${at + 1}` }] : [],
  );
  const links = section.links.filter((link) => others.some((other) => other.id === link.to));
  const before = sections[sections.findIndex((each) => each.id === section.id) - 1];
  const usual = others.find((other) => other.id === before?.id) ?? others[0];
  if (!usual || !isSaid(section)) return null;
  const put = (wanted: readonly DeskLink[]): void => {
    const recipe = (draft: Draft<Work>): void => {
      const own = draft.piece.sections.find((each) => each.id === section.id);
      if (own) own.links = [...wanted] as Draft<DeskLink>[];
    };
    // Links that contradict each other are told here, and not written.
    const tried = pieceTextAfter(history.value.pieceBase, produce(store.work, recipe).piece, instrument);
    setTrouble(tried.text === null ? tried.troubles.map(troubleLine).join(" ") : "");
    if (tried.text !== null) store.act(`how ${who} stands to others`, recipe);
  };
  const rows: readonly (DeskLink | null)[] = links.length > 0 ? links : [null];
  return (
    <>
      {rows.map((link, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row whose link changes is the same row, and keeps the focus.
        <span className="before" key={at}>
          <label>
            <span className="note quiet">to be </span>
            <select
              className="pick"
              aria-label={`How ${who} stands to another section${at > 0 ? `, ${at + 1}` : ""}`}
              value={link?.kind ?? ""}
              onChange={({ target }) => {
                const kind = LINK_KINDS.find((each) => each === target.value);
                const rest = links.filter((each) => each !== link);
                put(kind ? [...links.slice(0, at), { kind, to: link?.to ?? usual.id }, ...links.slice(at + 1)] : rest);
              }}
            >
              <option value="">as it likes</option>
              {LINK_KINDS.map((kind) => (
                <option key={kind} value={kind}>
                  {LINK_WORDS[kind]}
                </option>
              ))}
            </select>
          </label>
          {link && (
            <select
              className="pick"
              aria-label={`Which section ${who} is ${LINK_WORDS[link.kind]}`}
              value={link.to}
              onChange={({ target }) =>
                put(links.map((each) => (each === link ? { ...link, to: target.value } : each)))
              }
            >
              {others.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          )}
        </span>
      ))}
      <span className="note" role="alert">
        {trouble}
      </span>
    </>
  );
}
