import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { type BrowserHost, startBrowserHost } from "../../electron/browser/server.ts";
import { demoOrgansIn } from "../../electron/library/demo-organs.ts";
import { HostService } from "../../electron/service/host-service.ts";
import { DEMOS, Machine, until } from "../host/fixtures.ts";
import { ROOT } from "../house/source-files.ts";
import { sharedChromium } from "./chromium.ts";

/** What a real browser makes of the browser host: its policy, its end, and pages of other sites that would like a look. */

let browser: Browser;
beforeAll(async () => {
  browser = await sharedChromium();
}, 120_000);

let machine: Machine;
let host: BrowserHost;
let ended = false;

const start = async (grace: number): Promise<void> => {
  const demos = demoOrgansIn(DEMOS);
  const service = new HostService({ host: "browser", version: "1.2.3", library: machine.library, demos, desk: null });
  host = await startBrowserHost({ service, renderer: machine.renderer, grace });
  ended = false;
  void host.stopped.then(() => {
    ended = true;
  });
};

beforeEach(() => {
  machine = new Machine();
  machine.put(
    "renderer/index.html",
    '<!doctype html><title>Registrant</title><link rel="icon" href="data:,"><script type="module" src="./page.js"></script>',
  );
  machine.put(
    "renderer/page.js",
    // What is evaluated from outside may do more than the page itself, so the page tries by itself.
    `try {
       new Function("return 1")();
       document.documentElement.lang = "run";
     } catch {
       document.documentElement.lang = "refused";
     }
     const line = await fetch(new URL("changes?window=a", location.href));
     document.title = line.ok ? "listening" : "refused";`,
  );
});
afterEach(async () => {
  for (const context of browser.contexts()) await context.close();
  host.stop();
  await host.stopped;
  machine.clear();
});

async function visit(address: string): Promise<{ page: Page; said: string[] }> {
  const page = await (await browser.newContext()).newPage();
  const said: string[] = [];
  page.on("console", (message) => said.push(message.text()));
  await page.goto(address);
  return { page, said };
}

const listening = (page: Page): Promise<unknown> => page.waitForFunction(() => document.title === "listening");

describe("a page of the browser host", () => {
  test("opens by an address that works once, and loads its own files", async () => {
    await start(60_000);
    const { page, said } = await visit(host.ticket());
    await listening(page);
    expect(page.url()).toBe(host.address);
    expect(said).toEqual([]);
  });

  test("runs no code but its own, and reaches nothing else", async () => {
    await start(60_000);
    const { page, said } = await visit(host.address);
    await listening(page);
    const reached = await page.evaluate(async () => {
      const script = document.createElement("script");
      script.textContent = "document.title = 'inline'";
      document.head.append(script);
      document.body.innerHTML = '<img src="https://organ.example/x.png" onerror="document.title = `handler`">';
      const frame = document.createElement("iframe");
      frame.src = "data:text/html,x";
      document.body.append(frame);
      const far = await fetch("http://127.0.0.1:9/").then(
        () => "reached",
        () => "refused",
      );
      return [far, document.documentElement.lang, document.title];
    });
    expect(reached).toEqual(["refused", "refused", "listening"]);
    for (const what of [/inline script/, /Loading the image/, /Connecting to/, /Framing/, /inline event handler/]) {
      await until(`the policy speaks of ${what}: ${said.join()}`, () => said.some((line) => what.test(line)));
    }
  });

  test("the host ends with its last window, not when it is loaded anew", async () => {
    await start(1_500);
    const { page } = await visit(host.address);
    await listening(page);
    await page.reload();
    await listening(page);
    await page.waitForTimeout(2_500);
    expect(ended).toBe(false);
    await page.close();
    await until("the host ends", () => ended);
  });
});

