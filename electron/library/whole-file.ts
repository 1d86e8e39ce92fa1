import { createHash, randomBytes } from "node:crypto";
import { constants } from "node:fs";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { codeOf, type Disk } from "./disk.ts";

/** Another machine may write to the same folder: only drafts of this one can be told to be forgotten. */
const MACHINE = createHash("sha256").update(hostname()).digest("hex").slice(0, 8);

const draftPath = (target: string): string => {
  const chance = randomBytes(4).toString("hex");
  // Of a long name only the beginning: a draft's name must not be too long where the file's own is not.
  return join(
    dirname(target),
    `.${[...basename(target)].slice(0, 40).join("")}.${MACHINE}-${process.pid}-${chance}.part`,
  );
};

const DRAFT = /^\..*\.([0-9a-f]{8})-(\d{1,10})-[0-9a-f]{8}\.part$/s;

/** Whether a file of this name is a draft whose writer was stopped before the end, so that it can go. */
export function isForgottenDraft(name: string): boolean {
  const [, machine, process_] = DRAFT.exec(name) ?? [];
  return machine === MACHINE && Number(process_) !== process.pid && !isAlive(Number(process_));
}

function isAlive(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return codeOf(error) === "EPERM";
  }
}

/** Windows refuses while a virus scanner or an indexer looks at a fresh file; a moment later it does not. */
const PASSING = ["EACCES", "EPERM", "EBUSY"];
const PATIENCE = [10, 30, 100, 300];

/**
 * Gives a file its name, at once and over whatever has it.
 *
 * @throws an error of the file system.
 */
async function rename(from: string, to: string, disk: Disk): Promise<void> {
  for (const pause of [...PATIENCE, null]) {
    try {
      return await disk.rename(from, to);
    } catch (error) {
      if (pause === null || !PASSING.includes(codeOf(error) ?? "")) throw error;
      await wait(pause);
    }
  }
}

/** Systems and disks that cannot flush a folder say so in these ways; there is nothing else to be done then. */
const NO_FLUSH = ["EPERM", "EACCES", "EISDIR", "EINVAL", "ENOTSUP", "EBADF"];

/** Makes names in a folder outlast a loss of power. */
async function flushFolder(folder: string, disk: Disk): Promise<void> {
  try {
    const handle = await disk.open(folder, constants.O_RDONLY);
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (!NO_FLUSH.includes(codeOf(error) ?? "")) throw error;
  }
}

/** Writes bytes to a new file beside `target` and to the platter. The caller gives it a name or takes it away. */
async function draft(target: string, bytes: Uint8Array, mode: number | null, disk: Disk): Promise<string> {
  const path = draftPath(target);
  const handle = await disk.open(path, "wx", mode ?? 0o666);
  try {
    // What others in a shared folder may do with the file stays as it was; a disk without permissions refuses.
    if (mode !== null) await handle.chmod(mode).catch(() => {});
    await handle.writeFile(bytes);
    await handle.sync();
  } catch (error) {
    await handle.close();
    await disk.rm(path, { force: true });
    throw error;
  }
  await handle.close();
  return path;
}

/** Disks that know no links (memory cards) answer so. */
const NO_LINKS = ["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EMLINK", "EINVAL"];

/** A second name for what stands at `target` now, so that it outlasts its replacing; a copy where there are no links. */
async function hold(target: string, disk: Disk, copy: () => Promise<Uint8Array>): Promise<string> {
  const path = draftPath(target);
  try {
    await disk.link(target, path);
    return path;
  } catch (error) {
    if (!NO_LINKS.includes(codeOf(error) ?? "")) throw error;
    return draft(target, await copy(), null, disk);
  }
}

/** Where the version before the last save lies: the usual mark of a file kept for safety. */
export const beforePath = (path: string): string => `${path}~`;

/** What {@link replaceWhole} needs to know of the file that stands there. */
export interface Standing {
  /** Reads a file of the folder, bounded. */
  readonly read: (path: string) => Promise<Uint8Array>;
  /** Whether these are the bytes that may be replaced. */
  readonly isSeen: (bytes: Uint8Array) => boolean;
}

/**
 * Replaces a file: at every moment its name leads to the old bytes or to the new ones, and the old ones are kept under
 * {@link beforePath}. They are looked at once more after a second name holds them, so that what another program wrote
 * into the file until then is seen, and what it still writes into it is in the file kept.
 *
 * @returns false, with nothing changed, when other bytes stand there than may be replaced.
 * @throws an error of the file system, with nothing changed.
 */
export async function replaceWhole(path: string, bytes: Uint8Array, standing: Standing, disk: Disk): Promise<boolean> {
  const mode = (await disk.stat(path)).mode & 0o777;
  const next = await draft(path, bytes, mode, disk);
  let held: string | null = null;
  try {
    held = await hold(path, disk, () => standing.read(path));
    if (!standing.isSeen(await standing.read(held))) return false;
    await rename(held, beforePath(path), disk);
    await rename(next, path, disk);
    await flushFolder(dirname(path), disk);
    return true;
  } finally {
    // Also after success: giving one file's second name to its first leaves both.
    if (held !== null) await disk.rm(held, { force: true }).catch(() => {});
    await disk.rm(next, { force: true }).catch(() => {});
  }
}

/**
 * Writes a file over whatever has its name, without keeping that: for files that a program writes and can write again.
 *
 * @throws an error of the file system, with nothing changed.
 */
export async function putWhole(path: string, bytes: Uint8Array, disk: Disk): Promise<void> {
  const next = await draft(path, bytes, null, disk);
  try {
    await rename(next, path, disk);
    await flushFolder(dirname(path), disk);
  } finally {
    await disk.rm(next, { force: true }).catch(() => {});
  }
}

/**
 * Writes a file that was not there: afterwards it is whole or not there.
 *
 * @throws an error of the file system; `EEXIST` when something has the name by now.
 */
export async function createWhole(path: string, bytes: Uint8Array, disk: Disk): Promise<void> {
  const next = await draft(path, bytes, null, disk);
  try {
    await moveWithoutReplacing(next, path, disk);
    await flushFolder(dirname(path), disk);
  } finally {
    await disk.rm(next, { force: true }).catch(() => {});
  }
}

/**
 * Moves a file to a name that must be free.
 *
 * @throws an error of the file system; `EEXIST` when something has the name.
 */
export async function moveWithoutReplacing(from: string, to: string, disk: Disk): Promise<void> {
  try {
    // A link is made only where nothing stands, and that is one step.
    await disk.link(from, to);
    await disk.rm(from);
  } catch (error) {
    if (!NO_LINKS.includes(codeOf(error) ?? "")) throw error;
    if (await disk.lstat(to).catch(() => null)) throw Object.assign(new Error("it is there"), { code: "EEXIST" });
    await rename(from, to, disk);
  }
}
