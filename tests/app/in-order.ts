import type { Page } from "playwright-core";
import { expect } from "vitest";
import { axeFindings, scrollsSideways, smallTargets } from "./accessible.ts";

/** Desk, small laptop, tablet held upright, and half a window. */
const SIZES = [
  [1280, 860],
  [1024, 768],
  [820, 1180],
  [640, 900],
] as const;

/** Expects of a page, in both lights and at every size: nothing scrolls sideways, all can be touched, axe finds nothing. */
export async function inOrderAtEverySize(page: Page): Promise<void> {
  for (const light of ["Loft light", "Paper light"]) {
    await page.getByRole("button", { name: light, exact: true }).click();
    for (const [width, height] of SIZES) {
      await page.setViewportSize({ width, height });
      expect(await scrollsSideways(page), `${light}, at ${width}`).toBe(false);
      expect(await smallTargets(page, 40), `${light}, at ${width}`).toEqual([]);
      expect(await axeFindings(page), `${light}, at ${width}`).toEqual([]);
    }
  }
}
