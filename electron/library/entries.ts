import type { LibraryChange, LibraryEntry } from "../../shared-model/host-api.ts";
import { libraryId } from "./place.ts";
import type { Seen } from "./shelf.ts";

/** A document as the list shows it. */
export const entryOf = ({ file, head, changed }: Seen): LibraryEntry => ({
  id: libraryId(file.split("/")),
  kind: head.kind,
  name: head.name ?? (file.split("/").at(-1) as string).replace(/\.ya?ml$/i, ""),
  file,
  demo: false,
  changed,
  trouble: head.trouble,
  facts: head.facts,
  opened: null,
});

/** A line of the list that is no document but says something of the whole. */
export const notice = (name: string, trouble: string): LibraryEntry => ({
  id: "library:",
  kind: null,
  name,
  file: "",
  demo: false,
  changed: 0,
  trouble,
  facts: null,
  opened: null,
});

/** What is said where more lies than is shown. */
export const overflowWords = (folder: string): string =>
  `More documents lie in ${folder} than are shown. Is it the right folder? Choose one for your organs alone.`;

/** What became of documents between two looks, by what is in them; a new time alone is nothing. */
export function changesBetween(
  before: ReadonlyMap<string, Seen>,
  after: ReadonlyMap<string, Seen>,
): readonly LibraryChange[] {
  const change = (file: string, what: LibraryChange["what"]): LibraryChange => ({
    id: libraryId(file.split("/")),
    what,
  });
  const state = (seen: Seen): string | null => seen.version ?? seen.head.trouble;
  const gone = [...before.keys()].filter((file) => !after.has(file)).map((file) => change(file, "removed"));
  const come = [...after].flatMap(([file, seen]) => {
    const known = before.get(file);
    if (!known) return [change(file, "added")];
    return state(known) === state(seen) ? [] : [change(file, "changed")];
  });
  return [...gone, ...come];
}
