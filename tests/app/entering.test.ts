import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { axeFindings, smallTargets } from "./accessible.ts";
import { inOrder } from "./in-order.ts";
import { openedForEach } from "./opened.ts";
import type { Served } from "./served.ts";

let host: Served;
let page: Page;

openedForEach((opened) => {
  ({ host, page } = opened);
});

const LIST = `DORFKIRCHE ZU ELLERNBROOK
erbaut 1741

I. HAUPTWERK C - c'''
Principal 8
Rohrflöte 8
Octave 4
Quinta 3
Octave 2
Mixtur IV
Trompete 8

II. OBERWERK
Gedackt 8
Flöte
Principal 2
Vox humana 8

PEDAL
Subbass 16, Octavbass 8
Posaune 16

Schiebekoppel II/I
Tremulant`;

async function paste(): Promise<void> {
  await page.goto(host.address);
  await page.getByRole("textbox", { name: "Paste the stoplist" }).fill(LIST);
  await page.getByRole("button", { name: "Read it" }).click();
  await page.getByText("As you pasted it").waitFor();
}

const flute = () => page.getByRole("group", { name: /No pitch is printed for Flöte/ });

describe("entering an organ", () => {
  test("from a pasted list to a saved registration, and after a reload everything is as it was", {
    timeout: 120_000,
  }, async () => {
    await paste();
    await page.getByText("24 lines, one question to answer").waitFor();
    await flute().getByRole("button", { name: "4 foot" }).click();
    await page.getByText("24 lines, all understood").waitFor();
    await page.getByText("You said: 4").waitFor();
    await page.evaluate(() => window.scrollTo(0, 400));
    await page.getByRole("button", { name: "Use this organ" }).click();
    await page.getByRole("button", { name: "Choose a texture" }).waitFor();
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    await page.getByRole("button", { name: "Choose a texture" }).click();
    await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
    await page.getByRole("combobox", { name: "tempo" }).selectOption("slow");
    await page.getByRole("button", { name: "See registrations" }).click();
    await page.getByRole("radio").first().click({ timeout: 30_000 });
    await page.getByRole("button", { name: "Draw by hand" }).click();
    await page.getByRole("button", { name: /^Octave 2/ }).click();
    await page.getByText(/^Saved in pieces/).waitFor();
    const drawn = await page.locator("button[aria-pressed=true]").allTextContents();
    expect(drawn.join()).toContain("Octave");

    expect(host.files().filter((file) => file.startsWith("organs/"))).toHaveLength(1);
    const organ = host.text(host.files().find((file) => file.startsWith("organs/")) ?? "");
    expect(organ).toContain("name: Dorfkirche zu Ellernbrook");
    expect(organ).toContain("- Quinta 2 2/3");
    expect(organ).toContain("- Flöte 4");

    await page.reload();
    await page.getByText("As you drew it").waitFor();
    expect(await page.locator("button[aria-pressed=true]").allTextContents()).toEqual(drawn);
    await page.getByRole("button", { name: "Texture", exact: true }).click();
    expect(await page.getByRole("combobox", { name: "tempo" }).inputValue()).toBe("slow");
  });

  test("a question is found from the foot of the page, and a single registration has its card at once", {
    timeout: 90_000,
  }, async () => {
    await paste();
    await page.getByRole("button", { name: "Show it" }).click();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("8 foot");
    await page.keyboard.press("Enter");
    await page.getByText("Every line is understood.").waitFor();
    await page.getByRole("button", { name: "Use this organ" }).click();
    await page.getByRole("button", { name: "Choose a texture" }).click();
    await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
    await page.getByRole("button", { name: "See registrations" }).click();
    const first = page.getByRole("radio").first();
    await page.getByText("Touch the one that you want.").waitFor({ timeout: 30_000 });
    const before = await first.boundingBox();
    await first.click();
    await page.getByRole("button", { name: "Make its card" }).waitFor();
    // Nothing goes from under the finger when the actions come.
    expect((await first.boundingBox())?.y).toBe(before?.y);
    await page.getByRole("button", { name: "Make its card" }).click();
    await page.getByRole("img", { name: /^Page 1/ }).waitFor({ timeout: 60_000 });
  });

  test("each stop leads to its line, and each line says what it was taken for", { timeout: 60_000 }, async () => {
    await paste();
    await page.getByRole("button", { name: /^Quinta/ }).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("line-8");
    const line = (number: number) => page.locator(`#line-${number} .un`);
    await expect.poll(() => line(1).textContent()).toBe("name of the organ");
    expect(await line(2).textContent()).toBe("1741");
    // Where print has one size of type, headings shout.
    await page.getByRole("heading", { name: "Dorfkirche zu Ellernbrook" }).waitFor();
    expect(await line(4).textContent()).toBe("division, keyboard I, C to c‴");
    expect(await line(8).textContent()).toContain("old rounding mended");
    expect(await line(20).textContent()).toMatch(/stopped flute 16.*principal 8/);
    expect(await line(23).textContent()).toBe("coupler, Oberwerk to Hauptwerk");
    expect(await line(24).textContent()).toBe("tremulant, whole organ");
  });

  test("an answer can be changed, undone, and outlives a reload", { timeout: 60_000 }, async () => {
    await paste();
    await flute().getByRole("button", { name: "8 foot" }).click();
    await page.getByRole("button", { name: /^Change the answer/ }).click();
    await flute().getByRole("button", { name: "2 foot" }).click();
    await page.keyboard.press("Control+z");
    await flute().waitFor();
    await page.keyboard.press("Control+y");
    await page.getByText("You said: 2").waitFor();
    await page.reload();
    await page.getByText("You said: 2").waitFor();
  });

  test("the page is in order wide and narrow, by both lights, in large print", { timeout: 120_000 }, async () => {
    await paste();
    await inOrder(page, "entering");
  });

  test("a text that is no stoplist is told so, with a way on", { timeout: 60_000 }, async () => {
    await page.goto(host.address);
    await page.getByRole("textbox", { name: "Paste the stoplist" }).fill("Dear Anna,\nthank you for the cake.\n");
    await page.getByRole("button", { name: "Read it" }).click();
    await page.getByText("is it a stoplist").first().waitFor();
    await page.getByRole("button", { name: "Mend the list" }).first().click();
    await page.getByRole("textbox", { name: "The list" }).fill("Manual: Gedackt 8, Flöte 4");
    await page.getByRole("button", { name: "Read it again" }).click();
    await page.getByRole("button", { name: "Use this organ" }).waitFor();
  });
});

