import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { inOrder } from "./in-order.ts";
import { openedForEach } from "./opened.ts";
import type { Served } from "./served.ts";

let host: Served;
let page: Page;

openedForEach(async (opened) => {
  ({ host, page } = opened);
  await page.goto(host.address);
});

const CLEAR = `St. Orwin, Ellernbrook

I. HAUPTWERK C - c'''
Principal 8
Gedackt 8
Octave 4
Octave 2
Mixtur IV
Dulcian 8

PEDAL
Subbass 16
Octavbass 8`;

/** The same with two stops that are not clear. */
const UNCLEAR = CLEAR.replace("Octave 2\n", "Flöte\nBlarp 8\n");

const button = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });
const box = () => page.getByRole("textbox", { name: "Paste the stoplist" });
const north = () => page.getByRole("region", { name: "North German" }).locator(".count");
const whole = () => page.getByText(/^All \d+ textures looked at$/);

/** Puts a text where a person has it who copied it from a mail. */
async function onClipboard(text: string): Promise<void> {
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.evaluate((words) => navigator.clipboard.writeText(words), text);
}

describe("the quick way", () => {
  test("from the clipboard to the survey in two interactions, with nothing saved before it is kept", {
    timeout: 120_000,
  }, async () => {
    await onClipboard(CLEAR);
    await box().waitFor();
    await page.keyboard.press("Control+v");
    await button("What can it do?").click();
    await whole().waitFor({ timeout: 60_000 });
    expect(await north().textContent()).toMatch(/^\d+ well/);
    expect(await page.locator(".seen").textContent()).toContain("Hauptwerk: principals 8 4 2 with Mixtur.");
    await page.getByText("Not kept: this organ is in no file").waitFor();

    // Going on from there saves nothing either, and a reload loses nothing.
    await page
      .getByRole("region", { name: "North German" })
      .getByRole("button", { name: /^Texture by texture/ })
      .click();
    await button(/^Organo pleno/).click();
    await page.getByRole("radio").first().click({ timeout: 60_000 });
    await page.waitForTimeout(800);
    expect(host.files()).toEqual([]);
    await page.reload();
    await page.getByRole("radio", { checked: true }).waitFor({ timeout: 60_000 });
    expect(host.files()).toEqual([]);

    // The sheet for a visit can be printed; answers have no place before the organ is in a file.
    await button("Survey").click();
    await button("A visit").click();
    await page.getByText("This organ is in no file yet: keep it").waitFor();
    await button("Print").waitFor();
    expect(await page.getByRole("textbox").count()).toBe(0);
    expect(await page.getByText(/^Where is the blower/).count()).toBe(1);
    expect(host.files()).toEqual([]);
    await button("Survey").click();
    await button("Keep this organ").click();
    await page.getByText(/^Saved in /).waitFor();
    await expect.poll(() => host.files().length).toBe(2);
    expect(host.text(host.files()[0] ?? "")).toContain("name: St. Orwin, Ellernbrook");
    expect(host.text(host.files()[1] ?? "")).toContain("texture: organo-pleno");
    expect(await button("Keep this organ").count()).toBe(0);
  });

  test("leaves out what is not clear and asks for it beside the survey, which follows each answer", {
    timeout: 120_000,
  }, async () => {
    await box().fill(UNCLEAR);
    await button("What can it do?").click();
    await page.getByText(/^Two things are not clear in the list/).waitFor();
    const seen = page.locator(".seen");
    expect(await seen.textContent()).toContain("Hauptwerk: principals 8 4 with Mixtur; no principal 2.");
    await page
      .getByRole("group", { name: /No pitch is printed for Flöte/ })
      .getByRole("button", { name: "2 foot" })
      .click();
    await page.getByText(/^One thing is not clear in the list/).waitFor();
    await expect.poll(() => seen.textContent()).toContain("no principal 2 (Flöte 2 must serve)");
    expect(await button("Keep this organ").count()).toBe(0);
    await page.getByRole("group", { name: /Blarp/ }).getByRole("button", { name: "leave it out" }).click();
    await button("Keep this organ").waitFor();
    await page.keyboard.press("Control+z");
    await page.getByText(/^One thing is not clear in the list/).waitFor();
    await button("Carry a piece here").click();
    await page.getByText("There is no piece in your library yet.").waitFor();
    expect(host.files()).toEqual([]);
  });

  test("a text without any stop is entered as any other, and says so", { timeout: 60_000 }, async () => {
    await box().fill("Dear Ms. Quill, thank you for standing in on Sunday.");
    await button("What can it do?").click();
    await page.getByText("As you pasted it").waitFor();
    expect(await page.locator(".survey").count()).toBe(0);
  });
});

describe("the survey", () => {
  test("is stopped, keeps what it found, and goes on to the end", { timeout: 240_000 }, async () => {
    await button(/^Holy Trinity/).click();
    await button("Survey").click();
    await page.getByRole("region", { name: "Music of any school" }).locator(".said").waitFor({ timeout: 60_000 });
    await button("Stop").click();
    const resting = await page.getByText(/^\d+ of \d+ textures looked at$/).textContent();
    expect(Number.parseInt(resting ?? "0", 10)).toBeGreaterThan(0);
    expect(await page.getByText("not looked at yet").count()).toBeGreaterThan(0);
    // Another page and back: it rests as it was left.
    await button("Texture").click();
    await button("Survey").click();
    expect(await page.getByText(/^\d+ of \d+ textures looked at$/).textContent()).toBe(resting);
    await button("Go on").click();
    await whole().waitFor({ timeout: 150_000 });
    expect(await page.getByText("not looked at yet").count()).toBe(0);
  });

  test("opens a texture without touching what a piece has", { timeout: 120_000 }, async () => {
    await button(/^All Saints/).click();
    await button(/^Melody over an accompaniment/).click();
    await button("See registrations").click();
    await page.getByRole("radio").first().click({ timeout: 60_000 });
    await button("Survey").click();
    await whole().waitFor({ timeout: 60_000 });
    const french = page.getByRole("region", { name: "French classical" });
    await french.getByRole("button", { name: /^Texture by texture/ }).click();
    expect(await french.getByRole("region", { name: "Not possible" }).textContent()).toMatch(/Nearest:/);
    await french.getByRole("button", { name: /^Récit de cornet/ }).click();
    await page.getByRole("radio").first().waitFor({ timeout: 60_000 });
    await button("Piece").click();
    expect(await page.locator(".score > li").count()).toBe(2);
    expect(await page.locator(".score > li").first().locator(".reg .open").count()).toBe(1);
  });

  test("by the keyboard, and in order for everybody in both lights", { timeout: 180_000 }, async () => {
    await button(/^All Saints/).click();
    await button("Survey").focus();
    await page.keyboard.press("Enter");
    await whole().waitFor({ timeout: 60_000 });
    const open = page
      .getByRole("region", { name: "French symphonic" })
      .getByRole("button", { name: /^Texture by texture/ });
    await open.focus();
    await page.keyboard.press("Space");
    const close = page.getByRole("region", { name: "French symphonic" }).getByRole("button", { name: /^Close/ });
    expect(await close.evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/see its registrations$/);
    await inOrder(page, "survey");
  });
});
