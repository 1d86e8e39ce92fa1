import { closeSync, fstatSync, openSync, readSync } from "node:fs";
import { resolve } from "node:path";
import { type ListText, listText } from "../service/list-text.ts";
import { Refusal, type Terminal } from "./terminal.ts";

/** Longest file that is read, in bytes: no stoplist and no organ comes near it. */
const BYTE_LIMIT = 5_000_000;

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "There is no such file.",
  ENOTDIR: "There is no such file: a part of the path before it is no folder.",
  EACCES: "It may not be read by you; its permissions do not allow it.",
  EPERM: "It may not be read by you; its permissions do not allow it.",
  EISDIR: "It is a folder; name a file in it.",
  ELOOP: "It is a link that leads back to itself.",
  ENAMETOOLONG: "Its name is too long.",
};

/** An error of the file system in words. */
export function fileTrouble(error: unknown, reasons: Readonly<Record<string, string>> = REASONS): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return (code !== undefined && reasons[code]) || `The system says: ${message}.`;
}

/**
 * The bytes of a file.
 *
 * @throws Refusal in words when it is missing, no plain file, longer than 5 MB, or may not be read.
 */
function readBytes(path: string, { folder }: Terminal): Uint8Array {
  let file: number | null = null;
  try {
    file = openSync(resolve(folder, path), "r");
    const status = fstatSync(file);
    if (status.isDirectory()) throw new Refusal(`${path}: It is a folder; name a file in it.`);
    if (!status.isFile()) throw new Refusal(`${path}: It is no plain file; save it to one first.`);
    // A file may grow between its measuring and its reading: one byte beyond the limit is asked for.
    const bytes = Buffer.alloc(Math.min(status.size, BYTE_LIMIT) + 1);
    let length = 0;
    for (;;) {
      const got = readSync(file, bytes, length, bytes.length - length, null);
      length += got;
      if (got === 0 || length === bytes.length) break;
    }
    if (status.size > BYTE_LIMIT || length > BYTE_LIMIT) {
      throw new Refusal(`${path}: It is longer than 5 MB, more than any organ needs. Is it the right file?`);
    }
    return bytes.subarray(0, length);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${path}: ${fileTrouble(error)}`);
  } finally {
    if (file !== null) closeSync(file);
  }
}

/**
 * The text of a YAML file. Bytes that are no UTF-8 become the sign for a lost letter, which the reading of the file
 * reports at its place.
 *
 * @throws Refusal as {@link readBytes}.
 */
export const readText = (path: string, terminal: Terminal): string =>
  new TextDecoder().decode(readBytes(path, terminal));

/**
 * The text of a printed list, in UTF-8, UTF-16 with its mark, or the old Western European code (Windows-1252).
 *
 * @throws Refusal as {@link readBytes}, and when it is no text.
 */
export function readListText(path: string, terminal: Terminal): ListText {
  const list = listText(readBytes(path, terminal));
  if (list) return list;
  throw new Refusal(`${path}: This is not a text file. Save the list as plain text first.`);
}
