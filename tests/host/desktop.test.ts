import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { BrowserWindow } from "electron";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { APP_PAGE, isAppPage } from "../../electron/desktop/app-address.ts";
import { WindowBridge } from "../../electron/desktop/bridge.ts";
import { bridgedHost } from "../../electron/desktop/bridged-host.ts";
import { ASK } from "../../electron/desktop/channels.ts";
import { startDesktop } from "../../electron/desktop/desktop.ts";
import { placeOn } from "../../electron/desktop/window-place.ts";
import { demoOrgansIn } from "../../electron/library/demo-organs.ts";
import { HostService } from "../../electron/service/host-service.ts";
import { Settings } from "../../electron/service/settings.ts";
import { HOST_GLOBAL, HOST_METHODS, type Host, MENU_COMMANDS } from "../../shared-model/host-api.ts";
import { hostContract } from "./contract.ts";
import { electron, type FakeBrowserWindow, type FakeMenuItem, fake } from "./fake-electron.ts";
import { DEMOS, Machine, organText, until } from "./fixtures.ts";

vi.mock("electron", async () => (await import("./fake-electron.ts")).electron);

const hostOf = (window: FakeBrowserWindow): Host => {
  const ipc = fake.rendererOf(window);
  return bridgedHost({
    invoke: ipc.invoke,
    listen: (channel, listener) => {
      const heard = (_event: unknown, ...words: unknown[]): void => listener(...words);
      ipc.on(channel, heard);
      return () => ipc.off(channel, heard);
    },
  });
};

const firstWindow = (): FakeBrowserWindow => fake.windows[0] as FakeBrowserWindow;

async function start(machine: Machine, library: string | null = machine.library): Promise<FakeBrowserWindow> {
  startDesktop({
    version: "1.2.3",
    settings: join(machine.folder, "config/settings.json"),
    library,
    usualLibrary: machine.library,
    demos: DEMOS,
    renderer: machine.renderer,
    preload: "/program/preload.cjs",
  });
  await until("the window is open", () => fake.windows.length > 0);
  return firstWindow();
}

async function end(): Promise<void> {
  for (const window of fake.windows) if (!window.destroyed) window.close();
  const quits = fake.app.quits;
  fake.app.emit("will-quit", { preventDefault: () => {} });
  await until("the program ends", () => fake.app.quits > quits);
  fake.reset();
}

hostContract("desktop", async (machine) => {
  const settings = new Settings(join(machine.folder, "settings.json"));
  const service = new HostService({
    host: "desktop",
    version: "1.2.3",
    library: machine.library,
    demos: demoOrgansIn(DEMOS),
    desk: null,
    onOrgan: (organ) => settings.rememberOrgan(organ),
    recent: () => settings.now.recent,
  });
  const bridge = new WindowBridge(service);
  const open = async (): Promise<Host> => {
    const window = new electron.BrowserWindow({ webPreferences: {} });
    bridge.admit(window as unknown as BrowserWindow);
    await window.loadURL(APP_PAGE);
    return hostOf(window);
  };
  const [first, second] = [await open(), await open()];
  return {
    first,
    second,
    close: async () => {
      for (const window of fake.windows) window.close();
      bridge.close();
      service.close();
      fake.reset();
    },
  };
});