describe("mending an organ", () => {
  test("a demo organ is copied at the first change; a renamed stop stays drawn", { timeout: 120_000 }, async () => {
    await page.goto(host.address);
    await page.getByRole("button", { name: /^All Saints/ }).click();
    await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
    await page.getByRole("button", { name: "See registrations" }).click();
    await page.getByRole("radio").nth(2).click({ timeout: 30_000 });
    await page.getByRole("button", { name: "Organ", exact: true }).click();
    await page.getByRole("button", { name: /^Oboe/ }).click();
    const name = page.getByRole("textbox", { name: "Name of Oboe 8" });
    await name.fill("Hautboy");
    await name.press("Enter");
    await page.getByRole("button", { name: /^Hautboy/ }).waitFor();
    await expect.poll(() => host.files().filter((file) => file.startsWith("organs/"))).toHaveLength(1);
    const file = host.files().find((each) => each.startsWith("organs/")) ?? "";
    expect(host.text(file)).toContain("- Hautboy 8");
    expect(host.text(file)).toContain("# A village organ");
    await page.getByRole("button", { name: "Registration", exact: true }).click();
    await page.getByRole("button", { name: "Draw by hand" }).click();
    expect(await page.getByRole("button", { name: /^Hautboy/ }).getAttribute("aria-pressed")).toBe("true");
  });

  test("what was heard of a stop and of the room is set, kept in the file and cleared", {
    timeout: 120_000,
  }, async () => {
    await page.goto(host.address);
    await page.getByRole("button", { name: /^All Saints/ }).click();
    await page.getByRole("button", { name: "Organ", exact: true }).click();
    await page.getByRole("button", { name: /^Oboe/ }).click();
    const strength = page.getByRole("combobox", { name: "strength of Oboe 8 by ear" });
    const brightness = page.getByRole("combobox", { name: "brightness of Oboe 8 by ear" });
    const room = page.getByRole("combobox", { name: "What the room is like" });
    const shown = (select: typeof room) => select.locator("option:checked").textContent();
    expect(await shown(strength)).toBe("not set; usually middling");
    expect(await shown(brightness)).toBe("not set; usually middling");
    await strength.selectOption("strong");
    await brightness.selectOption("rather bright");
    await room.selectOption("live: longer than three seconds");
    const file = () => host.text(host.files().find((each) => each.startsWith("organs/")) ?? "");
    await expect.poll(file).toContain("{name: Oboe, pitch: 8, strength: 4, brightness: 4}");
    await expect.poll(file).toMatch(/^room: live$/m);
    await page.getByText("How to listen to the stops").click();
    expect(await axeFindings(page)).toEqual([]);
    expect(await smallTargets(page, 40)).toEqual([]);
    await strength.selectOption("as usual for such a stop");
    await brightness.selectOption("as usual for such a stop");
    await room.selectOption("not said");
    await expect.poll(() => shown(strength)).toBe("not set; usually middling");
    await expect.poll(file).toContain("{name: Oboe, pitch: 8}");
    await expect.poll(file).not.toMatch(/^room:/m);
  });

  test("stops are added, marked off, moved and taken out, and every step is undone", { timeout: 120_000 }, async () => {
    await page.goto(host.address);
    await page.getByRole("button", { name: /^All Saints/ }).click();
    await page.getByRole("button", { name: "Organ", exact: true }).click();
    await page.getByRole("textbox", { name: "Add a stop to the Great, with its pitch" }).fill("Dulciana 8");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: /^Dulciana/ }).click();
    await page.getByPlaceholder("ciphers on").fill("silent on c");
    await page.getByRole("button", { name: "Mark off" }).click();
    await page.getByText("silent on c").first().waitFor();
    await page.getByRole("button", { name: "Up", exact: true }).click();
    const column = page.getByRole("region", { name: "Great" }).getByRole("button");
    const place = async (name: string) => (await column.allTextContents()).findIndex((text) => text.startsWith(name));
    await expect.poll(async () => (await place("Dulciana")) < (await place("Mixture"))).toBe(true);
    expect(await axeFindings(page)).toEqual([]);
    for (let step = 0; step < 3; step++) await page.getByRole("button", { name: /^Undo/ }).click();
    expect(await page.getByRole("button", { name: /^Dulciana/ }).count()).toBe(0);
    await page.getByRole("textbox", { name: "Add a stop to the Great, with its pitch" }).fill("Xyzzy 8");
    await page.keyboard.press("Enter");
    await page.getByText("What sort of stop Xyzzy 8 is, is not known").waitFor();
  });
});
