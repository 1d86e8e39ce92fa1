import { randomBytes } from "node:crypto";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { EXPORT_BYTES, type ExportRequest } from "../../shared-model/host-api.ts";
import { CHANGES, HOST_ARGUMENTS, type Reply } from "../../shared-model/host-messages.ts";
import type { HostService } from "../service/host-service.ts";
import { rendererFile, STRICT_HEADERS } from "../service/renderer-files.ts";
import { bodyOf } from "./body.ts";
import { foreign, isSameWord, type Refused } from "./guard.ts";
import { ShownFiles } from "./shown-files.ts";
import { OpenWindows } from "./windows.ts";

/** Longest message: the longest document, every sign of it escaped, and a little. */
const MESSAGE_BYTES = 12_000_000;
/** Milliseconds in which the address for the first visit can be used. */
const TICKET = 60_000;

/** What the server hands out and when it ends. */
export interface BrowserHostParts {
  readonly service: HostService;
  /** Folder of the built renderer. */
  readonly renderer: string;
  /** Milliseconds between the going of the last window and the end. */
  readonly grace: number;
}

/** A server that runs. */
export interface BrowserHost {
  /** For the person, with the unguessable word in it. */
  readonly address: string;
  /** An address that works once and soon, for a command line that others on this machine can see. */
  readonly ticket: () => string;
  /** When it has ended, with its last window or by {@link stop}. */
  readonly stopped: Promise<void>;
  readonly stop: () => void;
}

type Answer = (
  request: IncomingMessage,
  response: ServerResponse,
  rest: string,
  query: URLSearchParams,
) => Promise<void>;

const refuse = (status: Refused["status"], words: string, allow?: string): Refused =>
  allow === undefined ? { status, words } : { status, words, allow };

/**
 * Starts the browser host on 127.0.0.1, on a free port.
 *
 * @throws an error of the system when no port can be had.
 */
export async function startBrowserHost({ service, renderer, grace }: BrowserHostParts): Promise<BrowserHost> {
  const word = randomBytes(32).toString("base64url");
  const shown = new ShownFiles();
  const tickets = new Set<string>();
  const server = createServer({ requestTimeout: 60_000, headersTimeout: 10_000 });
  const windows = new OpenWindows(grace, () => stop());
  const stopped = new Promise<void>((done) => server.on("close", done));
  const stop = (): void => {
    windows.close();
    service.close();
    server.close();
    // Connections that browsers keep for later would hold it up.
    server.closeAllConnections();
  };

  const host = await listen(server);
  const rooms: Readonly<Record<string, Answer>> = {
    ask: ask(service),
    changes: changes(service, windows),
    show: show(shown),
    shown: givePdf(shown),
  };

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const refused = foreign(request, host);
    if (refused) return say(response, refused);
    const url = new URL(request.url ?? "/", `http://${host}`);
    const [first = "", room = "", ...rest] = url.pathname.slice(1).split("/");
    if (first === "open" && request.method === "GET" && tickets.delete(room)) return redirect(response, `/${word}/`);
    if (!isSameWord(first, word)) {
      const words =
        'This address is not complete or not valid any more. Start "registrant open" and use the address it gives.';
      return say(response, refuse(403, words));
    }
    const own = Object.hasOwn(rooms, room) ? rooms[room] : undefined;
    if (own) return own(request, response, rest.join("/"), url.searchParams);
    return giveFile(request, response, renderer, url.pathname.slice(word.length + 2));
  };

  server.on("request", (request, response) => {
    answer(request, response).catch(() => {
      if (response.headersSent) response.destroy();
      else say(response, refuse(400, "The request could not be read."));
    });
  });

  return {
    address: `http://${host}/${word}/`,
    ticket: () => {
      const ticket = randomBytes(32).toString("base64url");
      tickets.add(ticket);
      setTimeout(() => tickets.delete(ticket), TICKET).unref();
      return `http://${host}/open/${ticket}`;
    },
    stopped,
    stop,
  };
}

function listen(server: Server): Promise<string> {
  return new Promise((done, failed) => {
    server.once("error", failed);
    server.listen({ host: "127.0.0.1", port: 0, exclusive: true }, () => {
      server.off("error", failed);
      done(`127.0.0.1:${(server.address() as AddressInfo).port}`);
    });
  });
}

function say(response: ServerResponse, { status, words, allow }: Refused): void {
  response.writeHead(status, {
    ...STRICT_HEADERS,
    ...(allow === undefined ? {} : { Allow: allow }),
    "Content-Type": "text/plain; charset=utf-8",
    // What was not read of the request must not pass for the next one.
    Connection: "close",
  });
  response.end(`${words}\n`);
}

