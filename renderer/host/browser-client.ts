import type {
  ExportRequest,
  Host,
  HostMethod,
  HostTrouble,
  LibraryChange,
  StoredDocument,
} from "../../shared-model/host-api.ts";
import { EXPORT_BYTES } from "../../shared-model/host-api.ts";
import { CHANGES, HOST_ARGUMENTS, REPLY } from "../../shared-model/host-messages.ts";
import type { Page } from "./page.ts";
import { pickedText } from "./picked-text.ts";

/** What the client needs from where it runs. */
export interface ClientParts {
  /** Address of the page's folder: `http://127.0.0.1:41234/<word>/`. */
  readonly base: string;
  readonly page: Page;
}

/** Milliseconds before the line on which changes are told is opened again. */
const AGAIN = [200, 1000, 3000];

const UNREACHABLE: HostTrouble = {
  trouble: "unreachable",
  words:
    'The program behind this page has ended. Start "registrant open" again; your files are as they were last saved.',
};

const refused = (trouble: HostTrouble): Promise<never> => Promise.reject(trouble);

/** The value in an answer of the server, held against the form it must have. */
async function valueIn(answer: Response | null): Promise<unknown> {
  if (!answer) return refused(UNREACHABLE);
  const body: unknown = await answer.json().catch(() => null);
  const reply = REPLY.safeParse(body);
  if (!reply.success) {
    const words = "The program behind this page does not answer as it should. Close the page and open it again.";
    return refused({ trouble: "failed", words });
  }
  return reply.data.ok ? reply.data.value : refused(reply.data.trouble);
}

/** The host of a page that the browser host has served. It tells the server of this window at once, and keeps the line open. */
export function browserClient({ base, page }: ClientParts): Host & { readonly leave: () => void } {
  const window = crypto.randomUUID();
  const post = (path: string, kind: string, body: string | Uint8Array<ArrayBuffer>): Promise<Response | null> =>
    fetch(new URL(path, base), {
      method: "POST",
      headers: { "Content-Type": kind, "Registrant-Window": window },
      body,
    }).catch(() => null);

  async function ask<M extends HostMethod>(
    method: M,
    ...words: Parameters<Host[M]>
  ): Promise<Awaited<ReturnType<Host[M]>>> {
    const sound = HOST_ARGUMENTS[method].safeParse(words);
    if (!sound.success) return refused(notSent(words));
    const value = await valueIn(await post(`ask/${method}`, "application/json", JSON.stringify(words)));
    return value as Awaited<ReturnType<Host[M]>>;
  }

  const line = openLine(new URL(`changes?window=${window}`, base));
  let isReadUnheard = false;
  line.whenOpen((isAgain) => {
    // What was read before the line stood, or stood again, may have changed unheard.
    if (isAgain || isReadUnheard) line.stir();
    isReadUnheard = false;
  });

  return {
    facts: () => ask("facts"),
    list: () => ask("list"),
    read: (id) => {
      isReadUnheard ||= !line.isOpen();
      return ask("read", id);
    },
    save: (request) => ask("save", request),
    create: (request) => ask("create", request),
    previous: (id) => ask("previous", id) as Promise<StoredDocument | null>,
    printed: (id) => ask("printed", id),
    notePrinted: async (request) => {
      await ask("notePrinted", request);
    },
    discard: async (id) => {
      await ask("discard", id);
    },
    opened: async (id) => {
      await ask("opened", id);
    },
    watch: line.listen,
    chooseLibrary: () => ask("chooseLibrary"),
    chooseText: async () => {
      const file = await page.pickFile();
      return file ? pickedText(file) : null;
    },
    exportFile: async (request) => {
      if (!HOST_ARGUMENTS.exportFile.safeParse([request]).success) return refused(notHandedOut(request));
      page.download(request);
      return { where: null };
    },
    showPdf: async (request) => {
      if (!HOST_ARGUMENTS.showPdf.safeParse([request]).success) return refused(notHandedOut(request));
      const fill = page.openWindow();
      if (!fill) return page.download(request);
      try {
        const query = new URLSearchParams({ name: request.name });
        const path = await valueIn(await post(`show?${query}`, "application/pdf", new Uint8Array(request.bytes)));
        fill(new URL(String(path), base).href);
      } catch (trouble) {
        fill(null);
        throw trouble;
      }
    },
    onMenu: () => () => {},
    leave: line.close,
  };
}

function notSent(words: readonly unknown[]): HostTrouble {
  const longest = words.some((word) => JSON.stringify(word ?? null).length > 4_000_000);
  if (longest) return { trouble: "too-large", words: "This is longer than 5 MB. Part it in two; nothing was written." };
  return {
    trouble: "failed",
    words: "This cannot be saved as it stands: it holds signs that are no text. Take them out.",
  };
}

const notHandedOut = ({ name, bytes }: ExportRequest): HostTrouble =>
  bytes.byteLength > EXPORT_BYTES
    ? { trouble: "too-large", words: `${name}: This is longer than 50 MB. Hand it out in parts.` }
    : { trouble: "not-allowed", words: `${name}: A file cannot have this name. Use letters, digits and spaces.` };

interface Line {
  readonly listen: Host["watch"];
  readonly isOpen: () => boolean;
  /** Calls as soon as the line stands: for the first time, or again. */
  readonly whenOpen: (then: (isAgain: boolean) => void) => void;
  /** Lets all who listen look anew. */
  readonly stir: () => void;
  readonly close: () => void;
}

/** The line on which the server tells of changes. As long as it is open, the server knows that the window is. */
function openLine(address: URL): Line {
  const listeners = new Set<(changes: readonly LibraryChange[]) => void>();
  const end = new AbortController();
  const say = (changes: readonly LibraryChange[]): void => {
    for (const listener of [...listeners]) listener(changes);
  };
  const tell = (text: string): void => {
    const changes = CHANGES.safeParse(JSON.parse(text));
    if (changes.success) say(changes.data);
  };
  let opened: (isAgain: boolean) => void = () => {};
  let [isOpen, hasBeenOpen] = [false, false];
  const keepOpen = async (): Promise<void> => {
    for (let tries = 0; !end.signal.aborted; tries += 1) {
      try {
        const answer = await fetch(address, { signal: end.signal });
        if (answer.ok && answer.body) {
          tries = 0;
          const isAgain = hasBeenOpen;
          [isOpen, hasBeenOpen] = [true, true];
          opened(isAgain);
          await readEvents(answer.body, tell);
        }
      } catch {
        // The next try tells whether it is only a pause.
      }
      isOpen = false;
      await new Promise((done) => setTimeout(done, AGAIN[Math.min(tries, AGAIN.length - 1)]));
    }
  };
  void keepOpen();
  return {
    listen: (listener) => {
      const own = (changes: readonly LibraryChange[]): void => listener(changes);
      listeners.add(own);
      return () => listeners.delete(own);
    },
    isOpen: () => isOpen,
    whenOpen: (then) => {
      opened = then;
    },
    stir: () => say([]),
    close: () => end.abort(),
  };
}

/** The data of server-sent events, one after the other, until the line ends. */
async function readEvents(body: ReadableStream<Uint8Array>, tell: (data: string) => void): Promise<void> {
  const reader = body.getReader();
  const decoder = new TextDecoder();
  for (let rest = ""; ; ) {
    const { done, value } = await reader.read();
    if (done) return;
    const lines = (rest + decoder.decode(value, { stream: true })).split("\n");
    rest = lines.pop() ?? "";
    for (const line of lines) if (line.startsWith("data: ")) tell(line.slice("data: ".length));
  }
}
