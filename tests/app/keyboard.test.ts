import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchChromium } from "./chromium.ts";
import { type Served, served } from "./served.ts";

let browser: Browser;
let host: Served;

beforeAll(async () => {
  host = await served();
  browser = await launchChromium();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await host?.stop();
});

/** What has the focus, as it is read out. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement;
    return `${element?.getAttribute("aria-label") ?? element?.textContent ?? ""}`.trim();
  });

/** Presses Tab until something whose words begin so has the focus; fails when the whole page was gone through. */
async function tabTo(page: Page, words: string): Promise<void> {
  for (let presses = 0; presses < 200; presses++) {
    if ((await focused(page)).startsWith(words)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`No Tab leads to "${words}".`);
}

test("by the keyboard alone: paste, answer, choose, draw, undo, keep", { timeout: 180_000 }, async () => {
  const page = await browser.newPage({ viewport: { width: 1024, height: 768 } });
  await page.goto(host.address);
  await page.getByRole("textbox", { name: "Paste the stoplist" }).waitFor();
  await page.keyboard.insertText(
    "Kapelle zu Ellernbrook\nHauptwerk\nPrincipal 8\nGedackt 8\nOctave 4\nOberwerk\nFlöte\nPrincipal 4\nPedal\nSubbass 16\nOctavbass 8",
  );
  await page.keyboard.press("Control+Enter");
  await page.getByText("As you pasted it").waitFor();
  await tabTo(page, "8 foot");
  await page.keyboard.press("Enter");
  await tabTo(page, "Use this organ");
  await page.keyboard.press("Enter");
  await tabTo(page, "Choose a texture");
  await page.keyboard.press("Enter");
  await tabTo(page, "Full chorus");
  await page.keyboard.press("Space");
  await tabTo(page, "See registrations");
  await page.keyboard.press("Enter");
  await page.getByRole("radio").first().waitFor({ timeout: 60_000 });
  await tabTo(page, "1st");
  await page.keyboard.press("Space");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowLeft");
  await tabTo(page, "Principal");
  await page.keyboard.press("End");
  await page.keyboard.press("Space");
  await page.getByText("As you drew it").waitFor();
  await page.keyboard.press("Control+z");
  await page.getByRole("radio", { checked: true }).waitFor();
  await tabTo(page, "Keep it");
  await page.keyboard.press("Enter");
  await page.getByText("One section, all registered").waitFor();
  await page.getByText(/^Saved in pieces/).waitFor();
  const piece = host.files().find((file) => file.startsWith("pieces/")) ?? "";
  await expect.poll(() => host.text(piece)).toContain("pinned: true");
  await page.close();
});
