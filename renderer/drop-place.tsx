import { useEffect, useState } from "react";
import { openDropped } from "./state/opening-dropped.ts";
import { useDesk, useStore } from "./state/use-store.tsx";
import { Plain } from "./words/action.tsx";
import { TroubleNote } from "./words/trouble-note.tsx";

const FOLDER = "This is a folder. Choose “Open a folder” on the first page to keep your organs in it.";

const holdsFiles = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes("Files") ?? false;

const holdsFolder = ({ dataTransfer }: DragEvent): boolean =>
  [...(dataTransfer?.items ?? [])].some((item) => item.webkitGetAsEntry()?.isDirectory);

/** The whole window takes files that are dropped on it. Says so while one hangs over it, and what is wrong with one. */
export function DropPlace() {
  const store = useStore();
  const { page, history } = useDesk();
  const [isOver, setOver] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: whoever goes on has read it.
  useEffect(() => setTrouble(null), [page, history]);
  useEffect(() => {
    const over = (event: DragEvent): void => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const out = (event: DragEvent): void => {
      // Moving from one element to another of the page is no leaving.
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(false);
      if (holdsFolder(event)) setTrouble(FOLDER);
      else void openDropped(store, [...(event.dataTransfer?.files ?? [])]).then(setTrouble);
    };
    window.addEventListener("dragover", over);
    window.addEventListener("dragleave", out);
    window.addEventListener("drop", drop);
    return () => {
      window.removeEventListener("dragover", over);
      window.removeEventListener("dragleave", out);
      window.removeEventListener("drop", drop);
    };
  }, [store]);

  return (
    <>
      {trouble !== null && (
        <div className="above">
          <TroubleNote
            actions={
              <Plain chosen onClick={() => setTrouble(null)}>
                Put aside
              </Plain>
            }
          >
            {trouble}
          </TroubleNote>
        </div>
      )}
      {isOver && (
        <div className="dropping" aria-hidden="true">
          <p>Let go to open it: a stoplist, an organ or a piece.</p>
        </div>
      )}
    </>
  );
}
