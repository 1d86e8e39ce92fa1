import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { startBrowserHost } from "../../electron/browser/server.ts";
import { demoOrgansIn } from "../../electron/library/demo-organs.ts";
import { HostService } from "../../electron/service/host-service.ts";
import { DEMO_ORGANS } from "../../electron/service/project.ts";
import { builtScreens } from "./built-screens.ts";

/** The app as a person meets it: the built screens, served by the browser host, with a library of its own. */
export interface Served {
  readonly address: string;
  /** Files of the library, by their paths inside it, in order of name; what programs keep for themselves left out. */
  readonly files: () => readonly string[];
  readonly text: (file: string) => string;
  /** Another program writes a file. */
  readonly write: (file: string, text: string) => void;
  readonly stop: () => Promise<void>;
}

/** Starts the app with an empty library. */
export async function served(): Promise<Served> {
  const renderer = await builtScreens();
  const library = mkdtempSync(join(tmpdir(), "registrant-library-"));
  let opened: readonly { readonly id: string }[] = [];
  const service = new HostService({
    host: "browser",
    version: "0.0.0",
    library,
    demos: demoOrgansIn(DEMO_ORGANS),
    desk: null,
    onOrgan: (organ) => {
      opened = [organ, ...opened.filter(({ id }) => id !== organ.id)];
    },
    recent: () => opened,
    onDefect: (error) => console.error(error),
  });
  const host = await startBrowserHost({ service, renderer, grace: 3_600_000 });
  return {
    address: host.address,
    files: () =>
      readdirSync(library, { recursive: true, encoding: "utf8" })
        .filter((path) => path.endsWith(".yaml") && !path.split(/[\\/]/).some((part) => part.startsWith(".")))
        .map((path) => path.replaceAll("\\", "/"))
        .sort(),
    text: (file) => readFileSync(join(library, file), "utf8"),
    write: (file, text) => {
      mkdirSync(dirname(join(library, file)), { recursive: true });
      writeFileSync(join(library, file), text);
    },
    stop: async () => {
      host.stop();
      await host.stopped;
      rmSync(library, { recursive: true, force: true });
    },
  };
}
