import { defineConfig } from "vitest/config";

/** Takes the pictures of the pages; no part of the tests. */
export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["tests/app/screenshots.ts"],
    environment: "node",
  },
});
