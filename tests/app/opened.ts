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
export async function freshPage(width = 1280, height = 860): Promise<Page> {
  const viewport = { width, height };
  const browser = await sharedChromium();
  try {
    return await browser.newPage({ viewport });
  } catch (fault) {
    // A Chromium that ended between two tests is seen to have ended only when it is asked.
    if (browser.isConnected()) throw fault;
    return (await sharedChromium()).newPage({ viewport });
  }
}

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

/** As {@link openedForEach}, with a piece in the library that lies open on the page of the piece. */
export function pieceOpenedForEach(file: string, text: string, ready: (opened: Opened) => void): void {
  openedForEach(async (opened) => {
    ready(opened);
    const { host, page } = opened;
    host.write(file, text);
    await page.goto(host.address);
    await page.getByRole("button", { name: new RegExp(`^${/^name: (.*)$/m.exec(text)?.[1]}`) }).click();
    await page.getByRole("button", { name: "Piece", exact: true }).click();
  });
}
