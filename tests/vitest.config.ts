import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    globalSetup: [new URL("house/outside-programs.ts", import.meta.url).pathname],
    environment: "node",
    // Against tests that never end, not for measuring: commands and browsers are slow on a busy machine.
    testTimeout: 90_000,
    hookTimeout: 120_000,
    // Browsers wait more than they work: a core is not kept back for the runner.
    maxWorkers: "100%",
    allowOnly: false,
  },
});
