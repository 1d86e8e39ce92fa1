import open from "open";
import { startBrowserHost } from "./browser/server.ts";
import { demoOrgansIn } from "./library/demo-organs.ts";
import { HostService } from "./service/host-service.ts";
import type { Settings } from "./service/settings.ts";
import { STOP_SIGNS } from "./service/stop-signs.ts";

/** Milliseconds from the closing of the last window to the end: who loads the page anew is back by then. */
const GRACE = 10_000;

/** What the browser host is started with. */
export interface BrowserHostStart {
  readonly version: string;
  /** Absolute path of the library. */
  readonly library: string;
  /** Where the organs opened last are remembered. */
  readonly settings: Settings;
  /** Folder of the demo organs. */
  readonly demos: string;
  /** Folder of the built renderer. */
  readonly renderer: string;
  /** Whether there is a screen on which a browser can open. */
  readonly screen: boolean;
  readonly say: (sentence: string) => void;
  readonly onDefect: (error: unknown) => void;
  readonly grace?: number;
}

/**
 * Serves the app to the person's browser until its last window is closed or the process is told to stop.
 *
 * @throws an error of the system when no port can be had.
 */
export async function serveInBrowser(start: BrowserHostStart): Promise<void> {
  const { version, library, onDefect } = start;
  const demos = demoOrgansIn(start.demos);
  const service = new HostService({
    host: "browser",
    version,
    library,
    demos,
    desk: null,
    onOrgan: (organ) => start.settings.rememberOrgan(organ),
    recent: () => start.settings.now.recent,
    onDefect,
  });
  const host = await startBrowserHost({ service, renderer: start.renderer, grace: start.grace ?? GRACE });
  for (const sign of STOP_SIGNS) process.once(sign, host.stop);
  try {
    start.say(`Registrant is open at ${host.address}`);
    start.say("It ends when its window in the browser is closed, or with Ctrl-C. Keep the address to yourself.");
    // Looked through while the browser still opens, so that its first page need not wait. What cannot be read is told there.
    demos.list().catch(() => {});
    // What cannot be opened can still be typed.
    if (start.screen) await open(host.ticket()).catch(() => {});
    await host.stopped;
  } finally {
    for (const sign of STOP_SIGNS) process.off(sign, host.stop);
    await start.settings.settled();
  }
}

/** Whether this machine has a screen on which a window can open: not in a build machine, nor over a line without one. */
export function hasScreen(env: NodeJS.ProcessEnv, platform: string): boolean {
  if (env.CI !== undefined && env.CI !== "" && env.CI !== "false") return false;
  if (platform === "win32") return true;
  if (platform === "darwin") return env.SSH_CONNECTION === undefined;
  return [env.DISPLAY, env.WAYLAND_DISPLAY].some((display) => display !== undefined && display !== "");
}
