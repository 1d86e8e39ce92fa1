import { type HalfMark, halfAt } from "./halves.ts";
import { type KeyMark, keyPhraseAt } from "./keys-in-line.ts";
import { type PitchMark, pitchAt, type StepsMark, stepsAt } from "./pitches-in-line.ts";
import { type RanksMark, ranksAt } from "./ranks-in-line.ts";

/** A piece of a line that means one thing. `start` and `end` are places in the line. */
export type Token =
  | { readonly kind: "word"; readonly start: number; readonly end: number; readonly text: string }
  | { readonly kind: "pitch"; readonly start: number; readonly end: number; readonly mark: PitchMark }
  | { readonly kind: "ranks"; readonly start: number; readonly end: number; readonly mark: RanksMark }
  | { readonly kind: "steps"; readonly start: number; readonly end: number; readonly mark: StepsMark }
  | { readonly kind: "half"; readonly start: number; readonly end: number; readonly mark: HalfMark }
  | { readonly kind: "key"; readonly start: number; readonly end: number; readonly mark: KeyMark }
  | { readonly kind: "bracket"; readonly start: number; readonly end: number; readonly text: string }
  /** Parts stops (`;`, `,`, a bullet, a dash or stroke with blanks). */
  | { readonly kind: "break"; readonly start: number; readonly end: number; readonly text: string }
  /** Parts cells of a table. */
  | { readonly kind: "cell"; readonly start: number; readonly end: number }
  /** Joins lengths of one stop (`+`, `&`, `und`). */
  | { readonly kind: "join"; readonly start: number; readonly end: number };

const CLOSING: Readonly<Record<string, string>> = { "(": ")", "[": "]", "{": "}" };
const LONGEST_BRACKET = 300;
const BREAK = /[;•·▪‣|,]|\/(?=\s)|[-–—](?=\s)|\.(?=\s|$)/y;
const JOIN = /(?:\+|&|und|and|et|en|e|y|og|och)(?=\s*\d)/y;
const WORD = /[^\s,;()[\]{}•|\d½⅓⅔¼¾⅕⅖⅗⅘⅐⅛]+/y;
const WORD_WITH_FIGURES = /[^\s,;()[\]{}•|]+/y;
/** Counts that stand behind a stop (`61 pipes`, `25 tubes`): talk about it. Common practice. */
const COUNT_OF_PIPES =
  /\d{1,4} ?(?:pipes|notes|tubes|bars|bells|pfeifen|töne|röhren|glocken|tuyaux|lames|canne|note|campane|pijpen|tonen|klokken|tubos|notas|campanas|piber|pipor)(?![\p{L}])\.?/iuy;
const ABBREVIATED = /(?:^|[\s.])\p{L}{1,6}$/u;

function bracketAt(text: string, at: number): Token | null {
  const close = CLOSING[text[at] as string];
  if (close === undefined) return null;
  const end = text.slice(at, at + LONGEST_BRACKET).indexOf(close);
  return end < 0 ? null : { kind: "bracket", start: at, end: at + end + 1, text: text.slice(at + 1, at + end) };
}

const matchAt = (pattern: RegExp, text: string, at: number): string | null => {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? null;
};

