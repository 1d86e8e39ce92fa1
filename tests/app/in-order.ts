import type { Page } from "playwright-core";
import { expect } from "vitest";
import { axeFindings, scrollsSideways, smallTargets } from "./accessible.ts";

/** Half a window, tablet held upright, small laptop, desk. */
const SIZES = [
  [640, 900],
  [820, 1180],
  [1024, 768],
  [1280, 860],
] as const;
const FINGER = 40;
/** What axe looks at, by light and width. */
const AXE: Readonly<Record<"loft" | "paper", Readonly<Record<number, "all" | "colours" | "all but colours">>>> = {
  loft: { 1024: "colours" },
  paper: { 820: "all but colours", 1024: "all", 1280: "all" },
};

const pressed = (page: Page, name: string, times: number): Promise<void> =>
  page.getByRole("button", { name, exact: true }).evaluate((button, presses) => {
    for (let press = 0; press < presses; press++) (button as HTMLButtonElement).click();
  }, times);

async function fits(page: Page, where: string): Promise<void> {
  expect(await scrollsSideways(page), `${where} scrolls sideways`).toBe(false);
  expect(await smallTargets(page, FINGER), where).toEqual([]);
}

/**
 * Expects of a page: at every size, in both lights and in print twice as large nothing scrolls sideways, all can be touched,
 * and axe finds nothing. The page is left in paper light and usual print, at the size of a desk.
 */
export async function inOrder(page: Page, name: string): Promise<void> {
  for (const light of ["loft", "paper"] as const) {
    await pressed(page, light === "loft" ? "Loft light" : "Paper light", 1);
    await expect.poll(() => page.evaluate(() => document.documentElement.className)).toBe(light);
    for (const [width, height] of SIZES) {
      await page.setViewportSize({ width, height });
      const where = `${name}, ${light}, ${width} x ${height}`;
      await fits(page, where);
      // Each of these widths has a layout of its own. Another light changes colours and nothing else.
      const looksAt = AXE[light][width];
      if (looksAt) expect(await axeFindings(page, looksAt), where).toEqual([]);
    }
  }
  await pressed(page, "Larger print", 5);
  await page.getByText("Print 200 %").waitFor();
  for (const [width, height] of [SIZES[2], SIZES[3]]) {
    await page.setViewportSize({ width, height });
    await fits(page, `${name}, print 200 %, ${width} x ${height}`);
  }
  expect(await axeFindings(page, "all but colours"), `${name}, print 200 %`).toEqual([]);
  await pressed(page, "Smaller print", 5);
  await page.getByText("Print 100 %").waitFor();
}
