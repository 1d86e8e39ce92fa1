import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { inOrder } from "./in-order.ts";
import { pieceOpenedForEach } from "./opened.ts";
import type { Served } from "./served.ts";

const FILE = "pieces/lantern.yaml";
const PIECE = `# for Sunday
registrant: piece/1
name: Lantern Partita
organ: Holy Trinity, Hawsermouth
tempo: {bpm: 60}   # from the autograph
sections:
  - name: First verse
    bars: 1-24
    texture: melody-over-accompaniment
  - name: Second verse   # ask for the Oboe
    bars: 25-48
    texture: trio
    before: {what: rest, beats: 4, why: breath}
  - name: Last verse
    texture: plenum
    before: attacca
`;

/** Saving waits for a pause, and a busy machine for its turn. */
const SOON = { timeout: 20_000 };

let host: Served;
let page: Page;

pieceOpenedForEach(FILE, PIECE, (opened) => {
  ({ host, page } = opened);
});

const inFile = (): string => host.text(FILE);
const select = (name: string) => page.getByRole("combobox", { name });
const field = (name: string) => page.getByRole("textbox", { name, exact: true });

describe("editing a piece in place", () => {
  test("pistons, assistant, pace and tempo of the piece, in the file too, and back by undo", {
    timeout: 180_000,
  }, async () => {
    await select("assistant").selectOption("left");
    await page.getByText(/^reaches Swell, Pedal; .* only beforehand/).waitFor();
    await page.getByRole("button", { name: "Pistons, pace, tempo" }).click();
    await select("Pistons to use").selectOption("these");
    await field("generals").fill("1-3, 5");
    await field("Swell").fill("");
    await field("levels").fill("7");
    await field("levels").fill("7-99");
    await page.getByText("numbers from 1 to 16, such as 1-4").waitFor();
    await select("Pace of the hands").selectOption("careful");
    await page.getByRole("checkbox", { name: /^changes practised/ }).uncheck();
    await field("Beats a minute of the piece").fill("66");
    await field("Beats in a bar of the piece").fill("4");
    await expect.poll(inFile, SOON).toContain("beats-in-bar: 4");
    const head = inFile().slice(0, inFile().indexOf("sections:"));
    expect(head).toBe(`# for Sunday
registrant: piece/1
name: Lantern Partita
organ: Holy Trinity, Hawsermouth
tempo: {bpm: 66, beat: quarter}   # from the autograph
beats-in-bar: 4
assistant: left
pistons: {generals: [1, 2, 3, 5], divisionals: {Choir: 4, Great: 6, Swell: 0, Pedal: 4}, levels: [7]}
practised: false
pace: careful
`);
    await page.getByText("4 generals, 4 of Choir, 6 of Great, 4 of Pedal, on 1 level").waitFor();
    await select("Pistons to use").selectOption("none");
    await expect.poll(inFile, SOON).toContain("pistons: none");
    await page.getByRole("button", { name: "Undo the pistons to use" }).click();
    await expect.poll(inFile, SOON).toContain("levels: [7]");
  });

  test("what a section says, without a byte of the rest", { timeout: 180_000 }, async () => {
    await page.getByRole("button", { name: "More of Second verse" }).click();
    await select("Level of Second verse").selectOption("mf");
    await select("Tempo of Second verse").selectOption("counted");
    await select("Beat of Second verse").selectOption({ label: "half" });
    await field("Beats a minute of Second verse").fill("5");
    await page.getByText("a number from 10 to 400").waitFor();
    await field("Beats a minute of Second verse").fill("54");
    await field("Beats in a bar of Second verse").fill("2");
    await field("Beats before Second verse").fill("3");
    await page.getByRole("checkbox", { name: "The left hand free before Second verse" }).check();
    await page.getByRole("button", { name: "Add a rest in Second verse" }).click();
    await select("What rests in Second verse").selectOption("feet");
    await field("Bar of the rest in Second verse").fill("31");
    await expect.poll(inFile, SOON).toContain("bar: 31");
    expect(inFile()).toBe(
      PIECE.replace(
        `    before: {what: rest, beats: 4, why: breath}
`,
        `    dynamic: mf
    tempo: {bpm: 54, beat: half}
    beats-in-bar: 2
    before: {what: rest, beats: 3, why: breath, free: {left: 3}}
    moments:
      - {limb: feet, beats: 4, bar: 31}
`,
      ),
    );
    await page.getByRole("button", { name: "Take out the rest in Second verse" }).click();
    await expect.poll(inFile, SOON).not.toContain("moments");
  });

  const order = (): readonly string[] => [...inFile().matchAll(/- name: (\w+)/g)].map(([, name]) => name as string);

  test("the order of the sections, by dragging, and back by undo", { timeout: 180_000 }, async () => {
    const box = async (name: string) => {
      const found = await page.getByRole("button", { name }).boundingBox();
      if (!found) throw new Error(`${name} is not to be seen`);
      return { x: found.x + found.width / 2, y: found.y + found.height / 2 };
    };
    const [from, to] = [await box("3, move Last verse"), await box("1, move First verse")];
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x, from.y - 20, { steps: 4 });
    await page.mouse.move(to.x, to.y - 10, { steps: 12 });
    await page.getByText("Last verse would be number 1 of 3.").waitFor({ state: "attached" });
    await page.mouse.up();
    await expect.poll(order, SOON).toEqual(["Last", "First", "Second"]);
    expect(inFile()).toContain("- name: Second verse   # ask for the Oboe");
    await page.getByRole("button", { name: "Undo moving Last verse" }).click();
    await expect.poll(inFile, SOON).toBe(PIECE);
  });

  test("the order of the sections, by the keys, with the focus kept", { timeout: 180_000 }, async () => {
    const grip = page.getByRole("button", { name: "1, move First verse" });
    const key = async (name: string, told: string): Promise<void> => {
      await page.keyboard.press(name);
      await page.getByText(told).waitFor({ state: "attached" });
      // Where the sections lie is measured in the frames after it is told; on a busy machine a key may come before.
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 50)))),
      );
    };
    await grip.focus();
    await key("Space", "First verse would be number 1 of 3.");
    await key("ArrowDown", "First verse would be number 2 of 3.");
    await key("Escape", "First verse stays where it was.");
    expect(inFile()).toBe(PIECE);
    await grip.focus();
    await key("Space", "First verse would be number 1 of 3.");
    await key("ArrowDown", "First verse would be number 2 of 3.");
    await key("Space", "First verse is number 2 of 3.");
    await expect.poll(order, SOON).toEqual(["Second", "First", "Last"]);
    // Bars that now run backwards keep nobody from saving, and are told.
    await page.getByText("These bars come before those of Second verse.").waitFor();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute("aria-label")))
      .toBe("2, move First verse");
    await page.getByRole("button", { name: "They are played again" }).click();
    await expect.poll(inFile, SOON).toContain("bars: 1-24\n    texture: melody-over-accompaniment\n    again: true\n");
    expect(await page.getByText(/^These bars/).count()).toBe(0);
  });

  test("for everybody, at every width", { timeout: 180_000 }, async () => {
    await page.getByRole("button", { name: "Pistons, pace, tempo" }).click();
    await select("Pistons to use").selectOption("these");
    await page.getByRole("button", { name: "More of Second verse" }).click();
    await page.getByRole("button", { name: "Add a rest in Second verse" }).click();
    await inOrder(page, "a piece being edited");
  });
});
