import { type ReactNode, useEffect } from "react";
import { troubleLine } from "../shared-model/files/trouble-words.ts";
import { AboutPage } from "./about/about-page.tsx";
import { ByHandPage } from "./by-hand/by-hand-page.tsx";
import { CardsPage } from "./cards/cards-page.tsx";
import { CarryPage } from "./carry/carry-page.tsx";
import { DropPlace } from "./drop-place.tsx";
import { EntryPage } from "./entering/entry-page.tsx";
import { OrganPage } from "./entering/organ-page.tsx";
import { FirstPage } from "./first/first-page.tsx";
import { Foot, SavingTrouble } from "./foot.tsx";
import { Head } from "./head.tsx";
import { PiecePage } from "./piece/piece-page.tsx";
import { RegistrationsPage } from "./registrations/registrations-page.tsx";
import { organOf } from "./state/organ.ts";
import type { Page } from "./state/place.ts";
import { useSettings } from "./state/settings.ts";
import { useKeys } from "./state/use-keys.ts";
import { useMenu } from "./state/use-menu.ts";
import { useDesk, useStore } from "./state/use-store.tsx";
import { SurveyPage } from "./survey/survey-page.tsx";
import { TexturePage } from "./texture/texture-page.tsx";
import { VisitPage } from "./visit/visit-page.tsx";
import { TroubleNote } from "./words/trouble-note.tsx";

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
    document.title = `${view === "entry" ? "Entering an organ" : TITLES[view]}: Registrant`;
    window.scrollTo(0, 0);
    // Who came by a button of the page before stands nowhere now: the next Tab is to go on in this page, not at its head.
    const main = document.querySelector("main");
    if (main && document.activeElement === document.body) {
      main.tabIndex = -1;
      main.focus({ preventScroll: true });
    }
  }, [view]);
  useEffect(() => {
    document.documentElement.className = theme;
  }, [theme]);
  return (
    <div className="book" style={{ zoom: zoom / 100, "--zoom": zoom / 100 } as React.CSSProperties}>
      <Head />
      <SavingTrouble />
      <DropPlace />
      <div className="page" key={view}>
        <PageOf page={page} />
      </div>
      <Foot />
    </div>
  );
}

function PageOf({ page }: { page: Page }): ReactNode {
  const { history } = useDesk();
  if (page === "first") return <FirstPage />;
  if (page === "about") return <AboutPage />;
  const { organ, entry } = history.value;
  if (entry && (page === "organ" || organ === null)) return <EntryPage entry={entry} />;
  if (organ === null) return <FirstPage />;
  if (page === "texture") return <TexturePage />;
  return <WithOrgan text={organ} page={page} />;
}

function WithOrgan({ text, page }: { text: string; page: Page }): ReactNode {
  const store = useStore();
  const { instrument, troubles } = organOf(text);
  if (!instrument) {
    return (
      <main>
        <TroubleNote
          actions={
            <button type="button" className="plain" onClick={() => store.turnTo("first")}>
              Open another organ
            </button>
          }
        >
          The file of this organ has errors, and an organ with a stop left out would give wrong answers in silence. Mend
          them in the file; this page takes notice when it is saved.
        </TroubleNote>
        <ul className="note">
          {troubles
            .filter((each) => each.severity === "error")
            .map((trouble) => (
              <li key={troubleLine(trouble)}>{troubleLine(trouble)}</li>
            ))}
        </ul>
      </main>
    );
  }
  if (page === "organ") return <OrganPage instrument={instrument} />;
  if (page === "survey") return <SurveyPage instrument={instrument} text={text} />;
  if (page === "visit") return <VisitPage instrument={instrument} text={text} />;
  if (page === "carry") return <CarryPage instrument={instrument} text={text} />;
  if (page === "cards") return <CardsPage instrument={instrument} />;
  if (page === "piece") return <PiecePage instrument={instrument} />;
  if (page === "by-hand") return <ByHandPage instrument={instrument} />;
  if (page === "registration") return <RegistrationsPage instrument={instrument} />;
  return <TexturePage />;
}
