import { couplerName, readCouplerText } from "./coupler-text.ts";
import { folded } from "./nearest.ts";
import type { Patch, YamlPatcher } from "./text-patch.ts";
import type { Located } from "./yaml-text.ts";

/** A value that names the division, and the group or list it stands in. */
interface Mention {
  readonly node: Located;
  readonly within: Located;
  readonly text: string;
}

function inCouplers(root: Located, division: string, name: string, names: readonly string[]): readonly Mention[] {
  const list = root.entries?.get("couplers")?.node;
  return (list?.items ?? []).flatMap((item) => {
    const node = item.entries ? item.entries.get("coupler")?.node : item;
    const read = node && readCouplerText(String(node.value), names);
    if (!list || !node || !read || !("coupler" in read)) return [];
    const { from, to, pitch } = read.coupler;
    if (from !== division && to !== division) return [];
    const renamed = { from: from === division ? name : from, to: to === division ? name : to, pitch };
    return [{ node, within: item.entries ? item : list, text: couplerName(renamed) }];
  });
}

/**
 * Patches that give a division another name wherever the file names it, its own `name:` and the stops that point into it left
 * out: in couplers, tremulants, unison-offs, aids, and as the box that another division shares. `names`: of all divisions.
 */
export function divisionMentions(
  root: Located,
  division: string,
  name: string,
  names: readonly string[],
  patcher: YamlPatcher,
): readonly Patch[] {
  const value = (map: Located | undefined, key: string): Located | undefined => map?.entries?.get(key)?.node;
  const isIt = (text: unknown): boolean => typeof text === "string" && folded(text) === folded(division);
  const aids = value(root, "aids");
  const lists = [value(root, "tremulants"), value(root, "unison-off"), value(aids, "ventils")];
  const inLists = lists.flatMap((list) =>
    (list?.items ?? []).flatMap((node) => (list && isIt(node.value) ? [{ node, within: list, text: name }] : [])),
  );
  const boxes = (value(root, "divisions")?.items ?? []).flatMap((within) => {
    const node = value(within, "enclosed");
    return node && isIt(node.value) ? [{ node, within, text: name }] : [];
  });
  const divisionals = value(aids, "divisionals");
  const keys = (divisionals?.pairs ?? []).flatMap((pair) => {
    const node = { ...pair.node, start: pair.keyStart, end: pair.keyEnd, entries: null, pairs: null, items: null };
    return divisionals && isIt(pair.key) ? [{ node, within: divisionals, text: name }] : [];
  });
  return [...inLists, ...boxes, ...keys, ...inCouplers(root, division, name, names)].map(({ node, within, text }) =>
    patcher.replace(node, text, patcher.inBrackets(within)),
  );
}
