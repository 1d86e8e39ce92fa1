import {
  Composer,
  type CST,
  type ErrorCode,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  LineCounter,
  type ParsedNode,
  Parser,
  type YAMLError,
} from "yaml";
import { type Reporter, reporterFor } from "./reporter.ts";

/** Longest text read, in UTF-16 units (2 MB of plain letters). */
const TEXT_LIMIT = 2 * 1024 * 1024;
/** Words, signs and gaps of YAML: an organ of 1000 stops in the long form has about 60,000. */
const LEXEME_LIMIT = 300_000;
/** The composer calls itself for every level, and a full call stack cannot always be caught. An organ needs 8. */
const DEPTH_LIMIT = 50;
/** Uses of `*names`. */
const ALIAS_LIMIT = 20;
/** Syntax errors told: the later ones mostly follow from the first. */
const SYNTAX_LIMIT = 20;

/** A value of the file with its place in the text; offsets count UTF-16 units from 0. */
export interface Located {
  /** Plain value, the whole tree below included; `null` entries of a group are left out, as if the key did not stand. */
  readonly value: unknown;
  readonly start: number;
  /** Just behind its last sign. */
  readonly end: number;
  /** For a group of keys, in the order of the file; keys without a value are left out. */
  readonly entries: ReadonlyMap<string, LocatedEntry> | null;
  /** For a group: every key, those without a value too. */
  readonly pairs: readonly LocatedEntry[] | null;
  /** For a list. */
  readonly items: readonly Located[] | null;
  /** A scalar whose signs in the text are its value, so that places inside it can be told. */
  readonly plain: boolean;
  /** Only pointed to here (`*name`): what is below stands elsewhere in the text. */
  readonly alias: boolean;
}

/** A key with its value. */
export interface LocatedEntry {
  readonly key: string;
  readonly keyStart: number;
  readonly keyEnd: number;
  readonly node: Located;
}

/** A file opened: its tree (`null` when it cannot be read), and the reporter that holds the troubles so far. */
export interface OpenedText {
  readonly root: Located | null;
  readonly reporter: Reporter;
}

const PROBLEMS: Readonly<Record<ErrorCode, string>> = {
  ALIAS_PROPS: "A *name stands alone, with nothing else before it.",
  BAD_ALIAS: "The name behind * or & is missing or ends in a colon.",
  BAD_DIRECTIVE: "A line that begins with % is not understood. Take it away.",
  BAD_DQ_ESCAPE: "A backslash in double quotes begins a sign that does not exist. Use single quotes.",
  BAD_INDENT: "The line is not in line with its neighbours. Give it as many spaces in front as the entry before it.",
  BAD_PROP_ORDER: "A & or ! stands before the dash or key it belongs behind.",
  BAD_SCALAR_START: "A value cannot begin with this sign. Put the value in quotes.",
  BLOCK_AS_IMPLICIT_KEY: "Two colons on one line: put the text in quotes, or begin a new line.",
  BLOCK_IN_FLOW: "Inside [ ] and { } entries are parted by commas, without dashes and line by line keys.",
  DUPLICATE_KEY: "The same key stands here a second time.",
  IMPOSSIBLE: "The text is not understood here.",
  KEY_OVER_1024_CHARS: "The text before the colon is too long for a key. Put the value in quotes.",
  MISSING_CHAR: "A sign is missing here: a colon behind a key, a closing quote, or a closing bracket.",
  MULTILINE_IMPLICIT_KEY:
    "A key and its colon stand on one line. Is a colon missing, or the line before it not in line?",
  MULTIPLE_ANCHORS: "Only one &name can stand before a value.",
  MULTIPLE_DOCS: "A second document begins here, behind ---. Put each into a file of its own.",
  MULTIPLE_TAGS: "Only one !tag can stand before a value.",
  NON_STRING_KEY: "A key must be a word.",
  RESOURCE_EXHAUSTION: "Lists stand within lists too deep here. Is it the right file?",
  TAB_AS_INDENT: "A tab stands in front. Use spaces.",
  TAG_RESOLVE_FAILED: "The tag beginning with ! is not understood. Take it away.",
  UNEXPECTED_TOKEN: "This is not expected here. Look for a missing comma, quote or bracket before it.",
  BAD_COLLECTION_TYPE: "The tag before this value says that it is something else. Take the tag away.",
};

