import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";

const kilobytes = (bytes: number): string => `${Math.round(bytes / 1024)} kB`;

/**
 * What the scripts may weigh, in bytes: what the first page loads, by itself and shared with the other pages; these, which
 * are loaded as soon as the first one stands; the worker that reckons; and what sets type and writes PDF, which is loaded
 * with the first card. About a twentieth above what they weigh, so that new screens have room and a
 * library taken in twice does not.
 */
const BUDGET = [
  { script: "index", most: 245_000 },
  { script: "shared", most: 730_000 },
  { script: "pages", most: 610_000 },
  { script: "reckon-worker", most: 1_100_000 },
  { script: "printing", most: 580_000 },
] as const;

/** Prints how large the screens are, and refuses to build them larger than the budget. */
const bundleSize = (): Plugin => ({
  name: "bundle-size",
  writeBundle(_, bundle) {
    const sizes = Object.values(bundle).map((each) => ({
      name: each.fileName,
      bytes: each.type === "chunk" ? new Blob([each.code]).size : new Blob([each.source as BlobPart]).size,
    }));
    for (const { name, bytes } of sizes.filter((each) => each.name.endsWith(".js"))) {
      const row = BUDGET.find(({ script }) => name.startsWith(`assets/${script}-`));
      if (!row) this.error(`${name} is a new script: give it a row in the budget of renderer/vite.config.ts.`);
      if (bytes > row.most) {
        this.error(
          `${name} weighs ${bytes} bytes, ${row.most} are allowed: load less, or raise the budget and say why.`,
        );
      }
    }
    const total = (ending: string): string =>
      kilobytes(sizes.filter(({ name }) => name.endsWith(ending)).reduce((sum, { bytes }) => sum + bytes, 0));
    console.log(`renderer: scripts ${total(".js")}, style ${total(".css")}, fonts ${total(".woff2")}`);
  },
});

/** Builds the screens into dist/renderer, from where both hosts serve them. Everything is bundled: nothing comes from a network. */
export default defineConfig({
  root: import.meta.dirname,
  // Hosts serve the folder under addresses of their own.
  base: "./",
  plugins: [react(), bundleSize()],
  worker: { format: "es" },
  build: {
    outDir: "../dist/renderer",
    emptyOutDir: true,
    target: "es2023",
    // Fonts stay files of their own, so that the content policy need not allow data addresses.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 4000,
    // How long the builder's own parts take tells an organist who starts the app nothing.
    rolldownOptions: {
      checks: { pluginTimings: false },
      // What the first page shares with the others has no name of its own.
      output: {
        chunkFileNames: ({ isDynamicEntry }) => `assets/${isDynamicEntry ? "[name]" : "shared"}-[hash].js`,
      },
    },
  },
});
