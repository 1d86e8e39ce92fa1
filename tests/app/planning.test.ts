import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { axeFindings } from "./accessible.ts";
import { inOrder } from "./in-order.ts";
import { pieceOpenedForEach } from "./opened.ts";
import type { Served } from "./served.ts";

const FILE = "pieces/lantern.yaml";
const PIECE = `# for Sunday
registrant: piece/1
name: Lantern Partita
organ: All Saints, Sallowby
sections:
  - name: First verse
    bars: 1-24
    texture: melody-over-accompaniment
    tempo: slow
  - name: Second verse   # ask for the Oboe
    bars: 25-48
    texture: trio
    before: {what: rest, beats: 4}
  - name: Swelling
    bars: 49-64
    texture: crescendo
    before: pause
  - name: Last verse
    bars: 65-80
    texture: plenum
    before: {what: fermata, beats: 3}
    louder-than: First verse
`;

let host: Served;
let page: Page;

pieceOpenedForEach(FILE, PIECE, (opened) => {
  ({ host, page } = opened);
});

const plan = () => page.getByRole("button", { name: "Plan", exact: true });
const told = () => page.getByText(/^Planned four sections: /);
const registrations = (): Promise<readonly string[]> => page.locator(".reg").allInnerTexts();
const inFile = (): string => host.text(FILE);

