import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";

const root = join(import.meta.dirname, "..", "..");
const bundle = join(root, "dist", "renderer");

/** When the newest file under a folder was written, in milliseconds. */
const newest = (folder: string): number =>
  Math.max(
    ...readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs),
  );

let built: Promise<string> | undefined;

/** The folder of the built screens, built first when a source is newer; looked at once in a worker. */
export const builtScreens = (): Promise<string> => {
  built ??= upToDate();
  return built;
};

async function upToDate(): Promise<string> {
  let made = 0;
  try {
    made = statSync(join(bundle, "index.html")).mtimeMs;
  } catch {
    // Not built yet.
  }
  if (made < Math.max(newest(join(root, "renderer")), newest(join(root, "shared-model")))) {
    // What people get, and not what React has for those who write screens.
    process.env.NODE_ENV = "production";
    const { build } = await import("vite");
    await build({ configFile: join(root, "renderer", "vite.config.ts"), logLevel: "warn" });
  }
  return bundle;
}
