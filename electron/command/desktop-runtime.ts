import { spawn } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { STOP_SIGNS } from "../service/stop-signs.ts";

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

/** Lets the package fetch its program, or stop in the midst of it. Gives the runtime as it is afterwards; never throws. */
export async function fetchRuntime(project: string): Promise<Runtime | null> {
  const script = join(project, "node_modules", "electron", "install.js");
  await ended(process.execPath, [script], "ignore", PATIENCE);
  return runtimeIn(project);
}

/** How the window's program ended: as it should, or before it could open a window. */
export type WindowEnd = "closed" | "not-opened";

/** Runs the window until it is closed, or until this process is told to stop, which is handed on to it. */
export async function runWindow(program: string, words: readonly string[]): Promise<WindowEnd> {
  const began = performance.now();
  const { status, stopped } = await ended(program, words, "inherit", null);
  return status !== 0 && !stopped && performance.now() - began < START ? "not-opened" : "closed";
}

interface Ended {
  /** Exit status; `null` when it could not be started or was stopped. */
  readonly status: number | null;
  /** This process was told to stop. */
  readonly stopped: boolean;
}

function ended(
  program: string,
  words: readonly string[],
  output: "ignore" | "inherit",
  patience: number | null,
): Promise<Ended> {
  return new Promise((done) => {
    let stopped = false;
    const child = spawn(program, words, {
      stdio: ["ignore", output, output],
      ...(patience === null ? {} : { timeout: patience }),
    });
    const handOn = (sign: NodeJS.Signals): void => {
      stopped = true;
      child.kill(sign);
    };
    const end = (status: number | null): void => {
      for (const sign of STOP_SIGNS) process.off(sign, handOn);
      done({ status, stopped });
    };
    for (const sign of STOP_SIGNS) process.on(sign, handOn);
    child.on("error", () => end(null));
    child.on("close", end);
  });
}
