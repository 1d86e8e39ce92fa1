import type { ConsoleBuild } from "../stoplist/instrument.ts";
import type { Patch, Patches, YamlPatcher } from "./text-patch.ts";
import type { Located } from "./yaml-text.ts";
import type { YamlValue } from "./yaml-words.ts";

/** What is stated of a console's jambs. */
export type StatedConsole = Pick<ConsoleBuild, "action" | "left" | "right">;

/** Keys of an organ behind which `console:` is put when it is new. */
const BEFORE_CONSOLE = ["divisions", "ranks", "couplers", "through-couplers", "tremulants", "unison-off", "aids"];

const isNothing = (value: YamlValue | null): boolean => value === null || (Array.isArray(value) && value.length === 0);

/** Patches that make `console:` say something else of its jambs; distances and what others wrote there keep their text. */
export function consolePatches(root: Located, old: StatedConsole, now: StatedConsole, patcher: YamlPatcher): Patches {
  const rows: readonly (readonly [key: string, value: YamlValue | null, before: YamlValue | null])[] = [
    ["action", now.action, old.action],
    ["left", now.left, old.left],
    ["right", now.right, old.right],
  ];
  const changed = rows.filter(([, value, before]) => JSON.stringify(value) !== JSON.stringify(before));
  if (changed.length === 0) return [];
  const map = root.entries?.get("console")?.node;
  const keys = map?.pairs?.map(({ key }) => key) ?? [];
  if (!map || keys.length === 0) {
    const value = Object.fromEntries(
      changed.flatMap(([key, each]) => (each === null || isNothing(each) ? [] : [[key, each]])),
    );
    return patcher.setKey(root, "console", value, BEFORE_CONSOLE);
  }
  const gone = changed.filter(([key, value]) => isNothing(value) && keys.includes(key));
  const said = changed.filter(([, value]) => !isNothing(value));
  if (said.length === 0 && gone.length === keys.length) return patcher.removeKey(root, "console");
  // A key taken out beside one that is put in: both may touch one place, so the list is emptied instead.
  const isBeside = said.some(([key]) => !keys.includes(key));
  const patches: Patch[] = [];
  for (const [key, value] of [...gone, ...said]) {
    const made = isNothing(value) && !isBeside ? patcher.removeKey(map, key) : patcher.setKey(map, key, value ?? []);
    if (!made) return null;
    patches.push(...made);
  }
  return patches;
}
