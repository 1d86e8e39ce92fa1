import type { Located, LocatedEntry } from "./yaml-text.ts";
import { behindKey, onLine, type YamlValue } from "./yaml-words.ts";

/** A stretch of the text and what stands there instead. */
export interface Patch {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Patches, or `null` where the text is written in a way that only a person can change. */
export type Patches = readonly Patch[] | null;

/** The text with all patches applied; they may stand in any order but not overlap. */
export function patched(text: string, patches: readonly Patch[]): string {
  let result = text;
  for (const { from, to, text: inserted } of patches.toSorted((a, b) => b.from - a.from || b.to - a.to)) {
    result = result.slice(0, from) + inserted + result.slice(to);
  }
  return result;
}

/** Changes to the text of a YAML file that touch no line but those of the entry that is changed. */
export class YamlPatcher {
  readonly #text: string;
  readonly #eol: string;

  constructor(text: string) {
    this.#text = text;
    this.#eol = text.includes("\r\n") ? "\r\n" : "\n";
  }

  #lineStart(offset: number): number {
    return this.#text.lastIndexOf("\n", offset - 1) + 1;
  }

  /** Behind the last sign of the line, before its end mark. */
  #lineEnd(offset: number): number {
    const at = this.#text.indexOf("\n", offset);
    const end = at < 0 ? this.#text.length : at;
    return this.#text[end - 1] === "\r" && end > offset ? end - 1 : end;
  }

  /** Where the next line begins, or the end of the text. */
  #nextLine(offset: number): number {
    const at = this.#text.indexOf("\n", offset);
    return at < 0 ? this.#text.length : at + 1;
  }

  /** Blanks as wide as what stands before the offset on its line. */
  #indent(offset: number): string {
    return " ".repeat(offset - this.#lineStart(offset));
  }

  #isFlow(node: Located): boolean {
    return this.#text[node.start] === "[" || this.#text[node.start] === "{";
  }

  #colonEnd(pair: LocatedEntry): number {
    const between = /^[ \t]*:/.exec(this.#text.slice(pair.keyEnd, pair.keyEnd + 1100));
    return pair.keyEnd + (between?.[0].length ?? 0);
  }

  #pairEnd(pair: LocatedEntry): number {
    return pair.node.value === null ? Math.max(this.#colonEnd(pair), pair.node.end) : this.contentEnd(pair.node);
  }

  /** Behind the last sign of a value, its comments and line ends left out. */
  contentEnd(node: Located): number {
    const lastItem = node.items?.[node.items.length - 1];
    const lastPair = node.pairs?.[node.pairs.length - 1];
    if (!node.alias && !this.#isFlow(node)) {
      if (lastItem) return this.contentEnd(lastItem);
      if (lastPair) return this.#pairEnd(lastPair);
    }
    return node.start + this.#text.slice(node.start, node.end).trimEnd().length;
  }

  /** Another scalar or one-line value in the place of this one. */
  replace(node: Located, value: YamlValue, inBrackets: boolean): Patch {
    return { from: node.start, to: this.contentEnd(node), text: inBrackets ? onLine(value) : behindKey(value) };
  }

  /** Whether a value stands inside brackets on the whole: then so must what replaces it. */
  inBrackets(parent: Located): boolean {
    return this.#isFlow(parent);
  }

  /** A remark behind the `|` or `>` at which a text of several lines begins: the text goes, the remark does not. */
  #headRemark(node: Located): string {
    const head = this.#text.slice(node.start, this.#lineEnd(node.start));
    return /^[|>][-+\d]*([ \t]+#.*)$/.exec(head)?.[1] ?? "";
  }

  /** Gives a key of a group a value; a new key comes behind the last one of `after` that is there, else at the end. */
  setKey(map: Located, key: string, value: YamlValue, after: readonly string[] = []): Patches {
    const { pairs } = map;
    if (!pairs || map.alias) return null;
    const pair = pairs.find((each) => each.key === key);
    const flow = this.#isFlow(map);
    const text = flow ? onLine(value) : behindKey(value);
    if (pair) {
      const colon = this.#colonEnd(pair);
      const { node } = pair;
      const sameLine = node.value !== null && !this.#text.slice(colon, node.start).includes("\n");
      if (sameLine) return [{ from: node.start, to: this.contentEnd(node), text: text + this.#headRemark(node) }];
      return [{ from: colon, to: node.value === null ? colon : this.contentEnd(node), text: ` ${text}` }];
    }
    const last = pairs[pairs.length - 1];
    if (flow) {
      const at = last ? this.#pairEnd(last) : map.start + 1;
      return [{ from: at, to: at, text: `${last ? ", " : ""}${key}: ${text}` }];
    }
    const before = pairs.findLast((each) => after.includes(each.key)) ?? last;
    if (!before || !pairs[0]) return null;
    const at = this.#lineEnd(this.#pairEnd(before));
    return [{ from: at, to: at, text: `${this.#eol}${this.#indent(pairs[0].keyStart)}${key}: ${text}` }];
  }

  /** Takes a key with its value away; nothing to do when it is not there. */
  removeKey(map: Located, key: string): Patches {
    const { pairs } = map;
    if (!pairs || map.alias) return null;
    const index = pairs.findIndex((each) => each.key === key);
    const pair = pairs[index];
    if (!pair) return [];
    const [before, next] = [pairs[index - 1], pairs[index + 1]];
    const end = this.#pairEnd(pair);
    if (!this.#isFlow(map)) {
      const start = this.#lineStart(pair.keyStart);
      if (this.#text.slice(start, pair.keyStart).trim() === "")
        return [{ from: start, to: this.#nextLine(end), text: "" }];
      return next ? [{ from: pair.keyStart, to: next.keyStart, text: "" }] : null;
    }
    if (next) return [{ from: pair.keyStart, to: next.keyStart, text: "" }];
    return [{ from: before ? this.#pairEnd(before) : pair.keyStart, to: end, text: "" }];
  }

  /** Where the dash of an item of a list without brackets stands; `null` when it does not begin its line. */
  #dash(item: Located): number | null {
    const start = this.#lineStart(item.start);
    const match = /^[ \t]*-(?=[ \t]+(?:[&!]\S*[ \t]+)*$)/.exec(this.#text.slice(start, item.start));
    return match ? start + match[0].length - 1 : null;
  }

  /** A new item before the one at `index`, or at the end of the list behind `key`, which is begun when it is not there. */
  insertItem(map: Located, key: string, index: number, value: YamlValue, after: readonly string[] = []): Patches {
    const list = map.entries?.get(key)?.node;
    if (!list?.items || list.items.length === 0) {
      return list && !list.items ? null : this.#beginList(map, key, `- ${behindKey(value)}`, value, after);
    }
    if (list.alias) return null;
    const at = Math.max(0, Math.min(index, list.items.length));
    const before = list.items[at - 1];
    if (this.#isFlow(list)) {
      const text = onLine(value);
      if (!before) return [{ from: list.start + 1, to: list.start + 1, text: `${text}, ` }];
      const end = this.contentEnd(before);
      return [{ from: end, to: end, text: `, ${text}` }];
    }
    return this.#insertLines(list, at, (indent) => `${indent}- ${behindKey(value)}`);
  }

  /**
   * As {@link insertItem}, for an item that is a group: written as lines below its dash, where the list has lines. `lines`
   * are its keys, without indent.
   */
  insertGroup(
    map: Located,
    key: string,
    index: number,
    lines: readonly string[],
    value: YamlValue,
    after: readonly string[] = [],
  ): Patches {
    const list = map.entries?.get(key)?.node;
    const item = (indent: string): string =>
      lines.map((line, at) => `${indent}${at === 0 ? "- " : "  "}${line}`).join(this.#eol);
    if (this.#isFlow(map) || list?.alias || (list && !list.items))
      return this.insertItem(map, key, index, value, after);
    if (list?.items && list.items.length > 0) {
      if (this.#isFlow(list)) return this.insertItem(map, key, index, value, after);
      return this.#insertLines(list, Math.max(0, Math.min(index, list.items.length)), item);
    }
    return this.#setLines(map, key, (indent) => item(`${indent}  `), after);
  }

  /** Gives a key that is not there a group of one key, on a line below it where the groups around have lines. */
  beginGroup(map: Located, key: string, inner: string, value: YamlValue, after: readonly string[] = []): Patches {
    if (this.#isFlow(map)) return this.setKey(map, key, { [inner]: value }, after);
    return this.#setLines(map, key, (indent) => `${indent}  ${inner}: ${behindKey(value)}`, after);
  }

  /** Gives a key that holds nothing yet, or nothing that is to be kept, a value of whole lines. */
  #setLines(map: Located, key: string, lines: (indent: string) => string, after: readonly string[]): Patches {
    const first = map.pairs?.[0];
    if (!first || map.alias) return null;
    const text = `${this.#eol}${lines(this.#indent(first.keyStart))}`;
    const pair = map.pairs?.find((each) => each.key === key);
    if (pair) return [{ from: this.#colonEnd(pair), to: this.#pairEnd(pair), text }];
    const patches = this.setKey(map, key, "", after);
    if (!patches) return null;
    return patches.map((patch) => ({ ...patch, text: patch.text.replace(/ ""$/, "") + text }));
  }

  /** Adds keys that are not there, as lines behind the last key of a group without brackets; `lines` without indent. */
  addLines(map: Located, lines: readonly string[]): Patches {
    const { pairs } = map;
    const [first, last] = [pairs?.[0], pairs?.[pairs.length - 1]];
    if (!first || !last || map.alias || this.#isFlow(map)) return null;
    const at = this.#lineEnd(this.#pairEnd(last));
    const indent = this.#indent(first.keyStart);
    return [{ from: at, to: at, text: lines.map((line) => `${this.#eol}${indent}${line}`).join("") }];
  }

  #beginList(map: Located, key: string, lines: string, value: YamlValue, after: readonly string[]): Patches {
    const there = map.entries?.get(key)?.node;
    if (there || this.#isFlow(map)) return this.setKey(map, key, [value], after);
    const first = map.pairs?.[0];
    const patches = this.setKey(map, key, "", after);
    if (!patches || !first) return null;
    const indent = `${this.#eol}${this.#indent(first.keyStart)}  `;
    return patches.map((patch) => ({ ...patch, text: patch.text.replace(/ ""$/, "") + indent + lines }));
  }

  #insertLines(list: Located, at: number, lines: (indent: string) => string): Patches {
    const items = list.items ?? [];
    const dash = this.#dash(items[0] as Located);
    if (dash === null) return null;
    const text = lines(this.#indent(dash));
    const before = items[at - 1];
    if (!before) return [{ from: this.#lineStart(dash), to: this.#lineStart(dash), text: text + this.#eol }];
    const end = this.#lineEnd(this.contentEnd(before));
    return [{ from: end, to: end, text: this.#eol + text }];
  }

  /** Takes an item out of a list, with its line. */
  removeItem(list: Located, index: number): Patches {
    const items = list.items ?? [];
    const item = items[index];
    if (!item || list.alias) return null;
    const [before, next] = [items[index - 1], items[index + 1]];
    if (this.#isFlow(list)) {
      if (next) return [{ from: item.start, to: next.start, text: "" }];
      return [{ from: before ? this.contentEnd(before) : item.start, to: this.contentEnd(item), text: "" }];
    }
    const dash = this.#dash(item);
    if (dash === null) return null;
    return [{ from: this.#lineStart(dash), to: this.#nextLine(this.contentEnd(item)), text: "" }];
  }

  /** The lines of an item with the comments right above it, which are about it unless it is the first of its list. */
  #itemLines(
    list: Located,
    index: number,
  ): { readonly from: number; readonly to: number; readonly dash: number } | null {
    const item = list.items?.[index];
    const dash = item ? this.#dash(item) : null;
    if (!item || dash === null) return null;
    let from = this.#lineStart(dash);
    while (index > 0 && from > 0) {
      const above = this.#lineStart(from - 1);
      if (!/^[ \t]*#/.test(this.#text.slice(above, from))) break;
      from = above;
    }
    return { from, to: this.#nextLine(this.contentEnd(item)), dash };
  }

  /** Moves an item to the list behind `key` of another or the same group; `to` counts without the item itself. */
  moveItem(list: Located, index: number, map: Located, key: string, to: number): Patches {
    const item = list.items?.[index];
    const target = map.entries?.get(key)?.node;
    if (!item || list.alias || item.alias || target?.alias) return null;
    const removed = this.removeItem(list, index);
    const lines = this.#isFlow(list) ? null : this.#itemLines(list, index);
    const inLines = target?.items && target.items.length > 0 && !this.#isFlow(target);
    if (!lines || !inLines) {
      const at = target === list && to >= index ? to + 1 : to;
      const inserted = this.insertItem(map, key, at, item.value as YamlValue);
      return removed && inserted && [...removed, ...inserted];
    }
    const others = (target.items ?? []).filter((each) => each !== item);
    const anchor = others[Math.min(to, others.length) - 1];
    const first = others[0];
    const firstDash = first ? this.#dash(first) : lines.dash;
    if (firstDash === null) return null;
    const block = this.#reindented(
      lines.from,
      lines.to,
      firstDash - this.#lineStart(firstDash) - (lines.dash - this.#lineStart(lines.dash)),
    );
    const cut: Patch = { from: lines.from, to: lines.to, text: "" };
    if (!anchor) {
      const at = first ? this.#lineStart(firstDash) : lines.from;
      return [cut, { from: at, to: at, text: block + this.#eol }];
    }
    const end = this.#lineEnd(this.contentEnd(anchor));
    return [cut, { from: end, to: end, text: this.#eol + block }];
  }

  /** Whole lines without their last end mark, moved right by `by` blanks (left when negative). */
  #reindented(from: number, to: number, by: number): string {
    const lines = this.#text
      .slice(from, to)
      .replace(/\r?\n$/, "")
      .split(/\r?\n/);
    return lines
      .map((line) =>
        line.trim() === "" ? line : by >= 0 ? " ".repeat(by) + line : line.replace(new RegExp(`^ {0,${-by}}`), ""),
      )
      .join(this.#eol);
  }
}
