import { LINK_KINDS, type Link, type LinkKind } from "../music/piece.ts";
import { folded, nearestOf } from "./nearest.ts";
import type { Reporter } from "./reporter.ts";
import type { Located } from "./yaml-text.ts";

/** A link with its place in the text, for what has to be said about it. */
interface PlacedLink extends Link {
  readonly from: number;
  readonly offset: number;
}

/** Links that cannot both hold between the same two sections, the second read from the first one's side. */
const AGAINST: Readonly<Record<LinkKind, readonly LinkKind[]>> = {
  "same-as": ["softer-than", "louder-than", "echo-of", "contrast-with"],
  "softer-than": ["same-as", "louder-than"],
  "louder-than": ["same-as", "softer-than", "echo-of"],
  "echo-of": ["same-as", "louder-than", "contrast-with"],
  "contrast-with": ["same-as", "echo-of"],
};

/** What a link says when it is read from the other section. */
const TURNED: Readonly<Record<LinkKind, LinkKind>> = {
  "same-as": "same-as",
  "softer-than": "louder-than",
  "louder-than": "softer-than",
  "echo-of": "louder-than",
  "contrast-with": "contrast-with",
};

/** The places, from 0, of the sections that a name or a number from 1 means: one, or none or several when it is not clear. */
export function sectionsMeant(text: string | number, names: readonly (string | null)[]): readonly number[] {
  const wanted = folded(String(text));
  const hits = names.flatMap((name, at) => (name !== null && folded(name) === wanted ? [at] : []));
  const number = /^\d{1,4}$/.test(String(text)) ? Number(text) : 0;
  return hits.length === 0 && number >= 1 && number <= names.length ? [number - 1] : hits;
}

/** The place of the section that a link names; `null` after an error. */
function findSection(node: Located, names: readonly (string | null)[], reporter: Reporter): number | null {
  const text = String(node.value);
  const hits = sectionsMeant(text, names);
  if (hits.length === 1) return hits[0] as number;
  if (hits.length > 1) {
    const numbers = hits.map((at) => at + 1);
    reporter.report({ code: "section-ambiguous", name: text, numbers }, node.start);
    return null;
  }
  const all = names.filter((name) => name !== null);
  const nearest = all.length <= 6 ? all : nearestOf(text, all);
  reporter.report({ code: "unknown-name", what: "section", name: text, where: "this piece", nearest }, node.start);
  return null;
}

/** A section in sentences: its name, else `Section 3`. */
export const sectionWords = (name: string | null, at: number): string => name ?? `Section ${at + 1}`;

function readLinks(
  nodes: readonly Located[],
  names: readonly (string | null)[],
  reporter: Reporter,
): readonly PlacedLink[] {
  return nodes.flatMap((node, from) =>
    LINK_KINDS.flatMap((kind) => {
      const value = node.entries?.get(kind)?.node;
      const items = value ? (value.items ?? [value]) : [];
      return items.flatMap((item): readonly PlacedLink[] => {
        const to = findSection(item, names, reporter);
        return to === null ? [] : [{ kind, to, from, offset: item.start }];
      });
    }),
  );
}

/** Sections that are the same share one representative. */
function representatives(count: number, links: readonly PlacedLink[]): (at: number) => number {
  const parent = Array.from({ length: count }, (_, at) => at);
  const find = (at: number): number => {
    let root = at;
    while (parent[root] !== root) root = parent[root] as number;
    return root;
  };
  for (const { kind, from, to } of links) if (kind === "same-as") parent[find(from)] = find(to);
  return find;
}

/** A ring of sections each softer than the next; empty when there is none. `same` gives a section's representative. */
function ringOf(count: number, links: readonly PlacedLink[], same: (at: number) => number): readonly number[] {
  const louder = Array.from({ length: count }, () => new Set<number>());
  for (const { kind, from, to } of links) {
    const softer = kind === "softer-than" || kind === "echo-of";
    if (softer) louder[same(from)]?.add(same(to));
    if (kind === "louder-than") louder[same(to)]?.add(same(from));
  }
  // What is louder than nothing left is no part of a ring; taken away again and again, only rings and ways to them stay.
  const left = new Set(louder.keys());
  for (let before = -1; before !== left.size; ) {
    before = left.size;
    for (const at of left) if (![...(louder[at] ?? [])].some((next) => left.has(next))) left.delete(at);
  }
  const ring: number[] = [];
  let [at] = left;
  while (at !== undefined && !ring.includes(at)) {
    ring.push(at);
    at = [...(louder[at] ?? [])].find((next) => left.has(next));
  }
  return at === undefined ? [] : ring.slice(ring.indexOf(at));
}

/** An earlier link between the same sections that cannot hold beside this one, as it reads from this one's side. */
function contradicted(link: PlacedLink, earlier: readonly PlacedLink[], same: (at: number) => number): LinkKind | null {
  if (link.kind === "same-as") return null;
  const [from, to] = [same(link.from), same(link.to)];
  if (from === to) return "same-as";
  for (const other of earlier) {
    const [otherFrom, otherTo] = [same(other.from), same(other.to)];
    const kind =
      otherFrom === from && otherTo === to
        ? other.kind
        : otherFrom === to && otherTo === from
          ? TURNED[other.kind]
          : null;
    if (kind !== null && AGAINST[link.kind].includes(kind)) return kind;
  }
  return null;
}

/**
 * The links of every section, in order. Links to nothing, to the section itself, and such as cannot all hold are reported;
 * `names` are the sections' own, `null` where one has none.
 */
export function linksOf(
  nodes: readonly Located[],
  names: readonly (string | null)[],
  reporter: Reporter,
): readonly (readonly Link[])[] {
  const words = (at: number): string => sectionWords(names[at] ?? null, at);
  const all = readLinks(nodes, names, reporter).filter(({ kind, from, to, offset }) => {
    if (from === to) reporter.report({ code: "link-to-itself", kind, section: words(from) }, offset);
    return from !== to;
  });
  const same = representatives(nodes.length, all);
  let sound = true;
  for (const [index, link] of all.entries()) {
    const kind = contradicted(link, all.slice(0, index), same);
    if (kind === null) continue;
    sound = false;
    const kinds = [kind, link.kind] as const;
    const facts = { section: words(link.from), other: words(link.to), kinds };
    reporter.report({ code: "links-contradict", ...facts }, link.offset);
  }
  const ring = sound ? ringOf(nodes.length, all, same) : [];
  if (ring.length > 0) {
    const at = all.find((link) => same(link.from) === ring[0] || same(link.to) === ring[0]);
    reporter.report({ code: "links-in-ring", sections: ring.map(words) }, at?.offset ?? 0);
  }
  return nodes.map((_, at) => all.filter((link) => link.from === at).map(({ kind, to }) => ({ kind, to })));
}
