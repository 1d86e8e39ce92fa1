import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { inOrder } from "./in-order.ts";
import { freshPage } from "./opened.ts";
import { type Served, served } from "./served.ts";

let host: Served;

beforeAll(async () => {
  host = await served();
}, 120_000);
afterAll(() => host?.stop());

/** What the page said that nobody should have to read. */
const complaints: string[] = [];

async function openApp(): Promise<Page> {
  const page = await freshPage();
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  await page.goto(host.address);
  await page.getByRole("button", { name: /^All Saints/ }).waitFor();
  return page;
}

/** The walk that pages lie on; each stop is a page to be looked at. Others are looked at by tests of their own. */
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
  ["organ", (page) => page.getByRole("button", { name: "Organ", exact: true }).click()],
  [
    "piece",
    async (page) => {
      await page.getByRole("button", { name: "Piece", exact: true }).click();
      await page.getByRole("button", { name: "Add a section" }).click();
    },
  ],
  ["to another organ", (page) => page.getByRole("button", { name: "Carry it to another organ" }).click()],
  ["about", (page) => page.getByRole("button", { name: "About and sources" }).click()],
];

test("every page is in order", { timeout: 300_000 }, async () => {
  const page = await openApp();
  for (const [name, go] of WALK) {
    await go(page);
    await inOrder(page, name);
  }
  // These two are looked at by tests of their own; here they are only to be silent.
  await page.getByRole("button", { name: "Survey", exact: true }).click();
  await page.getByRole("region", { name: "Music of any school" }).locator(".said").waitFor({ timeout: 60_000 });
  await page.getByRole("button", { name: "Stop", exact: true }).click();
  await page.getByRole("button", { name: "Cards", exact: true }).click();
  await page.getByRole("img", { name: /^Page 1/ }).waitFor({ timeout: 60_000 });
  await page.close();
  expect(complaints).toEqual([]);
});

test("a large organ begins with what is drawn of each division, and no row goes that was touched", async () => {
  const page = await openApp();
  await page.getByRole("button", { name: /^Dom Unserer Lieben Frau/ }).click();
  await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
  await page.getByRole("button", { name: "See registrations" }).click();
  await page.getByRole("radio").first().click({ timeout: 60_000 });
  await page.getByRole("button", { name: "Draw by hand" }).click();
  await page.getByText("As you drew it").waitFor();
  const rows = page.locator("button[data-row]");
  const drawn = page.locator("button[data-row][aria-pressed=true]");
  const before = await drawn.count();
  expect(before).toBeGreaterThan(2);
  expect(await rows.count()).toBeLessThan(before + 3);
  await inOrder(page, "a large organ by hand");
  const first = await drawn.first().getAttribute("id");
  await drawn.first().click();
  await expect.poll(() => page.locator(`[id="${first}"]`).getAttribute("aria-pressed")).toBe("false");
  const all = page.getByRole("button", { name: /^All \d+ stops/ }).first();
  await all.click();
  expect(await rows.count()).toBeGreaterThan(before + 10);
  await page.getByRole("button", { name: /^Only what is drawn/ }).click();
  expect(await page.locator(`[id="${first}"]`).count()).toBe(1);
  await page.close();
});

