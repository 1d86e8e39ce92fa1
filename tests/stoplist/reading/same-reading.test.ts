import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readStoplist } from "../../../shared-model/stoplist/reading/read-stoplist.ts";
import { INVENTED } from "./invented/all.ts";
import { dedented, written } from "./written.ts";

const published = new URL("../../published/stoplists/", import.meta.url);
const LISTS: readonly (readonly [what: string, text: string])[] = [
  ...INVENTED.flatMap(([, lists]) => Object.entries(lists).map(([what, [list]]) => [what, dedented(list)] as const)),
  ...readdirSync(published)
    .filter((file) => file.endsWith(".txt"))
    .map((file) => [file, readFileSync(new URL(file, published), "utf8")] as const),
];

/** Signs that stand for one another in print: names are kept as printed, so they are made alike before comparing. */
const alike = (text: string): string =>
  text
    .replace(/[’‘′´`]/g, "'")
    .replace(/[“”„]/g, '"')
    .replaceAll("–", "-");

/** What a list reads as, the lines of its questions as they were before the list was changed. */
const reads = (text: string, lineBefore: (line: number) => number = (line) => line): string =>
  alike(written(readStoplist(text)).replace(/^\? (\d+)/gm, (_, line) => `? ${lineBefore(Number(line))}`));

type Way = readonly [way: string, changed: (text: string) => string, lineBefore?: (line: number) => number];

/** Ways in which the same list reaches the clipboard, several at a time. */
const WAYS: readonly Way[] = [
  [
    "it was saved on Windows: returns, a byte-order mark, blanks that do not break",
    (text) => `\ufeff${text.replaceAll(" ", "\u00a0").replaceAll("\n", "\r\n")}\r\n`,
  ],
  [
    "it was set by a typographer: primes behind narrow blanks, long dashes, blanks behind the lines",
    (text) =>
      text
        .replace(/(?<=\d) ?['’]/g, "\u202f′")
        .replace(/(?<=[\p{L}\d'’′]) ?- ?(?=[\p{L}\d])/gu, (dash) => dash.replace("-", "–"))
        .replace(/\n/g, "   \n"),
  ],
  [
    "a word processor has put in curly quotes, and signs of no width are strewn about",
    (text) => text.replaceAll("'", "’").replace(/(\p{L}{3})(?=\p{L})/gu, "$1\u200b"),
  ],
  [
    "marks are accents and letters are made of two signs",
    (text) => text.replace(/(?<=\d)['’′]/g, "´").normalize("NFD"),
  ],
  [
    "marks are typewritten and blank lines stand around it",
    (text) => `\n \n\n${text.replace(/[’′]/g, "'")}\n\n \n`,
    (line) => line - 3,
  ],
  ["a blank line stands behind each line", (text) => text.replaceAll("\n", "\n\n"), (line) => (line + 1) / 2],
];

const plain = new Map(LISTS.map(([, text]) => [text, reads(text)]));

describe.each(WAYS.map((way) => ({ way })))(
  "the reading is the same when $way.0",
  ({ way: [, changed, lineBefore] }) => {
    it.each(LISTS)("%s", (_what, text) => {
      expect(reads(changed(text), lineBefore)).toBe(plain.get(text));
    });
  },
);
