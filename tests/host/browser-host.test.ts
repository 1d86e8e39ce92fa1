import { EventEmitter } from "node:events";
import { symlinkSync } from "node:fs";
import { request, type ServerResponse } from "node:http";
import { connect } from "node:net";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type BrowserHost, startBrowserHost } from "../../electron/browser/server.ts";
import { OpenWindows } from "../../electron/browser/windows.ts";
import { demoOrgansIn } from "../../electron/library/demo-organs.ts";
import { HostService } from "../../electron/service/host-service.ts";
import { Settings } from "../../electron/service/settings.ts";
import { browserClient } from "../../renderer/host/browser-client.ts";
import type { Page } from "../../renderer/host/page.ts";
import type { ExportRequest } from "../../shared-model/host-api.ts";
import { hostContract } from "./contract.ts";
import { DEMOS, Machine, until } from "./fixtures.ts";

function start(machine: Machine, grace = 60_000): Promise<BrowserHost> {
  const settings = new Settings(join(machine.folder, "settings.json"));
  const service = new HostService({
    host: "browser",
    version: "1.2.3",
    library: machine.library,
    demos: demoOrgansIn(DEMOS),
    desk: null,
    onOrgan: (organ) => settings.rememberOrgan(organ),
    recent: () => settings.now.recent,
  });
  return startBrowserHost({ service, renderer: machine.renderer, grace });
}

const blankPage: Page = { pickFile: async () => null, download: () => {}, openWindow: () => null };

hostContract("browser", async (machine) => {
  const host = await start(machine);
  const [first, second] = [0, 1].map(() => browserClient({ base: host.address, page: blankPage })) as [
    ReturnType<typeof browserClient>,
    ReturnType<typeof browserClient>,
  ];
  return {
    first,
    second,
    close: async () => {
      first.leave();
      second.leave();
      host.stop();
      await host.stopped;
    },
  };
});

