import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { inOrder } from "./in-order.ts";
import { openedForEach } from "./opened.ts";
import type { Served } from "./served.ts";

let host: Served;
let page: Page;

/** A piece on one of the demo organs: its remarks are to stay, and its second section has no registration yet. */
const PIECE = `# Played every year at the blessing of the boats.
registrant: piece/1
name: Lantern Partita
organ: All Saints, Sallowby
sections:
  - name: Chorus
    texture: plenum-manual
    # as loud as the room bears
    registration:
      drawn: {Great: [Open Diapason 8, Principal 4, Fifteenth 2, Mixture]}
  - name: Song
    texture: melody-over-accompaniment
    before: {what: rest, beats: 4}
`;

/** Its keys end at F5. */
const CHEST = `registrant: instrument/1
name: Chest organ, Ellernbrook
divisions:
  - {name: Manual, kind: manual, compass: C2-F5, stops: [Gedackt 8, Flöte 4, Principal 2]}
`;

openedForEach(async (opened) => {
  ({ host, page } = opened);
  host.write("pieces/lantern.yaml", PIECE);
  await page.goto(host.address);
});

const button = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });
const organ = () => page.getByRole("combobox", { name: "Organ", exact: true });
const piece = () => page.getByRole("combobox", { name: "Piece", exact: true });
const section = (name: string) => page.getByRole("listitem", { name, exact: true });
const told = () => page.locator(".opening .facts");

async function fromPiece(): Promise<void> {
  await button(/^Lantern Partita/).click();
  await button("Carry it to another organ").click();
}

