import { EventEmitter } from "node:events";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/**
 * A stand-in for the module `electron`, whose runtime is not here: it keeps what it was told, and carries messages between the
 * two ends as the real one does, by copying. Tests put it in with `vi.mock`.
 */

type Handler = (event: unknown, ...words: unknown[]) => unknown;

class FakeFrame {
  static count = 0;
  url = "";
  readonly parent: FakeFrame | null = null;
  readonly frameTreeNodeId: number;

  constructor() {
    FakeFrame.count += 1;
    this.frameTreeNodeId = FakeFrame.count;
  }
}

class FakeWebContents extends EventEmitter {
  static count = 0;
  readonly id: number;
  readonly mainFrame = new FakeFrame();
  readonly heard = new EventEmitter();
  openHandler: ((details: { url: string }) => { action: string }) | null = null;

  constructor() {
    super();
    FakeWebContents.count += 1;
    this.id = FakeWebContents.count;
  }

  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }

  send(channel: string, ...words: unknown[]): void {
    this.heard.emit(channel, {}, ...structuredClone(words));
  }
}

interface FakeOptions {
  readonly webPreferences: Record<string, unknown>;
  readonly [name: string]: unknown;
}

class FakeBrowserWindow extends EventEmitter {
  static readonly all: FakeBrowserWindow[] = [];
  readonly webContents = new FakeWebContents();
  readonly options: FakeOptions;
  bounds = { x: 10, y: 20, width: 900, height: 700 };
  maximised = false;
  destroyed = false;
  shown = false;

  constructor(options: FakeOptions) {
    super();
    this.options = options;
    FakeBrowserWindow.all.push(this);
    app.emit("web-contents-created", {}, this.webContents);
  }

  async loadURL(url: string): Promise<void> {
    this.webContents.mainFrame.url = url;
    this.emit("ready-to-show");
  }

  show = (): void => {
    this.shown = true;
  };
  maximize = (): void => {
    this.maximised = true;
  };
  isMaximized = (): boolean => this.maximised;
  isMinimized = (): boolean => false;
  isDestroyed = (): boolean => this.destroyed;
  getNormalBounds = () => this.bounds;
  restore = (): void => {};
  focus = (): void => {};

  close(): void {
    this.emit("close");
    this.destroyed = true;
    this.emit("closed");
  }
}

class FakeApp extends EventEmitter {
  isPackaged = false;
  sandboxed = false;
  lock = true;
  quits = 0;
  status: number | null = null;
  readonly paths: Record<string, string> = {};
  ready: (() => void) | null = null;

  enableSandbox = (): void => {
    this.sandboxed = true;
  };
  requestSingleInstanceLock = (): boolean => this.lock;
  whenReady = (): Promise<void> => Promise.resolve();
  getPath = (name: string): string => (this.paths[name] ??= mkdtempSync(join(tmpdir(), `registrant-${name}-`)));
  exit = (status: number): void => {
    this.status = status;
  };
  quit = (): void => {
    this.quits += 1;
  };
}

/** What was asked of the person, and what they are to answer. */
const answers = {
  folder: null as string | null,
  file: null as string | null,
  saveAs: null as string | null,
  opened: [] as string[],
  errors: [] as string[],
  openRefuses: "",
};

const handlers = new Map<string, Handler>();

const ipcMain = {
  handle: (channel: string, handler: Handler): void => {
    handlers.set(channel, handler);
  },
  removeHandler: (channel: string): void => {
    handlers.delete(channel);
  },
};

/** One message to the shell, from any sender. */
async function invokeAs(sender: unknown, senderFrame: unknown, channel: string, ...words: unknown[]): Promise<unknown> {
  const handler = handlers.get(channel);
  if (!handler) throw new Error(`no handler for ${channel}`);
  return structuredClone(await handler({ sender, senderFrame }, ...structuredClone(words)));
}

/** The page's end of the bridge of a window. */
const rendererOf = (window: FakeBrowserWindow) => ({
  invoke: (channel: string, ...words: unknown[]) =>
    invokeAs(window.webContents, window.webContents.mainFrame, channel, ...words),
  on: (channel: string, listener: (...words: unknown[]) => void) => window.webContents.heard.on(channel, listener),
  off: (channel: string, listener: (...words: unknown[]) => void) => window.webContents.heard.off(channel, listener),
});

