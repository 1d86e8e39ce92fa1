import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

/** Bundles the preload script: in a sandbox it may be one file only, of the older kind of modules. */
export default defineConfig({
  build: {
    lib: {
      entry: fileURLToPath(new URL("preload.ts", import.meta.url)),
      formats: ["cjs"],
      fileName: () => "preload.cjs",
    },
    outDir: fileURLToPath(new URL("../dist/electron", import.meta.url)),
    emptyOutDir: false,
    minify: false,
    target: "es2023",
    rolldownOptions: { external: ["electron"] },
  },
  logLevel: "warn",
});
