import { withoutKnobNumbers } from "./counted-stops.ts";
import { withFootnotes } from "./footnotes.ts";
import type { Question } from "./question.ts";
import { withoutScanFaults } from "./scanned-text.ts";

/** A line of the list with everything that is not the list's own words taken off. */
export interface PrintedLine {
  /** Line of the pasted text, from 1. */
  readonly line: number;
  /** Outer blanks are kept on the left (columns need them); cells of a table are parted by tabs. */
  readonly text: string;
}

/** Signs of a text that is read at all: a list of a thousand stops has a tenth of them. Ours, to bound time. */
const LONGEST_TEXT = 1_048_576;
/** Lines of a text that is read at all. Ours. */
const MOST_LINES = 20_000;
/** Signs of a line; a whole list on one line has half as many. Ours. */
const LONGEST_LINE = 5_000;

const NAMED_ENTITIES: Readonly<Record<string, string>> = {
  nbsp: " ",
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
  prime: "′",
  Prime: "″",
  frac12: "½",
  frac13: "⅓",
  frac23: "⅔",
  frac14: "¼",
  frac34: "¾",
  frac15: "⅕",
  frac25: "⅖",
  frac35: "⅗",
  frac45: "⅘",
  ndash: "–",
  mdash: "—",
  rsquo: "’",
  lsquo: "‘",
  rdquo: "”",
  ldquo: "“",
  acute: "´",
  bull: "•",
  middot: "·",
  frasl: "⁄",
  deg: "°",
  shy: "",
  auml: "ä",
  ouml: "ö",
  uuml: "ü",
  Auml: "Ä",
  Ouml: "Ö",
  Uuml: "Ü",
  szlig: "ß",
  eacute: "é",
  egrave: "è",
  ecirc: "ê",
  euml: "ë",
  agrave: "à",
  acirc: "â",
  ccedil: "ç",
  icirc: "î",
  iuml: "ï",
  ocirc: "ô",
  ucirc: "û",
  ugrave: "ù",
  oacute: "ó",
  iacute: "í",
  aacute: "á",
  uacute: "ú",
  ntilde: "ñ",
  igrave: "ì",
  ograve: "ò",
  oelig: "œ",
  aelig: "æ",
  oslash: "ø",
  aring: "å",
  Eacute: "É",
  Oacute: "Ó",
  ordm: "º",
  ordf: "ª",
  thinsp: " ",
  ensp: " ",
  emsp: "  ",
  zwnj: "",
};

const TAG = /<(?:\/?[a-zA-Z][^<>]{0,1000}|!--[^<>]{0,1000})>/;
const PIECES = /<(\/?)([a-zA-Z][a-zA-Z0-9]*)[^<>]{0,1000}>|<!--[^<>]{0,1000}-->|\n|[^<\n]+|</g;
const NEW_LINE_TAGS = new Set([
  "br",
  "p",
  "div",
  "li",
  "ul",
  "ol",
  "tr",
  "table",
  "h1",
  "h2",
  "h3",
  "h4",
  "h5",
  "h6",
  "dt",
  "dd",
  "section",
]);

const unescaped = (text: string): string =>
  text.replace(/&(?:#(\d{1,6})|#[xX]([0-9a-fA-F]{1,5})|([a-zA-Z]{2,8}\d{0,2}));/g, (whole, decimal, hex, named) => {
    if (named !== undefined) return NAMED_ENTITIES[named] ?? whole;
    const point = decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal);
    return point > 31 && point <= 0x10ffff && !(point >= 0xd800 && point < 0xe000) ? String.fromCodePoint(point) : " ";
  });

