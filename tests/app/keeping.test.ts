import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { openedForEach } from "./opened.ts";
import type { Served } from "./served.ts";

let host: Served;
let page: Page;

openedForEach((opened) => {
  ({ host, page } = opened);
});

const saved = (): Promise<unknown> => page.getByText(/^Saved in pieces/).waitFor();

/** From the first page to a registration that is chosen and saved. */
async function chooseOne(): Promise<void> {
  await page.goto(host.address);
  await page.getByRole("button", { name: /^All Saints/ }).click();
  await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
  await page.getByRole("button", { name: "See registrations" }).click();
  await page.getByRole("radio").nth(1).click({ timeout: 30_000 });
  await saved();
}

const pieces = (): readonly string[] => host.files().filter((file) => file.startsWith("pieces/"));
const theOne = (): string => host.text(pieces()[0] ?? "");

describe("what is drawn is kept", () => {
  test("in a piece file, and comes back after a reload as it was", { timeout: 90_000 }, async () => {
    await chooseOne();
    expect(pieces()).toHaveLength(1);
    expect(theOne()).toContain("texture: melody-over-accompaniment");
    await page.getByRole("button", { name: "Draw by hand" }).click();
    await page.getByRole("button", { name: /^Gemshorn/ }).click();
    await page.getByText("Saving").waitFor({ state: "hidden" });
    await expect.poll(() => theOne()).toContain("Gemshorn 2");
    const drawn = await page.locator("button[aria-pressed=true]").allTextContents();
    await page.reload();
    await page.getByText("As you drew it").waitFor();
    expect(await page.locator("button[aria-pressed=true]").allTextContents()).toEqual(drawn);
  });

  test("sections are added, named, moved and taken out, and undo reaches the file", { timeout: 90_000 }, async () => {
    await chooseOne();
    await page.getByRole("button", { name: "Piece", exact: true }).click();
    await page.getByRole("textbox", { name: "Name of the piece" }).fill("Lantern Partita");
    await page.getByRole("textbox", { name: "Name of section 1" }).fill("First verse");
    await page.getByRole("button", { name: "Add a section" }).click();
    await page.getByRole("textbox", { name: "Name of section 2" }).fill("Second verse");
    await expect.poll(() => theOne()).toContain("name: Second verse");
    expect(theOne()).toContain("name: Lantern Partita");
    await page.getByRole("button", { name: "Move Second verse up" }).click();
    await expect.poll(() => theOne().indexOf("Second verse") < theOne().indexOf("First verse")).toBe(true);
    await page.keyboard.press("Control+z");
    await expect.poll(() => theOne().indexOf("First verse") < theOne().indexOf("Second verse")).toBe(true);
    await page.getByRole("button", { name: "Take out Second verse" }).click();
    await expect.poll(() => theOne()).not.toContain("Second verse");
    await page.getByRole("button", { name: /^Undo/ }).click();
    await expect.poll(() => theOne()).toContain("Second verse");
  });

  test("two registered sections show the change between them, and how it goes", { timeout: 120_000 }, async () => {
    await chooseOne();
    await page.getByRole("button", { name: "Piece", exact: true }).click();
    await page.getByRole("button", { name: "Add a section" }).click();
    await page.getByRole("button", { name: "See registrations" }).click();
    await page.getByRole("radio").nth(2).click({ timeout: 60_000 });
    await page.getByRole("button", { name: "Piece", exact: true }).click();
    await page.getByText(/^One change: /).waitFor({ timeout: 60_000 });
    await expect.poll(() => page.locator(".chg").textContent()).toMatch(/\+\sOboe\s8/);
    await page.getByRole("combobox", { name: "What happens before section 2" }).selectOption("pause");
    await expect.poll(() => theOne()).toContain("before: pause");
    await page.getByRole("combobox", { name: "assistant" }).selectOption("left");
    await expect.poll(() => theOne()).toContain("assistant: left");
  });

  test("remarks that a person wrote into the file stay through every save", { timeout: 90_000 }, async () => {
    await chooseOne();
    const [file = ""] = pieces();
    await page.reload();
    await page.getByRole("radio").first().waitFor({ timeout: 30_000 });
    host.write(file, theOne().replace("sections:", "# ask the keeper about the key\nsections:"));
    await page.waitForTimeout(600);
    await page.getByRole("radio").nth(2).click();
    await expect.poll(() => theOne()).toContain("Oboe 8");
    expect(theOne()).toContain("# ask the keeper about the key");
  });
});

const REMARKED = `# for Sunday
registrant: piece/1
name: Lantern Partita   # working title
organ: All Saints, Sallowby
sections:
  - name: First verse
    texture: melody-over-accompaniment
  # quieter than one thinks
  - name: Second verse   # slow
    mood: kept though unknown
    texture: plenum
  - name: Third verse
    texture: plenum
    echo-of: Second verse   # from the gallery
`;

describe("a piece with remarks of its owner", () => {
  test("has every byte again when a section that was taken out comes back", { timeout: 90_000 }, async () => {
    host.write("pieces/lantern.yaml", REMARKED);
    const there = (): string => host.text("pieces/lantern.yaml");
    await page.goto(host.address);
    await page.getByRole("button", { name: /^Lantern Partita/ }).click();
    await page.getByRole("button", { name: "Take out Second verse" }).click();
    await expect.poll(there).not.toContain("Second verse");
    await page.getByRole("textbox", { name: "Name of section 1" }).fill("Opening");
    await expect.poll(there).toContain("Opening");
    await page.getByRole("button", { name: /^Undo/ }).click();
    await expect.poll(there).not.toContain("Opening");
    await page.getByRole("button", { name: /^Undo/ }).click();
    await expect.poll(there).toBe(REMARKED);
    // And once more, by way of another program's change, which is taken back as well.
    const theirs = REMARKED.replace("for Sunday", "for Monday").replace("First verse", "Prelude");
    host.write("pieces/lantern.yaml", theirs);
    await page.getByRole("button", { name: "Undo what another program wrote" }).waitFor();
    await page.getByRole("button", { name: "Take out Prelude" }).click();
    await expect.poll(there).not.toContain("Prelude");
    await page.getByRole("button", { name: /^Undo/ }).click();
    await expect.poll(there).toBe(theirs);
    await page.getByRole("button", { name: "Undo what another program wrote" }).click();
    await expect.poll(there).toBe(REMARKED);
  });
});

describe("what another program writes", () => {
  test("is taken over where nothing was changed here, and can be undone", { timeout: 90_000 }, async () => {
    await chooseOne();
    const [file = ""] = pieces();
    await page.getByRole("button", { name: "Piece", exact: true }).click();
    host.write(file, theOne().replace(/^name: .*$/m, "name: Named elsewhere"));
    const title = page.getByRole("textbox", { name: "Name of the piece" });
    await expect.poll(() => title.inputValue()).toBe("Named elsewhere");
    await page.getByRole("button", { name: "Undo what another program wrote" }).click();
    await expect.poll(() => theOne()).not.toContain("Named elsewhere");
  });

  test("is never written over unasked", { timeout: 90_000 }, async () => {
    await chooseOne();
    const [file = ""] = pieces();
    await page.getByRole("button", { name: "Piece", exact: true }).click();
    await page.getByRole("textbox", { name: "Name of the piece" }).pressSequentially("Mine");
    host.write(file, theOne().replace(/^name: .*$/m, "name: Theirs"));
    await page.getByText("was changed by another program").waitFor();
    expect(theOne()).toContain("name: Theirs");
    await page.getByRole("button", { name: "Keep what I have here" }).click();
    await expect.poll(() => theOne()).toContain("name: Mine");
  });
});
