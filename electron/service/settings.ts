import { mkdirSync, readFileSync, renameSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, join } from "node:path";
import * as z from "zod";
import { realDisk } from "../library/disk.ts";
import { putWhole } from "../library/whole-file.ts";

/** Most organs in the menu of recent ones. */
const RECENT = 8;

/** Where the window was, in pixels of the screen. */
export interface WindowPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly maximised: boolean;
}

const pixels = z.int().min(-100_000).max(100_000);

const place: z.ZodType<WindowPlace> = z.object({
  x: pixels,
  y: pixels,
  width: pixels,
  height: pixels,
  maximised: z.boolean(),
});

const schema = z.object({
  /** Absolute path of the library chosen; `null` for the usual one. */
  library: z.string().min(1).nullable().catch(null),
  window: place.nullable().catch(null),
  /** Organs opened, the last one first. */
  recent: z
    .array(z.object({ id: z.string().max(1024), name: z.string().max(500) }))
    .max(RECENT)
    .catch([]),
  /** Version of the window's runtime that could not be fetched, so that it is not tried at every start. */
  notFetched: z.string().max(100).nullable().catch(null),
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
    this.#remembered = readOr(path, schema.parse({}));
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
    await putWhole(this.#path, bytes, realDisk);
  }
}

/** What the file says; it is set aside when it is none of ours. */
function readOr(path: string, usual: Remembered): Remembered {
  let text: string;
  try {
    text = readFileSync(path, "utf8");
  } catch {
    return usual;
  }
  try {
    return schema.parse(JSON.parse(text));
  } catch {
    try {
      renameSync(path, `${path}.unreadable`);
    } catch {}
    return usual;
  }
}