test("no row goes from under the finger, whatever is said above and beside it", { timeout: 120_000 }, async () => {
  const page = await openApp();
  await page.setViewportSize({ width: 820, height: 1180 });
  await page.getByRole("button", { name: /^Holy Trinity/ }).click();
  await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
  await page.getByRole("button", { name: "See registrations" }).click();
  await page.getByRole("radio").first().click({ timeout: 60_000 });
  await page.getByRole("button", { name: "Draw by hand" }).click();
  await page.getByText("As you drew it").waitFor();
  const rows = page.locator("button[data-row]:not(.word)");
  const head = page.locator(".stoplist");
  const heights = new Set<number>();
  for (const at of [0, 7, 14, 21, 28, 35]) {
    const row = rows.nth(at % (await rows.count()));
    await row.scrollIntoViewIfNeeded();
    const before = await row.boundingBox();
    await row.click();
    await page.locator(".remedy .note, .remedy p").first().waitFor();
    heights.add(await head.evaluate((element) => Math.round(element.getBoundingClientRect().top + window.scrollY)));
    expect(Math.abs(((await row.boundingBox())?.y ?? 0) - (before?.y ?? 0)), `row ${at}`).toBeLessThan(1);
  }
  // What is said above did grow meanwhile, or this has shown nothing.
  expect(heights.size).toBeGreaterThan(1);
  /** How much higher what stands above is kept than it need be. */
  const room = () =>
    page.locator(".yours").evaluate((element) => {
      const tall = (): number => Math.round(element.getBoundingClientRect().height);
      const [kept, height] = [element.style.minHeight, tall()];
      element.style.minHeight = "";
      const needed = tall();
      element.style.minHeight = kept;
      return height - needed;
    });
  const top = () => head.evaluate((element) => Math.round(element.getBoundingClientRect().top + window.scrollY));
  /** Makes room as if more had been said above than is now. */
  const makeRoom = () =>
    page.locator(".yours").evaluate((element) => {
      element.style.minHeight = `${element.getBoundingClientRect().height + 90}px`;
    });
  // It goes out of sight, with no row moving, when the list is scrolled to the edge of the window.
  const far = rows.nth((await rows.count()) - 1);
  await page.mouse.move(400, 900);
  await makeRoom();
  const roomy = await top();
  expect(await room()).toBeGreaterThanOrEqual(90);
  await page.mouse.wheel(0, roomy + 40);
  await expect.poll(room).toBe(0);
  expect(await top()).toBeLessThanOrEqual(roomy - 90);
  const still = await far.boundingBox();
  await page.mouse.wheel(0, 1);
  expect(Math.abs(((await far.boundingBox())?.y ?? 0) - (still?.y ?? 0))).toBeLessThan(3);
  // It goes when somebody turns to what stands above the list, which does not move itself.
  await page.evaluate(() => {
    // With a row in hand, an answer that comes late would hold that row still against the room made here.
    (document.activeElement as HTMLElement | null)?.blur();
    window.scrollTo({ top: 0, behavior: "instant" });
  });
  await makeRoom();
  const said = page.locator(".yours .cap");
  const place = await said.boundingBox();
  await said.hover();
  await expect.poll(room).toBe(0);
  expect((await said.boundingBox())?.y).toBe(place?.y);
  // And it goes with the width for which it was kept.
  await makeRoom();
  await page.setViewportSize({ width: 1280, height: 860 });
  await expect.poll(room).toBe(0);
  await page.close();
});

test("what is far behind the best is shown when asked for, and called so", { timeout: 120_000 }, async () => {
  const page = await openApp();
  await page
    .getByRole("button", { name: /Weidenquell/ })
    .first()
    .click();
  await page.getByRole("button", { name: "Texture", exact: true }).click();
  await page
    .getByRole("button", { name: /french classical/i })
    .first()
    .click();
  await page
    .getByRole("button", { name: /petits oiseaux/i })
    .first()
    .click();
  await page.getByRole("button", { name: "See registrations" }).click();
  await page.getByText("what comes next is far behind it").waitFor({ timeout: 30_000 });
  expect(await page.getByRole("radio").count()).toBe(1);
  await page.getByRole("button", { name: "Show 7 more" }).click();
  await expect.poll(() => page.getByRole("radio", { name: /far behind/ }).count()).toBe(7);
  await page.getByRole("button", { name: "The best alone" }).click();
  await expect.poll(() => page.getByRole("radio").count()).toBe(1);
  await page.close();
});

describe("drawing by hand", () => {
  let page: Page;
  beforeAll(async () => {
    page = await openApp();
    for (const [, go] of WALK.slice(0, 4)) await go(page);
  }, 120_000);
  afterAll(() => page.close());

  test("arrows choose a proposal, walk through the stops, and letters find one", async () => {
    await page.locator("#proposal-1").focus();
    await page.keyboard.press("ArrowRight");
    expect(await page.locator("#proposal-2").getAttribute("aria-checked")).toBe("true");
    await page.keyboard.press("ArrowLeft");
    await page.getByRole("button", { name: /^Open Diapason/ }).focus();
    await page.keyboard.press("ArrowDown");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("stop-Great/Clarabella 8");
    await page.keyboard.press("ArrowRight");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("stop-Swell/Stopped Diapason 8");
    await page.keyboard.press("o");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("stop-Swell/Oboe 8");
  });

  test("what is drawn on the page of proposals is drawn by hand, with the focus kept, and undone step by step", async () => {
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
  });

  test("the best single change is offered and does what it says", async () => {
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
  });
});
