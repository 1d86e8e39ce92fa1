import type { Key } from "./key.ts";

/** By which custom a printed key was taken; one compass hardly ever mixes them. */
export type Notation = "helmholtz" | "scientific" | "syllable";

/** One meaning of a printed key. */
export interface KeyMeaning {
  readonly key: Key;
  readonly notation: Notation;
  /** 0 for the meaning that the print suggests; more the less it does. */
  readonly distance: number;
}

/** A key found in print: what it may mean, and where the text goes on. */
export interface PrintedKey {
  /** Semitone above C, 0..11. */
  readonly step: number;
  /** Likeliest first; empty for a syllable without octave (`SOL`). */
  readonly meanings: readonly KeyMeaning[];
  /** No octave is printed: a letter alone, which English lists use for any octave. */
  readonly bare: boolean;
  /** Written with doubled or trebled capitals (`CC`, `CCC`). */
  readonly doubled: 0 | 2 | 3;
  readonly end: number;
}

const LETTERS: Readonly<Record<string, number>> = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11, h: 11 };
const SYLLABLES: Readonly<Record<string, number>> = {
  ut: 0,
  do: 0,
  re: 2,
  ré: 2,
  mi: 4,
  fa: 5,
  sol: 7,
  la: 9,
  si: 11,
};

/** The C that begins an octave named in words. Common practice; `treble` from memory. */
const OCTAVE_WORDS: readonly (readonly [pattern: string, c: Key])[] = [
  ["sub-?contra|sub-?kontra", 12],
  ["contra|kontra", 24],
  ["gro(?:ß|ss)(?:e[smn]?)?|groot|great|low|lowest|bottom|gamut", 36],
  ["klein(?:e[smn]?)?|small|tenor|ten\\.?|fiddle", 48],
  ["middle|mid\\.?|one-lined|ein(?:mal )?gestrichen(?:e[smn]?)?", 60],
  ["treble|two-lined|zweigestrichen(?:e[smn]?)?", 72],
  ["three-lined|dreigestrichen(?:e[smn]?)?", 84],
];
const OCTAVE_WORD = new RegExp(
  `(?:${OCTAVE_WORDS.map(([pattern]) => `(${pattern})`).join("|")})[ -]?([a-h])(#|b|is|es|s)?(?![a-z0-9#'])`,
  "iuy",
);

/**
 * Doubled capitals of English lists: CC is the lowest key, at 8' C; the F, G, A and B printed double lie below it. FF and
 * FFF both name the 12' F. Common practice of English builders; FFF from memory.
 */
const DOUBLED: Readonly<Record<string, Key>> = {
  CC: 36,
  DD: 38,
  EE: 40,
  FF: 29,
  GG: 31,
  AA: 33,
  BB: 35,
  CCC: 24,
  DDD: 26,
  EEE: 28,
  FFF: 29,
};