describe("the loopback server", () => {
  let machine: Machine;
  let host: BrowserHost;
  let port = 0;
  let word = "";

  beforeEach(async () => {
    machine = new Machine();
    host = await start(machine);
    const address = new URL(host.address);
    port = Number(address.port);
    word = address.pathname.split("/")[1] as string;
  });
  afterEach(async () => {
    host.stop();
    await host.stopped;
    machine.clear();
  });

  interface Answered {
    readonly status: number;
    readonly headers: Record<string, string | string[] | undefined>;
    readonly body: string;
  }

  /** A request as it stands, which fetch would tidy. */
  function ask(path: string, method = "GET", headers: Record<string, string> = {}, body?: string): Promise<Answered> {
    return new Promise((done, failed) => {
      const asked = request({ host: "127.0.0.1", port, path, method, headers }, (answer) => {
        let text = "";
        answer.setEncoding("utf8");
        answer.on("data", (part: string) => {
          text += part;
        });
        answer.on("end", () => done({ status: answer.statusCode ?? 0, headers: answer.headers, body: text }));
      });
      asked.on("error", failed);
      asked.end(body);
    });
  }

  const json = { "Content-Type": "application/json" };
  const status = async (...words: Parameters<typeof ask>): Promise<number> => (await ask(...words)).status;

  test("is bound to 127.0.0.1 on a free port, under an unguessable word", async () => {
    expect(host.address).toMatch(/^http:\/\/127\.0\.0\.1:\d{4,5}\/[\w-]{43}\/$/);
    const other = await start(machine);
    expect(new URL(other.address).pathname).not.toBe(`/${word}/`);
    other.stop();
    await other.stopped;
    for (const address of ["127.0.0.2", "::1"]) {
      await expect(
        new Promise((done, failed) => connect({ host: address, port }, () => done("open")).on("error", failed)),
      ).rejects.toThrow();
    }
  });

  test("gives the page and its files, each with the strict policy", async () => {
    for (const path of ["", "index.html", "assets/app.js", "index.html?x=1"]) {
      const { status: got, headers } = await ask(`/${word}/${path}`);
      expect([path, got]).toEqual([path, 200]);
      const policy = String(headers["content-security-policy"]);
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self';");
      expect(policy).toContain("connect-src 'self';");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toMatch(/unsafe|\*|https?:/);
      expect(headers["x-content-type-options"]).toBe("nosniff");
      expect(headers["cache-control"]).toBe("no-store");
      expect(headers["referrer-policy"]).toBe("no-referrer");
      expect(headers["access-control-allow-origin"]).toBeUndefined();
    }
    expect((await ask(`/${word}/`, "HEAD")).body).toBe("");
  });

  test("refuses who does not know the word", async () => {
    for (const path of [
      "/",
      "/index.html",
      "/assets/app.js",
      `/${word.slice(0, -1)}/`,
      `/${word}x/`,
      "/open/",
      "/open/x",
    ]) {
      expect([path, await status(path)]).toEqual([path, 403]);
    }
    expect(await status("/ask/list", "POST", json, "[]")).toBe(403);
    expect(await status(`/${"A".repeat(43)}/ask/list`, "POST", json, "[]")).toBe(403);
    expect(await status(`/${word}/ask/list`, "POST", json, "[]")).toBe(200);
  });

  test("refuses foreign hosts", async () => {
    for (const name of [
      `localhost:${port}`,
      "127.0.0.1",
      `organ.example:${port}`,
      `127.0.0.1:${port + 1}`,
      `127.0.0.1:0${port}`,
    ]) {
      expect([name, await status(`/${word}/`, "GET", { Host: name })]).toEqual([name, 403]);
      expect([name, await status(`/${word}/ask/list`, "POST", { ...json, Host: name }, "[]")]).toEqual([name, 403]);
    }
  });

  test("refuses foreign origins and pages of other sites", async () => {
    const own = `http://127.0.0.1:${port}`;
    for (const Origin of ["http://organ.example", "null", `https://127.0.0.1:${port}`, "http://127.0.0.1", `${own}/`]) {
      expect([Origin, await status(`/${word}/ask/list`, "POST", { ...json, Origin }, "[]")]).toEqual([Origin, 403]);
      expect([Origin, await status(`/${word}/changes`, "GET", { Origin })]).toEqual([Origin, 403]);
    }
    expect(await status(`/${word}/ask/list`, "POST", { ...json, Origin: own }, "[]")).toBe(200);
    for (const site of ["cross-site", "same-site"]) {
      expect(await status(`/${word}/`, "GET", { "Sec-Fetch-Site": site })).toBe(403);
    }
    expect(await status(`/${word}/`, "GET", { "Sec-Fetch-Site": "none" })).toBe(200);
    expect(await status(`/${word}/ask/list`, "POST", { ...json, "Sec-Fetch-Site": "none" }, "[]")).toBe(403);
  });

  test("refuses a doubled Host and what is no HTTP", async () => {
    const raw = (text: string): Promise<string> =>
      new Promise((done) => {
        const socket = connect({ host: "127.0.0.1", port }, () => socket.write(text));
        let got = "";
        socket.on("data", (part) => {
          got += part.toString();
        });
        socket.on("error", () => done(got));
        socket.on("close", () => done(got));
      });
    const doubled = `GET /${word}/ HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nHost: organ.example\r\nConnection: close\r\n\r\n`;
    expect(await raw(doubled)).toMatch(/^HTTP\/1\.1 40[03] /);
    expect(await raw("what is this\r\n\r\n")).toMatch(/^HTTP\/1\.1 400 /);
    expect(await status(`/${word}/`)).toBe(200);
  });

  test("serves nothing outside the renderer's folder", async () => {
    symlinkSync(join(machine.folder, "secret.txt"), join(machine.renderer, "link.txt"));
    symlinkSync(machine.folder, join(machine.renderer, "up"));
    machine.put("renderer/.hidden.txt", "hidden");
    machine.put("renderer/program.exe", "no kind of ours");
    for (const path of [
      "../secret.txt",
      "..%2fsecret.txt",
      "%2e%2e/secret.txt",
      "%2e%2e%2fsecret.txt",
      "..%5csecret.txt",
      "assets/../../secret.txt",
      "assets/..%2f..%2fsecret.txt",
      "//etc/passwd",
      "%2fetc%2fpasswd",
      "%00",
      "index.html%00.txt",
      "%ff",
      "link.txt",
      "up/secret.txt",
      ".hidden.txt",
      "program.exe",
      "assets",
      "C:/windows/win.ini",
    ]) {
      const { status: got, body } = await ask(`/${word}/${path}`);
      expect([path, [403, 404].includes(got), body.includes("outside")]).toEqual([path, true, false]);
    }
  });

  test("refuses wrong methods and kinds of message", async () => {
    for (const method of ["POST", "PUT", "DELETE", "OPTIONS", "PATCH"]) {
      expect([method, await status(`/${word}/index.html`, method)]).toEqual([method, 405]);
    }
    expect(await status(`/${word}/ask/list`)).toBe(405);
    expect(await status(`/${word}/changes`, "POST", json, "[]")).toBe(405);
    for (const kind of ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x"]) {
      expect([kind, await status(`/${word}/ask/list`, "POST", { "Content-Type": kind }, "[]")]).toEqual([kind, 415]);
    }
    expect(await status(`/${word}/ask/list`, "POST", json, "[")).toBe(400);
  });

  test.each(["constructor", "__proto__", "close", "answer", "watch", "toString", ""])(
    "knows no method %j",
    async (method) => {
      const { body } = await ask(`/${word}/ask/${method}`, "POST", json, "[]");
      expect(JSON.parse(body)).toMatchObject({ ok: false, trouble: { trouble: "failed" } });
    },
  );

  test("refuses a message that is too long, told or not, and lives on", async () => {
    const long = `["${"x".repeat(12_000_001)}"]`;
    const told = await ask(`/${word}/ask/read`, "POST", { ...json, "Content-Length": String(long.length) }, long);
    expect([told.status, JSON.parse(told.body).trouble.trouble]).toEqual([413, "too-large"]);
    const streamed = await ask(`/${word}/ask/read`, "POST", { ...json, "Transfer-Encoding": "chunked" }, long);
    expect(streamed.status).toBe(413);
    expect(await status(`/${word}/ask/list`, "POST", json, "[]")).toBe(200);
  });

  test("an address for the first visit works once", async () => {
    const ticket = new URL(host.ticket()).pathname;
    expect(ticket).not.toContain(word);
    expect(await status(ticket, "POST")).toBe(403);
    const { status: got, headers } = await ask(ticket);
    expect([got, headers.location]).toEqual([303, `/${word}/`]);
    expect(await status(ticket)).toBe(403);
  });

  test("shows a PDF under an address of its own", async () => {
    let shownAt: string | null = null;
    const downloads: string[] = [];
    const page: Page = {
      ...blankPage,
      download: ({ name }) => downloads.push(name),
      openWindow: () => (to) => {
        shownAt = to;
      },
    };
    const client = browserClient({ base: host.address, page });
    const pdf: ExportRequest = { name: "Ostern 2½.pdf", bytes: new TextEncoder().encode("%PDF-1.7\n...") };
    await client.showPdf(pdf);
    const answer = await fetch(String(shownAt));
    expect(answer.headers.get("content-type")).toBe("application/pdf");
    expect(await answer.text()).toBe("%PDF-1.7\n...");
    expect(await client.exportFile(pdf)).toEqual({ where: null });
    expect(downloads).toEqual(["Ostern 2½.pdf"]);
    await expect(client.showPdf({ name: "x.pdf", bytes: new TextEncoder().encode("<html>") })).rejects.toMatchObject({
      trouble: "not-allowed",
    });
    expect(await status(`/${word}/show?name=x.pdf`, "POST", { "Content-Type": "application/pdf" }, "<html>")).toBe(400);
    expect(await status(`/${word}/shown/x/y.pdf`)).toBe(404);
    client.leave();
  });

  test("reads a picked file, in old codes too", async () => {
    const files = [
      new File([Buffer.from("Fl\u00f6te 8", "latin1")], "list.txt"),
      new File([new Uint8Array([0xff, 0xfe, 0x38, 0x00])], "wide.txt"),
      new File([new Uint8Array([0, 1, 2])], "picture.txt"),
    ];
    const client = browserClient({
      base: host.address,
      page: { ...blankPage, pickFile: async () => files.shift() ?? null },
    });
    expect(await client.chooseText()).toEqual({ name: "list.txt", text: "Flöte 8" });
    expect(await client.chooseText()).toEqual({ name: "wide.txt", text: "8" });
    await expect(client.chooseText()).rejects.toMatchObject({ trouble: "not-text" });
    expect(await client.chooseText()).toBeNull();
    client.leave();
  });
});