/** Before a Roman numeral these words make it an interval or a number, not ranks (`Flauto in VIII`, `Diapason No. I`). */
const BEFORE_A_NUMBER = /(?:^|\s)(?:in|all['’]|alla|n[o°ºr]\.?|nr\.|num\.|op\.)\s?$/i;

/** Italian lists print interval names as numerals: a stop when no name stands before. */
const INTERVAL_NUMERAL =
  /(?:VIII(?=\s+(?:8|4|16)\b)|XII|XV|XIX|XXII|XXVI|XXIX|XXXIII|XXXVI)(?=\s*(?:$|[;,•·|\t(\d]|bassi|soprani|[BS]\.))/y;

function markAt(text: string, at: number, wordStart: boolean): Token | null {
  const first = text[at] as string;
  if (/[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅐⅛⅑]/.test(first)) {
    if (BEFORE_A_NUMBER.test(text.slice(Math.max(0, at - 6), at))) return null;
    const ranks = ranksAt(text, at);
    if (ranks) return { kind: "ranks", start: at, end: ranks.end, mark: ranks };
    const steps = stepsAt(text, at);
    if (steps) return { kind: "steps", start: at, end: steps.end, mark: steps };
    const pitch = pitchAt(text, at);
    if (pitch) return { kind: "pitch", start: at, end: pitch.end, mark: pitch };
    return null;
  }
  if (!wordStart) return null;
  const join = matchAt(JOIN, text, at);
  if (join !== null) return { kind: "join", start: at, end: at + join.length };
  const key = keyPhraseAt(text, at);
  if (key) return { kind: "key", start: at, end: key.end, mark: key };
  const half = halfAt(text, at);
  if (half) return { kind: "half", start: at, end: half.end, mark: half };
  if (BEFORE_A_NUMBER.test(text.slice(Math.max(0, at - 6), at))) return null;
  const interval = matchAt(INTERVAL_NUMERAL, text, at);
  if (interval !== null && /(?:^|[;,•·|\t])\s*$/.test(text.slice(0, at)))
    return { kind: "word", start: at, end: at + interval.length, text: interval };
  const ranks = ranksAt(text, at);
  return ranks ? { kind: "ranks", start: at, end: ranks.end, mark: ranks } : null;
}

/** Whether the mark says by itself what it is, so that it may stand close to the word before. */
const isPlain = (token: Token): boolean =>
  token.kind === "bracket" ||
  (token.kind === "pitch" && token.mark.sure) ||
  (token.kind === "ranks" && token.mark.sign === "counted");

/** The line in pieces, in order; every sign but blanks lies in one of them. */
export function tokensOf(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    const sign = text[at] as string;
    if (sign === "\t") {
      tokens.push({ kind: "cell", start: at, end: at + 1 });
      at += 1;
      continue;
    }
    if (/\s/.test(sign)) {
      at += 1;
      continue;
    }
    const before = at === 0 ? " " : (text[at - 1] as string);
    const wordStart = !/[\p{L}\p{N}]/u.test(before);
    const pipes = wordStart && tokens.length > 0 ? matchAt(COUNT_OF_PIPES, text, at) : null;
    if (pipes !== null) {
      tokens.push({ kind: "bracket", start: at, end: at + pipes.length, text: pipes });
      at += pipes.length;
      continue;
    }
    const found = bracketAt(text, at) ?? markAt(text, at, wordStart);
    const last = tokens.at(-1);
    const glued = last?.kind === "word" && last.end === at;
    // "Rohrflöte4'" is a name and a length, "Do2" one word.
    const token = found && glued && !isPlain(found) ? null : found;
    if (!token && glued && last.kind === "word" && /\d/.test(sign)) {
      const rest = matchAt(WORD_WITH_FIGURES, text, at) ?? sign;
      tokens[tokens.length - 1] = { ...last, end: at + rest.length, text: last.text + rest };
      at += rest.length;
      continue;
    }
    if (token) {
      tokens.push(token);
      at = token.end;
      continue;
    }
    const stop = matchAt(BREAK, text, at);
    const abbreviation = stop === "." && ABBREVIATED.test(text.slice(Math.max(0, at - 8), at)) && at + 1 < text.length;
    if (stop !== null && !abbreviation && (stop !== "." || !/^\s*\p{Ll}/u.test(text.slice(at + 1, at + 4)))) {
      tokens.push({ kind: "break", start: at, end: at + 1, text: stop });
      at += 1;
      continue;
    }
    const figure = /\d/.test(sign);
    let word = matchAt(figure ? WORD_WITH_FIGURES : WORD, text, at) ?? sign;
    const dot = word.search(/\.(?=\p{Lu}\p{Ll}{2})/u);
    if (dot > 3) word = word.slice(0, dot + 1);
    tokens.push({ kind: "word", start: at, end: at + word.length, text: word });
    at += word.length;
  }
  return tokens;
}