const SYLLABLE =
  /(ut|do|r[eé]|mi|fa|sol|la|si)(?=b(?![a-zé])|[^a-zé]|$) ?(#|b(?![a-zé])|di[eè]sis|di[eè]se|sostenido|b[eé]mol(?:le)?)?(?: ?(-1(?!\d)|\d{1,2}))?/iuy;
const DOUBLE = /([A-G])\1{1,2}(#|b)?(?![a-zA-Z0-9'])/y;
const LETTER = /([a-hA-H])(#|is|es|s(?![a-z])|b(?![a-zA-Z]))?/y;
const OCTAVE = /(\^?\d{1,2}|'{1,5})/y;
const CONTRA_COMMAS = /(,{1,2})(?= *(?:–|$))/y;

const bendOf = (sign: string | undefined): number => {
  if (sign === undefined) return 0;
  return /^(?:#|is|di|sostenido)/i.test(sign) ? 1 : -1;
};

const inRange = (key: number): boolean => key >= 0 && key <= 127;
const meaning = (key: number, notation: Notation, distance = 0): KeyMeaning => ({ key, notation, distance });

/** One way of writing each sign: `'` for every prime, `#`, `b`, `–` for every dash, `^3` for raised figures. */
export function plainKeySigns(text: string): string {
  return text
    .normalize("NFC")
    .replace(/[\s\u200a-\u200d\u2060]+/gu, " ")
    .replace(/⁗/gu, "''''")
    .replace(/‴/gu, "'''")
    .replace(/[″"“”]/gu, "''")
    .replace(/[’‘‛′`´ʹʼˈ]/gu, "'")
    .replace(/♯/gu, "#")
    .replace(/♭/gu, "b")
    .replace(/[‐‑‒—−→÷]|\.{2,3}|…/gu, "–")
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/gu, (figure) => `^${"⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(figure)}`)
    .replace(/[₀₁₂₃₄₅₆₇₈₉]/gu, (figure) => String("₀₁₂₃₄₅₆₇₈₉".indexOf(figure)))
    .trim();
}

/** Whether the German names of notes are in use, so that `b` is B flat: a lone `h`, or `cis`, `fis`. */
export const usesGermanNames = (text: string): boolean => /(?:^|[^a-z])h(?![a-zäöü])|[cdfga]is|bes/iu.test(text);

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function syllableMeanings(step: number, octave: string | undefined): KeyMeaning[] {
  if (octave === undefined) return [];
  const number = Number(octave);
  // French and Italian octaves count from the lowest C as 1 and know no zero: below do1 lies do-1.
  if (number <= 8) return [meaning((number <= 0 ? 2 : number + 2) * 12 + step, "syllable")];
  // "Sol 20" is the twentieth key; a short octave has four keys fewer before it.
  const full = 35 + number;
  const short = full + 4;
  if (full % 12 === step) return [meaning(full, "syllable")];
  return short % 12 === step ? [meaning(short, "syllable")] : [];
}

function letterMeanings(letter: string, step: number, octave: string | undefined): KeyMeaning[] {
  const capital = letter !== letter.toLowerCase();
  if (octave === undefined) return [meaning((capital ? 36 : 48) + step, "helmholtz")];
  const raised = octave.startsWith("^");
  const primes = octave.startsWith("'") ? octave.length : Number(raised ? octave.slice(1) : octave);
  const lined = meaning(48 + 12 * primes + step, "helmholtz", capital ? 2 : 0);
  if (octave.startsWith("'") || raised) return [lined];
  const scientific = meaning(12 * (primes + 1) + step, "scientific", capital ? 0 : 2);
  return capital ? [scientific, lined] : [lined, scientific];
}

/** The key printed at `at` of a text in plain signs, or `null` when none stands there. */
export function printedKeyAt(text: string, at: number, german: boolean): PrintedKey | null {
  const words = match(OCTAVE_WORD, text, at);
  if (words) {
    const row = OCTAVE_WORDS.findIndex((_, index) => words[index + 1] !== undefined);
    const letter = (words[OCTAVE_WORDS.length + 1] as string).toLowerCase();
    const step = (LETTERS[letter] as number) + bendOf(words[OCTAVE_WORDS.length + 2]);
    const key = (OCTAVE_WORDS[row] as readonly [string, Key])[1] + step;
    return {
      step: (step + 12) % 12,
      meanings: [meaning(key, "helmholtz")],
      bare: false,
      doubled: 0,
      end: at + words[0].length,
    };
  }
  const syllable = match(SYLLABLE, text, at);
  if (syllable) {
    const step = (SYLLABLES[(syllable[1] as string).toLowerCase()] as number) + bendOf(syllable[2]);
    const meanings = syllableMeanings(step, syllable[3]).filter(({ key }) => inRange(key));
    const bare = syllable[3] === undefined;
    return { step: (step + 12) % 12, meanings, bare, doubled: 0, end: at + syllable[0].length };
  }
  const double = match(DOUBLE, text, at);
  if (double) {
    const capitals = double[0].replace(/[#b]$/, "");
    const key = DOUBLED[capitals];
    if (key === undefined) return null;
    const bent = key + bendOf(double[2]);
    const doubled = capitals.length as 2 | 3;
    return {
      step: bent % 12,
      meanings: [meaning(bent, "helmholtz")],
      bare: false,
      doubled,
      end: at + double[0].length,
    };
  }
  const letter = match(LETTER, text, at);
  if (!letter) return null;
  const name = letter[1] as string;
  const flatB = german && name.toLowerCase() === "b" && letter[2] === undefined;
  const step = (LETTERS[name.toLowerCase()] as number) + (flatB ? -1 : bendOf(letter[2]));
  let end = at + letter[0].length;
  const octave = match(OCTAVE, text, end);
  if (octave) end += octave[0].length;
  let meanings = letterMeanings(name, step, octave?.[0]);
  const commas = octave ? null : match(CONTRA_COMMAS, text, end);
  if (commas && name !== name.toLowerCase()) {
    end += commas[0].length;
    meanings = [meaning(36 - 12 * commas[0].length + step, "helmholtz")];
  }
  return {
    step: (step + 12) % 12,
    meanings: meanings.filter(({ key }) => inRange(key)),
    bare: octave === null && commas === null,
    doubled: 0,
    end,
  };
}

/**
 * Reads one printed key: scientific (`C2`, `F#4`), Helmholtz (`C`, `c`, `c1`, `c'`, `fis'''`, `C,`), English (`CC`, `tenor C`,
 * `middle C`), French and Italian (`ut3`, `Do2`, `Do 25`) and German words (`großes C`). Middle C is 60.
 *
 * Small letters with a figure are Helmholtz (`c1` is middle C), capitals with a figure scientific (`C1` is 24). `B` is the
 * note below C, unless the text uses German names. `null` for anything else: trailing words, an octave that is not said
 * (`sol`), a capital with one prime (`C'`), which some print for the octave below and some for the one above.
 */
export function readKey(text: string): Key | null {
  if (text.length > 40) return null;
  const plain = plainKeySigns(text).replace(/^(?:t\.? ?c\.?)$/i, "tenor c");
  if (/^[A-H](?:is|es|s|#|b)?'$/u.test(plain)) return null;
  const found = printedKeyAt(plain, 0, usesGermanNames(plain));
  return found && found.end === plain.length ? (found.meanings[0]?.key ?? null) : null;
}
