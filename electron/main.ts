import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { demoFolder, startDesktop } from "./desktop/desktop.ts";
import { DEMO_ORGANS, RENDERER, VERSION } from "./service/project.ts";
import { settingsFile, usualLibrary } from "./service/settings.ts";

// Electron puts words of its own among those of the command line.
const { values } = parseArgs({ options: { library: { type: "string" } }, strict: false, args: process.argv.slice(1) });

startDesktop({
  version: VERSION,
  settings: settingsFile(),
  library: typeof values.library === "string" ? resolve(values.library) : null,
  usualLibrary: usualLibrary(),
  demos: demoFolder(DEMO_ORGANS),
  renderer: RENDERER,
  preload: fileURLToPath(new URL("preload.cjs", import.meta.url)),
});
