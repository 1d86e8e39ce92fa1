import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    globalSetup: [new URL("house/outside-programs.ts", import.meta.url).pathname],
    environment: "node",
    testTimeout: 20_000,
    allowOnly: false,
  },
});