function redirect(response: ServerResponse, to: string): void {
  response.writeHead(303, { ...STRICT_HEADERS, Location: to });
  response.end();
}

function reply(response: ServerResponse, body: Reply, status = 200): void {
  response.writeHead(status, { ...STRICT_HEADERS, "Content-Type": "application/json; charset=utf-8" });
  response.end(JSON.stringify(body));
}

async function giveFile(
  request: IncomingMessage,
  response: ServerResponse,
  renderer: string,
  path: string,
): Promise<void> {
  if (request.method !== "GET" && request.method !== "HEAD") {
    return say(response, refuse(405, "This is only to be read.", "GET, HEAD"));
  }
  const file = await rendererFile(renderer, path);
  if (!file) return say(response, refuse(404, "There is nothing here."));
  response.writeHead(200, { ...STRICT_HEADERS, "Content-Type": file.kind, "Content-Length": file.bytes.length });
  response.end(request.method === "HEAD" ? undefined : file.bytes);
}

/** The window that asks; it names itself, only so that it is not told of its own doing. */
const windowOf = (name: string | null | undefined): string =>
  /^[\w-]{1,64}$/.test(name ?? "") ? (name as string) : "";

const TOO_LARGE: Reply = {
  ok: false,
  trouble: { trouble: "too-large", words: "This is longer than the program takes. Nothing was written." },
};

/** Reads what was sent, or answers itself and gives `null`. */
async function sent(
  request: IncomingMessage,
  response: ServerResponse,
  kind: string,
  most: number,
): Promise<Buffer | null> {
  if (request.method !== "POST") {
    say(response, refuse(405, "This is only to be asked.", "POST"));
    return null;
  }
  // A page of another site could send plain forms, but not this kind without being asked first.
  if (request.headers["content-type"] !== kind) {
    say(response, refuse(415, `This must be sent as ${kind}.`));
    return null;
  }
  const body = await bodyOf(request, most);
  if (body) return body;
  response.setHeader("Connection", "close");
  reply(response, TOO_LARGE, 413);
  return null;
}

const ask =
  (service: HostService): Answer =>
  async (request, response, method) => {
    const body = await sent(request, response, "application/json", MESSAGE_BYTES);
    if (!body) return;
    let words: unknown;
    try {
      words = JSON.parse(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(body));
    } catch {
      return say(response, refuse(400, "What was sent is no JSON."));
    }
    const name = request.headers["registrant-window"];
    reply(response, await service.answer(method, words, windowOf(typeof name === "string" ? name : null)));
  };

const changes =
  (service: HostService, windows: OpenWindows): Answer =>
  async (request, response, _rest, query) => {
    if (request.method !== "GET") return say(response, refuse(405, "This is only to be listened to.", "GET"));
    response.writeHead(200, { ...STRICT_HEADERS, "Content-Type": "text/event-stream" });
    windows.welcome(response, (tell) =>
      service.watch(windowOf(query.get("window")), (changed) => tell(CHANGES.parse(changed))),
    );
  };

const show =
  (shown: ShownFiles): Answer =>
  async (request, response, _rest, query) => {
    const bytes = await sent(request, response, "application/pdf", EXPORT_BYTES);
    if (!bytes) return;
    const file: ExportRequest = { name: query.get("name") ?? "", bytes: new Uint8Array(bytes) };
    const sound = HOST_ARGUMENTS.showPdf.safeParse([file]).success;
    if (!sound) return say(response, refuse(400, "This is no PDF."));
    reply(response, { ok: true, value: shown.keep(file) });
  };

/** A viewer of the browser's own shows it, and needs scripts and styles of its own; it gets no other policy of ours. */
const givePdf =
  (shown: ShownFiles): Answer =>
  async (request, response, rest) => {
    if (request.method !== "GET") return say(response, refuse(405, "This is only to be read.", "GET"));
    const file = shown.find(rest);
    if (!file)
      return say(response, refuse(404, "This card is not kept any more. Ask for it again in the program's window."));
    const {
      "Content-Security-Policy": _strict,
      "Cross-Origin-Embedder-Policy": _embedder,
      ...headers
    } = STRICT_HEADERS;
    response.writeHead(200, { ...headers, "Content-Type": "application/pdf", "Content-Length": file.bytes.byteLength });
    response.end(file.bytes);
  };