/** What is left of a web page: tags end lines and part cells, a row of a table stays on one line. */
function withoutTags(text: string): PrintedLine[] {
  const lines: PrintedLine[] = [];
  let [current, line, started, inRow, hidden, byTag] = ["", 1, 1, false, false, false];
  const end = (): void => {
    lines.push({ line: started, text: unescaped(current) });
    [current, started] = ["", line];
  };
  for (const piece of text.matchAll(PIECES)) {
    const [whole, closing, name] = piece;
    const tag = name?.toLowerCase();
    if (whole === "\n") {
      line += 1;
      if (inRow) current += " ";
      // The page's own line break behind a row is no blank line.
      else if (byTag && current.trim() === "") current = "";
      else end();
      byTag = false;
      if (current.trim() === "") started = line;
    } else if (tag === "style" || tag === "script") hidden = closing === "";
    else if (hidden) continue;
    else if (tag === "td" || tag === "th") {
      if (closing === "" && current.trim() !== "") current = `${current.trimEnd()}\t`;
    } else if (tag !== undefined && NEW_LINE_TAGS.has(tag)) {
      if (tag === "tr") inRow = closing === "";
      if (inRow && tag !== "tr") current += " ";
      else if (current.trim() !== "") {
        end();
        byTag = true;
      } else current = "";
      if (tag === "li" && closing === "" && !inRow) current = "- ";
    } else if (tag === "sup" || tag === "sub") current += /\d$/.test(current) && closing === "" ? " " : "";
    else if (tag === undefined && !whole.startsWith("<!--")) current += inRow ? whole.replace(/\s+/g, " ") : whole;
  }
  end();
  // "2 2 / 3" is what raised and lowered figures leave behind.
  return lines.map(({ line: at, text: content }) => ({
    line: at,
    text: content.replace(/(\d)\s?([/⁄])\s(\d)/g, "$1$2$3"),
  }));
}

