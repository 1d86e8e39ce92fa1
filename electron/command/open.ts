import { existsSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { hasScreen, serveInBrowser } from "../browser-host.ts";
import { DEMO_ORGANS, PROJECT, RENDERER, VERSION } from "../service/project.ts";
import { Settings, settingsFile, usualLibrary } from "../service/settings.ts";
import { buildScreens } from "./build-screens.ts";
import { fetchRuntime, runtimeIn, runWindow } from "./desktop-runtime.ts";
import { readOptions, type Usage } from "./options.ts";
import { DONE, line, Refusal, type Terminal } from "./terminal.ts";

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

/** What decides where the app opens. */
interface Circumstances {
  readonly settings: Settings;
  /** Somebody sits before this terminal. */
  readonly attended: boolean;
  /** The window was asked for by name. */
  readonly wanted: boolean;
  readonly say: (sentence: string) => void;
}

/** The window's program, fetched where that may be; `null`, with the reason said, where the browser must do. */
async function windowProgram({ settings, attended, wanted, say }: Circumstances): Promise<string | null> {
  if (process.getuid?.() === 0) {
    // The window's sandbox does not work for the system's own account.
    say("No window is opened for the system's own account (root), so the app opens in your browser.");
    return null;
  }
  const runtime = runtimeIn(PROJECT);
  if (runtime === null || runtime.program !== null) return runtime?.program ?? null;
  if (!wanted && (!attended || settings.now.notFetched === runtime.version)) {
    say(
      'The desktop window\'s program is not here, so the app opens in your browser; "registrant open --window" fetches it.',
    );
    return null;
  }
  say("Fetching the desktop window's program (Electron, about 110 MB, once). Ctrl-C stops it.");
  const fetched = (await fetchRuntime(PROJECT))?.program ?? null;
  settings.remember({ notFetched: fetched === null ? runtime.version : null });
  await settings.settled();
  if (fetched === null) say("The desktop window's program could not be fetched, so the app opens in your browser.");
  return fetched;
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
  if (screen && !given.has("browser")) {
    const attended = process.stdin.isTTY === true;
    const program = await windowProgram({ settings, attended, wanted: given.has("window"), say });
    const main = join(PROJECT, "dist", "electron", "main.js");
    if (program !== null) {
      const end = await runWindow(program, [main, ...(asked === null ? [] : ["--library", asked])]);
      if (end === "closed") return DONE;
      say("The desktop window could not be opened on this machine, so the app opens in your browser.");
    }
  }
  await serveInBrowser({
    version: VERSION,
    library: asked ?? settings.now.library ?? usualLibrary(),
    demos: DEMO_ORGANS,
    renderer: RENDERER,
    screen,
    say,
    onDefect: (error) => terminal.stderr.write(line(String(error instanceof Error ? error.stack : error))),
  });
  return DONE;
}