/** The first sign that no text file has; `null` when there is none. */
function oddCharacter(text: string): { readonly at: number; readonly code: number } | null {
  const match = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F\uFFFD]/.exec(text);
  return match ? { at: match.index, code: text.charCodeAt(match.index) } : null;
}

class TreeBuilder {
  readonly #anchors = new Map<string, Located>();
  readonly #reporter: Reporter;
  #aliases = 0;

  constructor(reporter: Reporter) {
    this.#reporter = reporter;
  }

  build(node: ParsedNode | null, offset: number): Located {
    if (!node) return this.#leaf(null, offset, offset, false);
    const [start, end] = node.range ?? [offset, offset];
    const built = this.#ofNode(node, start, end);
    const anchor = isAlias(node) ? undefined : node.anchor;
    if (anchor !== undefined) this.#anchors.set(anchor, built);
    return built;
  }

  #leaf(value: unknown, start: number, end: number, plain: boolean): Located {
    return { value, start, end, entries: null, pairs: null, items: null, plain, alias: false };
  }

  #ofNode(node: ParsedNode, start: number, end: number): Located {
    if (isAlias(node)) return this.#ofAlias(node.source, start, end);
    if (isSeq(node)) {
      const items = node.items.map((item) => this.build(item as ParsedNode | null, end));
      const value = items.map((item) => item.value);
      return { value, start, end, entries: null, pairs: null, items, plain: false, alias: false };
    }
    if (isMap(node))
      return this.#ofMap(node.items as readonly { key: ParsedNode; value: ParsedNode | null }[], start, end);
    if (!isScalar(node)) return this.#leaf(null, start, end, false);
    return this.#leaf(node.value, start, end, node.type === "PLAIN" && node.source?.length === end - start);
  }

  #ofAlias(name: string, start: number, end: number): Located {
    this.#aliases += 1;
    const target = this.#anchors.get(name);
    if (this.#aliases === ALIAS_LIMIT + 1) this.#reporter.report({ code: "alias-too-many", limit: ALIAS_LIMIT }, start);
    if (this.#aliases > ALIAS_LIMIT) return this.#leaf(null, start, end, false);
    if (!target) this.#reporter.report({ code: "alias-unknown", name }, start);
    return target ? { ...target, start, end, alias: true } : this.#leaf(null, start, end, false);
  }

  #ofMap(pairs: readonly { key: ParsedNode | null; value: ParsedNode | null }[], start: number, end: number): Located {
    const entries = new Map<string, LocatedEntry>();
    for (const { key, value } of pairs) {
      const keyStart = key?.range?.[0] ?? start;
      if (!isScalar(key) || key.value === null) {
        this.#reporter.report({ code: "odd-key" }, keyStart);
        continue;
      }
      const name = key.source ?? String(key.value);
      const node = this.build(value, key.range?.[1] ?? keyStart);
      const first = entries.get(name);
      if (first) {
        this.#reporter.report(
          { code: "duplicate-key", key: name, firstLine: this.#reporter.lineOf(first.keyStart) },
          keyStart,
        );
      } else entries.set(name, { key: name, keyStart, keyEnd: key.range?.[1] ?? keyStart, node });
    }
    const filled = [...entries].filter(([, entry]) => entry.node.value !== null);
    // fromEntries defines own properties, so that a key such as __proto__ is a key like any other.
    const value = Object.fromEntries(filled.map(([name, entry]) => [name, entry.node.value]));
    const all = [...entries.values()];
    return { value, start, end, entries: new Map(filled), pairs: all, items: null, plain: false, alias: false };
  }
}

