import { defineConfig } from "vitest/config";

/**
 * Tests that put another module in the place of a real one, or send the process a signal: nothing of theirs may reach the
 * next file, or the browser that a worker keeps.
 */
const APART = [
  "tests/host/desktop.test.ts",
  "tests/host/desktop-runtime.test.ts",
  "tests/cards/pdf-in-browser.test.ts",
];

const shared = {
  root: new URL("..", import.meta.url).pathname,
  environment: "node",
  // Against tests that never end, not for measuring: commands and browsers are slow on a busy machine.
  testTimeout: 90_000,
  hookTimeout: 120_000,
  // What a page is waited for: one second, as a runner has it, is no fault of a page on a busy machine.
  expect: { poll: { timeout: 30_000 } },
  allowOnly: false,
} as const;

export default defineConfig({
  test: {
    root: shared.root,
    globalSetup: [new URL("house/outside-programs.ts", import.meta.url).pathname],
    // Browsers wait more than they work: a core is not kept back for the runner.
    maxWorkers: "100%",
    projects: [
      // A worker keeps what it has loaded from file to file, and the browser that it has started: loading the model anew
      // for every file took a third of all the time.
      { test: { ...shared, name: "all", include: ["tests/**/*.test.ts"], exclude: APART, isolate: false } },
      { test: { ...shared, name: "apart", include: APART } },
    ],
  },
});
