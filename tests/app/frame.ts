import { loadavg } from "node:os";
import type { CDPSession, Page } from "playwright-core";
import { test } from "vitest";
import { median, ms } from "../bench/numbers.ts";
import { launchChromium } from "./chromium.ts";
import { served } from "./served.ts";

// How long the page takes from a touch of a stop to the frame that shows what is to be said of it: npm run bench:frame.
// The clock runs from the pointer going down; a busy machine makes it slow, so the page's processor time stands beside it.

const ORGANS = [
  ["Sallowby", /^All Saints/],
  ["Hawsermouth", /^Holy Trinity/],
  ["Aldrunburg", /^Dom Unserer Lieben Frau/],
] as const;
const TOUCHES = 16;
/** Time for what is put off until after the frame, so that one touch does not pay for the one before. */
const REST_MS = 500;

/** One touch, in milliseconds. */
interface Touch {
  /** From the pointer going down to the end of the handlers of the click, the screens' update among them. */
  readonly update: number;
  /** From the pointer going down until the frame with the update is made. */
  readonly frame: number;
  /** Processor time of scripts, the later work among it. */
  readonly script: number;
  /** Processor time of styles and layout. */
  readonly layout: number;
}

/** What the page notes down of a touch. */
interface Marked {
  touch?: { down: number; update: number; frame: number };
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
    let down = 0;
    addEventListener(
      "pointerdown",
      (event) => {
        down = event.timeStamp;
      },
      true,
    );
    // The click comes to the screens before it comes here; what they change is made before this task ends.
    addEventListener("click", () => {
      const touch = { down, update: 0, frame: 0 };
      queueMicrotask(() => {
        touch.update = performance.now() - down;
      });
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          touch.frame = performance.now() - down;
          marked.touch = touch;
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
  await page.waitForTimeout(REST_MS);
  await page.evaluate(() => {
    delete (window as Window & Marked).touch;
  });
  const before = await processorTime(session);
  const point = { x: box.x + box.width / 2, y: box.y + box.height / 2, button: "left", clickCount: 1 } as const;
  await Promise.all([
    session.send("Input.dispatchMouseEvent", { type: "mousePressed", ...point }),
    session.send("Input.dispatchMouseEvent", { type: "mouseReleased", ...point }),
  ]);
  await page.waitForFunction(() => (window as Window & Marked).touch !== undefined);
  await page.waitForTimeout(REST_MS);
  const after = await processorTime(session);
  const { update, frame } = await page.evaluate(() => (window as Window & Marked).touch ?? { update: 0, frame: 0 });
  return { update, frame, script: after.script - before.script, layout: after.layout - before.layout };
}

test("a touch", { timeout: 400_000 }, async () => {
  const host = await served();
  const browser = await launchChromium();
  const lines = [
    `A touch of a stop, milliseconds, median of ${TOUCHES} and the tenth slowest of a hundred; load average ${loadavg()[0]?.toFixed(1)}.`,
    "update: from the pointer down to the page changed; frame: to the frame made; script, layout: processor time in all.",
  ];
  try {
    for (const [name, organ] of ORGANS) {
      const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
      await openByHand(page, host.address, organ);
      const session = await page.context().newCDPSession(page);
      await session.send("Performance.enable", { timeDomain: "threadTicks" });
      const stops = await page.locator("button[data-row]:not(.word)").count();
      const touches: Touch[] = [];
      for (let at = 0; at < TOUCHES; at++) touches.push(await touched(page, session, at));
      const column = (of: keyof Touch): string => {
        const values = touches.map((each) => each[of]).sort((a, b) => a - b);
        return `${of} ${ms(median(values))} (${ms(values[Math.floor(0.9 * values.length)] as number)})`;
      };
      lines.push(
        `${name}, ${stops} stops: ${(["update", "frame", "script", "layout"] as const).map(column).join(", ")}`,
      );
      await page.close();
    }
  } finally {
    await browser.close();
    await host.stop();
  }
  console.log(lines.join("\n"));
});
