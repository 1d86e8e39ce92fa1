import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { Library } from "../../electron/library/library.ts";
import { numbered } from "./saving-child.ts";

/** How often; REGISTRANT_KILLS=2000 for a night. */
const KILLS = Number(process.env.REGISTRANT_KILLS ?? 60);
/** Processes at a time: starting one takes longer than its life. */
const LANES = 4;
const SEED = 20261126;

let program = "";

beforeAll(async () => {
  program = mkdtempSync(join(tmpdir(), "registrant-saving-"));
  await build({
    configFile: false,
    logLevel: "silent",
    build: { ssr: new URL("saving-child.ts", import.meta.url).pathname, outDir: program, emptyOutDir: true },
    ssr: { noExternal: true },
  });
}, 60_000);
afterAll(() => rmSync(program, { recursive: true, force: true }));

/** Numbers from 0 to 1, the same for the same seed. */
function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Lets a process save until it is killed, some milliseconds after its first save. Gives the last number it said. */
function killed(folder: string, first: number, after: number): Promise<number> {
  return new Promise((done, failed) => {
    const child = spawn(process.execPath, [join(program, "saving-child.js"), folder, String(first)], {
      stdio: ["ignore", "pipe", "pipe"],
    });
    let [said, trouble, timed] = ["", "", false];
    child.stderr.on("data", (part) => {
      trouble += String(part);
    });
    child.stdout.on("data", (part) => {
      said += String(part);
      if (!timed) setTimeout(() => child.kill("SIGKILL"), after);
      timed = true;
    });
    child.on("close", (status) => {
      if (trouble !== "" || status !== null) failed(new Error(`the process ended by itself: ${trouble}`));
      else done(Number(said.trimEnd().split("\n").at(-1)));
    });
  });
}

/** The number of a text; fails for one that is not whole. */
function numberOf(text: string): number {
  const number = Number(text.slice(0, text.indexOf("\n")));
  if (text !== numbered(number)) throw new Error(`not whole: ${text.length} letters beginning ${text.slice(0, 20)}`);
  return number;
}

/** What lies in a folder, by name. */
const textsIn = (folder: string): Record<string, string> =>
  Object.fromEntries(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), "utf8")]));

async function lane(seed: number, kills: number): Promise<{ saved: number; drafts: number }> {
  const folder = mkdtempSync(join(tmpdir(), "registrant-killed-"));
  const random = chance(seed);
  const organs = join(folder, "organs");
  mkdirSync(organs);
  for (const name of ["pieces", "discarded", "discarded/pieces"]) mkdirSync(join(folder, name));
  writeFileSync(join(organs, "kept.yaml"), numbered(0));
  let [number, drafts] = [0, 0];
  try {
    for (let kill = 0; kill < kills; kill += 1) {
      const said = await killed(folder, number + 1, random() * 25);
      // The file is the last that was called saved, or the one after it, which was about to be.
      const now = numberOf(readFileSync(join(organs, "kept.yaml"), "utf8"));
      expect([said, said + 1]).toContain(now);
      drafts += readdirSync(organs).filter((name) => name.endsWith(".part")).length;

      await new Library(folder).list();
      const { "kept.yaml": kept = "", "kept.yaml~": before = "", ...others } = textsIn(organs);
      expect([numberOf(kept), Object.keys(others)]).toEqual([now, []]);
      // Between its two renamings the version kept is the file itself.
      expect([now - 1, now]).toContain(numberOf(before));
      for (const text of Object.values(textsIn(join(folder, "pieces")))) numberOf(text);
      for (const text of Object.values(textsIn(join(folder, "discarded/pieces")))) numberOf(text);
      for (const name of readdirSync(join(folder, "discarded/pieces"))) rmSync(join(folder, "discarded/pieces", name));
      for (const name of readdirSync(join(folder, "pieces"))) rmSync(join(folder, "pieces", name));
      number = now;
    }
    return { saved: number, drafts };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

describe("a process that saves and is killed at any moment", () => {
  test(`leaves the old file or the new one: ${KILLS} times, seed ${SEED}`, async () => {
    const lanes = Array.from({ length: LANES }, (_, index) => lane(SEED + index, Math.ceil(KILLS / LANES)));
    const results = await Promise.all(lanes);
    // It was killed in the midst of saving and not only between.
    expect(results.reduce((sum, { drafts }) => sum + drafts, 0)).toBeGreaterThan(KILLS / 20);
    expect(results.reduce((sum, { saved }) => sum + saved, 0)).toBeGreaterThan(KILLS);
  }, 600_000);
});
