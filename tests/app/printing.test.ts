import { spawnSync } from "node:child_process";
import { rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { inOrder } from "./in-order.ts";
import { freshPage } from "./opened.ts";
import { type Served, served } from "./served.ts";

let host: Served;
let page: Page;

beforeAll(async () => {
  host = await served();
  page = await freshPage();
  await page.goto(host.address);
  await page.getByRole("button", { name: /^All Saints/ }).click();
  await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
  await page.getByRole("button", { name: "See registrations" }).click();
  await page.getByRole("radio").nth(2).click({ timeout: 60_000 });
  await page.getByRole("button", { name: "Cards", exact: true }).click();
  await page.getByRole("img", { name: /^Page 1/ }).waitFor({ timeout: 60_000 });
}, 180_000);
afterAll(async () => {
  await page?.close();
  await host?.stop();
});

/** The text of the PDF that the page saves. */
async function savedPdf(): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 60_000 }),
    page.getByRole("button", { name: "Save as PDF" }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.pdf$/);
  const file = join(tmpdir(), `registrant-cards-${process.pid}.pdf`);
  await download.saveAs(file);
  const { stdout, error } = spawnSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
  if (error) throw new Error("The tests of PDFs need pdftotext (Debian: apt-get install poppler-utils).");
  rmSync(file);
  return stdout;
}

describe("cue cards", () => {
  test("stand on the page with what is drawn, in millimetres of the paper chosen", { timeout: 60_000 }, async () => {
    const card = page.getByRole("img", { name: /^Page 1/ });
    expect(await card.getAttribute("aria-label")).toContain("Oboe 8");
    expect(await card.getAttribute("width")).toBe("148mm");
    await page.getByText("A6", { exact: true }).click();
    await expect.poll(() => page.getByRole("img", { name: /^Page 1/ }).getAttribute("viewBox")).toBe("0 0 148 105");
  });

  test("are saved as a PDF whose text is what is drawn", { timeout: 120_000 }, async () => {
    expect(await savedPdf()).toMatch(/Oboe 8/);
    // It is noted beside the piece; a change of the music is told, and what is printed can be no more than that.
    await page.getByText(/^What you printed on .* still holds\.$/).waitFor();
    await page.getByRole("button", { name: "Piece", exact: true }).click();
    await page.getByRole("textbox", { name: "Name of section 1" }).fill("Verse of the evening");
    await page.getByRole("button", { name: "Cards", exact: true }).click();
    await page.getByText(/^Since you printed on .*: card 1 has changed\.$/).waitFor({ timeout: 60_000 });
    await page.getByRole("button", { name: "Print only these" }).click();
    await page.getByRole("button", { name: "Print all cards" }).click();
  });

  test("say what to choose when nothing is chosen to be printed", { timeout: 60_000 }, async () => {
    await page.getByLabel("a card for each change").uncheck();
    await page.getByText("Choose what is to be printed").waitFor();
    await page.getByLabel("a card for each change").check();
    await page.getByRole("img", { name: /^Page 1/ }).waitFor();
  });

  test("the page is in order wide and narrow", { timeout: 120_000 }, async () => {
    await inOrder(page, "cue cards");
  });
});

describe("a visit", () => {
  const answer = (question: string | RegExp) => page.getByRole("textbox", { name: question });
  const ownFile = () => host.files().find((file) => file.startsWith("organs/")) ?? "";

  test("is filled in afterwards, settles what it can, stands in the organ's file, and is taken back step by step", {
    timeout: 120_000,
  }, async () => {
    await page.setViewportSize({ width: 1280, height: 860 });
    await page.getByRole("button", { name: "Organ", exact: true }).click();
    await page.getByRole("button", { name: "A visit" }).click();
    await page.getByText(/^0 of \d+ questions answered$/).waitFor();
    await answer(/^Where is the blower/).fill("Behind the vestry door.\nTwo minutes.");
    await answer(/^Is there a guide/).fill("In the bench.");
    await page.getByText(/^2 of \d+ questions answered$/).waitFor();
    await page.getByRole("combobox", { name: "Mark a stop off" }).selectOption({ label: "Nazard 2 2/3" });
    await page.getByRole("combobox", { name: "Knobs of the Swell" }).selectOption({ label: "at your right" });
    await page.getByText("On which side does each division draw (in the file Swell right)").waitFor();
    await page.getByRole("combobox", { name: "What the room is like" }).selectOption("dry");
    await expect.poll(() => host.text(ownFile()), { timeout: 20_000 }).toMatch(/room: dry/);
    const text = host.text(ownFile());
    expect(text).toContain('\nvisit:\n  blower: "Behind the vestry door.\\nTwo minutes."\n  guide: In the bench.\n');
    expect(text).toMatch(/Nazard.*off: true/);
    expect(text).toContain("\nconsole: {right: [Swell]}\n");

    const printed = await savedPdf();
    expect(printed.replace(/\s+/g, " ")).toContain("In the bench.");
    expect(printed).toMatch(/Two minutes/);

    await page.getByRole("button", { name: /^Undo the room/ }).click();
    await page.getByRole("button", { name: /^Undo the side of the Swell/ }).click();
    await page.getByRole("button", { name: /^Undo marking Nazard/ }).click();
    await page.getByRole("button", { name: /^Undo an answer/ }).click();
    await page.getByText(/^1 of \d+ questions answered$/).waitFor();
    expect(await answer(/^Is there a guide/).inputValue()).toBe("");
    expect(await answer(/^Where is the blower/).inputValue()).toBe("Behind the vestry door.\nTwo minutes.");
    await expect.poll(() => host.text(ownFile()), { timeout: 20_000 }).not.toContain("guide:");
  });

  test("is in order for everybody in both lights", { timeout: 180_000 }, () => inOrder(page, "a visit"));
});