describe("a piece carried to another organ", () => {
  test("shows section by section what it was and what it becomes, and is saved for that organ as far as it is taken", {
    timeout: 120_000,
  }, async () => {
    await fromPiece();
    await organ().selectOption({ label: "St. Nikolai, Wiekenborg" });
    await expect.poll(() => told().textContent(), { timeout: 60_000 }).toMatch(/^Two sections: /);
    const chorus = section("Chorus");
    expect(await chorus.locator(".side").first().textContent()).toContain("Open Diapason");
    expect(await chorus.locator(".side").nth(1).textContent()).toMatch(/Superoctave\s2/);
    expect(await chorus.locator(".why").textContent()).toMatch(/becomes/);
    await page.getByText(/^One section without a registration: planned for All Saints, Sallowby first/).waitFor();

    // The next best, one of which is taken and given back.
    const became = () => chorus.locator(".side").nth(1).textContent();
    const best = await became();
    await chorus.locator("summary").click();
    const others = await chorus.getByRole("button", { name: /^Take this one/ }).count();
    expect(others).toBeGreaterThan(0);
    await chorus
      .getByRole("button", { name: /^Take this one/ })
      .last()
      .click();
    await expect.poll(became, { timeout: 20_000 }).not.toBe(best);
    const chosen = await became();
    await chorus.getByRole("button", { name: /^Back to what is worth most/ }).click();
    await expect.poll(became).toBe(best);
    await chorus
      .getByRole("button", { name: /^Take this one/ })
      .last()
      .click();
    await expect.poll(became, { timeout: 20_000 }).toBe(chosen);
    await section("Song").getByRole("checkbox").uncheck();
    await button("Save as the piece for this organ").click();

    await page.getByRole("textbox", { name: "Name of the piece" }).waitFor();
    const named = page.getByRole("textbox", { name: "Name of the piece" });
    expect(await named.inputValue()).toBe("Lantern Partita, St. Nikolai, Wiekenborg");
    expect(await page.locator(".head .where").textContent()).toContain("St. Nikolai, Wiekenborg");
    expect(await page.locator(".reg .open").count()).toBe(1);
    expect(host.text("pieces/lantern.yaml")).toBe(PIECE);
    const fresh = host.files().find((file) => file.startsWith("pieces/") && !file.endsWith("lantern.yaml"));
    const text = host.text(fresh ?? "");
    expect(text).toContain("# Played every year at the blessing of the boats.");
    expect(text).toContain("# as loud as the room bears");
    expect(text).toContain("organ: St. Nikolai, Wiekenborg");
    expect(text.split("- name: Song")[1]).not.toContain("registration:");
    // What was chosen is what is kept.
    for (const stop of ["Prinzipal 8", "Octave 4", "Superoctave 2", "Mixtur"])
      expect([stop, text.includes(stop)]).toEqual([stop, (chosen ?? "").replaceAll("\u00a0", " ").includes(stop)]);
  });

  test("goes to the cards, made for the other organ", { timeout: 120_000 }, async () => {
    await fromPiece();
    await organ().selectOption({ label: "St. Nikolai, Wiekenborg" });
    await button("Save and make the cards").click({ timeout: 60_000 });
    const card = page.getByRole("img", { name: /^Page 1/ });
    await card.waitFor({ timeout: 60_000 });
    expect(await card.getAttribute("aria-label")).toContain("Superoctave 2");
  });

  test("from the organ that lies open, and says what an organ without the means has not", {
    timeout: 120_000,
  }, async () => {
    host.write("organs/chest.yaml", CHEST);
    host.write(
      "pieces/lantern.yaml",
      PIECE.replace("melody-over-accompaniment", "plenum-manual\n    ranges: {plenum: [C2, C6]}"),
    );
    await button(/^Chest organ, Ellernbrook/).click();
    await button("Survey").click();
    await button("Carry a piece here").click();
    const suited = page.getByRole("region", { name: "What suits Chest organ, Ellernbrook" });
    await suited
      .getByText(/^Out of reach: Song/)
      .or(suited.getByText(/Out of reach: Song/))
      .first()
      .waitFor({ timeout: 60_000 });
    expect(await suited.textContent()).toMatch(/Lantern Partita\d+ of 100/);
    await suited.getByRole("button", { name: "Lantern Partita" }).click();
    await expect.poll(() => told().textContent(), { timeout: 60_000 }).toBe("Two sections: one otherwise, one lost");
    const song = section("Song");
    await song.getByText("Nothing: Chest organ, Ellernbrook has no means for it").waitFor();
    expect(await song.getByRole("checkbox").count()).toBe(0);
    expect(await song.locator(".bare").first().textContent()).toMatch(/F#5 to C6 are not there/);
    await page.getByRole("combobox", { name: "What for" }).selectOption({ label: "to practise it there" });
    await page.getByText("The Great is practised on the Manual.").waitFor({ timeout: 60_000 });
    await button("Save as the piece for this organ").click();
    await page.getByRole("textbox", { name: "Name of the piece" }).waitFor();
    expect(await page.locator(".reg .open").count()).toBe(1);
  });

  test("to the same organ is nothing to carry, and a piece without an organ is told", { timeout: 90_000 }, async () => {
    host.write("pieces/loose.yaml", PIECE.replace(/organ: .*\n/, "").replace("Lantern Partita", "Loose leaves"));
    await fromPiece();
    await organ().selectOption({ label: "All Saints, Sallowby, which lies open" });
    await page.getByText("That is the organ it is registered on").waitFor();
    await piece().selectOption({ label: "Loose leaves" });
    await page.getByRole("alert").filter({ hasText: "does not say on which organ" }).waitFor();
  });

  test("by the keyboard, and in order for everybody in both lights", { timeout: 180_000 }, async () => {
    await fromPiece();
    // The library comes a moment after the page.
    await organ().locator("option", { hasText: "St. Nikolai" }).waitFor({ state: "attached" });
    await organ().focus();
    await page.keyboard.type("St. Nik");
    await expect.poll(() => told().textContent(), { timeout: 60_000 }).toMatch(/^Two sections: /);
    // Past what it is carried for.
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Space");
    expect(await section("Chorus").getByRole("checkbox").isChecked()).toBe(false);
    await section("Chorus").locator("summary").focus();
    await page.keyboard.press("Enter");
    await section("Chorus")
      .getByRole("button", { name: /^Take this one/ })
      .first()
      .waitFor();
    await inOrder(page, "to another organ");
  });
});