describe("the line on which changes are told", () => {
  let ends: (() => void)[] = [];
  let hold: Promise<void> | null = null;

  beforeEach(() => {
    ends = [];
    hold = null;
    vi.stubGlobal("fetch", async (address: URL): Promise<Response> => {
      if (!address.pathname.endsWith("changes")) {
        return Response.json({ ok: true, value: { id: "library:pieces/a.yaml", text: "x", version: "1" } });
      }
      await hold;
      const body = new ReadableStream<Uint8Array>({
        start: (stream) => {
          ends.push(() => stream.close());
        },
      });
      return new Response(body);
    });
  });
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  const listening = () => {
    const client = browserClient({ base: "http://127.0.0.1:9/word/", page: blankPage });
    const told: number[] = [];
    client.watch((changes) => told.push(changes.length));
    return { client, told };
  };

  test("lets everybody look anew when it broke and stands again, since nothing was heard meanwhile", async () => {
    const { client, told } = listening();
    await until("the line stands", () => ends.length === 1);
    expect(told).toEqual([]);
    ends[0]?.();
    await until("it stands again", () => told.length > 0);
    expect([ends.length, told]).toEqual([2, [0]]);
    client.leave();
    ends[1]?.();
  });

  test("lets everybody look anew when something was read before it stood", async () => {
    let release = (): void => {};
    hold = new Promise((done) => {
      release = done;
    });
    const { client, told } = listening();
    await client.read("library:pieces/a.yaml");
    release();
    await until("it is said", () => told.length > 0);
    expect(told).toEqual([0]);
    client.leave();
    ends[0]?.();
  });
});

