import { existsSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { hasScreen, serveInBrowser } from "../browser-host.ts";
import { DEMO_ORGANS, PROJECT, RENDERER, VERSION } from "../service/project.ts";
import { Settings, settingsFile, usualLibrary } from "../service/settings.ts";
import { readOptions, type Usage } from "./options.ts";
import { DONE, line, Refusal, type Terminal } from "./terminal.ts";

/** How `open` is called. */
export const OPEN: Usage = {
  command: "open",
  line: "registrant open [--library FOLDER]",
  does: "Opens the app. Where no window can be opened, it prints the address for a browser and serves it until stopped.",
  options: { library: { value: "FOLDER" } },
  operands: [],
};

/** Whether the app's screens are built. */
export const isBuilt = (renderer: string = RENDERER): boolean => existsSync(join(renderer, "index.html"));

/** @throws Refusal when no folder is there. */
function folderGiven(path: string, terminal: Terminal): string {
  const folder = resolve(terminal.folder, path);
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return folder;
  throw new Refusal(`${path}: There is no such folder. Make it first, or name another.`);
}

/**
 * Opens the app and stays until it is closed.
 *
 * @throws Refusal for a library that is not there and for an app that is not built.
 */
export async function openCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const given = readOptions(OPEN, words);
  const named = given.value("library");
  const asked = named === undefined ? null : folderGiven(named, terminal);
  if (!isBuilt()) throw new Refusal(`The app is not built yet. Run "npm run build" in ${PROJECT}`);
  const settings = new Settings(settingsFile());
  await serveInBrowser({
    version: VERSION,
    library: asked ?? settings.now.library ?? usualLibrary(),
    demos: DEMO_ORGANS,
    renderer: RENDERER,
    screen: hasScreen(process.env, process.platform),
    say: (sentence) => terminal.stdout.write(line(sentence)),
    onDefect: (error) => terminal.stderr.write(line(String(error instanceof Error ? error.stack : error))),
  });
  return DONE;
}
