import { organOf } from "./state/organ.ts";
import type { Page } from "./state/place.ts";
import { changeTheme, useSettings } from "./state/settings.ts";
import { useDesk, useStore } from "./state/use-store.tsx";
import { Plain } from "./words/action.tsx";

const CHAPTERS: readonly (readonly [page: Page, words: string])[] = [
  ["organ", "Organ"],
  ["survey", "Survey"],
  ["texture", "Texture"],
  ["registration", "Registration"],
  ["piece", "Piece"],
  ["cards", "Cards"],
];

/** Pages that belong to a chapter of another name. */
const WITHIN: Readonly<Partial<Record<Page, Page>>> = { "by-hand": "registration", carry: "piece", visit: "organ" };

/** The running head: which organ lies open, the chapters, undo, and the light. */
export function Head() {
  const store = useStore();
  const { history, page } = useDesk();
  const { theme } = useSettings();
  const { organ } = history.value;
  const name = organ === null ? null : (organOf(organ).instrument?.name ?? "An organ with errors");
  const [undo, redo] = [history.past.at(-1), history.future[0]];
  return (
    <header className="head">
      <p className="where">
        <button type="button" className="home" onClick={() => store.turnTo("first")}>
          {name ?? "Registrant"}
          <span className="sr">, to the first page</span>
        </button>
      </p>
      {organ !== null && (
        <nav className="chapters" aria-label="Chapters">
          {CHAPTERS.map(([each, words]) => (
            <button
              type="button"
              key={each}
              aria-current={each === (WITHIN[page] ?? page) ? "page" : undefined}
              onClick={() => store.turnTo(each)}
            >
              {words}
            </button>
          ))}
        </nav>
      )}
      <div className="do">
        {(undo || redo) && (
          <>
            <Plain disabled={!undo} onClick={() => store.undo()} title={undo ? `Undo ${undo.words}` : undefined}>
              Undo<span className="sr"> {undo?.words}</span>
            </Plain>
            <Plain disabled={!redo} onClick={() => store.redo()} title={redo ? `Redo ${redo.words}` : undefined}>
              Redo<span className="sr"> {redo?.words}</span>
            </Plain>
          </>
        )}
        <Plain onClick={changeTheme}>{theme === "paper" ? "Loft light" : "Paper light"}</Plain>
      </div>
    </header>
  );
}
