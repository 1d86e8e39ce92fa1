import type { Patch, Patches, YamlPatcher } from "./text-patch.ts";
import type { Located } from "./yaml-text.ts";
import { isGroup, type YamlGroup, type YamlValue } from "./yaml-words.ts";

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** One small change of a value that stands in a file; `null` when nothing is left to change. */
export interface Step {
  readonly patches: Patches;
}

/** The keys inside some groups that the form knows; others in there are somebody's own, and stay. */
export type KnownKeys = Readonly<Record<string, readonly string[]>>;

/**
 * The next of the small changes that lead from what stands behind a key to what is wanted there; asked again and again,
 * each time on the text as it is then, until it answers `null`. What is wanted already keeps its bytes, and so do comments
 * and strange keys inside groups and between the items of lists.
 *
 * @param after keys behind which a new one finds its place.
 */
export function nextStep(
  patcher: YamlPatcher,
  map: Located,
  key: string,
  value: YamlValue | null,
  known: KnownKeys,
  after: readonly string[] = [],
): Step | null {
  const node = map.entries?.get(key)?.node;
  const isThere = map.pairs?.some((pair) => pair.key === key) ?? false;
  if (value === null) return isThere ? { patches: patcher.removeKey(map, key) } : null;
  if (node && same(node.value, value)) return null;
  if (node?.pairs && !node.alias && isGroup(value) && Object.keys(value).length > 0) {
    return insideGroup(patcher, node, value, known, key);
  }
  if (node?.items && node.items.length > 0 && !node.alias && Array.isArray(value) && value.some(isGroup)) {
    return insideList(patcher, map, key, node, value, known);
  }
  const [first] = !isThere && Array.isArray(value) ? (value as readonly YamlValue[]) : [];
  // A list of groups is begun with its first item, a line for each.
  if (first !== undefined && isGroup(first)) return { patches: patcher.insertItem(map, key, 0, first, after) };
  return { patches: patcher.setKey(map, key, value, after) };
}

/** What is wanted first, then what goes: so a group is never empty on the way. */
function insideGroup(
  patcher: YamlPatcher,
  node: Located,
  value: YamlGroup,
  known: KnownKeys,
  name: string,
): Step | null {
  for (const [at, [key, each]] of Object.entries(value).entries()) {
    const before = Object.keys(value).slice(0, at);
    const step = each === undefined ? null : nextStep(patcher, node, key, each, known, before);
    if (step) return step;
  }
  for (const { key } of node.pairs ?? []) {
    const goes = value[key] === undefined && (known[name]?.includes(key) ?? true);
    if (goes) return { patches: patcher.removeKey(node, key) };
  }
  return null;
}

/** Items that go, one that changes, or one that comes. */
function insideList(
  patcher: YamlPatcher,
  map: Located,
  key: string,
  list: Located,
  wanted: readonly YamlValue[],
  known: KnownKeys,
): Step | null {
  const items = list.items ?? [];
  if (wanted.length === 0) return { patches: patcher.removeKey(map, key) };
  // The first that is otherwise is the one taken out, where items went.
  const at = items.findIndex((item, index) => !meets(item, wanted[index], known, key));
  if (items.length > wanted.length) {
    return { patches: patcher.removeItem(list, at < 0 ? items.length - 1 : at) };
  }
  const [item, want] = [items[at], wanted[at]];
  if (item && want !== undefined) {
    if (item.pairs && !item.alias && isGroup(want)) return insideGroup(patcher, item, want, known, key);
    return { patches: [patcher.replace(item, want, patcher.inBrackets(list))] satisfies Patch[] };
  }
  const next = wanted[items.length];
  return next === undefined ? null : { patches: patcher.insertItem(map, key, items.length, next) };
}

/** Whether an item says what is wanted; strange keys in it do not count. */
function meets(item: Located, want: YamlValue | undefined, known: KnownKeys, name: string): boolean {
  if (want === undefined) return false;
  const { value } = item;
  if (!isGroup(value) || !isGroup(want)) return same(value, want);
  const keys = known[name] ?? Object.keys(value);
  return [...new Set([...keys, ...Object.keys(want)])].every((key) => same(value[key], want[key]));
}
