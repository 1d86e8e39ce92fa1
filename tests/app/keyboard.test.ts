import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { openedForEach } from "./opened.ts";
import type { Served } from "./served.ts";

let host: Served;
let page: Page;

openedForEach(async (opened) => {
  ({ host, page } = opened);
  await page.setViewportSize({ width: 1024, height: 768 });
});

/** What has the focus, as it is read out. */
const focused = (): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement;
    return `${element?.getAttribute("aria-label") ?? element?.textContent ?? ""}`.trim();
  });

/** Presses Tab until something whose words begin so has the focus; fails when the whole page was gone through. */
async function tabTo(words: string): Promise<void> {
  for (let presses = 0; presses < 200; presses++) {
    if ((await focused()).startsWith(words)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`No Tab leads to "${words}".`);
}

test("by the keyboard alone: paste, answer, choose, draw, undo, pin", { timeout: 180_000 }, async () => {
  await page.goto(host.address);
  await page.getByRole("textbox", { name: "Paste the stoplist" }).waitFor();
  await page.keyboard.insertText(
    "Kapelle zu Ellernbrook\nHauptwerk\nPrincipal 8\nGedackt 8\nOctave 4\nOberwerk\nFlöte\nPrincipal 4\nPedal\nSubbass 16\nOctavbass 8",
  );
  await page.keyboard.press("Control+Enter");
  await page.getByText("As you pasted it").waitFor();
  await tabTo("8 foot");
  await page.keyboard.press("Enter");
  await tabTo("Use this organ");
  await page.keyboard.press("Enter");
  await tabTo("Choose a texture");
  await page.keyboard.press("Enter");
  await tabTo("Full chorus");
  await page.keyboard.press("Space");
  await tabTo("See registrations");
  await page.keyboard.press("Enter");
  await page.getByRole("radio").first().waitFor({ timeout: 60_000 });
  await tabTo("1st");
  await page.keyboard.press("Space");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowLeft");
  await tabTo("Principal");
  await page.keyboard.press("End");
  await page.keyboard.press("Space");
  await page.getByText("As you drew it").waitFor();
  await page.keyboard.press("Control+z");
  await page.getByRole("radio", { checked: true }).waitFor();
  await tabTo("Pin it");
  await page.keyboard.press("Enter");
  await page.getByText("One section, all registered").waitFor();
  await page.getByText(/^Saved in pieces/).waitFor();
  const piece = host.files().find((file) => file.startsWith("pieces/")) ?? "";
  await expect.poll(() => host.text(piece)).toContain("pinned: true");
});
