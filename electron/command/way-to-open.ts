import type { Runtime } from "./desktop-runtime.ts";

/** What decides where the app opens. */
export interface Circumstances {
  /** A window can open on this machine. */
  readonly screen: boolean;
  /** `--browser` and `--window` of the command line. */
  readonly browser: boolean;
  readonly window: boolean;
  /** The process belongs to the system's own account. */
  readonly root: boolean;
  /** Somebody sits before this terminal. */
  readonly attended: boolean;
  readonly runtime: Runtime | null;
  /** The runtime that could not be fetched at an earlier start. */
  readonly notFetched: string | null;
}

/** Where the app opens; `because` is said to the person, unless it is `null`. */
export type WayToOpen =
  | { readonly to: "window"; readonly program: string }
  | { readonly to: "fetch"; readonly version: string }
  | { readonly to: "browser"; readonly because: string | null };

const browser = (because: string | null): WayToOpen => ({ to: "browser", because });

/** Decides where the app opens. */
export function wayToOpen(given: Circumstances): WayToOpen {
  const { runtime } = given;
  if (given.browser || !given.screen) {
    return browser(given.window && !given.screen ? "There is no screen here on which a window could open." : null);
  }
  // The window's sandbox does not work for this account, and without it no window is opened.
  if (given.root)
    return browser("No window is opened for the system's own account (root); the app opens in your browser.");
  if (runtime === null) return browser("The desktop window is not installed here; the app opens in your browser.");
  if (runtime.program !== null) return { to: "window", program: runtime.program };
  if (given.window || (given.attended && given.notFetched !== runtime.version)) {
    return { to: "fetch", version: runtime.version };
  }
  return browser(
    'The desktop window\'s program is not here, so the app opens in your browser; "registrant open --window" fetches it.',
  );
}
