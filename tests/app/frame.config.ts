import { defineConfig } from "vitest/config";

/** Times a touch in the stoplist and a start of the app; no part of the tests. The screens are built first, as they are shipped. */
export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["tests/app/frame.ts", "tests/app/start.ts"],
    fileParallelism: false,
    environment: "node",
  },
});