/** Signs that look alike are made alike; nothing that a stop is named by is touched. */
const plainSigns = (text: string): string =>
  text
    .normalize("NFC")
    .replace(/[\u00ad\u200b-\u200d\u2060\ufeff\ufffc]/g, "")
    .replace(/ {200,}/g, " ".repeat(200))
    .replace(/[\u00a0\u2000-\u200a\u202f\u205f\u3000]/g, " ")
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, " ")
    .replace(/ﬁ/g, "fi")
    .replace(/ﬂ/g, "fl")
    .replace(/ﬀ/g, "ff")
    .replace(/[‐‑−]/g, "-")
    // "8 ′": typographers part a figure and its foot mark by a narrow blank.
    .replace(/(?<=[\d½⅓⅔¼¾⅕⅖⅗⅘⅐⅛]) (?=['’‘′´`](?![\p{L}\d]))/gu, "");

/** Marks of mail and of plain-text typesetting; cells between upright strokes become tabs. */
function withoutMarkup(text: string): string {
  let plain = text.replace(/^(?:\s{0,4}>)+\s?/, "");
  if (!/[^\s:|+=_-]/.test(plain)) return "";
  if (/^\s*\|/.test(plain) || (plain.match(/\|/g)?.length ?? 0) >= 2) {
    plain = plain
      .replace(/^\s*\|\s?/, "")
      .replace(/\s?\|\s*$/, "")
      .replace(/\s*\|\s*/g, "\t");
  }
  return (
    plain
      .replace(/^(\s*)#{1,6}\s+(.*?)#*\s*$/, "$1$2")
      .replace(/\*\*|__/g, "")
      .replace(/(^|\s)\*([^*\s][^*]{0,200}[^*\s])\*(?=\s|$|[:,.])/g, "$1$2")
      .replace(/\\([*_#.|[\]-])/g, "$1")
      .replace(/(?:\s?[.…·_]){4,}\s*/g, "\t")
      // "Principal 8. Fuß", "Mixtur 4. fach": old print puts a full stop behind every figure.
      .replace(/(\d)\.(?= ?(?:fu(?:ß|ss)|fach|f\.|sch[uü]h))/gi, "$1")
      // Tabs stay: an empty last cell tells that the row is one of a table.
      .replace(/ +$/, "")
  );
}

/** Stops numbered on within one line (`1. Principal 8 2. Gedackt 8`): the numbers part them. */
function withoutRunningNumbers(text: string): string {
  const numbers = [...text.matchAll(/(?:^|(?<=\S) |(?<=: ))(\d{1,3})[.)] ?(?=["„“(]?\p{Lu}\p{Ll})/gu)];
  const first = Number(numbers[0]?.[1]);
  if (numbers.length < 2 || !numbers.every((match, index) => Number(match[1]) === first + index)) return text;
  let parted = "";
  let from = 0;
  for (const { index, 0: whole } of numbers) {
    const before = text.slice(from, index);
    parted += `${from === 0 || /[;,:]\s*$/.test(before) ? before : `${before};`} `;
    from = index + whole.length;
  }
  return `${parted}${text.slice(from)}`.trimStart();
}

/** Lists pasted with a blank line behind each line lose these, so that rows stay together and other blank lines tell. */
function withoutDoubleSpacing(lines: readonly PrintedLine[]): readonly PrintedLine[] {
  const isBlank = (line: PrintedLine | undefined): boolean => line !== undefined && line.text.trim() === "";
  const starts = lines.flatMap((line, index) => (isBlank(line) ? [] : [index]));
  const gaps = starts.slice(1).filter((start, index) => start - (starts[index] as number) > 1).length;
  if (starts.length < 4 || gaps < (starts.length - 1) * 0.9) return lines;
  return lines.filter((line, index) => !isBlank(line) || isBlank(lines[index - 1]));
}

const isBinary = (text: string): boolean => {
  const start = text.slice(0, 4096);
  const odd = start.match(/[\u0000-\u0008\u000e-\u001f\ufffd]/g)?.length ?? 0;
  return start.includes("\u0000") || odd * 10 > start.length;
};

/**
 * The lines of a pasted text, free of page code, markup and signs that only look different. A text that is too long or
 * is no text gives no lines and a question that says so; a line over {@link LONGEST_LINE} signs is cut, with a question.
 */
export function printedLines(text: string): { readonly lines: readonly PrintedLine[]; readonly questions: Question[] } {
  const refused = (sentence: string, about: string) => ({
    lines: [],
    questions: [{ kind: "whole-text" as const, line: 1, text: sentence, about, stops: [], choices: [] }],
  });
  if (text.length > LONGEST_TEXT) {
    return refused(
      "This text is far too long for a stoplist, so nothing of it was read; paste the stoplist alone.",
      "length",
    );
  }
  if (isBinary(text)) {
    return refused("This is not text, so nothing of it was read; paste the stoplist as plain text.", "format");
  }
  const even = text.replace(/\r\n?|\u2028|\u2029|\u0085/g, "\n");
  if ((even.match(/\n/g)?.length ?? 0) >= MOST_LINES) {
    return refused(
      "This text has far too many lines for a stoplist, so nothing of it was read; paste the stoplist alone.",
      "length",
    );
  }
  const questions: Question[] = [];
  const raw = TAG.test(even)
    ? withoutTags(even)
    : even
        .split("\n")
        .map((content, at) => ({ line: at + 1, text: /&[#a-zA-Z]/.test(content) ? unescaped(content) : content }));
  const lines = raw.map(({ line, text: content }) => {
    if (content.length > LONGEST_LINE) {
      questions.push({
        kind: "whole-text",
        line,
        text: `This line is longer than ${LONGEST_LINE} signs and only its start was read; break it into lines.`,
        about: content.slice(0, 40).trim(),
        stops: [],
        choices: [],
      });
    }
    return { line, text: withoutRunningNumbers(withoutMarkup(plainSigns(content.slice(0, LONGEST_LINE)))) };
  });
  return { lines: withoutDoubleSpacing(withFootnotes(withoutKnobNumbers(withoutScanFaults(lines)))), questions };
}
