import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { HOST_GLOBAL, HOST_METHODS, type MenuCommand } from "../../shared-model/host-api.ts";
import { freshPage } from "./opened.ts";
import { type Served, served } from "./served.ts";

/** The screens as the desktop shell shows them: with a host that it has put there, and a menu that speaks to them. */

let host: Served;
let page: Page;

beforeAll(async () => {
  host = await served();
}, 120_000);
afterAll(async () => {
  await host?.stop();
});

interface Shell {
  readonly menu: (command: string, document: string | null) => void;
  readonly asked: string[];
}

beforeEach(async () => {
  page = await freshPage();
  await page.addInitScript(
    ({ name, methods }) => {
      const heard: ((command: string, document: string | null) => void)[] = [];
      const asked: string[] = [];
      const ask = async (method: string, words: unknown[]): Promise<unknown> => {
        asked.push(`${method} ${words.filter((word) => typeof word === "string").join()}`.trim());
        const headers = { "Content-Type": "application/json" };
        const reply = await fetch(`ask/${method}`, { method: "POST", headers, body: JSON.stringify(words) });
        const { ok, value, trouble } = await reply.json();
        return ok ? value : Promise.reject(trouble);
      };
      const bridge: Record<string, unknown> = {
        watch: () => () => undefined,
        onMenu: (listener: (command: string, document: string | null) => void) => {
          heard.push(listener);
          return () => heard.splice(heard.indexOf(listener), 1);
        },
      };
      for (const method of methods) bridge[method] = (...words: unknown[]) => ask(method, words);
      const menu = (command: string, document: string | null): void => {
        for (const listener of heard) listener(command, document);
      };
      Object.assign(window, { [name]: bridge, shell: { menu, asked } });
    },
    { name: HOST_GLOBAL, methods: [...HOST_METHODS] },
  );
  await page.goto(host.address);
  await page.getByText("All Saints").waitFor();
});
afterEach(() => page.close());

const choose = (command: MenuCommand, document: string | null = null): Promise<void> =>
  page.evaluate(
    ([what, about]) => (window as unknown as { shell: Shell }).shell.menu(what as string, about as string | null),
    [command, document],
  );
const asked = (): Promise<string[]> => page.evaluate(() => (window as unknown as { shell: Shell }).shell.asked);
const titled = (title: RegExp): Promise<unknown> => expect.poll(() => page.title(), { timeout: 10_000 }).toMatch(title);

describe("the menu of the desktop window", () => {
  test("opens a recent organ, and the host is told which one lies open", async () => {
    await choose("open-document", "demo:wiekenborg.yaml");
    await titled(/^Choosing a texture/);
    await page.getByText("St. Nikolai").first().waitFor();
    expect(await asked()).toContain("opened demo:wiekenborg.yaml");
    expect((await asked()).filter((each) => each.startsWith("opened"))).toHaveLength(1);
  }, 60_000);

  test("undoes on the page, but within a text only there", async () => {
    await choose("open-document", "demo:sallowby.yaml");
    await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
    const undo = page.getByRole("button", { name: /^Undo/ });
    await expect.poll(() => undo.isEnabled()).toBe(true);
    await page.locator("#find-texture").pressSequentially("trio");
    await choose("undo");
    await expect.poll(() => page.locator("#find-texture").inputValue()).not.toBe("trio");
    expect(await undo.isEnabled()).toBe(true);
    await page.locator("#find-texture").blur();
    await choose("undo");
    await expect.poll(() => undo.isEnabled()).toBe(false);
    await choose("redo");
    await expect.poll(() => undo.isEnabled()).toBe(true);
  }, 60_000);

  test("finds, turns to the cards, the first page and the last, changes light and size", async () => {
    await choose("open-document", "demo:sallowby.yaml");
    await titled(/^Choosing a texture/);
    await choose("find");
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe("find-texture");
    await choose("print-cards");
    await titled(/^Cue cards/);
    await choose("about");
    await titled(/^About and sources/);
    await choose("new-organ");
    await titled(/^Which organ/);
    await choose("theme");
    await expect.poll(() => page.evaluate(() => document.documentElement.className)).toBe("loft");
    for (const [command, size] of [
      ["zoom-in", "110"],
      ["zoom-usual", "100"],
      ["zoom-out", "90"],
    ] as const) {
      await choose(command);
      await page.getByText(`Print ${size} %`).waitFor();
    }
    await choose("open-folder");
    await expect.poll(asked).toContain("chooseLibrary");
  }, 60_000);
});
