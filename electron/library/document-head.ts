import { isScalar, parseDocument } from "yaml";
import { type FileKind, fileKindOf } from "../../shared-model/files/file-kind.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import type { DocumentFacts, DocumentKind } from "../../shared-model/host-api.ts";
import { organFacts } from "../../shared-model/stoplist/organ-facts.ts";

/** What the list shows of a document. */
export interface DocumentHead {
  readonly kind: DocumentKind | null;
  /** What the document calls itself; `null` when it does not, or not on the line of the key. */
  readonly name: string | null;
  readonly trouble: string | null;
  readonly facts: DocumentFacts | null;
}

/** Longest name shown; a longer one is no name. */
const LONGEST = 200;

function nameIn(text: string): string | null {
  const line = /^name[ \t]*:[ \t]+(\S[^\r\n]*)/m.exec(text)?.[1];
  if (line === undefined || line.length > 4 * LONGEST) return null;
  // The line alone, so that a document with errors further down has its name too.
  const document = parseDocument(line, { schema: "failsafe", logLevel: "silent" });
  const value = document.errors.length === 0 && isScalar(document.contents) ? document.contents.value : null;
  const name = typeof value === "string" ? value.trim() : "";
  return name === "" || name.length > LONGEST ? null : name;
}

/** Longest text of which facts are told; reading a longer one would keep the list waiting. In UTF-16 units. */
const LONGEST_WITH_FACTS = 300_000;

function factsOf(kind: FileKind, text: string): DocumentFacts | null {
  if (text.length > LONGEST_WITH_FACTS) return null;
  if (kind === "instrument") {
    const { instrument } = readInstrumentFile(text, "");
    return instrument && { of: "instrument", ...organFacts(instrument) };
  }
  if (kind !== "piece") return null;
  const { piece } = readPieceFile(text, "", null);
  return piece && { of: "piece", sections: piece.sections.length, organ: piece.organ };
}

/** Kind and name of a document, from its first column only: it need not be sound otherwise. Facts, where it is. */
export function headOf(text: string): DocumentHead {
  const kind = fileKindOf(text);
  if (kind !== null) return { kind, name: nameIn(text), trouble: null, facts: factsOf(kind, text) };
  const trouble =
    "It does not say what it is. A document of Registrant begins with a line such as registrant: instrument/1";
  return { kind: null, name: null, trouble, facts: null };
}
