import { keepMine, takeOver } from "./state/autosave.ts";
import { useSettings, zoomBy } from "./state/settings.ts";
import { useDesk, useStore } from "./state/use-store.tsx";
import { isAtSight } from "./state/work.ts";
import { Plain } from "./words/action.tsx";
import { TroubleNote } from "./words/trouble-note.tsx";

/** The colophon under every page: how the work is kept, the size of the print, and who says all this. */
export function Foot() {
  const store = useStore();
  const { page } = useDesk();
  const { zoom } = useSettings();
  return (
    <footer className="colophon note quiet">
      <Kept />
      <span className="size">
        Print {zoom} %
        <Plain onClick={() => zoomBy(-1)} disabled={zoom === 80} aria-label="Smaller print">
          smaller
        </Plain>
        <Plain onClick={() => zoomBy(1)} disabled={zoom === 200} aria-label="Larger print">
          larger
        </Plain>
      </span>
      <Plain aria-current={page === "about" ? "page" : undefined} onClick={() => store.turnTo("about")}>
        About and sources
      </Plain>
    </footer>
  );
}

/** Path of a document inside the library, as its owner knows it. */
const pathOf = (id: string): string => id.replace(/^[a-z]+:/u, "");

/** How the work is kept: where, whether it is on its way, and what went wrong with that. */
function Kept() {
  const { saving, organFile, pieceFile, history } = useDesk();
  if (isAtSight(history.value)) return <span className="kept">Not kept: this organ is in no file</span>;
  const file = pieceFile ?? (organFile?.demo ? null : organFile);
  if (saving.state === "waiting") return <span className="kept">Saving …</span>;
  if (saving.state === "failed" || saving.state === "conflict") return <span className="kept">Not saved</span>;
  return <span className="kept">{file ? `Saved in ${pathOf(file.id)}` : ""}</span>;
}

/** Stands under the head of a page when something could not be saved, with what can be done about it. */
export function SavingTrouble() {
  const store = useStore();
  const { saving } = useDesk();
  if (saving.state === "failed") {
    return (
      <div className="above">
        <TroubleNote>{saving.words}</TroubleNote>
      </div>
    );
  }
  if (saving.state !== "conflict") return null;
  const { of, now } = saving;
  const what = of === "organ" ? "The file of the organ" : "The file of the piece";
  return (
    <div className="above">
      <TroubleNote
        actions={
          <>
            {now && (
              <Plain chosen onClick={() => takeOver(store, of, now.text, now.version)}>
                Take what stands there
              </Plain>
            )}
            <Plain chosen onClick={() => keepMine(store)}>
              {now ? "Keep what I have here" : "Save it again"}
            </Plain>
          </>
        }
      >
        {now
          ? `${what} was changed by another program while you worked here. Nothing is written over it until you say so.`
          : `${what} was taken away by another program. What you have here is untouched.`}
      </TroubleNote>
    </div>
  );
}
