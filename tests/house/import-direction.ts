import { builtinModules } from "node:module";
import { dirname, join, normalize } from "node:path/posix";

/**
 * What each room may import besides itself. A room is a folder of `shared-model`, the host interface, or one of the two
 * sides of the house; a room without a row may not exist.
 */
export const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = (() => {
  const facts = ["pitch", "stoplist", "music", "console"];
  const judged = [...facts, "acoustics", "rules", "judging"];
  const planned = [...judged, "propose", "check"];
  const all = [...planned, "plan", "carry", "cards", "pictures", "files"];
  return {
    pitch: [],
    stoplist: ["pitch"],
    music: ["pitch", "stoplist", "console"],
    console: ["pitch", "stoplist"],
    acoustics: facts,
    rules: [...facts, "acoustics"],
    judging: [...facts, "acoustics", "rules"],
    propose: judged,
    check: judged,
    plan: planned,
    carry: [...planned, "plan"],
    cards: [...planned, "plan", "carry", "pictures"],
    pictures: judged,
    // Beside the model it writes: it may name every value that is kept in a file, never how one is found.
    files: [...facts, "acoustics", "plan", "carry", "cards"],
    // Types alone: what a list says of an organ, what was printed.
    "host-api.ts": ["stoplist", "cards"],
    "host-messages.ts": ["host-api.ts"],
    electron: ["host-api.ts", "host-messages.ts", ...all],
    renderer: ["host-api.ts", "host-messages.ts", ...all],
  };
})();

/** The room a source file lies in: `pitch` for `shared-model/pitch/foot.ts`, `electron` for `electron/library/disk.ts`. */
function roomOf(path: string): string {
  const [side, room] = path.split("/") as [string, string | undefined];
  return side === "shared-model" ? (room ?? side) : side;
}

/** Everything a source text imports, re-exports or requires, types and dynamic imports included. */
export function importsOf(source: string): readonly string[] {
  const standing = /^[ \t]*(?:import|export)\b(?:[^"';]*?\bfrom)?\s*["']([^"']+)["']/gm;
  const called = /\b(?:import|require)\s*\(\s*["'`]([^"'`]+)["'`]/g;
  return [...source.matchAll(standing), ...source.matchAll(called)].map((found) => found[1] as string);
}

const NODE = new Set(builtinModules);

function packageFault(path: string, name: string, packages: readonly string[]): string | null {
  const owner = name
    .split("/")
    .slice(0, name.startsWith("@") ? 2 : 1)
    .join("/");
  const host = name.startsWith("node:") || NODE.has(owner) || /^(?:@?electron|react|@?react-dom)\b/.test(owner);
  if (path.startsWith("shared-model/") && host)
    return `${path} imports ${name}: the model knows no host and no screen.`;
  if (path.startsWith("renderer/") && (name.startsWith("node:") || NODE.has(owner) || owner === "electron")) {
    return `${path} imports ${name}: the screen asks the host through shared-model/host-api.ts.`;
  }
  if (host && (name.startsWith("node:") || NODE.has(owner) || owner === "electron")) return null;
  return packages.includes(owner) ? null : `${path} imports ${name}, which package.json does not name.`;
}

/** What is wrong with the imports of one source file, a sentence each. `packages` are those that package.json names. */
export function directionFaults(path: string, source: string, packages: readonly string[]): readonly string[] {
  const room = roomOf(path);
  const row = MAY_IMPORT[room];
  if (!row) return [`${path}: no row of MAY_IMPORT names "${room}"; add one that says what it may import.`];
  return importsOf(source).flatMap((name) => {
    if (!name.startsWith(".")) return packageFault(path, name, packages) ?? [];
    const target = normalize(join(dirname(path), name));
    const other = roomOf(target);
    if (target.startsWith("../")) return `${path} imports ${name}, outside the project.`;
    if (other === room || row.includes(other)) return [];
    return `${path} imports ${target}: ${room} may import ${row.length > 0 ? row.join(", ") : "nothing"}.`;
  });
}
