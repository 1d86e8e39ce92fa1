import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { runInNewContext } from "node:vm";
import { build } from "vite";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { fetchRuntime, runtimeIn, runWindow } from "../../electron/command/desktop-runtime.ts";
import preloadSettings from "../../electron/vite.config.ts";
import { HOST_GLOBAL, HOST_METHODS } from "../../shared-model/host-api.ts";
import { until } from "./fixtures.ts";

let project = "";
const listening = process.listenerCount("SIGTERM");
beforeEach(() => {
  project = mkdtempSync(join(tmpdir(), "registrant-runtime-"));
});
afterEach(() => rmSync(project, { recursive: true, force: true }));

function put(path: string, text: string): string {
  const full = join(project, "node_modules/electron", path);
  mkdirSync(dirname(full), { recursive: true });
  writeFileSync(full, text);
  chmodSync(full, 0o755);
  return full;
}

describe("the window's program", () => {
  test("is found where its package has laid it", () => {
    expect(runtimeIn(project)).toBeNull();
    put("package.json", '{"version": "45.0.1"}');
    expect(runtimeIn(project)).toEqual({ program: null, version: "45.0.1" });
    put("path.txt", "electron");
    expect(runtimeIn(project)).toEqual({ program: null, version: "45.0.1" });
    const program = put("dist/electron", "#!/bin/sh\n");
    expect(runtimeIn(project)).toEqual({ program, version: "45.0.1" });
  });

  test("is fetched by its package's own script, or not", async () => {
    put("package.json", '{"version": "45.0.1"}');
    put("install.js", "process.exit(1);\n");
    expect(await fetchRuntime(project)).toEqual({ program: null, version: "45.0.1" });
    put(
      "install.js",
      `const { mkdirSync, writeFileSync } = require("node:fs");
       mkdirSync(__dirname + "/dist", { recursive: true });
       writeFileSync(__dirname + "/dist/electron", "");
       writeFileSync(__dirname + "/path.txt", "electron");\n`,
    );
    expect((await fetchRuntime(project))?.program).toBe(join(project, "node_modules/electron/dist/electron"));
  });

  test("tells whether a window was open", async () => {
    const [good, bad] = [put("good", '#!/bin/sh\n[ "$1" = main.js ]\n'), put("bad", "#!/bin/sh\nexit 1\n")];
    expect(await runWindow(good, ["main.js"])).toBe("closed");
    expect(await runWindow(bad, ["main.js"])).toBe("not-opened");
    expect(await runWindow(join(project, "nothing"), [])).toBe("not-opened");
  });

  test("a stop is handed on to the window, and is no failure", async () => {
    const started = join(project, "started");
    const window = put("window", `#!/bin/sh\ntrap 'exit 1' TERM\ntouch ${started}\nwhile :; do sleep 0.05; done\n`);
    const end = runWindow(window, []);
    await until("the window runs", () => existsSync(started));
    process.emit("SIGTERM");
    expect(await end).toBe("closed");
    expect(process.listenerCount("SIGTERM")).toBe(listening);
  });
});

test("the preload script is one file that a sandbox can load: it asks for electron and nothing else", async () => {
  await build({
    ...preloadSettings,
    configFile: false,
    build: { ...preloadSettings.build, outDir: project },
  });
  const text = readFileSync(join(project, "preload.cjs"), "utf8");
  expect(Buffer.byteLength(text)).toBeLessThan(10_000);
  const asked: string[] = [];
  const exposed: Record<string, object> = {};
  const electron = {
    contextBridge: {
      exposeInMainWorld: (name: string, value: object) => {
        exposed[name] = value;
      },
    },
    ipcRenderer: {},
  };
  const need = (name: string): object => {
    asked.push(name);
    return electron;
  };
  runInNewContext(text, { require: need, module: { exports: {} }, exports: {} });
  expect([asked, Object.keys(exposed)]).toEqual([["electron"], [HOST_GLOBAL]]);
  expect(Object.keys(exposed[HOST_GLOBAL] ?? {}).sort()).toEqual([...HOST_METHODS, "watch", "onMenu"].sort());
});
