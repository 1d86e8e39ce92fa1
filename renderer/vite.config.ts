import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";

const kilobytes = (bytes: number): string => `${Math.round(bytes / 1024)} kB`;

/** Prints how large the screens are, so that growth is seen when it happens. */
const bundleSize = (): Plugin => ({
  name: "bundle-size",
  writeBundle: (_, bundle) => {
    const sizes = Object.values(bundle).map((each) => ({
      name: each.fileName,
      bytes: each.type === "chunk" ? new Blob([each.code]).size : new Blob([each.source as BlobPart]).size,
    }));
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
  },
});