describe("planning a piece", () => {
  test("fills every section, in the file too, as one step that undo takes back", { timeout: 180_000 }, async () => {
    await plan().click();
    await told().waitFor({ timeout: 90_000 });
    expect(await told().textContent()).toMatch(/: four filled\./);
    expect(await page.locator(".reg .open").count()).toBe(4);
    expect(await page.locator(".reg", { hasText: "further step" }).count()).toBe(1);
    await expect.poll(() => inFile().match(/^ {4}registration:/gm)?.length).toBe(4);
    expect(inFile()).toMatch(/^ {4}steps:/m);
    expect(inFile()).toContain("# ask for the Oboe");
    await page.getByRole("button", { name: "Undo the plan" }).click();
    expect(await page.locator(".reg .open").count()).toBe(0);
    await expect.poll(inFile).toBe(PIECE);
    await page.keyboard.press("Control+Shift+z");
    await told().waitFor();
    expect(await page.locator(".reg .open").count()).toBe(4);

    // Beside it, what another weight would make of it: taken, kept, and compared with what was before.
    await expect.poll(() => inFile().match(/^ {4}registration:/gm)?.length).toBe(4);
    const planned = inFile();
    await page.getByRole("button", { name: "Keep this plan to compare with" }).click();
    const other = page.getByRole("combobox", { name: "Compare the plan with" });
    await other.selectOption("best-sound");
    const compare = page.getByRole("region", { name: "Compare" });
    await compare
      .getByText(/^By the points of its registrations it is [\d.]+ better, with/)
      .waitFor({ timeout: 60_000 });
    expect(await compare.getByRole("row").count()).toBeGreaterThan(1);
    expect(await axeFindings(page)).toEqual([]);
    await compare.getByRole("button", { name: "Take the other" }).click();
    await compare.getByText("Both are registered alike, with the same work.").waitFor({ timeout: 60_000 });
    await expect.poll(inFile).not.toBe(planned);
    await other.selectOption("kept");
    await compare
      .getByText(/^By the points of its registrations it is [\d.]+ worse, with/)
      .waitFor({ timeout: 60_000 });
    await page.getByRole("button", { name: "Undo taking the other plan" }).click();
    await compare.getByText("Both are registered alike, with the same work.").waitFor({ timeout: 60_000 });
    await expect.poll(inFile).toBe(planned);
  });

  test("shows how loud the piece is, and the changes where they fall", { timeout: 180_000 }, async () => {
    expect(await page.locator(".line").count()).toBe(0);
    await plan().click();
    const line = page.getByRole("img", { name: /^How loud the piece is: / });
    await line.waitFor({ timeout: 90_000 });
    const words = await line.getAttribute("aria-label");
    expect(words).toMatch(/First verse, .*; Second verse, .*; Swelling, .*, growing until .*; Last verse, /);
    // A stretch for each section, and for each step of the one that grows; none is drawn as open.
    const steps = Number(await page.locator(".inner .chg").count());
    expect(steps).toBeGreaterThan(1);
    expect(await line.locator("rect").count()).toBe(4 + steps);
    expect(await line.locator("rect.open").count()).toBe(0);
    // The softest and the loudest are as thin and as thick as the line can be.
    const weights = await line
      .locator("rect")
      .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
    expect([Math.min(...weights), Math.max(...weights)].map(Math.round)).toEqual([2, 20]);
    expect(words).toMatch(/the softest.*the loudest/);
    expect(await page.locator(".score > li > .chg").count()).toBe(3);
  });

  test("leaves a pin as it stands, and plans the rest round it", { timeout: 180_000 }, async () => {
    await plan().click();
    await told().waitFor({ timeout: 90_000 });
    await page.locator(".reg .open").first().click();
    await page.getByRole("button", { name: "Put all in" }).click();
    await page.getByRole("button", { name: /^Open Diapason/ }).click();
    await page.getByRole("button", { name: "Piece", exact: true }).click();
    await page.getByRole("button", { name: "Pin First verse" }).click();
    await expect.poll(inFile).toContain("pinned: true");
    const [first] = await registrations();
    expect(first).toContain("pinned");
    await plan().click();
    await told().waitFor({ timeout: 90_000 });
    expect(await told().textContent()).toContain("one pinned");
    expect((await registrations())[0]).toBe(first);
    await page.getByRole("button", { name: "Unpin First verse" }).click();
    await plan().click();
    await expect
      .poll(async () => (await registrations())[0], { timeout: 90_000 })
      .not.toBe(first?.replace("pinned", ""));
    expect((await registrations())[0]).not.toContain("pinned");
  });

  test("keeps to how sections are to sound beside each other, and does not write what contradicts", {
    timeout: 180_000,
  }, async () => {
    const stands = page.getByRole("combobox", { name: "How Second verse stands to another section" });
    await stands.selectOption("softer-than");
    await expect.poll(inFile).toContain("softer-than: First verse");
    const which = page.getByRole("combobox", { name: "Which section Second verse is softer than" });
    await which.selectOption({ label: "Last verse" });
    await expect.poll(inFile).toContain("softer-than: Last verse");
    expect(inFile()).toContain("# ask for the Oboe");
    await page.getByRole("combobox", { name: "How First verse stands to another section" }).selectOption("louder-than");
    const first = page.getByRole("combobox", { name: "Which section First verse is louder than" });
    await first.selectOption({ label: "Last verse" });
    await page.getByRole("alert").filter({ hasText: "Last verse" }).waitFor();
    await page.getByRole("textbox", { name: "Name of section 4" }).fill("Finale");
    await expect.poll(inFile).toContain("softer-than: Finale");
    await stands.selectOption("");
    await expect.poll(inFile).not.toContain("softer-than");
    await page.getByRole("button", { name: /^Undo how Second verse stands/ }).click();
    await expect.poll(inFile).toContain("softer-than: Finale");
  });

  test("by the keyboard, with the focus kept, and in order for everybody", { timeout: 180_000 }, async () => {
    await plan().focus();
    await page.keyboard.press("Enter");
    await told().waitFor({ timeout: 90_000 });
    expect(await plan().evaluate((element) => element === document.activeElement)).toBe(true);
    await page.locator(".line").waitFor({ timeout: 90_000 });
    const pin = page.getByRole("button", { name: "Pin Swelling" });
    await pin.focus();
    await page.keyboard.press("Space");
    const unpin = page.getByRole("button", { name: "Unpin Swelling" });
    expect(await unpin.evaluate((element) => element === document.activeElement)).toBe(true);
    await inOrder(page, "a planned piece");
  });
});
