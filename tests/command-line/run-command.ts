import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { main } from "../../electron/command-line.ts";

/** What a command did. */
export interface Run {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line in a folder, with its output caught. */
async function registrantIn(folder: string, ...words: readonly string[]): Promise<Run> {
  let [out, err] = ["", ""];
  const stdout = { write: (text: string) => (out += text) };
  const stderr = { write: (text: string) => (err += text) };
  const status = await main(words, { stdout, stderr, folder });
  return { status, out, err };
}

/** A folder for one test, gone at its end: `using desk = new Desk()`. */
export class Desk {
  readonly folder = mkdtempSync(join(tmpdir(), "registrant-desk-"));

  /** Puts a file there. */
  put(name: string, content: string | Uint8Array): this {
    mkdirSync(dirname(join(this.folder, name)), { recursive: true });
    writeFileSync(join(this.folder, name), content);
    return this;
  }

  read(name: string): string {
    return readFileSync(join(this.folder, name), "utf8");
  }

  /** Names of all files that lie there, sorted. */
  files(): readonly string[] {
    return readdirSync(this.folder).sort();
  }

  run(...words: readonly string[]): Promise<Run> {
    return registrantIn(this.folder, ...words);
  }

  clear(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** Lines of plain text that are wider than a terminal, apart from those that hold one word only. */
export const tooWide = (text: string): readonly string[] =>
  text.split("\n").filter((line) => [...line].length > 80 && /\S\s+\S/.test(line.trim()));

/** The path of a demo organ by the name of its file. */
export const demoPath = (name: string): string => new URL(`../../instruments/${name}.yaml`, import.meta.url).pathname;
