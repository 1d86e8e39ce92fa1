import { type BrowserWindow, type IpcMainInvokeEvent, ipcMain, type WebFrameMain } from "electron";
import type { DocumentId, MenuCommand } from "../../shared-model/host-api.ts";
import type { Reply } from "../../shared-model/host-messages.ts";
import type { HostService } from "../service/host-service.ts";
import { isAppPage } from "./app-address.ts";
import { ASK, MENU, TELL } from "./channels.ts";

const STRANGER: Reply = {
  ok: false,
  trouble: {
    trouble: "not-allowed",
    words: "Only the program's own window is answered. Close this one and open it again.",
  },
};

/** The shell's end of the bridge: answers windows that it knows, and only the page that belongs in them. */
export class WindowBridge {
  readonly #service: HostService;
  readonly #windows = new Map<number, BrowserWindow>();

  constructor(service: HostService) {
    this.#service = service;
    ipcMain.handle(ASK, (event, method: unknown, words: unknown) => this.#answer(event, method, words));
  }

  /** Knows a window until it is closed. */
  admit(window: BrowserWindow): void {
    const id = window.webContents.id;
    this.#windows.set(id, window);
    const end = this.#service.watch(String(id), (changes) => {
      if (!window.isDestroyed()) window.webContents.send(TELL, changes);
    });
    window.on("closed", () => {
      end();
      this.#windows.delete(id);
    });
  }

  /** Tells a window what was chosen in the menu. */
  tellMenu(window: BrowserWindow, command: MenuCommand, document: DocumentId | null): void {
    window.webContents.send(MENU, command, document);
  }

  /** Answers nobody any more. */
  close(): void {
    ipcMain.removeHandler(ASK);
  }

  async #answer(event: IpcMainInvokeEvent, method: unknown, words: unknown): Promise<Reply> {
    const window = this.#windows.get(event.sender.id);
    const frame = event.senderFrame;
    // A frame inside the page, or a page that came into the window some other way, is no page of ours.
    const own = window !== undefined && frame !== null && isMainFrame(frame, window) && isAppPage(frame.url);
    if (!own || typeof method !== "string") return STRANGER;
    return this.#service.answer(method, words, String(event.sender.id));
  }
}

/** By its number, since the same frame need not be the same object. */
const isMainFrame = (frame: WebFrameMain, { webContents }: BrowserWindow): boolean =>
  frame.parent === null && frame.frameTreeNodeId === webContents.mainFrame.frameTreeNodeId;
