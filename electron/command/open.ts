import { existsSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { hasScreen, serveInBrowser } from "../browser-host.ts";
import { DEMO_ORGANS, PROJECT, RENDERER, VERSION } from "../service/project.ts";
import { Settings, settingsFile, usualLibrary } from "../service/settings.ts";
import { buildScreens } from "./build-screens.ts";
import { fetchRuntime, runtimeIn, runWindow } from "./desktop-runtime.ts";
import { readOptions, type Usage } from "./options.ts";
import { DONE, line, Refusal, type Terminal } from "./terminal.ts";
import { wayToOpen } from "./way-to-open.ts";

/** How `open` is called. */
export const OPEN: Usage = {
  command: "open",
  line: "registrant open [--library FOLDER] [--browser | --window]",
  does: "Opens the app: in a window of its own, or in your browser. Without a screen it prints the address and serves it until stopped.",
  options: { library: { value: "FOLDER" }, browser: "flag", window: "flag" },
  operands: [],
};

/** @throws Refusal when the screens are not built and cannot be. */
function mustBeBuilt(terminal: Terminal): void {
  const isBuilt = (): boolean => existsSync(join(RENDERER, "index.html"));
  if (isBuilt()) return;
  terminal.stderr.write(line("registrant: the screens are not built yet; building once ..."));
  const trouble = buildScreens(PROJECT);
  if (trouble === null && isBuilt()) return;
  if (trouble) terminal.stderr.write(trouble);
  throw new Refusal(`The screens cannot be built here; run "npm ci" and then "npm run build" in ${PROJECT}`);
}

/** @throws Refusal when no folder is there. */
function folderGiven(path: string, terminal: Terminal): string {
  const folder = resolve(terminal.folder, path);
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return folder;
  throw new Refusal(`${path}: There is no such folder. Make it first, or name another.`);
}

/** Fetches the window's program; `null` where the browser must do. */
async function fetchedProgram(
  version: string,
  settings: Settings,
  say: (words: string) => void,
): Promise<string | null> {
  say("Fetching the desktop window's program (Electron, about 110 MB, once). Ctrl-C opens the browser instead.");
  const program = (await fetchRuntime(PROJECT))?.program ?? null;
  settings.remember({ notFetched: program === null ? version : null });
  await settings.settled();
  if (program === null) say("The desktop window's program was not fetched, so the app opens in your browser.");
  return program;
}

/**
 * Opens the app and stays until it is closed.
 *
 * @throws Refusal for a library that is not there and for screens that cannot be built.
 */
export async function openCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const given = readOptions(OPEN, words);
  const named = given.value("library");
  const asked = named === undefined ? null : folderGiven(named, terminal);
  mustBeBuilt(terminal);
  const settings = new Settings(settingsFile());
  const screen = hasScreen(process.env, process.platform);
  const say = (sentence: string): void => void terminal.stdout.write(line(sentence));
  const way = wayToOpen({
    screen,
    browser: given.has("browser"),
    window: given.has("window"),
    root: process.getuid?.() === 0,
    attended: process.stdin.isTTY === true,
    runtime: runtimeIn(PROJECT),
    notFetched: settings.now.notFetched,
  });
  if (way.to === "browser" && way.because !== null) say(way.because);
  const program =
    way.to === "window" ? way.program : way.to === "fetch" ? await fetchedProgram(way.version, settings, say) : null;
  if (program !== null) {
    const main = join(PROJECT, "dist", "electron", "main.js");
    const end = await runWindow(program, [main, ...(asked === null ? [] : ["--library", asked])]);
    if (end === "closed") return DONE;
    say("The desktop window could not be opened on this machine, so the app opens in your browser.");
  }
  await serveInBrowser({
    version: VERSION,
    library: asked ?? settings.now.library ?? usualLibrary(),
    settings,
    demos: DEMO_ORGANS,
    renderer: RENDERER,
    screen,
    say,
    onDefect: (error) => terminal.stderr.write(line(String(error instanceof Error ? error.stack : error))),
  });
  return DONE;
}
