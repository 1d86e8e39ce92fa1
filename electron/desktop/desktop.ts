import { join } from "node:path";
import { app, type BrowserWindow, dialog, Menu, screen, session } from "electron";
import type { DocumentId, MenuCommand } from "../../shared-model/host-api.ts";
import { demoOrgansIn } from "../library/demo-organs.ts";
import { HostService } from "../service/host-service.ts";
import { Settings } from "../service/settings.ts";
import { APP_PAGE } from "./app-address.ts";
import { WindowBridge } from "./bridge.ts";
import { type DesktopDesk, desktopDesk } from "./desk.ts";
import { menuTemplate } from "./menu.ts";
import { claimScheme, shutSession } from "./safe-session.ts";
import { confine, safeWindow } from "./safe-window.ts";
import { placeOn } from "./window-place.ts";

/** What the desktop shell is started with. All paths are absolute. */
export interface DesktopStart {
  readonly version: string;
  readonly settings: string;
  /** A library for this time only; `null` for the one remembered, or else the usual. */
  readonly library: string | null;
  readonly usualLibrary: string;
  readonly demos: string;
  readonly renderer: string;
  readonly preload: string;
}

/** Starts the desktop shell. To be called before Electron is ready. */
export function startDesktop(start: DesktopStart): void {
  // Two programs over one library would each take the other's saves for a stranger's.
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  app.enableSandbox();
  claimScheme();
  app.on("web-contents-created", (_event, contents) => confine(contents));
  app.on("window-all-closed", () => app.quit());
  app
    .whenReady()
    .then(() => new Desktop(start).open())
    .catch((error: unknown) => {
      const says = error instanceof Error ? error.message : String(error);
      dialog.showErrorBox("Registrant cannot start", `${says}\n\nInstall it again; your organs stay where they are.`);
      app.exit(1);
    });
}

class Desktop {
  readonly #start: DesktopStart;
  readonly #settings: Settings;
  readonly #desk: DesktopDesk;
  readonly #service: HostService;
  readonly #bridge: WindowBridge;
  #window: BrowserWindow | null = null;

  constructor(start: DesktopStart) {
    this.#start = start;
    this.#settings = new Settings(start.settings);
    this.#desk = desktopDesk(() => this.#shownWindow());
    this.#service = new HostService({
      host: "desktop",
      version: start.version,
      library: start.library ?? this.#settings.now.library ?? start.usualLibrary,
      demos: demoOrgansIn(start.demos),
      desk: this.#desk,
      onLibrary: (library) => this.#settings.remember({ library, recent: [] }),
      onOrgan: (organ) => {
        this.#settings.rememberOrgan(organ);
        this.#setMenu();
      },
      recent: () => this.#settings.now.recent,
      onDefect: (error) => process.stderr.write(`${String(error instanceof Error ? error.stack : error)}\n`),
    });
    this.#bridge = new WindowBridge(this.#service);
    shutSession(session.defaultSession, start.renderer);
    app.on("second-instance", () => this.#show());
    app.on("activate", () => this.#show());
    app.on("before-quit", () => this.#rememberPlace());
    app.once("will-quit", (event) => {
      event.preventDefault();
      void this.#end().finally(() => app.quit());
    });
  }

  /** Opens the window. */
  open(): void {
    this.#setMenu();
    const screens = [screen.getPrimaryDisplay(), ...screen.getAllDisplays()].map(({ workArea }) => workArea);
    const { maximised, ...place } = placeOn(screens, this.#settings.now.window);
    const window = safeWindow(place, this.#start.preload, app.isPackaged);
    this.#window = window;
    this.#bridge.admit(window);
    if (maximised) window.maximize();
    window.on("close", () => this.#rememberPlace());
    window.on("closed", () => {
      this.#window = null;
    });
    void window.loadURL(APP_PAGE);
  }

  #shownWindow(): BrowserWindow {
    if (this.#window === null) this.open();
    return this.#window as BrowserWindow;
  }

  #show(): void {
    const window = this.#shownWindow();
    if (window.isMinimized()) window.restore();
    window.focus();
  }

  #setMenu(): void {
    const template = menuTemplate({
      mac: process.platform === "darwin",
      recent: this.#settings.now.recent,
      command: (command: MenuCommand, document: DocumentId | null) =>
        this.#bridge.tellMenu(this.#shownWindow(), command, document),
      forgetRecent: () => {
        this.#settings.remember({ recent: [] });
        this.#setMenu();
      },
    });
    Menu.setApplicationMenu(Menu.buildFromTemplate(template));
  }

  #rememberPlace(): void {
    const window = this.#window;
    if (window === null || window.isDestroyed()) return;
    const { x, y, width, height } = window.getNormalBounds();
    this.#settings.remember({ window: { x, y, width, height, maximised: window.isMaximized() } });
  }

  async #end(): Promise<void> {
    this.#bridge.close();
    this.#service.close();
    await this.#desk.clear();
    await this.#settings.settled();
  }
}

/** The folder of the demo organs: beside the archive of a packed program. */
export const demoFolder = (unpacked: string): string =>
  app.isPackaged ? join(process.resourcesPath, "instruments") : unpacked;
