import * as promises from "node:fs/promises";

/** What the library asks of the file system, so that tests can let it fail. */
export type Disk = Pick<
  typeof promises,
  "access" | "link" | "lstat" | "mkdir" | "open" | "readdir" | "rename" | "rm" | "stat"
>;

/** The file system of this machine. */
export const realDisk: Disk = promises;

/** The code of an error of the file system, such as `ENOENT`; `undefined` for any other. */
export const codeOf = (error: unknown): string | undefined =>
  error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
