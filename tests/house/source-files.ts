import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder of the project. */
export const ROOT: string = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/**
 * Paths of everything that belongs to the project, from its root: what git tracks and what it would track next, so that
 * a new file is held to the rules before it is committed.
 */
export function projectFiles(): readonly string[] {
  const listed = execFileSync("git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"], {
    cwd: ROOT,
    encoding: "utf8",
  });
  return [...new Set(listed.split("\0"))].filter((path) => path !== "" && existsSync(join(ROOT, path))).sort();
}

export const textOf = (path: string): string => readFileSync(join(ROOT, path), "utf8");
