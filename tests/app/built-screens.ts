import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";

const root = join(import.meta.dirname, "..", "..");
const bundle = join(root, "dist", "renderer");

/** When the newest file under a folder was written, in milliseconds. */
const newest = (folder: string): number =>
  Math.max(
    ...readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs),
  );

/** The folder of the built screens, built first when a source is newer. */
export async function builtScreens(): Promise<string> {
  let built = 0;
  try {
    built = statSync(join(bundle, "index.html")).mtimeMs;
  } catch {
    // Not built yet.
  }
  if (built < Math.max(newest(join(root, "renderer")), newest(join(root, "shared-model")))) {
    // What people get, and not what React has for those who write screens.
    process.env.NODE_ENV = "production";
    await build({ configFile: join(root, "renderer", "vite.config.ts"), logLevel: "warn" });
  }
  return bundle;
}
