import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder of the program: the sources lie one level below it, the compiled files two or three. */
export const PROJECT: string = (() => {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "package.json")) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
})();

/** The program's own version. */
export const VERSION: string = (() => {
  try {
    return String(JSON.parse(readFileSync(join(PROJECT, "package.json"), "utf8")).version);
  } catch {
    return "unknown";
  }
})();

/** Where the renderer is built to. */
export const RENDERER: string = join(PROJECT, "dist", "renderer");
/** The demo organs of a program that is not packed. */
export const DEMO_ORGANS: string = join(PROJECT, "instruments");