describe("the end of the browser host", () => {
  test("waits for none of the windows that it has sent home", async () => {
    vi.useFakeTimers();
    const windows = new OpenWindows(400, () => {});
    const response = new (class extends EventEmitter {
      readonly write = () => true;
      // A real one closes a moment later, when its line is shut.
      readonly end = () => queueMicrotask(() => this.emit("close"));
    })();
    windows.welcome(response as unknown as ServerResponse, () => () => {});
    expect(vi.getTimerCount()).toBe(1);
    windows.close();
    await Promise.resolve();
    expect(vi.getTimerCount()).toBe(0);
    vi.useRealTimers();
  });

  test("comes with its last window, not with one that is loaded anew", async () => {
    const machine = new Machine();
    const host = await start(machine, 400);
    let ended = false;
    void host.stopped.then(() => {
      ended = true;
    });
    const visit = async (): Promise<AbortController> => {
      const leaving = new AbortController();
      const answer = await fetch(new URL("changes?window=a", host.address), { signal: leaving.signal });
      await answer.body?.getReader().read();
      return leaving;
    };
    const [one, two] = [await visit(), await visit()];
    one.abort();
    await new Promise((done) => setTimeout(done, 800));
    expect(ended).toBe(false);
    two.abort();
    const three = await visit();
    await new Promise((done) => setTimeout(done, 800));
    expect(ended).toBe(false);
    three.abort();
    await until("the server ends", () => ended);
    const client = browserClient({ base: host.address, page: blankPage });
    await expect(client.list()).rejects.toMatchObject({ trouble: "unreachable" });
    client.leave();
    machine.clear();
  });
});
