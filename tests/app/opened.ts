import type { Page } from "playwright-core";
import { beforeEach } from "vitest";
import { sharedChromium } from "./chromium.ts";
import { type Served, served } from "./served.ts";

/** What a test of the screens has at hand: a host of its own, and a page that has not gone anywhere yet. */
export interface Opened {
  host: Served;
  page: Page;
}

/** A page that has not gone anywhere yet, in the worker's Chromium. */
export const freshPage = async (width = 1280, height = 860): Promise<Page> =>
  (await sharedChromium()).newPage({ viewport: { width, height } });

/**
 * For each test of a file a fresh host and page, stopped behind it.
 *
 * @param ready what is done with these before the test begins.
 */
export function openedForEach(ready: (opened: Opened) => void | Promise<void>): void {
  beforeEach(async () => {
    const host = await served();
    const page = await freshPage();
    await ready({ host, page });
    return async () => {
      await page.close();
      await host.stop();
    };
  }, 120_000);
}
