/** A number of ranks found in a line. */
export interface RanksMark {
  readonly start: number;
  readonly end: number;
  /** The larger of a range. */
  readonly ranks: number;
  /** `numeral`: a bare Roman numeral, which may also number stops of one name; `f`: `4f`, which may also be feet. */
  readonly sign: "counted" | "numeral" | "f";
}

const ROMANS: Readonly<Record<string, number>> = {
  I: 1,
  II: 2,
  III: 3,
  IV: 4,
  IIII: 4,
  V: 5,
  VI: 6,
  VII: 7,
  VIII: 8,
  IX: 9,
  X: 10,
  XI: 11,
  XII: 12,
  XIII: 13,
  XIV: 14,
  XV: 15,
  XVI: 16,
  XX: 20,
};

/** Value of a Roman numeral in capitals, up to XX; `null` for anything else. */
export const romanValue = (text: string): number | null => ROMANS[text] ?? null;

/** Numbers of ranks in words, in the six languages. Common practice. */
const NUMBER_WORDS: Readonly<Record<string, number>> = {
  ein: 1,
  zwei: 2,
  zwey: 2,
  drei: 3,
  drey: 3,
  vier: 4,
  fünf: 5,
  funf: 5,
  sechs: 6,
  sieben: 7,
  acht: 8,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  deux: 2,
  trois: 3,
  quatre: 4,
  cinq: 5,
  sept: 7,
  due: 2,
  tre: 3,
  quattro: 4,
  cinque: 5,
  sei: 6,
  dos: 2,
  tres: 3,
  cuatro: 4,
  cinco: 5,
  seis: 6,
  siete: 7,
  twee: 2,
  drie: 3,
  vijf: 5,
  zes: 6,
  to: 2,
  fire: 4,
  fem: 5,
};

const UNIT =
  "(?:f[aä]ch(?:e|es|en|ig)?|ranks?|rks?|rangs?|rgs?|rang|r(?=[.\\s,;)\\]]|$)|st(?:erke?|k)?(?=[.\\s,;)\\]]|$)|sterke?|kor(?:ig)?|chor(?:ig)?|chörig|chöre|choren" +
  "|k[oö]rig|korr|fil[ae]|filas|hileras?|hil(?=\\.)|h(?=[.\\s,;)\\]]|$)|voudig|voci|ch(?=[.\\s,;)\\]]|$)|x(?=[.\\s,;)\\]]|$)|dobb(?=\\.))";
const TO = " ?(?:\\.(?= ?\\d)|-|–|—|à|bis|to|tot|t/m|al|a|/|,|u\\.|und|en|et|\\.\\.) ?-?";
const COUNTED = new RegExp(
  `(\\d{1,2})(?:[-–]?(?:fach)?,?${TO}(\\d{1,2}))?(?:${TO}(\\d{1,2}))?\\.? ?[-–]?(?:${UNIT})(?![a-zäöüß])\\.?`,
  "iuy",
);
const F_SIGN = new RegExp(`(\\d{1,2})(?:${TO}(\\d{1,2}))? ?-?f(?=[.\\s,;)\\]]|$)\\.?`, "uy");
const NUMERAL = new RegExp(
  `([IVX]{1,5})(?: ?(?:-|–|—|/|à|to|bis|tot) ?([IVX]{1,5}))?(?![\\p{L}\\d°º'’])( ?-?(?:${UNIT}|f(?=[.\\s,;)]|$))(?![a-zäöüß])\\.?)?`,
  "uy",
);
const INITIALS = /^V\. ?(?:\p{L}\.|\p{L}{1,4}\.)/u;
const WORDS = new RegExp(
  `(?:an? |à )?(${Object.keys(NUMBER_WORDS).join("|")})(?: ?(?:bis|à|to|tot|a|-) ?(${Object.keys(NUMBER_WORDS).join("|")}))?[ -]?(?:${UNIT})(?![a-zäöüß])\\.?`,
  "iuy",
);

const matchAt = (pattern: RegExp, text: string, at: number): RegExpExecArray | null => {
  pattern.lastIndex = at;
  return pattern.exec(text);
};

const largest = (...numbers: readonly (string | undefined)[]): number =>
  Math.max(...numbers.map((one) => (one === undefined ? 0 : Number(one))));

/** Above this a count is a count of pipes or notes, not of ranks. */
const MOST_RANKS = 24;

/** The number of ranks that begins at `at` (`III-V`, `4fach`, `3 à 6 rangs`, `drey fach`, `4,5 und 6 fach`), or `null`. */
export function ranksAt(text: string, at: number): RanksMark | null {
  const counted = matchAt(COUNTED, text, at);
  // "8 St. Diapason" is a stop of 8 feet.
  if (counted && !(/St\.?$/.test(counted[0]) && /^\s?\p{Lu}/u.test(text.slice(at + counted[0].length)))) {
    const ranks = largest(counted[1], counted[2], counted[3]);
    return ranks > 0 && ranks <= MOST_RANKS ? { start: at, end: at + counted[0].length, ranks, sign: "counted" } : null;
  }
  const short = matchAt(F_SIGN, text, at);
  if (short) {
    const ranks = largest(short[1], short[2]);
    const sign = short[2] === undefined ? "f" : "counted";
    return ranks > 0 && ranks <= MOST_RANKS ? { start: at, end: at + short[0].length, ranks, sign } : null;
  }
  // "V. d. Gamba", "V.C.": initials.
  const numeral = INITIALS.test(text.slice(at, at + 12)) ? null : matchAt(NUMERAL, text, at);
  if (numeral) {
    const first = romanValue(numeral[1] as string);
    const second = numeral[2] === undefined ? first : romanValue(numeral[2]);
    // "II/I" is a coupler.
    if (first === null || second === null || second < first) return null;
    const sign = numeral[3] === undefined && numeral[2] === undefined ? "numeral" : "counted";
    return { start: at, end: at + numeral[0].length, ranks: Math.max(first, second), sign };
  }
  const words = matchAt(WORDS, text, at);
  if (!words) return null;
  const value = (word: string | undefined): number =>
    word === undefined ? 0 : (NUMBER_WORDS[word.toLowerCase()] ?? 0);
  return { start: at, end: at + words[0].length, ranks: Math.max(value(words[1]), value(words[2])), sign: "counted" };
}
