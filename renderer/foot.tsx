import { useSettings, zoomBy } from "./state/settings.ts";
import { useDesk, useStore } from "./state/use-store.tsx";
import { Plain } from "./words/action.tsx";

/** The colophon under every page: how the work is kept, the size of the print, and who says all this. */
export function Foot() {
  const store = useStore();
  const { page } = useDesk();
  const { zoom } = useSettings();
  return (
    <footer className="colophon note quiet">
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
