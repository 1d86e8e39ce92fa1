import { spawn } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Milliseconds that fetching may take, about 110 MB. */
const PATIENCE = 300_000;
/** Milliseconds in which a window that cannot open gives up. */
const START = 15_000;

/** The desktop window's runtime, as its package lays it down. */
export interface Runtime {
  /** Path of its program; `null` when only the package is here, without what it fetches. */
  readonly program: string | null;
  readonly version: string;
}

/** The runtime in a project; `null` when not even its package is installed. */
export function runtimeIn(project: string): Runtime | null {
  const folder = join(project, "node_modules", "electron");
  try {
    const version = String(JSON.parse(readFileSync(join(folder, "package.json"), "utf8")).version);
    const place = join(folder, "path.txt");
    const program = existsSync(place) ? join(folder, "dist", readFileSync(place, "utf8").trim()) : null;
    return { program: program !== null && existsSync(program) ? program : null, version };
  } catch {
    return null;
  }
}

/** Lets the package fetch its program. Tells whether it is there afterwards; never throws. */
export async function fetchRuntime(project: string): Promise<Runtime | null> {
  const script = join(project, "node_modules", "electron", "install.js");
  await ended(process.execPath, [script], "ignore", PATIENCE);
  return runtimeIn(project);
}

/** How the window's program ended: as it should, or before it could open a window. */
export type WindowEnd = "closed" | "not-opened";

/** Runs the window until it is closed. */
export async function runWindow(program: string, words: readonly string[]): Promise<WindowEnd> {
  const began = performance.now();
  const status = await ended(program, words, "inherit", null);
  return status !== 0 && performance.now() - began < START ? "not-opened" : "closed";
}

/** Exit status of a program; `null` when it could not be started or was stopped. */
function ended(
  program: string,
  words: readonly string[],
  output: "ignore" | "inherit",
  patience: number | null,
): Promise<number | null> {
  return new Promise((done) => {
    const child = spawn(program, words, {
      stdio: ["ignore", output, output],
      ...(patience === null ? {} : { timeout: patience }),
    });
    child.on("error", () => done(null));
    child.on("close", (status) => done(status));
  });
}
