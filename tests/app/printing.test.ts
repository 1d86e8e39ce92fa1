import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { axeFindings, scrollsSideways, smallTargets } from "./accessible.ts";
import { launchChromium } from "./chromium.ts";
import { type Served, served } from "./served.ts";

let browser: Browser;
let host: Served;
let page: Page;

beforeAll(async () => {
  host = await served();
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
  await page.goto(host.address);
  await page.getByRole("button", { name: /^All Saints/ }).click();
  await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
  await page.getByRole("button", { name: "See registrations" }).click();
  await page.getByRole("radio").nth(2).click({ timeout: 60_000 });
  await page.getByRole("button", { name: "Cards", exact: true }).click();
  await page.getByRole("img", { name: /^Page 1/ }).waitFor({ timeout: 60_000 });
}, 180_000);
afterAll(async () => {
  await browser?.close();
  await host?.stop();
});

describe("cue cards", () => {
  test("stand on the page with what is drawn, in millimetres of the paper chosen", { timeout: 60_000 }, async () => {
    const card = page.getByRole("img", { name: /^Page 1/ });
    expect(await card.getAttribute("aria-label")).toContain("Oboe 8");
    expect(await card.getAttribute("width")).toBe("148mm");
    await page.getByText("A6", { exact: true }).click();
    await expect.poll(() => page.getByRole("img", { name: /^Page 1/ }).getAttribute("viewBox")).toBe("0 0 148 105");
  });

  test("are saved as a PDF whose text is what is drawn", { timeout: 120_000 }, async () => {
    const [download] = await Promise.all([
      page.waitForEvent("download", { timeout: 60_000 }),
      page.getByRole("button", { name: "Save as PDF" }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/\.pdf$/);
    const file = join(tmpdir(), `registrant-cards-${process.pid}.pdf`);
    await download.saveAs(file);
    const { stdout, error } = spawnSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
    if (error) throw new Error("The tests of PDFs need pdftotext (Debian: apt-get install poppler-utils).");
    expect(stdout).toMatch(/Oboe 8/);
    writeFileSync(file, "");
  });

  test("say what to choose when nothing is chosen to be printed", { timeout: 60_000 }, async () => {
    await page.getByLabel("a card for each change").uncheck();
    await page.getByText("Choose what is to be printed").waitFor();
    await page.getByLabel("a card for each change").check();
    await page.getByRole("img", { name: /^Page 1/ }).waitFor();
  });

  test("the page is in order wide and narrow", { timeout: 120_000 }, async () => {
    for (const width of [1280, 820, 640]) {
      await page.setViewportSize({ width, height: 900 });
      expect(await scrollsSideways(page), String(width)).toBe(false);
      expect(await smallTargets(page, 40), String(width)).toEqual([]);
      expect(await axeFindings(page), String(width)).toEqual([]);
    }
  });
});
