import { type ComponentType, type ReactNode, Suspense, use, useEffect } from "react";
import { DropPlace } from "./drop-place.tsx";
import { FirstPage } from "./first/first-page.tsx";
import { Foot, SavingTrouble } from "./foot.tsx";
import { Head } from "./head.tsx";
import type { Page } from "./state/place.ts";
import { useSettings } from "./state/settings.ts";
import { useKeys } from "./state/use-keys.ts";
import { useMenu } from "./state/use-menu.ts";
import { useDesk } from "./state/use-store.tsx";

const TITLES: Readonly<Record<Page, string>> = {
  first: "Which organ are you playing?",
  organ: "The organ",
  texture: "Choosing a texture",
  registration: "Registrations",
  "by-hand": "Drawing by hand",
  piece: "The piece",
  cards: "Cue cards",
  survey: "What this organ can do",
  carry: "To another organ",
  visit: "A visit",
  about: "About and sources",
};

/** The book: a running head, one calm page, a colophon. */
export function App() {
  const { page, history } = useDesk();
  const { theme, zoom } = useSettings();
  // A list on its way to an organ is another page than the organ that it becomes.
  const view = page === "organ" && history.value.entry ? "entry" : page;
  useKeys();
  useMenu();
  useEffect(() => {
    document.documentElement.className = theme;
  }, [theme]);
  return (
    <div className="book" style={{ zoom: zoom / 100, "--zoom": zoom / 100 } as React.CSSProperties}>
      <Head />
      <SavingTrouble />
      <DropPlace />
      <div className="page" key={view}>
        <Suspense fallback={null}>
          {page === "first" ? <FirstPage /> : <LaterPage page={page} />}
          <Arrival view={view} />
        </Suspense>
      </div>
      <Foot />
    </div>
  );
}

/** What a page does when it stands: it says its name, and begins at its head. */
function Arrival({ view }: { view: Page | "entry" }): ReactNode {
  useEffect(() => {
    document.title = `${view === "entry" ? "Entering an organ" : TITLES[view]}: Registrant`;
    window.scrollTo(0, 0);
    // Who came by a button of the page before stands nowhere now: the next Tab is to go on in this page, not at its head.
    const main = document.querySelector("main");
    if (main && document.activeElement === document.body) {
      main.tabIndex = -1;
      main.focus({ preventScroll: true });
    }
  }, [view]);
  return null;
}

let PageOf: ComponentType<{ page: Page }> | null = null;
let coming: Promise<void> | null = null;

/** Loads the pages behind the first one. */
export function loadPages(): Promise<void> {
  coming ??= import("./pages.tsx").then((loaded) => {
    PageOf = loaded.PageOf;
  });
  return coming;
}

/** Any page but the first, as soon as it is loaded. */
function LaterPage({ page }: { page: Page }): ReactNode {
  if (!PageOf) use(loadPages());
  return PageOf && <PageOf page={page} />;
}