const session = {
  permissionRequest: null as
    | ((contents: unknown, permission: string, answer: (granted: boolean) => void) => void)
    | null,
  permissionCheck: null as ((...words: unknown[]) => boolean) | null,
  device: null as ((...words: unknown[]) => boolean) | null,
  media: null as ((request: unknown, answer: (streams: object | null) => void) => void) | null,
  beforeRequest: null as ((details: { url: string }, answer: (result: { cancel: boolean }) => void) => void) | null,
  protocols: new Map<string, (request: { url: string; method: string }) => Promise<Response>>(),
  events: new EventEmitter(),
};

const defaultSession = {
  setPermissionRequestHandler: (handler: typeof session.permissionRequest) => {
    session.permissionRequest = handler;
  },
  setPermissionCheckHandler: (handler: typeof session.permissionCheck) => {
    session.permissionCheck = handler;
  },
  setDevicePermissionHandler: (handler: typeof session.device) => {
    session.device = handler;
  },
  setDisplayMediaRequestHandler: (handler: typeof session.media) => {
    session.media = handler;
  },
  webRequest: {
    onBeforeRequest: (handler: typeof session.beforeRequest) => {
      session.beforeRequest = handler;
    },
  },
  protocol: {
    handle: (scheme: string, handler: (request: { url: string; method: string }) => Promise<Response>) => {
      session.protocols.set(scheme, handler);
    },
  },
  on: (event: string, listener: (...words: unknown[]) => void) => session.events.on(event, listener),
};

interface FakeMenuItem {
  readonly label?: string;
  readonly role?: string;
  readonly accelerator?: string;
  readonly click?: () => void;
  readonly submenu?: FakeMenuItem[];
}

const app = new FakeApp();
const shown = { menu: [] as FakeMenuItem[], schemes: [] as { scheme: string; privileges: object }[] };
const exposed: Record<string, unknown> = {};
let preloadWindow: FakeBrowserWindow | null = null;

/** The module as the program imports it. */
export const electron = {
  app,
  BrowserWindow: FakeBrowserWindow,
  ipcMain,
  Menu: {
    buildFromTemplate: (template: FakeMenuItem[]) => template,
    setApplicationMenu: (menu: FakeMenuItem[]) => {
      shown.menu = menu;
    },
  },
  screen: {
    getPrimaryDisplay: () => ({ workArea: { x: 0, y: 0, width: 1920, height: 1040 } }),
    getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1040 } }],
  },
  session: { defaultSession },
  protocol: {
    registerSchemesAsPrivileged: (schemes: typeof shown.schemes) => {
      shown.schemes = schemes;
    },
  },
  dialog: {
    showOpenDialog: async (_window: unknown, { properties }: { properties: string[] }) => {
      const answer = properties.includes("openDirectory") ? answers.folder : answers.file;
      return { canceled: answer === null, filePaths: answer === null ? [] : [answer] };
    },
    showErrorBox: (title: string, words: string) => answers.errors.push(`${title}: ${words}`),
    showSaveDialog: async () => ({ canceled: answers.saveAs === null, filePath: answers.saveAs ?? "" }),
  },
  shell: {
    openPath: async (path: string) => {
      answers.opened.push(path);
      return answers.openRefuses;
    },
  },
  contextBridge: {
    exposeInMainWorld: (name: string, value: unknown) => {
      exposed[name] = value;
    },
  },
  ipcRenderer: {
    invoke: (channel: string, ...words: unknown[]) => rendererOf(needed(preloadWindow)).invoke(channel, ...words),
    on: (channel: string, listener: (...words: unknown[]) => void) =>
      rendererOf(needed(preloadWindow)).on(channel, listener),
    off: (channel: string, listener: (...words: unknown[]) => void) =>
      rendererOf(needed(preloadWindow)).off(channel, listener),
  },
};

function needed<T>(value: T | null): T {
  if (value === null) throw new Error("no window is set for the preload script");
  return value;
}

/** The test's hold on the stand-in. */
export const fake = {
  app,
  answers,
  session,
  shown,
  exposed,
  windows: FakeBrowserWindow.all,
  invokeAs,
  rendererOf,
  preloadFor: (window: FakeBrowserWindow): void => {
    preloadWindow = window;
  },
  /** As before a start. */
  reset: (): void => {
    app.removeAllListeners();
    Object.assign(app, { isPackaged: false, sandboxed: false, lock: true, quits: 0, status: null });
    Object.assign(answers, { folder: null, file: null, saveAs: null, opened: [], errors: [], openRefuses: "" });
    FakeBrowserWindow.all.length = 0;
    handlers.clear();
    session.events.removeAllListeners();
  },
};

export type { FakeBrowserWindow, FakeMenuItem };
