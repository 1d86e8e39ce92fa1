import axe from "axe-core";
import type { Page } from "playwright-core";

interface Violation {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** What axe is to look at: everything, only colours, as for another light, or all but these, as for another size. */
const LOOKED_AT = {
  all: {},
  colours: { runOnly: ["color-contrast", "link-in-text-block"] },
  "all but colours": { rules: { "color-contrast": { enabled: false }, "link-in-text-block": { enabled: false } } },
} as const;

/** What axe finds against a page, a line each; empty when nothing. */
export async function axeFindings(page: Page, at: keyof typeof LOOKED_AT = "all"): Promise<readonly string[]> {
  // Evaluated by the test's own connection, which no content policy of the page concerns; read once in a page.
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe.source);
  const options = JSON.stringify({ resultTypes: ["violations"], ...LOOKED_AT[at] });
  const violations = (await page.evaluate(
    `axe.run(document, ${options}).then((result) => result.violations)`,
  )) as readonly Violation[];
  return violations.map(
    ({ id, help, nodes }) =>
      `${id}: ${help}: ${nodes
        .map((node) => node.html)
        .slice(0, 3)
        .join(" | ")}`,
  );
}

/** Whether the page can be scrolled sideways. */
export const scrollsSideways = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);

/** Things to touch that are smaller than a finger needs: name and height in pixels, text fields left out. */
export const smallTargets = (page: Page, least: number): Promise<readonly string[]> =>
  page.evaluate(
    (size) =>
      [...document.querySelectorAll<HTMLElement>("button, select, summary, [role=radio]")]
        .filter((element) => element.checkVisibility())
        .filter((element) => element.getBoundingClientRect().height < size - 0.5)
        .map((element) => `${element.textContent?.trim().slice(0, 30)} ${element.getBoundingClientRect().height}`),
    least,
  );
