import type { ConsoleAids } from "../stoplist/instrument.ts";
import type { Patch, Patches, YamlPatcher } from "./text-patch.ts";
import type { Located } from "./yaml-text.ts";
import type { YamlValue } from "./yaml-words.ts";

/** Keys of an organ behind which `aids:` is put when it is new. */
const BEFORE_AIDS = ["divisions", "ranks", "couplers", "through-couplers", "tremulants", "unison-off"];

/** Patches that make `aids:` say something else; keys that do not change, and those of others, keep their text. */
export function aidsPatches(root: Located, old: ConsoleAids, aids: ConsoleAids, patcher: YamlPatcher): Patches {
  const rows: readonly (readonly [string, YamlValue, YamlValue])[] = [
    ["generals", aids.generals, old.generals],
    ["divisionals", aids.divisionals, old.divisionals],
    ["levels", aids.levels, old.levels],
    ["crescendo-pedal", aids.crescendoPedal, old.crescendoPedal],
    ["ventils", aids.ventils, old.ventils],
  ];
  const changed = rows.filter(([, value, before]) => JSON.stringify(value) !== JSON.stringify(before));
  if (changed.length === 0) return [];
  const map = root.entries?.get("aids")?.node;
  if (!map?.pairs?.length) {
    const value = Object.fromEntries(changed.map(([key, each]) => [key, each]));
    return patcher.setKey(root, "aids", value, BEFORE_AIDS);
  }
  const isThere = ([key]: (typeof rows)[number]): boolean => map.pairs?.some((pair) => pair.key === key) ?? false;
  const patches: Patch[] = [];
  const fresh: Patch[] = [];
  for (const row of changed) {
    const made = patcher.setKey(map, row[0], row[1]);
    if (!made) return null;
    (isThere(row) ? patches : fresh).push(...made);
  }
  // New keys all come to stand at one place: one patch, so that their order is kept.
  const [first] = fresh;
  return first ? [...patches, { ...first, text: fresh.map((patch) => patch.text).join("") }] : patches;
}
