import { BrowserWindow, type BrowserWindowConstructorOptions, type WebContents } from "electron";
import { isAppPage } from "./app-address.ts";

/** Smallest size of the window in pixels. */
const SMALLEST = { minWidth: 640, minHeight: 480 };

/** Keeps a page where it is: it goes nowhere, opens nothing, holds no other page. */
export function confine(contents: WebContents): void {
  contents.on("will-navigate", (event) => {
    // Loading itself anew is no going.
    if (!isAppPage(event.url)) event.preventDefault();
  });
  contents.on("will-frame-navigate", (event) => {
    if (!event.isMainFrame || !isAppPage(event.url)) event.preventDefault();
  });
  contents.on("will-redirect", (event) => event.preventDefault());
  contents.on("will-attach-webview", (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: "deny" }));
}

/**
 * A window for a page that is not trusted.
 *
 * @param preload absolute path of the bundled preload script.
 */
export function safeWindow(place: BrowserWindowConstructorOptions, preload: string, packaged: boolean): BrowserWindow {
  const window = new BrowserWindow({
    ...SMALLEST,
    ...place,
    title: "Registrant",
    show: false,
    webPreferences: {
      preload,
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
      // Dictionaries would be fetched from the network.
      spellcheck: false,
      devTools: !packaged,
    },
  });
  window.once("ready-to-show", () => window.show());
  return window;
}