describe("the desktop shell", () => {
  let machine: Machine;
  let window: FakeBrowserWindow;
  let host: Host;

  beforeEach(async () => {
    machine = new Machine();
    window = await start(machine);
    host = hostOf(window);
  });
  afterEach(async () => {
    await end();
    machine.clear();
  });

  const settings = (): Record<string, unknown> =>
    JSON.parse(readFileSync(join(machine.folder, "config/settings.json"), "utf8"));

  test("shuts the page in a sandbox without Node", () => {
    expect(fake.app.sandboxed).toBe(true);
    expect(window.options.webPreferences).toEqual({
      preload: "/program/preload.cjs",
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: true,
    });
    expect(window.webContents.mainFrame.url).toBe("registrant://app/");
    expect(window.shown).toBe(true);
  });

  test("has no tools for developers once it is packed", async () => {
    await end();
    fake.app.isPackaged = true;
    window = await start(machine);
    expect(window.options.webPreferences.devTools).toBe(false);
  });

  test("its scheme is an origin, and nothing more", () => {
    expect(fake.shown.schemes).toEqual([
      { scheme: "registrant", privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
    ]);
  });

  test("gives the page its files under the strict policy, and nothing beside them", async () => {
    const handle = fake.session.protocols.get("registrant");
    const ask = async (url: string, method = "GET") => handle?.({ url, method });
    const page = await ask("registrant://app/");
    expect(page?.status).toBe(200);
    const policy = page?.headers.get("content-security-policy") ?? "";
    expect(policy).toMatch(/^default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self';/);
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    expect(page?.headers.get("x-content-type-options")).toBe("nosniff");
    expect(await (await ask("registrant://app/assets/app.js?v=1"))?.text()).toContain("ready");
    for (const url of [
      "registrant://app/../secret.txt",
      "registrant://app/..%2fsecret.txt",
      "registrant://app/assets/%2e%2e/%2e%2e/secret.txt",
      "registrant://other/index.html",
      "registrant://app.example/index.html",
      "registrant://app:1/index.html",
      "registrant:///index.html",
      "file:///etc/passwd",
    ]) {
      expect([url, (await ask(url))?.status]).toEqual([url, 404]);
    }
    expect((await ask("registrant://app/", "POST"))?.status).toBe(404);
  });

  test("loads nothing from anywhere else", () => {
    const cancelled = (url: string): boolean | null => {
      let cancel: boolean | null = null;
      fake.session.beforeRequest?.({ url }, (result) => {
        cancel = result.cancel;
      });
      return cancel;
    };
    for (const url of [
      "registrant://app/assets/app.js",
      "blob:registrant://app/1",
      "data:image/png;base64,",
      "devtools://x",
    ]) {
      expect([url, cancelled(url)]).toEqual([url, false]);
    }
    for (const url of [
      "https://organ.example/",
      "http://127.0.0.1:80/",
      "file:///etc/passwd",
      "ws://x",
      "registrant://b/",
    ]) {
      expect([url, cancelled(url)]).toEqual([url, true]);
    }
  });

  test.each(["will-navigate", "will-frame-navigate", "will-redirect", "will-attach-webview"])(
    "%s is prevented",
    (event) => {
      for (const url of [
        "https://organ.example/",
        "file:///etc/passwd",
        "registrant://app/other.html",
        "data:text/html,x",
      ]) {
        let prevented = false;
        const preventDefault = (): void => {
          prevented = true;
        };
        window.webContents.emit(event, { url, isMainFrame: true, preventDefault });
        expect([event, url, prevented]).toEqual([event, url, true]);
      }
    },
  );

  test("frames may not even go to the app's own page, and other windows are confined too", () => {
    let prevented = 0;
    const preventDefault = (): void => {
      prevented += 1;
    };
    window.webContents.emit("will-frame-navigate", { url: "registrant://app/", isMainFrame: false, preventDefault });
    expect(prevented).toBe(1);
    window.webContents.emit("will-navigate", { url: "registrant://app/#organ", isMainFrame: true, preventDefault });
    expect(prevented).toBe(1);
    const other = new electron.BrowserWindow({ webPreferences: {} });
    other.webContents.emit("will-navigate", { url: "https://organ.example/", preventDefault });
    expect(prevented).toBe(2);
    expect(other.webContents.openHandler?.({ url: "registrant://app/" })).toEqual({ action: "deny" });
  });

  test("new windows, permissions, devices, recordings and downloads are denied", () => {
    expect(window.webContents.openHandler?.({ url: "https://organ.example/" })).toEqual({ action: "deny" });
    for (const permission of [
      "media",
      "geolocation",
      "notifications",
      "midi",
      "openExternal",
      "clipboard-read",
      "usb",
    ]) {
      const granted: boolean[] = [];
      fake.session.permissionRequest?.(window.webContents, permission, (given) => granted.push(given));
      expect([permission, granted, fake.session.permissionCheck?.(null, permission)]).toEqual([
        permission,
        [false],
        false,
      ]);
    }
    expect(fake.session.device?.({})).toBe(false);
    const streams: unknown[] = [];
    fake.session.media?.({}, (given) => streams.push(given));
    expect(streams).toEqual([null]);
    let prevented = false;
    fake.session.events.emit("will-download", {
      preventDefault: () => {
        prevented = true;
      },
    });
    expect(prevented).toBe(true);
  });

  test("answers its own page only", async () => {
    const own = window.webContents;
    const ask = (sender: unknown, frame: unknown): Promise<unknown> => fake.invokeAs(sender, frame, ASK, "facts", []);
    expect(await ask(own, own.mainFrame)).toMatchObject({ ok: true });
    const stranger = new electron.BrowserWindow({ webPreferences: {} }).webContents;
    stranger.mainFrame.url = "registrant://app/";
    for (const [sender, frame] of [
      [stranger, stranger.mainFrame],
      [own, null],
      [own, { url: "registrant://app/", parent: null, frameTreeNodeId: 0 }],
      [own, { ...own.mainFrame, parent: own.mainFrame }],
      [own, stranger.mainFrame],
    ]) {
      expect(await ask(sender, frame)).toMatchObject({ ok: false, trouble: { trouble: "not-allowed" } });
    }
    own.mainFrame.url = "https://organ.example/";
    expect(await ask(own, own.mainFrame)).toMatchObject({ ok: false, trouble: { trouble: "not-allowed" } });
  });

  test("checks what is sent before it is looked at", async () => {
    const own = window.webContents;
    for (const words of [
      ["read", ["library:x.yaml", "more"]],
      ["read", { 0: "library:x.yaml", length: 1 }],
      ["constructor", []],
      [["read"], ["library:x.yaml"]],
      [],
      ["exportFile", [{ name: "../x.pdf", bytes: new Uint8Array(1) }]],
      ["exportFile", [{ name: "x.desktop", bytes: new Uint8Array(1) }]],
      ["exportFile", [{ name: "x.pdf", bytes: "text" }]],
      ["showPdf", [{ name: "x.pdf", bytes: new TextEncoder().encode("#!/bin/sh") }]],
      ["showPdf", [{ name: "x.txt", bytes: new TextEncoder().encode("%PDF-1.7") }]],
    ]) {
      expect(await fake.invokeAs(own, own.mainFrame, ASK, ...words)).toMatchObject({ ok: false });
    }
    expect(fake.answers.opened).toEqual([]);
  });

  test("asks for a text, a place to save and a library, and knows that people think better of it", async () => {
    expect([await host.chooseText(), await host.chooseLibrary()]).toEqual([null, null]);
    const pdf = { name: "Karte.pdf", bytes: new TextEncoder().encode("%PDF-1.7") };
    expect(await host.exportFile(pdf)).toBeNull();

    fake.answers.file = machine.put("list.txt", Buffer.from("Fl\u00f6te 8", "latin1"));
    expect(await host.chooseText()).toEqual({ name: "list.txt", text: "Flöte 8" });
    fake.answers.file = machine.put("picture.txt", new Uint8Array([1, 2, 3]));
    await expect(host.chooseText()).rejects.toMatchObject({ trouble: "not-text" });
    fake.answers.file = machine.put("long.txt", Buffer.alloc(5_000_001, "x"));
    await expect(host.chooseText()).rejects.toMatchObject({ trouble: "too-large" });

    fake.answers.saveAs = join(machine.folder, "out.pdf");
    expect(await host.exportFile(pdf)).toEqual({ where: fake.answers.saveAs });
    expect(readFileSync(fake.answers.saveAs, "utf8")).toBe("%PDF-1.7");
    fake.answers.saveAs = join(machine.folder, "nowhere/out.pdf");
    await expect(host.exportFile(pdf)).rejects.toMatchObject({ trouble: "gone" });

    const other = join(machine.folder, "other");
    mkdirSync(join(other, "organs"), { recursive: true });
    fake.answers.folder = other;
    const told: unknown[] = [];
    host.watch((changes) => told.push(...changes));
    expect(await host.chooseLibrary()).toMatchObject({ library: other });
    await host.list();
    writeFileSync(join(other, "organs/x.yaml"), organText("x"));
    await until("changes in the new library are told", () => told.length > 0);
    expect(told).toEqual([{ id: "library:organs/x.yaml", what: "added" }]);
    await until("the library is remembered", () => existsSync(join(machine.folder, "config/settings.json")));
    await until("the library is remembered", () => settings().library === other);
  });

  test("shows a PDF from a folder that only this person can read, and takes it away at the end", async () => {
    const pdf = { name: "Karte.pdf", bytes: new TextEncoder().encode("%PDF-1.7") };
    await host.showPdf(pdf);
    const [path = ""] = fake.answers.opened;
    expect([readFileSync(path, "utf8"), statSync(dirname(path)).mode & 0o777]).toEqual(["%PDF-1.7", 0o700]);
    fake.answers.openRefuses = "no application";
    await expect(host.showPdf(pdf)).rejects.toMatchObject({ trouble: "failed", words: /Save the file/ });
    await end();
    expect(existsSync(dirname(path))).toBe(false);
    window = await start(machine);
  });

  test("remembers where the window was and which organs were opened", async () => {
    await host.opened("demo:sallowby.yaml");
    await host.opened("demo:wiekenborg.yaml");
    await host.opened("demo:sallowby.yaml");
    // Looking at an organ is not opening it, and only organs are listed.
    await host.read("demo:zinnrode.yaml");
    await host.opened((await host.create({ kind: "piece", name: "x", text: "registrant: piece/1" })).id);
    await expect(host.opened("demo:nowhere.yaml")).rejects.toMatchObject({ trouble: "gone" });
    window.bounds = { x: 300, y: 200, width: 800, height: 600 };
    window.maximised = true;
    await end();
    expect(settings()).toMatchObject({
      window: { x: 300, y: 200, width: 800, height: 600, maximised: true },
      recent: [
        { id: "demo:sallowby.yaml", name: "All Saints, Sallowby" },
        { id: "demo:wiekenborg.yaml", name: expect.any(String) },
      ],
    });
    window = await start(machine);
    expect(window.options).toMatchObject({ x: 300, y: 200, width: 800, height: 600 });
    expect(window.maximised).toBe(true);
  });

  test.each(["{", "[]", "7", '{"window": {"x": "left"}, "recent": [7], "library": ""}', "\u0000"])(
    "starts as usual with settings that cannot be read: %j",
    async (text) => {
      await end();
      machine.put("config/settings.json", text);
      window = await start(machine, null);
      expect(window.options).toMatchObject({ width: 1280, height: 860 });
      expect(await hostOf(window).facts()).toMatchObject({ library: machine.library });
    },
  );

  test("says so when it cannot start", async () => {
    await end();
    startDesktop({ demos: "/nowhere", settings: join(machine.folder, "config/settings.json") } as never);
    await until("the program gives up", () => fake.answers.errors.length > 0);
    expect(fake.answers.errors).toEqual([
      expect.stringContaining("Install it again; your organs stay where they are."),
    ]);
    expect(fake.app.status).toBe(1);
    fake.reset();
    window = await start(machine);
  });

  test("a second start shows the window that is there", async () => {
    let focused = false;
    window.focus = () => {
      focused = true;
    };
    fake.app.emit("second-instance");
    expect(focused).toBe(true);
    await end();
    fake.app.lock = false;
    const quits = fake.app.quits;
    startDesktop({} as never);
    expect([fake.app.quits, fake.windows.length]).toEqual([quits + 1, 0]);
    fake.app.lock = true;
    window = await start(machine);
  });

  test("every command of the menu reaches the page", async () => {
    await host.opened("demo:sallowby.yaml");
    const heard: unknown[] = [];
    const stop = host.onMenu((command, document) => heard.push([command, document]));
    const items = (menu: readonly FakeMenuItem[]): readonly FakeMenuItem[] =>
      menu.flatMap((item) => [item, ...items(item.submenu ?? [])]);
    const all = items(fake.shown.menu);
    for (const item of all) if (item.label !== "Forget these") item.click?.();
    for (const command of MENU_COMMANDS) {
      const document = command === "open-document" ? "demo:sallowby.yaml" : null;
      expect(heard).toContainEqual([command, document]);
    }
    const keys = all.map(({ accelerator }) => accelerator).filter((key) => key !== undefined);
    expect(new Set(keys).size).toBe(keys.length);
    all.find(({ label }) => label === "Forget these")?.click?.();
    expect(items(fake.shown.menu).map(({ label }) => label)).not.toContain("All Saints, Sallowby");
    const before = heard.length;
    stop();
    all.find(({ label }) => label === "Undo")?.click?.();
    expect(heard.length).toBe(before);
  });

  test("the preload script hands the page the host, and not a word more", async () => {
    fake.preloadFor(window);
    await import("../../electron/preload.ts");
    expect(Object.keys(fake.exposed)).toEqual([HOST_GLOBAL]);
    const exposed = fake.exposed[HOST_GLOBAL] as Host;
    expect(Object.keys(exposed).sort()).toEqual([...HOST_METHODS, "watch", "onMenu"].sort());
    expect(await exposed.facts()).toMatchObject({ host: "desktop" });
    const heard: unknown[][] = [];
    const stop = exposed.onMenu((...words) => heard.push(words));
    window.webContents.send("registrant:menu", "find", null);
    stop();
    window.webContents.send("registrant:menu", "find", null);
    // Not the event, which would hold the sender.
    expect(heard).toEqual([["find", null]]);
  });
});

describe("the app's own page", () => {
  test.each([
    ["registrant://app/", true],
    ["registrant://app/#/organ", true],
    ["registrant://app/index.html?x", true],
    ["registrant://app/assets/app.js", false],
    ["registrant://app", false],
    ["registrant://app@evil/", false],
    ["registrant://apple/", false],
    ["https://app/", false],
    ["", false],
  ])("%s: %s", (address, own) => expect(isAppPage(address)).toBe(own));
});

describe("where the window opens", () => {
  const [main, side] = [
    { x: 0, y: 0, width: 1920, height: 1040 },
    { x: 1920, y: 0, width: 1280, height: 1000 },
  ];
  const last = { x: 2000, y: 100, width: 1000, height: 700, maximised: false };
  test.each([
    ["first", [main], null, { x: 320, y: 90, width: 1280, height: 860, maximised: false }],
    ["where it was", [main, side], last, last],
    ["its screen is gone", [main], last, { x: 460, y: 170, width: 1000, height: 700, maximised: false }],
    ["its screen is smaller now", [{ ...side, height: 600 }], last, { ...last, height: 600 }],
    [
      "its title is above the screen",
      [main],
      { ...last, x: 0, y: -60 },
      { x: 460, y: 170, width: 1000, height: 700, maximised: false },
    ],
    [
      "only a corner shows",
      [main],
      { ...last, x: 1900 },
      { x: 460, y: 170, width: 1000, height: 700, maximised: false },
    ],
    ["no screen is known", [], null, { x: 0, y: 0, width: 1280, height: 860, maximised: false }],
  ])("%s", (_case, screens, place, expected) => expect(placeOn(screens, place)).toEqual(expected));
});
