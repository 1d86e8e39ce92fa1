import { type Browser, chromium } from "playwright-core";
import { chromiumPath } from "../house/outside-programs.ts";

/** A Chromium without a window. */
export const launchChromium = (): Promise<Browser> =>
  chromium.launch({
    executablePath: chromiumPath(),
    args: [...(process.getuid?.() === 0 ? ["--no-sandbox"] : []), "--disable-background-networking", "--no-first-run"],
  });

let running: Promise<Browser> | undefined;

/**
 * The Chromium of this worker, started for the first file of tests that asks and ended with the worker. Pages share
 * nothing in it: each has a store of its own. One that has ended by itself is followed by another, which costs the tests
 * behind it nothing.
 */
export async function sharedChromium(): Promise<Browser> {
  running ??= launchChromium();
  const browser = await running;
  if (browser.isConnected()) return browser;
  running = launchChromium();
  return running;
}
