import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { test } from "vitest";
import { launchChromium } from "./chromium.ts";
import { served } from "./served.ts";

// Pictures of every page in dist/screenshots, for people to look at: npm run screenshots.

const LIST = `Dorfkirche zu Ellernbrook
erbaut 1741

I. HAUPTWERK C - c'''
Principal 8
Rohrflöte 8
Octave 4
Spitzflöte 4
Quinta 3
Octave 2
Mixtur IV
Trompete 8

II. OBERWERK
Gedackt 8
Flöte
Principal 4
Sesquialtera
Sifflöte 1 1/2
Vox humana 8

PEDAL
Subbass 16, Octavbass 8
Posaune 16
Cornett

Schiebekoppel II/I
Tremulant`;

const folder = join(import.meta.dirname, "..", "..", "dist", "screenshots");

interface Shot {
  readonly name: string;
  readonly go: (page: Page) => Promise<unknown>;
}

const button = (page: Page, name: string | RegExp) =>
  page.getByRole("button", { name, exact: typeof name === "string" });

const SHOTS: readonly Shot[] = [
  { name: "1-first", go: (page) => page.getByText("121 stops").waitFor() },
  {
    name: "2-entering",
    go: async (page) => {
      await page.getByRole("textbox", { name: "Paste the stoplist" }).fill(LIST);
      await button(page, "Read it").click();
      await page.getByText("tremulant, whole organ").first().waitFor();
      await page.getByRole("group", { name: /Flöte/ }).getByRole("button", { name: "4 foot" }).click();
    },
  },
  {
    name: "2-organ",
    go: async (page) => {
      await button(page, /Registrant|Ellernbrook/)
        .first()
        .click();
      await page.getByRole("button", { name: /^All Saints/ }).click();
      await button(page, "Organ").click();
      await button(page, /^Oboe/).click();
    },
  },
  { name: "3-textures", go: (page) => button(page, "Texture").click() },
  {
    name: "3-texture-chosen",
    go: async (page) => {
      await button(page, /^Melody over an accompaniment/).click();
      await button(page, "as usual").click();
    },
  },
  {
    name: "4-registrations",
    go: async (page) => {
      await button(page, "See registrations").click();
      await page.getByRole("radio").nth(2).click({ timeout: 60_000 });
      await page.locator(".ledger button").first().click();
    },
  },
  {
    name: "5-by-hand",
    go: async (page) => {
      await button(page, "Draw by hand").click();
      await button(page, /^Oboe/).click();
      await button(page, /^Nazard/).click();
      await button(page, /^Gemshorn/).click();
      await button(page, /^Bass Flute/).click();
      await page.locator(".remedy .big").waitFor();
      await page.waitForTimeout(300);
    },
  },
  {
    name: "6-piece",
    go: async (page) => {
      await button(page, "Piece").click();
      await page.getByRole("textbox", { name: "Name of the piece" }).fill("Lantern Partita");
      await page.getByRole("textbox", { name: "Name of section 1" }).fill("First verse");
      await button(page, "Add a section").click();
      await page.getByRole("textbox", { name: "Name of section 2" }).fill("Second verse");
      await button(page, "See registrations").click();
      await page.getByRole("radio").nth(3).click({ timeout: 60_000 });
      await button(page, "Piece").click();
      await page.getByText(/^One change/).waitFor({ timeout: 60_000 });
    },
  },
  {
    name: "7-cards",
    go: async (page) => {
      await button(page, "Cards").click();
      await page.locator(".sheet").first().waitFor({ timeout: 60_000 });
      await page.getByText("overview").click();
      await page.locator(".sheet").nth(1).waitFor({ timeout: 60_000 });
    },
  },
  {
    name: "7-carry",
    go: async (page) => {
      await button(page, "Piece").click();
      await button(page, "Carry it to another organ").click();
      await page
        .getByRole("combobox", { name: "Organ", exact: true })
        .selectOption({ label: "St. Nikolai, Wiekenborg" });
      await page.locator(".carried").first().waitFor({ timeout: 60_000 });
    },
  },
  {
    name: "8-survey",
    go: async (page) => {
      await button(page, "Survey").click();
      await page.getByText(/^All \d+ textures looked at$/).waitFor({ timeout: 60_000 });
      await page
        .getByRole("region", { name: "English cathedral" })
        .getByRole("button", { name: /^Texture by texture/ })
        .click();
    },
  },
  {
    name: "8-at-sight",
    go: async (page) => {
      await page.locator(".home").click();
      await page.getByRole("textbox", { name: "Paste the stoplist" }).fill(LIST);
      await button(page, "What can it do?").click();
      await page.getByText(/^All \d+ textures looked at$/).waitFor({ timeout: 60_000 });
    },
  },
  { name: "9-about", go: (page) => button(page, "About and sources").click() },
];

/** How the pages are looked at. Loft light shows the same in other ink: two sizes of it are enough. */
const MANNERS = [
  { light: "paper", width: 1280, height: 860, print: 100 },
  { light: "paper", width: 1024, height: 768, print: 100 },
  { light: "loft", width: 1024, height: 768, print: 100 },
  { light: "paper", width: 820, height: 1180, print: 100 },
  { light: "loft", width: 820, height: 1180, print: 100 },
  { light: "paper", width: 1280, height: 860, print: 200 },
] as const;

test("pictures of every page", { timeout: 1_200_000 }, async () => {
  const host = await served();
  const browser = await launchChromium();
  mkdirSync(folder, { recursive: true });
  for (const { light, width, height, print } of MANNERS) {
    const page = await browser.newPage({ viewport: { width, height } });
    await page.goto(host.address);
    if (light === "loft") await button(page, "Loft light").click();
    for (let step = 100; step < print; step += 20) await button(page, "Larger print").click();
    for (const { name, go } of SHOTS) {
      await go(page);
      await page.mouse.move(0, 0);
      await page.screenshot({ path: join(folder, `${name}-${light}-${width}-${print}.png`), fullPage: true });
    }
    await page.close();
  }
  await browser.close();
  await host.stop();
  console.log(`Pictures in ${folder}`);
});
