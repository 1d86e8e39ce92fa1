import { randomUUID } from "node:crypto";
import {
  closeSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { fileTrouble } from "./input-file.ts";
import { Refusal, type Terminal } from "./terminal.ts";

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "There is no such folder to write it to.",
  ENOTDIR: "There is no such folder to write it to.",
  EACCES: "You may not write there; the permissions of the folder do not allow it.",
  EPERM: "You may not write there; the permissions of the folder do not allow it.",
  EROFS: "The disk can only be read.",
  ENOSPC: "The disk is full.",
  ENAMETOOLONG: "Its name is too long.",
};

const exists = (path: string): boolean => lstatSync(path, { throwIfNoEntry: false }) !== undefined;

/**
 * Refuses a path that cannot be written to, before any work is done for it.
 *
 * @throws Refusal when a file stands there already and is not to be replaced, or a folder does.
 */
export function mayWrite(path: string, replace: boolean, { folder }: Terminal): void {
  const status = lstatSync(resolve(folder, path), { throwIfNoEntry: false });
  if (status?.isDirectory()) throw new Refusal(`${path}: It is a folder; name a file in it.`);
  if (status && !replace) throw new Refusal(`${path}: It is there already. With --replace it is written over.`);
}

/** Disks that know no links (memory cards) answer so. */
const NO_LINKS: readonly (string | undefined)[] = ["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS"];

/** Gives the draft its name unless another file has it by now: a link is made only where nothing stands. */
function appear(draft: string, target: string): void {
  try {
    linkSync(draft, target);
  } catch (error) {
    if (!NO_LINKS.includes((error as NodeJS.ErrnoException).code) || exists(target)) throw error;
    renameSync(draft, target);
  }
}

/**
 * Writes a whole file or nothing: to a new file beside it, which then takes its name.
 *
 * @throws Refusal as {@link mayWrite}, and in words for whatever the system refuses.
 */
export function writeWhole(path: string, content: string | Uint8Array, replace: boolean, terminal: Terminal): void {
  mayWrite(path, replace, terminal);
  const asked = resolve(terminal.folder, path);
  let draft: string | null = null;
  try {
    // A link is kept: what it leads to is replaced.
    const target = replace && exists(asked) ? realpathSync(asked) : asked;
    draft = join(dirname(target), `.${basename(target)}.${randomUUID().slice(0, 8)}.part`);
    const file = openSync(draft, "wx");
    try {
      writeFileSync(file, content);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    if (replace) renameSync(draft, target);
    else appear(draft, target);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "EEXIST" && !replace)
      throw new Refusal(`${path}: It is there already. With --replace it is written over.`);
    throw new Refusal(`${path}: ${fileTrouble(error, REASONS)}`);
  } finally {
    if (draft !== null) rmSync(draft, { force: true });
  }
}
