import { loadavg } from "node:os";
import type { CDPSession, Page } from "playwright-core";
import { test } from "vitest";
import { median, ms } from "../bench/numbers.ts";
import { launchChromium } from "./chromium.ts";
import { served } from "./served.ts";

// How long the page takes from a touch of a stop to the frame that shows what is to be said of it: npm run bench:frame.
// A touch acts when the finger lifts, so the clock runs from there; a busy machine makes it slow, so the page's processor
// time stands beside it.

const ORGANS = [
  ["Sallowby", /^All Saints/],
  ["Hawsermouth", /^Holy Trinity/],
  ["Aldrunburg", /^Dom Unserer Lieben Frau/],
] as const;
const TOUCHES = 16;
/** Touches before these, until the browser has translated what runs at every one; the first of them is told by itself. */
const WARMING = 8;
/** Time for what is put off until after the frame, so that one touch does not pay for the one before. */
const REST_MS = 500;
/** How long a finger rests on what it touches: a quick one. */
const PRESS_MS = 60;

/** One touch, in milliseconds. */
interface Touch {
  /** From the lifting of the finger to the end of the handlers of the click, the screens' update among them. */
  readonly update: number;
  /** From there until the browser begins its next frame, which it does sixty times a second whatever the page does. */
  readonly waiting: number;
  /** From the lifting of the finger until the frame with the update is made. */
  readonly frame: number;
  /** The same without the waiting: what the page itself takes of the frame. */
  readonly work: number;
  /** Processor time of scripts, the later work among it. */
  readonly script: number;
  /** Processor time of styles and layout. */
  readonly layout: number;
}

const COLUMNS = ["update", "waiting", "frame", "work", "script", "layout"] as const;

/** What the page notes down of a touch. */
interface Marked {
  touch?: Pick<Touch, "update" | "waiting" | "frame">;
}

async function openByHand(page: Page, address: string, organ: RegExp): Promise<void> {
  await page.goto(address);
  await page.getByRole("button", { name: organ }).click();
  await page.getByRole("button", { name: /^Melody over an accompaniment/ }).click();
  await page.getByRole("button", { name: "See registrations" }).click();
  await page.getByRole("radio").first().click({ timeout: 60_000 });
  await page.getByRole("button", { name: "Draw by hand" }).click();
  await page.getByText("As you drew it").waitFor();
  // A large organ is folded to what is drawn: it is timed as it is heaviest.
  const folded = page.getByRole("button", { name: /^All \d+ stops/ });
  while ((await folded.count()) > 0) await folded.first().click();
  await page.evaluate(() => {
    const marked = window as Window & Marked;
    // The click comes to the screens before it comes here; what they change is made before this task ends.
    addEventListener("click", ({ timeStamp: lifted }) => {
      let [update, begun] = [0, 0];
      queueMicrotask(() => {
        update = performance.now() - lifted;
      });
      requestAnimationFrame(() => {
        begun = performance.now() - lifted;
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          marked.touch = { update, waiting: begun - update, frame: performance.now() - lifted };
        };
        port2.postMessage(null);
      });
    });
  });
}

async function processorTime(session: CDPSession): Promise<{ readonly script: number; readonly layout: number }> {
  const { metrics } = await session.send("Performance.getMetrics");
  const of = (name: string): number => 1000 * (metrics.find((each) => each.name === name)?.value ?? 0);
  return { script: of("ScriptDuration"), layout: of("LayoutDuration") + of("RecalcStyleDuration") };
}

async function touched(page: Page, session: CDPSession, at: number): Promise<Touch> {
  const rows = page.locator("button[data-row]:not(.word)");
  const row = rows.nth((at * 7) % (await rows.count()));
  await row.scrollIntoViewIfNeeded();
  const box = await row.boundingBox();
  if (!box) throw new Error("A stop is not on the page.");
  const point = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await session.send("Input.dispatchMouseEvent", { type: "mouseMoved", ...point });
  await page.waitForTimeout(REST_MS);
  await page.evaluate(() => {
    delete (window as Window & Marked).touch;
  });
  const before = await processorTime(session);
  const click = { ...point, button: "left", clickCount: 1 } as const;
  await session.send("Input.dispatchMouseEvent", { type: "mousePressed", ...click });
  await page.waitForTimeout(PRESS_MS);
  await session.send("Input.dispatchMouseEvent", { type: "mouseReleased", ...click });
  await page.waitForFunction(() => (window as Window & Marked).touch !== undefined);
  await page.waitForTimeout(REST_MS);
  const after = await processorTime(session);
  const touch = await page.evaluate(() => (window as Window & Marked).touch);
  if (!touch) throw new Error("The touch was not noted down.");
  return {
    ...touch,
    work: touch.frame - touch.waiting,
    script: after.script - before.script,
    layout: after.layout - before.layout,
  };
}

test("a touch", { timeout: 400_000 }, async () => {
  const host = await served();
  const browser = await launchChromium();
  const lines = [
    `A touch of a stop, milliseconds, median of ${TOUCHES} warm ones and the tenth slowest of a hundred; load average ${loadavg()[0]?.toFixed(1)}.`,
    "update: from the finger lifted to the page changed; waiting: to the browser's next frame; frame: from the finger lifted to the frame",
    "made; work: frame without waiting; script, layout: processor time, what comes after the frame among it.",
  ];
  try {
    for (const [name, organ] of ORGANS) {
      const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
      await openByHand(page, host.address, organ);
      const session = await page.context().newCDPSession(page);
      await session.send("Performance.enable", { timeDomain: "threadTicks" });
      const stops = await page.locator("button[data-row]:not(.word)").count();
      const all: Touch[] = [];
      for (let at = 0; at < WARMING + TOUCHES; at++) all.push(await touched(page, session, at));
      const [first] = all;
      const touches = all.slice(WARMING);
      const column = (of: keyof Touch): string => {
        const values = touches.map((each) => each[of]).sort((a, b) => a - b);
        return `${of} ${ms(median(values))} (${ms(values[Math.floor(0.9 * values.length)] as number)})`;
      };
      lines.push(
        `${name}, ${stops} stops: ${COLUMNS.map(column).join(", ")}; the very first: work ${ms(first?.work ?? 0)}`,
      );
      await page.close();
    }
  } finally {
    await browser.close();
    await host.stop();
  }
  console.log(lines.join("\n"));
});
