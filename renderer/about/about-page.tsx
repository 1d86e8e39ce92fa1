import { useEffect, useState } from "react";
import type { HostFacts } from "../../shared-model/host-api.ts";
import { SOURCES } from "../../shared-model/music/prescriptions/sources.ts";
import { useStore } from "../state/use-store.tsx";
import { capital } from "../words/typeset.tsx";

/** What the book is, what to beware of, and where it has its knowledge from. */
export function AboutPage() {
  const store = useStore();
  const [facts, setFacts] = useState<HostFacts | null>(null);
  useEffect(() => {
    let there = true;
    // Without an answer the page says less.
    store.host.facts().then(
      (said) => there && setFacts(said),
      () => undefined,
    );
    return () => {
      there = false;
    };
  }, [store]);
  const sources = Object.entries(SOURCES).toSorted(([, a], [, b]) => (a.year ?? 3000) - (b.year ?? 3000));
  return (
    <main className="about">
      <h1>About Registrant</h1>
      <p className="lead">
        An assistant for the bench: it reads a stoplist, proposes registrations with reasons, judges what you draw, and
        prints what you decide. It knows books and arithmetic. It does not hear your organ; you do.
      </p>
      <section aria-labelledby="care">
        <h2 className="cap" id="care">
          Take care
        </h2>
        <dl>
          <dt>Your ears</dt>
          <dd>
            At full organ, near the pipes or inside a case, sound can reach levels that harm hearing over time. Try loud
            registrations briefly, take breaks, and protect your ears where you work for long. The rules for workplaces
            of your country go before anything said here.
          </dd>
          <dt>The organ</dt>
          <dd>
            Ask its keeper before you climb into it, before you change a memory level or a piston, and before you move
            anything. As a guest, use the level you are given, note what was there, and leave it as you found it.
          </dd>
          <dt>The service</dt>
          <dd>Draw and hear a proposal before you play it to anyone.</dd>
        </dl>
      </section>
      <section aria-labelledby="private">
        <h2 className="cap" id="private">
          What stays here
        </h2>
        <p>
          Everything is reckoned in this window. No account, no network, nothing leaves this computer. Organs and pieces
          are plain files in your own folder, which you can read, copy and mend without this program.
        </p>
        {facts && (
          <p className="note quiet">
            Your folder: {facts.library}. Registrant {facts.version}.
          </p>
        )}
      </section>
      <section aria-labelledby="keys">
        <h2 className="cap" id="keys">
          Keys
        </h2>
        <dl className="keys">
          <dt>Arrows</dt>
          <dd>from stop to stop, from division to division, from proposal to proposal</dd>
          <dt>A letter</dt>
          <dd>to the next stop whose name begins with it</dd>
          <dt>Space</dt>
          <dd>draws a stop and puts it in</dd>
          <dt>Ctrl Z, Ctrl Y</dt>
          <dd>undo, redo (on a Mac with the command key)</dd>
          <dt>Ctrl +, −, 0</dt>
          <dd>larger, smaller, usual print</dd>
        </dl>
      </section>
      <section aria-labelledby="sources">
        <h2 className="cap" id="sources">
          Sources
        </h2>
        <p className="quiet">
          Conventions for which no book is named are called common practice. “Seen” means that the page was before us;
          what is known only from the literature says so.
        </p>
        <ul className="sources">
          {sources.map(([id, { author, title, year, where, evidence }]) => (
            <li key={id}>
              {author === null ? "" : `${capital(author)}, `}
              <i>{title}</i>
              {year === null ? "" : ` (${year})`}. <span className="note quiet">{where}. </span>
              <span className="note">{evidence === "read" ? "Seen." : "From the literature."}</span>
            </li>
          ))}
        </ul>
      </section>
      <p className="note quiet">
        Type: Source Serif 4 and Source Sans 3, under the SIL Open Font License. Registrant is free software under the
        MIT licence. Every demo organ, place and person is invented.
      </p>
    </main>
  );
}
