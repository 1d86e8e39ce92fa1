import { existsSync, mkdirSync, readFileSync, renameSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, join } from "node:path";
import * as z from "zod";
import { realDisk } from "../library/disk.ts";
import { readBytes } from "../library/plain-file.ts";
import { createWhole, replaceWhole } from "../library/whole-file.ts";

/** Most organs in the menu of recent ones. */
const RECENT = 8;

const pixels = z.int().min(-100_000).max(100_000);

const schema = z.object({
  /** Absolute path of the library chosen; `null` for the usual one. */
  library: z.string().min(1).nullable().catch(null),
  window: z
    .object({ x: pixels, y: pixels, width: pixels, height: pixels, maximised: z.boolean() })
    .nullable()
    .catch(null),
  /** Organs opened, the last one first. */
  recent: z
    .array(z.object({ id: z.string().max(1024), name: z.string().max(500) }))
    .max(RECENT)
    .catch([]),
});

/** What the program remembers of one person on one machine. Nothing musical: that lies in the library. */
export type Remembered = z.infer<typeof schema>;

/** Where a program keeps its settings on each system, from the variables of its surroundings. */
export function settingsFile(env: NodeJS.ProcessEnv = process.env, platform: string = process.platform): string {
  const home = homedir();
  const usual = env.XDG_CONFIG_HOME && env.XDG_CONFIG_HOME !== "" ? env.XDG_CONFIG_HOME : join(home, ".config");
  const folder =
    platform === "darwin"
      ? join(home, "Library", "Application Support")
      : platform === "win32"
        ? (env.APPDATA ?? join(home, "AppData", "Roaming"))
        : usual;
  return join(folder, "registrant", "settings.json");
}

/** The library of who has chosen none. */
export const usualLibrary = (): string => join(homedir(), "Registrant");

/** The settings file of one person. */
export class Settings {
  readonly #path: string;
  #remembered: Remembered;
  #writing: Promise<void> = Promise.resolve();

  /** Reads the file; what cannot be read is the usual, and the file is kept aside. */
  constructor(path: string) {
    this.#path = path;
    this.#remembered = schema.parse(readAny(path));
  }

  get now(): Remembered {
    return this.#remembered;
  }

  /** Remembers, and writes soon. A disk that refuses is no reason to stop: the next start begins as usual. */
  remember(change: Partial<Remembered>): void {
    this.#remembered = { ...this.#remembered, ...change };
    this.#writing = this.#writing.then(() => this.#write()).catch(() => {});
  }

  /** Puts an organ at the head of the recent ones. */
  rememberOrgan(organ: { readonly id: string; readonly name: string }): void {
    const others = this.#remembered.recent.filter(({ id }) => id !== organ.id);
    this.remember({ recent: [{ id: organ.id, name: organ.name }, ...others].slice(0, RECENT) });
  }

  /** When all is written. */
  settled(): Promise<void> {
    return this.#writing;
  }

  async #write(): Promise<void> {
    const bytes = Buffer.from(`${JSON.stringify(this.#remembered, null, 2)}\n`);
    mkdirSync(dirname(this.#path), { recursive: true });
    if (!existsSync(this.#path)) return createWhole(this.#path, bytes, realDisk);
    const read = (path: string): Promise<Uint8Array> => readBytes(path, "settings", realDisk);
    await replaceWhole(this.#path, bytes, { read, isSeen: () => true }, realDisk);
  }
}

function readAny(path: string): object {
  let text: string;
  try {
    text = readFileSync(path, "utf8");
  } catch {
    return {};
  }
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === "object" && value !== null) return value;
  } catch {}
  try {
    renameSync(path, `${path}.unreadable`);
  } catch {}
  return {};
}
