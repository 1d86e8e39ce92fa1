import type { LibraryEntry } from "../../shared-model/host-api.ts";
import { Plain } from "../words/action.tsx";
import { Typeset } from "../words/typeset.tsx";
import type { Chosen } from "./choices.ts";
import { useSuits } from "./use-suits.ts";

interface SuitedProps {
  readonly organ: Chosen;
  readonly pieces: readonly LibraryEntry[];
  readonly onPiece: (id: string) => void;
}

/** The pieces of the library by how well they suit an organ, each with its reasons; touching one carries it there. */
export function Suited({ organ, pieces, onPiece }: SuitedProps) {
  const { ranked, done } = useSuits(organ.text, pieces);
  if (pieces.length === 0) return null;
  return (
    <section className="suited" aria-labelledby="suited">
      <h2 className="cap" id="suited">
        What suits {organ.name}
      </h2>
      <p className="note quiet" role="status">
        {done < pieces.length ? `${done} of ${pieces.length} pieces looked at …` : ""}
      </p>
      <ol>
        {ranked.map(({ entry, share, text }) => (
          <li key={entry.id}>
            <Plain chosen onClick={() => onPiece(entry.id)}>
              {entry.name}
            </Plain>
            <span className="note">{Math.round(share * 100)} of 100</span>
            <p className="note">
              <Typeset>{text}</Typeset>
            </p>
          </li>
        ))}
      </ol>
      <p className="note quiet">
        By what each section asks for, longer ones counting more; not by how hard the changes are.
      </p>
    </section>
  );
}
