import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";

const PLACES = [
  process.env.CHROMIUM,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:/Program Files/Google/Chrome/Application/chrome.exe",
];

const installed = (): string | undefined => PLACES.find((path) => path !== undefined && existsSync(path));

/** The system's Chromium, installed first where the system can do so by itself. */
function executable(): string {
  const found = installed();
  if (found) return found;
  if (process.getuid?.() === 0) spawnSync("apt-get", ["install", "-y", "chromium"], { stdio: "ignore" });
  const then = installed();
  if (then) return then;
  throw new Error(
    "The tests of the screens need Chromium. Install it (Debian: apt-get install chromium) or name it in CHROMIUM.",
  );
}

/** A Chromium without a window. */
export const launchChromium = (): Promise<Browser> =>
  chromium.launch({
    executablePath: executable(),
    args: [...(process.getuid?.() === 0 ? ["--no-sandbox"] : []), "--disable-background-networking", "--no-first-run"],
  });