/** One word per place: a second error there only repeats the first. */
function reportSyntax(errors: readonly YAMLError[], reporter: Reporter): void {
  const places = new Set<number>();
  for (const error of errors) {
    if (places.has(error.pos[0]) || places.size >= SYNTAX_LIMIT) continue;
    places.add(error.pos[0]);
    const open = error.code === "BAD_INDENT" && error.message.includes("end with a");
    const problem = open ? "A bracket [ or { before this is not closed. Write its ] or }." : PROBLEMS[error.code];
    reporter.report({ code: "yaml", problem }, error.pos[0]);
  }
}

/** Cuts the text into YAML's tokens without recursion; `null` where it grows too deep or too long. */
function tokensOf(text: string, report: Reporter["report"]): readonly CST.Token[] | null {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  let lexemes = 0;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    lexemes += 1;
    if (parser.stack.length > DEPTH_LIMIT || lexemes > LEXEME_LIMIT) {
      const limit = lexemes > LEXEME_LIMIT ? LEXEME_LIMIT : DEPTH_LIMIT;
      report({ code: lexemes > LEXEME_LIMIT ? "too-long" : "too-deep", limit }, parser.offset);
      return null;
    }
  }
  for (const token of parser.end()) tokens.push(token);
  return tokens;
}

/** The start of every line, counted without YAML so that texts that are no YAML have places too. */
function lineStarts(text: string): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) lines.addNewLine(at + 1);
  return lines;
}

/** How a text of two bytes to the letter looks when it is read as one. */
const WIDE = /^\uFFFD\uFFFD(?:[^\0]\0|\0[^\0])/;
/** Signs that no text holds. */
const CONTROL = /[\u0000-\u0008\u000e-\u001a\u001c-\u001f]/;

function unreadable(text: string, report: Reporter["report"]): boolean {
  if (text.length > TEXT_LIMIT) {
    report({ code: "too-large", limit: TEXT_LIMIT }, 0);
    return true;
  }
  const odd = oddCharacter(text);
  if (odd) {
    // A picture or a program is no text in another code; "Unicode" of older editors begins with two signs of its own.
    const control = WIDE.test(text) ? null : CONTROL.exec(text);
    const character = odd.code === 0xfffd ? control?.[0].charCodeAt(0) : odd.code;
    report(character === undefined ? { code: "not-utf8" } : { code: "not-text", character }, odd.at);
    return true;
  }
  if (text.replace(/^\uFEFF/, "").trim() === "") {
    report({ code: "empty" }, 0);
    return true;
  }
  return false;
}

/**
 * Opens the text of a YAML file in bounded time and memory, whatever its bytes. Never throws: what is wrong stands in the
 * reporter, and `root` is `null` when there is nothing to read on.
 */
export function openYaml(text: string, fileName: string): OpenedText {
  const lines = lineStarts(text.length > TEXT_LIMIT ? "" : text);
  const reporter = reporterFor(fileName, (offset) => {
    const { line, col } = lines.linePos(Math.max(0, Math.min(offset, text.length)));
    return { line, column: col };
  });
  const closed: OpenedText = { root: null, reporter };
  if (unreadable(text, reporter.report)) return closed;
  const tokens = tokensOf(text, reporter.report);
  if (!tokens) return closed;
  // The composer's own check of doubled keys takes time by the square; the tree builder has one that does not.
  const composer = new Composer({ uniqueKeys: false, resolveKnownTags: false, logLevel: "silent" });
  const [document, second] = composer.compose(tokens, true, text.length);
  if (!document) {
    reporter.report({ code: "empty" }, 0);
    return closed;
  }
  if (second) reporter.report({ code: "yaml", problem: PROBLEMS.MULTIPLE_DOCS }, second.range[0]);
  reportSyntax(document.errors, reporter);
  if (reporter.hasErrors()) return closed;
  const root = new TreeBuilder(reporter).build(document.contents as ParsedNode | null, 0);
  if (root.value === null && !reporter.hasErrors()) reporter.report({ code: "empty" }, 0);
  return { root: reporter.hasErrors() ? null : root, reporter };
}
