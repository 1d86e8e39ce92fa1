import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";

/** What is bundled: the screens, and the script that stands between them and the desktop shell. */
const SETTINGS = ["renderer/vite.config.ts", "electron/vite.config.ts"];

/**
 * Builds the app's screens in a project that has the means to.
 *
 * @returns `null` when it is done; else what the builder said, "" when there is no builder.
 */
export function buildScreens(project: string): string | null {
  const builder = join(project, "node_modules", "vite", "bin", "vite.js");
  if (![builder, ...SETTINGS.map((path) => join(project, path))].every((path) => existsSync(path))) return "";
  for (const settings of SETTINGS) {
    const words = [builder, "build", "--config", join(project, settings), "--logLevel", "warn"];
    const run = spawnSync(process.execPath, words, { cwd: project, encoding: "utf8" });
    if (run.status !== 0) return `${run.stdout ?? ""}${run.stderr ?? ""}`;
  }
  return null;
}
