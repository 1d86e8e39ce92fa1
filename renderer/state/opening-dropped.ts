import { type FileKind, fileKindOf } from "../../shared-model/files/file-kind.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { DocumentId, PickedText } from "../../shared-model/host-api.ts";
import { pickedText } from "../host/picked-text.ts";
import { enterList, openDocument, organNamed, troubleWords } from "./opening.ts";
import { organOf } from "./organ.ts";
import type { Store } from "./store.ts";

/** More files than anybody means to open at once; a whole library is opened as a folder. */
const MOST = 20;

/** Organs come before the pieces that are played on them. */
const ORDER: readonly (FileKind | null)[] = ["instrument", "piece"];

/** A file that cannot be opened, and why, in words for an organist. */
class Refused {
  readonly words: string;
  constructor({ name }: PickedText, words: string) {
    this.words = `${name}: ${words}`;
  }
}

/** The document of the library that has this very text; a new one where there is none. */
async function inLibrary(store: Store, kind: "instrument" | "piece", name: string, text: string): Promise<DocumentId> {
  const alike = (await store.host.list()).filter((each) => each.kind === kind && each.name === name);
  for (const { id } of alike) {
    const there = await store.host.read(id).catch(() => null);
    if (there?.text === text) return id;
  }
  return (await store.host.create({ kind, name, text })).id;
}

/** Takes one file in, so that it can be opened. A file with errors stays where it is, and its lines are told. */
async function taken(store: Store, file: PickedText): Promise<DocumentId> {
  const { name, text } = file;
  const plain = name.replace(/\.ya?ml$/i, "");
  if (fileKindOf(text) === "instrument") {
    const { instrument, troubles } = organOf(text);
    if (instrument) return inLibrary(store, "instrument", instrument.name || plain, text);
    throw new Refused(file, `This organ has errors. Mend them in the file first. ${errorLines(troubles)}`);
  }
  const { piece, troubles } = readPieceFile(text, "the piece", null);
  if (!piece) throw new Refused(file, `This piece has errors. Mend them in the file first. ${errorLines(troubles)}`);
  if (piece.organ === null) {
    throw new Refused(file, "This piece does not say on which organ it is played. Open the organ, and begin it there.");
  }
  if ((await organNamed(store, piece.organ)) === null) {
    throw new Refused(file, `Its organ, ${piece.organ}, is not in the library. Drop the organ’s file as well.`);
  }
  return inLibrary(store, "piece", piece.name ?? plain, text);
}

const errorLines = (troubles: ReturnType<typeof organOf>["troubles"]): string =>
  troubles
    .filter((each) => each.severity === "error")
    .slice(0, 3)
    .map(troubleLine)
    .join(" ");

async function openTexts(store: Store, files: readonly PickedText[]): Promise<void> {
  const [first] = files;
  if (!first) return;
  const kinds = files.map(({ text }) => fileKindOf(text));
  if (files.length === 1 && kinds[0] === null) {
    if (first.text.trim() === "") throw new Refused(first, "There is nothing in it.");
    await enterList(store, first.text);
    return;
  }
  for (const [at, file] of files.entries()) {
    const kind = kinds[at] ?? null;
    if (kind === null) throw new Refused(file, "This is no organ and no piece. Drop a stoplist by itself.");
    if (kind !== "instrument" && kind !== "piece") {
      throw new Refused(file, "This is a part of a piece. Drop the file of the piece or of the organ.");
    }
  }
  let last: DocumentId | null = null;
  const rank = (file: PickedText): number => ORDER.indexOf(fileKindOf(file.text));
  for (const file of files.toSorted((one, other) => rank(one) - rank(other))) last = await taken(store, file);
  if (last !== null) await openDocument(store, last);
}

/**
 * Opens files that were dropped on the window: a stoplist is read in, organs and pieces are copied into the library, unless
 * they lie there already, and the last of them is opened. A file with errors stays where it is, and the desk as well.
 *
 * @returns what is wrong and what to do, for an organist; `null` when all is well.
 */
export async function openDropped(store: Store, files: readonly File[]): Promise<string | null> {
  if (files.length > MOST) {
    return `These are ${files.length} files. Drop up to ${MOST} at a time, or choose “Open a folder” on the first page.`;
  }
  try {
    await openTexts(store, await Promise.all(files.map(pickedText)));
    return null;
  } catch (thrown) {
    return thrown instanceof Refused ? thrown.words : troubleWords(thrown);
  }
}