describe("the screens' own client, in a page", () => {
  beforeEach(async () => {
    const { build } = await import("vite");
    await build({
      configFile: false,
      logLevel: "silent",
      build: {
        lib: { entry: join(ROOT, "renderer/host/find-host.ts"), formats: ["es"], fileName: () => "host.js" },
        outDir: machine.renderer,
        emptyOutDir: false,
      },
    });
    machine.put(
      "renderer/page.js",
      `import { findHost } from "./host.js";
       const host = findHost();
       const bytes = new TextEncoder().encode("%PDF-1.4\\n%%EOF");
       const button = (id, act) => {
         const made = document.createElement("button");
         made.id = id;
         made.onclick = () => act().then((done) => { document.title = id + " " + JSON.stringify(done ?? null); },
           (trouble) => { document.title = id + " " + trouble.words; });
         document.body.append(made);
       };
       button("show", () => host.showPdf({ name: "Karte.pdf", bytes }));
       button("keep", () => host.exportFile({ name: "Karte.pdf", bytes }));
       button("pick", () => host.chooseText());
       document.title = "listening";`,
    );
  });

  const titled = (page: Page, title: string): Promise<unknown> =>
    page.waitForFunction((wanted) => document.title === wanted, title);

  test("shows a PDF in a window of its own", async () => {
    await start(60_000);
    const { page } = await visit(host.address);
    await listening(page);
    const answer = page.context().waitForEvent("response", (response) => response.url().includes("/shown/"));
    await page.click("#show");
    await titled(page, "show null");
    const shown = await answer;
    expect([shown.status(), shown.headers()["content-type"]]).toEqual([200, "application/pdf"]);
    expect(shown.url()).toMatch(/\/shown\/[\w-]{22}\/Karte\.pdf$/);
  });

  test("hands a file out, and reads one in", async () => {
    await start(60_000);
    const { page } = await visit(host.address);
    await listening(page);
    const download = page.waitForEvent("download");
    await page.click("#keep");
    await titled(page, 'keep {"where":null}');
    expect((await download).suggestedFilename()).toBe("Karte.pdf");
    const chooser = page.waitForEvent("filechooser");
    await page.click("#pick");
    await (await chooser).setFiles({
      name: "list.txt",
      mimeType: "text/plain",
      buffer: Buffer.from("Fl\u00f6te", "latin1"),
    });
    await titled(page, 'pick {"name":"list.txt","text":"Flöte"}');
  });
});

describe("a page of another site", () => {
  let site: Server;
  let address = "";

  beforeEach(async () => {
    site = createServer((_request, response) => {
      response.writeHead(200, { "Content-Type": "text/html" });
      response.end("<!doctype html><title>elsewhere</title>");
    });
    await new Promise<void>((done) => site.listen(0, "127.0.0.1", done));
    address = `http://127.0.0.1:${(site.address() as AddressInfo).port}/`;
  });
  afterEach(() => {
    site.closeAllConnections();
    site.close();
  });

  test("gets nothing and changes nothing, even if it knew the address", async () => {
    await start(60_000);
    const { page } = await visit(address);
    const reached = await page.evaluate(async (target) => {
      const outcome = (asked: Promise<Response>): Promise<string> =>
        asked.then(
          (answer) => `${answer.type} ${answer.status}`,
          () => "refused",
        );
      const create = JSON.stringify([{ kind: "piece", name: "stranger", text: "x" }]);
      const loads = (element: HTMLImageElement | HTMLScriptElement | HTMLIFrameElement, src: string): Promise<string> =>
        new Promise((done) => {
          element.onload = () => done("loaded");
          element.onerror = () => done("refused");
          element.src = src;
          document.body.append(element);
        });
      return {
        read: await outcome(fetch(target)),
        ask: await outcome(
          fetch(`${target}ask/create`, {
            method: "POST",
            body: create,
            headers: { "Content-Type": "application/json" },
          }),
        ),
        plain: await outcome(fetch(`${target}ask/create`, { method: "POST", body: create, mode: "no-cors" })),
        script: await loads(document.createElement("script"), `${target}page.js`),
      };
    }, host.address);
    expect(reached).toEqual({ read: "refused", ask: "refused", plain: "refused", script: "refused" });
    const answer = await fetch(new URL("ask/list", host.address), {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: "[]",
    });
    expect(JSON.stringify(await answer.json())).not.toContain("stranger");
  });

  test("cannot lead a visitor to it, nor show it in a frame", async () => {
    await start(60_000);
    const { page } = await visit(address);
    await page.evaluate((target) => {
      const frame = document.createElement("iframe");
      frame.src = target;
      document.body.append(frame);
    }, host.address);
    await page.waitForTimeout(500);
    expect(page.frames().map((frame) => frame.url())).not.toContain(host.address);
    const answer = page.waitForResponse((response) => response.url() === host.address);
    await page.evaluate((target) => {
      location.href = target;
    }, host.address);
    expect((await answer).status()).toBe(403);
  });
});
