import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach } from "vitest";
import { launchChromium } from "./chromium.ts";
import { type Served, served } from "./served.ts";

/** What a test of the screens has at hand: a host of its own, and a page that has not gone anywhere yet. */
export interface Opened {
  host: Served;
  page: Page;
}

/**
 * A browser for all tests of a file, and for each of them a fresh host and page, stopped behind it.
 *
 * @param ready what is done with these before the test begins.
 */
export function openedForEach(ready: (opened: Opened) => void | Promise<void>): void {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchChromium();
  });
  afterAll(async () => {
    await browser?.close();
  });
  beforeEach(async () => {
    const host = await served();
    const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
    await ready({ host, page });
    return async () => {
      await page.close();
      await host.stop();
    };
  }, 120_000);
}
