import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { hasScreen } from "../../electron/browser-host.ts";
import { type Circumstances, wayToOpen } from "../../electron/command/way-to-open.ts";
import { ROOT } from "../house/source-files.ts";
import { until } from "./fixtures.ts";

/** A copy of the program, built, with a small page in the place of its screens. */
let home = "";
const page = (): string => join(home, "dist/renderer/index.html");

beforeAll(() => {
  home = mkdtempSync(join(tmpdir(), "registrant-open-"));
  for (const path of ["electron", "shared-model", "instruments", "package.json", "tsconfig.json"]) {
    cpSync(join(ROOT, path), join(home, path), { recursive: true });
  }
  symlinkSync(join(ROOT, "node_modules"), join(home, "node_modules"));
  mkdirSync(join(home, "library"));
  expect(spawnSync(join(home, "electron/registrant"), ["--version"], { encoding: "utf8" }).stdout).toMatch(/^\d/);
}, 60_000);

afterAll(() => rmSync(home, { recursive: true, force: true }));

/** Surroundings of a machine without a screen, with a home of its own. */
const bare = (): NodeJS.ProcessEnv => {
  const { DISPLAY: _display, WAYLAND_DISPLAY: _wayland, ...env } = process.env;
  return { ...env, HOME: home, XDG_CONFIG_HOME: join(home, "config"), CI: "true" };
};

interface Started {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly err: () => string;
  readonly ended: Promise<number | null>;
}

function start(...words: string[]): Started {
  const child = spawn(join(home, "electron/registrant"), words, {
    cwd: home,
    env: bare(),
    stdio: ["ignore", "pipe", "pipe"],
  });
  let [out, err] = ["", ""];
  child.stdout?.on("data", (part) => {
    out += String(part);
  });
  child.stderr?.on("data", (part) => {
    err += String(part);
  });
  const ended = new Promise<number | null>((done) => child.on("close", done));
  return { child, out: () => out, err: () => err, ended };
}

const addressIn = (text: string): string => /http:\/\/127\.0\.0\.1:\d+\/[\w-]+\//.exec(text)?.[0] ?? "";

describe("registrant open", () => {
  test("says what to do where the screens are not built and cannot be", () => {
    const run = spawnSync(join(home, "electron/registrant"), ["open"], { encoding: "utf8", cwd: home, env: bare() });
    expect([run.status, run.stdout, run.stderr]).toEqual([
      2,
      "",
      "registrant: the screens are not built yet; building once ...\n" +
        `The screens cannot be built here; run "npm ci" and then "npm run build" in ${home}\n`,
    ]);
  });

  test.each([[[]], [["open"]], [["open", "--library", "library"]]])(
    "without a screen and a terminal it prints the address and serves until stopped: %j",
    async (words) => {
      mkdirSync(join(home, "dist/renderer"), { recursive: true });
      writeFileSync(page(), "<!doctype html><title>Registrant</title>");
      const { child, out, err, ended } = start(...words);
      await until("the address is printed", () => out().includes("Ctrl-C"));
      const address = addressIn(out());
      expect(await (await fetch(address)).text()).toBe("<!doctype html><title>Registrant</title>");
      const answer = await fetch(new URL("ask/facts", address), {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: "[]",
      });
      expect(await answer.json()).toMatchObject({
        ok: true,
        value: { host: "browser", library: join(home, words.length > 1 ? "library" : "Registrant") },
      });
      child.kill("SIGINT");
      expect([await ended, err()]).toEqual([0, ""]);
      await expect(fetch(address)).rejects.toThrow();
      // Looking makes no folder: only the first document does.
      expect(existsSync(join(home, "Registrant"))).toBe(false);
    },
  );

  test("refuses a library that is not there", () => {
    const run = spawnSync(join(home, "electron/registrant"), ["open", "--library", "nowhere"], {
      encoding: "utf8",
      cwd: home,
      env: bare(),
    });
    expect([run.status, run.stderr]).toEqual([
      2,
      "nowhere: There is no such folder. Make it first, or name another.\n",
    ]);
  });
});

describe("where the app opens", () => {
  const program = { program: "/electron", version: "45.1.0" };
  const package_ = { program: null, version: "45.1.0" };
  const usual: Circumstances = {
    screen: true,
    browser: false,
    window: false,
    root: false,
    attended: true,
    runtime: program,
    notFetched: null,
  };
  test.each<[string, Partial<Circumstances>, string, RegExp | null]>([
    ["usually in its window", {}, "window", null],
    ["without a screen", { screen: false }, "browser", null],
    ["without a screen, though a window is asked for", { screen: false, window: true }, "browser", /no screen/],
    ["where the browser is asked for", { browser: true }, "browser", null],
    ["for the system's own account", { root: true }, "browser", /root/],
    ["where the window is not installed", { runtime: null }, "browser", /not installed/],
    ["at the first start", { runtime: package_ }, "fetch", null],
    ["with nobody there", { runtime: package_, attended: false }, "browser", /--window/],
    ["after it could not be fetched", { runtime: package_, notFetched: "45.1.0" }, "browser", /--window/],
    ["after another could not be fetched", { runtime: package_, notFetched: "45.0.0" }, "fetch", null],
    ["where the window is asked for", { runtime: package_, notFetched: "45.1.0", window: true }, "fetch", null],
    ["with nobody there and the program there", { attended: false }, "window", null],
  ])("%s", (_case, change, to, because) => {
    const way = wayToOpen({ ...usual, ...change });
    expect(way.to).toBe(to);
    const said = way.to === "browser" ? way.because : null;
    if (because === null) expect(said).toBeNull();
    else expect(said).toMatch(because);
  });
});

describe("where a window can open", () => {
  test.each([
    ["linux", {}, false],
    ["linux", { DISPLAY: ":0" }, true],
    ["linux", { WAYLAND_DISPLAY: "wayland-0" }, true],
    ["linux", { DISPLAY: "" }, false],
    ["linux", { DISPLAY: ":0", CI: "true" }, false],
    ["darwin", {}, true],
    ["darwin", { SSH_CONNECTION: "192.0.2.1 1 192.0.2.2 22" }, false],
    ["win32", {}, true],
    ["win32", { CI: "1" }, false],
  ])("%s %j: %s", (platform, env, screen) => {
    expect(hasScreen(env, platform)).toBe(screen);
  });
});
