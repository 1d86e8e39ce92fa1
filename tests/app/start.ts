import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { test } from "vitest";
import { median, ms } from "../bench/numbers.ts";
import { builtScreens } from "./built-screens.ts";
import { launchChromium } from "./chromium.ts";

// How long the app takes to start: the program until it serves, and its first page until one can work with it. The page's
// clock runs from the asking for the address; every page is of a new person, with nothing in store. npm run bench:frame.

const STARTS = 9;
const COMMAND = join(import.meta.dirname, "..", "..", "electron", "registrant");

interface Running {
  readonly program: ChildProcess;
  readonly address: string;
  /** Milliseconds from the start of the process until it says that it serves. */
  readonly took: number;
}

/** Starts the app as `npm start` does once it is built, without a screen to open a window on. */
async function started(library: string): Promise<Running> {
  const begun = performance.now();
  const program = spawn(process.execPath, [COMMAND, "open", "--browser", "--library", library], {
    env: { ...process.env, CI: "1" },
    stdio: ["ignore", "pipe", "inherit"],
  });
  let said = "";
  for await (const words of program.stdout ?? []) {
    said += String(words);
    const address = /open at (\S+)/.exec(said)?.[1];
    if (address !== undefined) return { program, address, took: performance.now() - begun };
  }
  throw new Error(`The app ended before it served: ${said}`);
}

/** Milliseconds at which the first page of the app stood: painted; its box ready to be written in; the organs listed. */
interface Stood {
  readonly painted: number;
  readonly ready: number;
  readonly listed: number;
  /** Processor time of its scripts, styles and layout until then. */
  readonly processor: number;
}

async function firstPage(browser: Browser, address: string): Promise<Stood> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
  try {
    await page.addInitScript(() => {
      const marked = window as Window & { ready?: number; listed?: number };
      new MutationObserver(() => {
        if (marked.ready === undefined && document.activeElement?.id === "stoplist") marked.ready = performance.now();
        if (marked.listed === undefined && document.querySelector(".contents ol button")) {
          marked.listed = performance.now();
        }
      }).observe(document, { childList: true, subtree: true });
    });
    const session = await page.context().newCDPSession(page);
    await session.send("Performance.enable", { timeDomain: "threadTicks" });
    await page.goto(address);
    await page.waitForFunction(() => {
      const { ready, listed } = window as Window & { ready?: number; listed?: number };
      const painted = performance.getEntriesByName("first-contentful-paint").length > 0;
      return painted && ready !== undefined && listed !== undefined;
    });
    const { metrics } = await session.send("Performance.getMetrics");
    const processor = ["ScriptDuration", "LayoutDuration", "RecalcStyleDuration"]
      .map((name) => 1000 * (metrics.find((each) => each.name === name)?.value ?? 0))
      .reduce((sum, each) => sum + each, 0);
    const stood = await page.evaluate(() => {
      const { ready = 0, listed = 0 } = window as Window & { ready?: number; listed?: number };
      const painted = performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? 0;
      return { painted, ready, listed };
    });
    return { ...stood, processor };
  } finally {
    await page.close();
  }
}

test("a start", { timeout: 200_000 }, async () => {
  await builtScreens();
  const library = mkdtempSync(join(tmpdir(), "registrant-library-"));
  const browser = await launchChromium();
  const [programs, pages]: [number[], Stood[]] = [[], []];
  try {
    for (let at = 0; at <= STARTS; at++) {
      const { program, address, took } = await started(library);
      programs.push(took);
      pages.push(await firstPage(browser, address));
      program.kill("SIGTERM");
      if (program.exitCode === null) await once(program, "exit");
    }
  } finally {
    await browser.close();
    rmSync(library, { recursive: true, force: true });
  }
  // The first of each pays for what the system and the browser have not read yet.
  const column = (values: readonly number[]): string => {
    const warm = values.slice(1).sort((a, b) => a - b);
    return `${ms(median(warm))} (slowest ${ms(warm.at(-1) as number)}, the very first ${ms(values[0] as number)})`;
  };
  console.log(
    [
      `A start, milliseconds, median of ${STARTS} warm ones; load average ${loadavg()[0]?.toFixed(1)}.`,
      `the program, until it serves: ${column(programs)}`,
      `the first page, until it is painted: ${column(pages.map(({ painted }) => painted))}`,
      `the first page, until its box can be written in: ${column(pages.map(({ ready }) => ready))}`,
      `the first page, until the organs are listed: ${column(pages.map(({ listed }) => listed))}`,
      `processor time of the page until then: ${column(pages.map(({ processor }) => processor))}`,
    ].join("\n"),
  );
});
