import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** The one without windows comes first: it is the same engine and starts in half the time. */
const BROWSERS = [
  process.env.CHROMIUM,
  "/usr/bin/chromium-headless-shell",
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:/Program Files/Google/Chrome/Application/chrome.exe",
];

/** Where the system's Chromium lies; `undefined` when it has none. */
const chromium = (): string | undefined => BROWSERS.find((path) => path !== undefined && existsSync(path));
const hasPoppler = (): boolean => spawnSync("pdftotext", ["-v"]).error === undefined;

/**
 * Where the system's Chromium lies.
 *
 * @throws Error that says what to install.
 */
export function chromiumPath(): string {
  const path = chromium();
  if (path === undefined) {
    throw new Error(
      "The tests of the screens need Chromium. Install it (Debian: apt-get install chromium) or name it in CHROMIUM.",
    );
  }
  return path;
}

/** @throws Error that says what to install, where poppler's tools are missing. */
export function needPoppler(): void {
  if (!hasPoppler())
    throw new Error("These tests need pdftotext, pdffonts and pdftoppm: install the package poppler-utils.");
}

/**
 * Before all tests, once: what some of them need besides Node is installed where the system can do so by itself (Debian,
 * as root). Elsewhere the tests that miss a program fail and say which.
 */
export function setup(): void {
  const missing = [...(chromium() ? [] : ["chromium-headless-shell"]), ...(hasPoppler() ? [] : ["poppler-utils"])];
  if (missing.length === 0 || process.getuid?.() !== 0 || !existsSync("/usr/bin/apt-get")) return;
  console.log(`Installing ${missing.join(" and ")} for the tests of screens and paper ...`);
  const quiet = { stdio: ["ignore", "ignore", "inherit"], env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } };
  spawnSync("apt-get", ["update", "-qq"], quiet as Parameters<typeof spawnSync>[2]);
  const install = (...packages: readonly string[]) =>
    spawnSync("apt-get", ["install", "-y", "-qq", ...packages], quiet as Parameters<typeof spawnSync>[2]);
  install("--no-install-recommends", ...missing);
  if (!chromium()) install("chromium");
}
