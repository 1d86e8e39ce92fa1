import { useState } from "react";
import type { DocumentFacts, LibraryEntry } from "../../shared-model/host-api.ts";
import { lookAtList } from "../state/at-sight.ts";
import { enterList, openDocument, openFolder, troubleWords } from "../state/opening.ts";
import { useLibrary } from "../state/use-library.ts";
import { useDesk, useStore } from "../state/use-store.tsx";
import { Act, Plain } from "../words/action.tsx";
import { organWords } from "../words/organ-words.ts";
import { TroubleNote } from "../words/trouble-note.tsx";
import { counted } from "../words/typeset.tsx";

/** More than this is no stoplist; the reader itself goes on to a larger size and says so. */
const MOST = 2_000_000;

/** `two keyboards and pedal, 1897`; `a piece of three sections, for All Saints, Sallowby`. */
function factWords(facts: DocumentFacts): string {
  if (facts.of === "instrument") return organWords(facts);
  return `a piece of ${counted(facts.sections, "section")}${facts.organ === null ? "" : `, for ${facts.organ}`}`;
}

/** Most organs under the head of those opened last. */
const LAST_OPENED = 3;

/** The first page: paste a list, open a demo organ, carry on with one's own. */
export function FirstPage() {
  const store = useStore();
  const { trouble } = useDesk();
  const [text, setText] = useState("");
  const [round, setRound] = useState(0);
  const entries = useLibrary(round);

  const read = (): void => {
    if (text.trim() !== "") void enterList(store, text);
  };
  const look = (): void => {
    if (text.trim() !== "") void lookAtList(store, text);
  };
  const pick = async (): Promise<void> => {
    try {
      const picked = await store.host.chooseText();
      if (picked) setText(picked.text.slice(0, MOST));
    } catch (thrown) {
      store.set({ trouble: troubleWords(thrown) });
    }
  };
  const open = async (): Promise<void> => {
    await openFolder(store);
    setRound((before) => before + 1);
  };
  const shown = (entries ?? []).filter((each) => each.kind === "instrument" || (!each.demo && each.kind === "piece"));
  const last = shown
    .filter((each) => each.opened !== null)
    .sort((one, other) => (one.opened ?? 0) - (other.opened ?? 0))
    .slice(0, LAST_OPENED);
  const others = shown.filter((each) => !last.includes(each));
  const demos = others.filter((each) => each.demo);
  const own = others.filter((each) => !each.demo);
  const hasOwn = shown.some((each) => !each.demo);
  return (
    <main className="first">
      <section aria-labelledby="first-head">
        <h1 id="first-head">
          Which organ <br />
          are you playing?
        </h1>
        <p className="lead">
          Give Registrant its stoplist and tell it what the hands and feet do. It answers with registrations, says why,
          and prints the cue cards.
        </p>
        <label className="cap" htmlFor="stoplist">
          Paste the stoplist
        </label>
        <textarea
          id="stoplist"
          rows={9}
          // biome-ignore lint/a11y/noAutofocus: the page is there for this box, and a paste goes straight into it.
          autoFocus
          spellCheck={false}
          value={text}
          onChange={(event) => setText(event.target.value.slice(0, MOST))}
          onKeyDown={(event) => {
            if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) read();
          }}
          placeholder={
            "Great: Open Diapason 8, Principal 4, Fifteenth 2, Mixture III\n" +
            "Swell: Gedackt 8, Salicional 8, Nazard 2 2/3, Oboe 8\n" +
            "Pedal: Subbass 16, Bass Flute 8\nSwell to Great, Swell to Pedal"
          }
        />
        <div className="row">
          <Act onClick={read}>Read it</Act>
          <Act second onClick={look}>
            What can it do?
          </Act>
          <Plain onClick={() => void pick()}>Take it from a file</Plain>
        </div>
        <p className="note quiet from">
          From a web page, a leaflet or by hand. Any language, any layout. Nothing leaves this computer.
        </p>
        {trouble !== null && <TroubleNote>{trouble}</TroubleNote>}
      </section>
      <section className="contents" aria-label="Organs">
        {last.length > 0 && <Contents head="Opened last" entries={last} />}
        {own.length > 0 && <Contents head="Carry on with your own" entries={own} />}
        {demos.length > 0 && <Contents head="Or open one of ours, invented for trying" entries={demos} />}
        <h2 className="cap">{hasOwn ? "Or look elsewhere" : "Or carry on with your own"}</h2>
        <div className="row">
          <Act second onClick={() => void open()}>
            Open a folder
          </Act>
          <p className="note quiet">Organs and pieces are plain files that you can keep, copy and mend.</p>
        </div>
      </section>
    </main>
  );
}

/** What a line of the contents says of a document besides its name. What cannot be read is told with its lines when it is opened. */
const entryWords = ({ trouble, facts }: LibraryEntry): string =>
  trouble ?? (facts ? factWords(facts) : "with errors in its file");

/** Documents as a table of contents. Those that would read alike are told apart by their files. */
function Contents({ head, entries }: { head: string; entries: readonly LibraryEntry[] }) {
  const line = (entry: LibraryEntry): string => `${entry.name}\n${entryWords(entry)}`;
  const hasTwin = (entry: LibraryEntry): boolean =>
    entries.some((each) => each !== entry && line(each) === line(entry));
  return (
    <>
      <h2 className="cap">{head}</h2>
      <ol>
        {entries.map((entry) => (
          <li key={entry.id}>
            <ContentsLine
              entry={entry}
              words={hasTwin(entry) ? `${entryWords(entry)}, in ${entry.file}` : entryWords(entry)}
            />
          </li>
        ))}
      </ol>
    </>
  );
}

/** The town behind the last comma is set in italics, as a programme sets it. */
function NameAndPlace({ name }: { name: string }) {
  const [, head, town] = /^(.*), ([^,]+)$/.exec(name) ?? [];
  return town === undefined ? (
    name
  ) : (
    <>
      {head}, <i>{town}</i>
    </>
  );
}

function ContentsLine({ entry, words }: { entry: LibraryEntry; words: string }) {
  const store = useStore();
  const { facts } = entry;
  return (
    <button type="button" onClick={() => void openDocument(store, entry.id)}>
      <span className="nm">
        <NameAndPlace name={entry.name} />
      </span>
      <span className="dots" aria-hidden="true" />
      <span>{facts?.of === "instrument" ? `${facts.stops} stop${facts.stops === 1 ? "" : "s"}` : ""}</span>
      <span className="note quiet">{words}</span>
    </button>
  );
}
