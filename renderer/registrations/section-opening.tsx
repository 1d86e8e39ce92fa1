import type { ReactNode } from "react";
import { tempoSaid, textureOf } from "../state/section.ts";
import { useSection, useStore, useWork } from "../state/use-store.tsx";
import { Plain } from "../words/action.tsx";
import { SCHOOL_WORDS } from "../words/schools.ts";

/**
 * The head of a page about one section: the piece, which section, and what music it is.
 *
 * @param title what the page is called as long as neither piece nor section has a name.
 */
export function SectionOpening({ title = "Registrations", actions }: { title?: string; actions?: ReactNode }) {
  const store = useStore();
  const { piece, at } = useWork();
  const section = useSection();
  const texture = textureOf(section);
  const dynamic = section.dynamic === undefined ? texture?.dynamic : section.dynamic;
  const said = tempoSaid(section);
  const tempo = said === undefined ? texture?.tempo : said;
  const many = piece.sections.length > 1;
  const which = section.name ?? (many ? `section ${at + 1}` : null);
  const turnTo = (index: number): void =>
    store.act("turning to another section", (draft) => {
      draft.at = index;
    });
  const facts = [
    piece.title === "" ? null : which,
    section.bars === null ? null : `bars ${section.bars}`,
    texture?.title.toLowerCase() ?? null,
    section.tradition === "neutral" ? null : `${SCHOOL_WORDS[section.tradition]}`,
    tempo ?? null,
  ].filter((each) => each !== null);
  return (
    <div className="opening">
      <h1>{piece.title === "" ? (which ?? title) : piece.title}</h1>
      <p className="facts">
        {facts.join(", ")}
        {dynamic && (
          <>
            , <i className="b">{dynamic}</i>
          </>
        )}
      </p>
      {(actions !== undefined || many) && (
        <div className="end">
          {many && (
            <>
              <Plain disabled={at === 0} onClick={() => turnTo(at - 1)}>
                Section before
              </Plain>
              <Plain disabled={at === piece.sections.length - 1} onClick={() => turnTo(at + 1)}>
                Section after
              </Plain>
            </>
          )}
          {actions}
        </div>
      )}
    </div>
  );
}
