import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { axeFindings, scrollsSideways, smallTargets } from "./accessible.ts";
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

/** What the page said that nobody should have to read. */
const complaints: string[] = [];

async function openApp(width = 1280, height = 860): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height } });
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  await page.goto(host.address);
  await page.getByRole("button", { name: /^All Saints/ }).waitFor();
  return page;
}

/** The walk that every page lies on; each stop is a page to be looked at. */
const WALK: readonly (readonly [name: string, go: (page: Page) => Promise<unknown>])[] = [
  ["first page", (page) => page.getByText("16 stops").first().waitFor()],
  ["textures", (page) => page.getByRole("button", { name: /^All Saints/ }).click()],
  ["texture chosen", (page) => page.getByRole("button", { name: /^Melody over an accompaniment/ }).click()],
  [
    "registrations",
    async (page) => {
      await page.getByRole("button", { name: "See registrations" }).click();
      await page.getByRole("radio").first().click({ timeout: 30_000 });
    },
  ],
  [
    "by hand",
    async (page) => {
      await page.getByRole("button", { name: "Draw by hand" }).click();
      await page.getByRole("button", { name: /^Larigot/ }).click();
    },
  ],
  [
    "survey",
    async (page) => {
      await page.getByRole("button", { name: "Survey", exact: true }).click();
      // A school is enough to look at the page; the whole survey has tests of its own.
      const first = page.getByRole("region", { name: "Music of any school" });
      await first.locator(".said").waitFor({ timeout: 60_000 });
      await page.getByRole("button", { name: "Stop", exact: true }).click();
      await first.getByRole("button", { name: /^Texture by texture/ }).click();
    },
  ],
  ["organ", (page) => page.getByRole("button", { name: "Organ", exact: true }).click()],
  [
    "piece",
    async (page) => {
      await page.getByRole("button", { name: "Piece", exact: true }).click();
      await page.getByRole("button", { name: "Add a section" }).click();
    },
  ],
  ["to another organ", (page) => page.getByRole("button", { name: "Carry it to another organ" }).click()],
  [
    "cards",
    async (page) => {
      await page.getByRole("button", { name: "Cards", exact: true }).click();
      await page.getByRole("img", { name: /^Page 1/ }).waitFor({ timeout: 60_000 });
    },
  ],
  ["about", (page) => page.getByRole("button", { name: "About and sources" }).click()],
];

const SIZES = [
  [1280, 860],
  [1024, 768],
  [820, 1180],
  [640, 900],
] as const;

/** Widths at which the whole of axe is run; the layout has one break between them. */
const AXED: readonly number[] = [1280, 820];

describe("every page", () => {
  for (const theme of ["paper", "loft"] as const) {
    test(`is in order by ${theme} light, in windows wide and narrow`, { timeout: 180_000 }, async () => {
      const page = await openApp();
      if (theme === "loft") await page.getByRole("button", { name: "Loft light" }).click();
      for (const [name, go] of WALK) {
        await page.setViewportSize({ width: 1280, height: 860 });
        await go(page);
        for (const [width, height] of SIZES) {
          await page.setViewportSize({ width, height });
          const where = `${name} at ${width} x ${height}`;
          expect(await scrollsSideways(page), `${where} scrolls sideways`).toBe(false);
          expect(await smallTargets(page, 40), where).toEqual([]);
          if (AXED.includes(width)) expect(await axeFindings(page), where).toEqual([]);
        }
      }
      await page.close();
      expect(complaints).toEqual([]);
    });
  }

  test("holds at twice the size of print", { timeout: 90_000 }, async () => {
    const page = await openApp();
    for (let step = 0; step < 5; step++) await page.getByRole("button", { name: "Larger print" }).click();
    await page.getByText("Print 200 %").waitFor();
    for (const [name, go] of WALK) {
      await go(page);
      expect(await scrollsSideways(page), `${name} scrolls sideways`).toBe(false);
    }
    await page.close();
  });
});

describe("drawing by hand", () => {
  test("what is drawn on the page of proposals is drawn by hand, with the focus kept, and undone step by step", {
    timeout: 60_000,
  }, async () => {
    const page = await openApp();
    for (const [, go] of WALK.slice(0, 4)) await go(page);
    const first = await page.getByRole("radio", { checked: true }).textContent();
    await page.getByRole("button", { name: /^Larigot/ }).click();
    await page.getByText("As you drew it").waitFor();
    const larigot = page.getByRole("button", { name: /^Larigot/ });
    expect(await larigot.getAttribute("aria-pressed")).toBe("true");
    expect(await larigot.evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.press("Space");
    expect(await larigot.getAttribute("aria-pressed")).toBe("false");
    await page.keyboard.press("Control+z");
    expect(await larigot.getAttribute("aria-pressed")).toBe("true");
    await page.keyboard.press("Control+z");
    expect(await page.getByRole("radio", { checked: true }).textContent()).toBe(first);
    await page.close();
  });

  test("the best single change is offered and does what it says", { timeout: 60_000 }, async () => {
    const page = await openApp();
    for (const [, go] of WALK.slice(0, 4)) await go(page);
    await page.getByRole("button", { name: "Draw by hand" }).click();
    await page.getByRole("button", { name: "Put all in" }).click();
    await page.getByRole("button", { name: /^Nazard/ }).click();
    await page.getByText("Must change").first().waitFor();
    const words = page.locator(".remedy .big");
    await words.waitFor();
    const said = await words.textContent();
    expect(said).toMatch(/^Draw /);
    await page.getByRole("button", { name: "Do it", exact: true }).click();
    const name = said?.replace(/^Draw /, "").replace(/ \d.*$/, "") ?? "";
    const pressed = page.locator(`button[aria-pressed=true]`, { hasText: name });
    expect(await pressed.count()).toBeGreaterThan(0);
    await page.close();
  });
});

describe("by the keyboard alone", () => {
  test("arrows choose a proposal, walk through the stops, and letters find one", { timeout: 60_000 }, async () => {
    const page = await openApp();
    for (const [, go] of WALK.slice(0, 4)) await go(page);
    await page.locator("#proposal-1").focus();
    await page.keyboard.press("ArrowRight");
    expect(await page.locator("#proposal-2").getAttribute("aria-checked")).toBe("true");
    await page.getByRole("button", { name: /^Open Diapason/ }).focus();
    await page.keyboard.press("ArrowDown");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("stop-Great/Clarabella 8");
    await page.keyboard.press("ArrowRight");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("stop-Swell/Stopped Diapason 8");
    await page.keyboard.press("o");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("stop-Swell/Oboe 8");
    await page.close();
  });
});
