import type { Host, HostMethod, HostTrouble, LibraryChange, MenuListener } from "../../shared-model/host-api.ts";
import type { Reply } from "../../shared-model/host-messages.ts";
import { ASK, MENU, TELL } from "./channels.ts";

/** What the window's end of the bridge needs; nothing else of Electron is within the page's reach. */
export interface Bridge {
  readonly invoke: (channel: string, ...words: unknown[]) => Promise<unknown>;
  /** Listens on a channel, without the event that holds the sender. Returns what ends it. */
  readonly listen: (channel: string, listener: (...words: readonly unknown[]) => void) => () => void;
}

/** The host as the desktop shell hands it to a page: one function for each method, no channel named by the page. */
export function bridgedHost({ invoke, listen }: Bridge): Host {
  async function ask<M extends HostMethod>(
    method: M,
    ...words: Parameters<Host[M]>
  ): Promise<Awaited<ReturnType<Host[M]>>> {
    const reply = (await invoke(ASK, method, words).catch(() => ENDED)) as Reply;
    if (!reply.ok) throw reply.trouble;
    return reply.value as Awaited<ReturnType<Host[M]>>;
  }
  return {
    facts: () => ask("facts"),
    list: () => ask("list"),
    read: (id) => ask("read", id),
    save: (request) => ask("save", request),
    create: (request) => ask("create", request),
    previous: (id) => ask("previous", id),
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
    chooseLibrary: () => ask("chooseLibrary"),
    chooseText: () => ask("chooseText"),
    exportFile: (request) => ask("exportFile", request),
    showPdf: async (request) => {
      await ask("showPdf", request);
    },
    watch: (listener) => listen(TELL, (changes) => listener(changes as readonly LibraryChange[])),
    onMenu: (listener) => listen(MENU, (...words) => listener(...(words as Parameters<MenuListener>))),
  };
}

const ENDED: Reply = {
  ok: false,
  trouble: {
    trouble: "unreachable",
    words: "The program behind this window does not answer. Close the window and open it again.",
  } satisfies HostTrouble,
};
