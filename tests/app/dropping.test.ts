import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { openedForEach } from "./opened.ts";
import type { Served } from "./served.ts";

let host: Served;
let page: Page;

openedForEach(async (opened) => {
  ({ host, page } = opened);
  await page.goto(host.address);
  await page.getByRole("button", { name: /^All Saints/ }).waitFor();
});

const SALLOWBY = readFileSync(join(import.meta.dirname, "..", "..", "instruments", "sallowby.yaml"), "utf8");
const OWN = SALLOWBY.replace("All Saints, Sallowby", "Emmanuel, Reedmarsh");
const PIECE = `# of the family
registrant: piece/1
name: Lantern Partita
organ: Emmanuel, Reedmarsh
sections:
  - texture: plenum
`;

type Dropped = readonly [name: string, content: string | readonly number[]];

/** Lets files go over the middle of the page, as a person's hand does. */
async function drop(...files: readonly Dropped[]): Promise<void> {
  await page.evaluate((all) => {
    const dataTransfer = new DataTransfer();
    for (const [name, content] of all) {
      dataTransfer.items.add(new File([typeof content === "string" ? content : new Uint8Array(content)], name));
    }
    const target = document.querySelector("main") ?? document.body;
    for (const kind of ["dragover", "drop"]) {
      target.dispatchEvent(new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer }));
    }
  }, files);
}

const told = async (): Promise<string> => (await page.getByRole("alert").textContent()) ?? "";

describe("a file dropped on the window", () => {
  test("is read in when it is a stoplist", async () => {
    await drop(["ellernbrook.txt", "Hauptwerk\nPrincipal 8\nOctave 4\nPedal\nSubbass 16\n"]);
    await page.getByText("As you pasted it").waitFor();
    await page.getByText("Subbass").first().waitFor();
  }, 60_000);

  test("is copied into the library and opened when it is an organ with its piece; a second time it is the same", async () => {
    await drop(["partita.yaml", PIECE], ["reedmarsh.yaml", OWN]);
    await expect.poll(() => page.title(), { timeout: 20_000 }).toMatch(/^The piece/);
    expect(host.files()).toEqual(["organs/emmanuel-reedmarsh.yaml", "pieces/lantern-partita.yaml"]);
    expect(host.text("organs/emmanuel-reedmarsh.yaml")).toBe(OWN);
    expect(host.text("pieces/lantern-partita.yaml")).toBe(PIECE);
    await drop(["reedmarsh.yaml", OWN]);
    await expect.poll(() => page.title(), { timeout: 20_000 }).toMatch(/^Choosing a texture/);
    expect(host.files()).toHaveLength(2);
  }, 60_000);

  test("is refused in plain words, and nothing is changed, when it is no good", async () => {
    await drop(["prospect.pdf", [37, 80, 68, 70, 0, 1, 2]]);
    await expect
      .poll(told, { timeout: 20_000 })
      .toContain("prospect.pdf: This is not a text file. Save the list as plain text first.");
    await drop(["partita.yaml", PIECE]);
    await expect.poll(told, { timeout: 20_000 }).toContain("Its organ, Emmanuel, Reedmarsh, is not in the library.");
    await drop(["broken.yaml", SALLOWBY.replace("divisions:", "divisions: 3\nothers:")]);
    await expect
      .poll(told, { timeout: 20_000 })
      .toContain("broken.yaml: This organ has errors. Mend them in the file first.");
    await drop(["one.txt", "Principal 8"], ["two.txt", "Octave 4"]);
    await expect
      .poll(told, { timeout: 20_000 })
      .toContain("one.txt: This is no organ and no piece. Drop a stoplist by itself.");
    await drop(["empty.txt", " "]);
    await expect.poll(told, { timeout: 20_000 }).toContain("empty.txt: There is nothing in it.");
    expect(host.files()).toEqual([]);
    await page.getByRole("button", { name: "Put aside" }).click();
    expect(await page.getByRole("alert").count()).toBe(0);
  }, 60_000);
});

test("organs opened last stand first on the first page, in the browser too", async () => {
  const organs = page.getByRole("region", { name: "Organs" });
  await page.getByRole("button", { name: /^Holy Trinity/ }).click();
  await expect.poll(() => page.title(), { timeout: 20_000 }).toMatch(/^Choosing a texture/);
  // Two pieces of one name for one organ are told apart by their files.
  const piece =
    "registrant: piece/1\nname: A psalm\norgan: Holy Trinity, Hawsermouth\nsections:\n  - texture: plenum\n";
  for (const file of ["psalm", "psalm-2"]) host.write(`pieces/${file}.yaml`, piece);
  await page.goto(host.address);
  await page.reload();
  await page.getByText("Opened last").waitFor();
  for (const file of ["psalm", "psalm-2"])
    await page.getByRole("button", { name: `for Holy Trinity, Hawsermouth, in pieces/${file}.yaml` }).waitFor();
  expect(await organs.getByRole("button").first().textContent()).toMatch(/^Holy Trinity.*41 stops/);
  expect(await organs.getByRole("button", { name: /^Holy Trinity/ }).count()).toBe(1);
}, 60_000);
