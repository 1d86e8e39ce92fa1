import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { ROOT } from "../house/source-files.ts";

export const DEMOS = join(ROOT, "instruments");

export const organText = (name: string, remark = ""): string =>
  `# ${remark}\nregistrant: instrument/1\nname: ${name}\ndivisions: []\n`;

/** A folder for one test, with a small page in the place of the renderer and a library. */
export class Machine {
  readonly folder: string = mkdtempSync(join(tmpdir(), "registrant-machine-"));
  readonly library: string = join(this.folder, "library");
  readonly renderer: string = join(this.folder, "renderer");

  constructor() {
    mkdirSync(this.library);
    this.put("renderer/index.html", "<!doctype html><title>Registrant</title><script src=./assets/app.js></script>");
    this.put("renderer/assets/app.js", "document.title = 'ready';\n");
    this.put("secret.txt", "outside");
  }

  put(path: string, content: string | Uint8Array): string {
    const full = join(this.folder, path);
    mkdirSync(dirname(full), { recursive: true });
    writeFileSync(full, content);
    return full;
  }

  clear(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** Waits until something holds, looking often; fails with the last word of `what` after ten seconds. */
export async function until(what: string, holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 500; tries += 1) {
    if (holds()) return;
    await new Promise((done) => setTimeout(done, 20));
  }
  throw new Error(`waited in vain: ${what}`);
}
