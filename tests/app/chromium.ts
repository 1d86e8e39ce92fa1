import { type Browser, chromium } from "playwright-core";
import { chromiumPath } from "../house/outside-programs.ts";

/** A Chromium without a window. */
export const launchChromium = (): Promise<Browser> =>
  chromium.launch({
    executablePath: chromiumPath(),
    args: [...(process.getuid?.() === 0 ? ["--no-sandbox"] : []), "--disable-background-networking", "--no-first-run"],
  });
