import type { ReactNode } from "react";
import { troubleLine } from "../shared-model/files/trouble-words.ts";
import { AboutPage } from "./about/about-page.tsx";
import { ByHandPage } from "./by-hand/by-hand-page.tsx";
import { CardsPage } from "./cards/cards-page.tsx";
import { CarryPage } from "./carry/carry-page.tsx";
import { EntryPage } from "./entering/entry-page.tsx";
import { OrganPage } from "./entering/organ-page.tsx";
import { FirstPage } from "./first/first-page.tsx";
import { PiecePage } from "./piece/piece-page.tsx";
import { RegistrationsPage } from "./registrations/registrations-page.tsx";
import { organOf } from "./state/organ.ts";
import type { Page } from "./state/place.ts";
import { useDesk, useStore } from "./state/use-store.tsx";
import { SurveyPage } from "./survey/survey-page.tsx";
import { TexturePage } from "./texture/texture-page.tsx";
import { VisitPage } from "./visit/visit-page.tsx";
import { TroubleNote } from "./words/trouble-note.tsx";

/** Every page behind the first one. They come with the whole model, so they are loaded while the first page is read. */
export function PageOf({ page }: { page: Page }): ReactNode {
  const { history } = useDesk();
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
