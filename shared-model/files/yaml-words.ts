import { Scalar, stringify } from "yaml";

/** A value of a file: text, number, truth, or lists and groups of them; absent values are left out. */
export type YamlValue =
  | string
  | number
  | boolean
  | readonly YamlValue[]
  | { readonly [key: string]: YamlValue | undefined };

/** Text on one line, without signs that a text file cannot hold. */
export const onOneLine = (text: string): string => text.replace(/[\p{C}\s]+/gu, " ").trim();

/** A text of several lines between double quotes, where its line ends are `\n`; without them YAML may lay it out as it likes. */
function quoted(value: YamlValue | undefined): unknown {
  if (typeof value === "string" && /[\r\n]/.test(value)) {
    const text = new Scalar(value);
    text.type = Scalar.QUOTE_DOUBLE;
    return text;
  }
  if (Array.isArray(value)) return value.map(quoted);
  if (!isGroup(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, quoted(each as YamlValue | undefined)]));
}

/** A text may itself end in a blank that is none to YAML (U+00A0): only the end of the line goes. */
const withoutLineEnd = (text: string): string => text.replace(/\n$/, "");

/** However long a text is and however many lines it has, it stays on one line: lines end as `\n` between double quotes. */
const ONE_LINE = {
  lineWidth: 0,
  minContentWidth: 0,
  blockQuote: false,
  singleQuote: false,
  doubleQuotedMinMultiLineLength: Number.MAX_SAFE_INTEGER,
} as const;

/**
 * A value on one line, in quotes only where it needs them, so that it may stand behind a key or a dash as well as inside
 * brackets: `Principal 8`, `[C#2, Eb2]`, `{name: Gedackt, pitch: 8}`.
 */
export function onLine(value: YamlValue): string {
  const list = stringify([quoted(value)], {
    collectionStyle: "flow",
    flowCollectionPadding: false,
    ...ONE_LINE,
    aliasDuplicateObjects: false,
    keepUndefined: false,
  });
  return withoutLineEnd(list).slice(1, -1);
}

/** As {@link onLine}, for a place outside brackets: commas need no quotes there. */
export const behindKey = (value: YamlValue): string =>
  typeof value === "string" ? withoutLineEnd(stringify(quoted(value), ONE_LINE)) : onLine(value);

/** A comment of one line. */
export const comment = (text: string): string => `# ${onOneLine(text)}`;

/** A group of keys with their values. */
export type YamlGroup = { readonly [key: string]: YamlValue | undefined };

/** Whether a value is a group of keys. */
export const isGroup = (value: unknown): value is YamlGroup =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * The keys of a group as lines without indent. Groups that hold lists or groups, and lists of groups, go on below their
 * key; all else stands on one line.
 */
export function groupLines(group: YamlGroup): readonly string[] {
  return Object.entries(group).flatMap(([key, value]): readonly string[] => {
    if (value === undefined) return [];
    const name = behindKey(key);
    const inner = isGroup(value) ? Object.values(value).filter((each) => each !== undefined) : [];
    if (isGroup(value) && inner.some((each) => typeof each === "object")) {
      return [`${name}:`, ...groupLines(value).map((line) => `  ${line}`)];
    }
    if (Array.isArray(value) && value.some(isGroup)) {
      return [`${name}:`, ...value.map((each: YamlValue) => `  - ${onLine(each)}`)];
    }
    return [`${name}: ${behindKey(value)}`];
  });
}
