import { type Foot, footOf } from "./foot.ts";
import { isUsualPitch, oldRounding, USUAL_PITCHES } from "./usual.ts";

export { isUsualPitch, oldRounding } from "./usual.ts";

/** Why a printed length is not settled, and what it may mean. */
export interface PitchDoubt {
  /** A sentence for an organist. */
  readonly text: string;
  /** Lengths to choose from, likeliest first; empty when nothing fits. */
  readonly choices: readonly Foot[];
}

/** A length as read: settled, or in doubt, never both. */
export type PitchReading =
  | { readonly foot: Foot; readonly doubt: null }
  | { readonly foot: null; readonly doubt: PitchDoubt };

const settled = (foot: Foot): PitchReading => ({ foot, doubt: null });
const doubtful = (text: string, choices: readonly Foot[] = []): PitchReading => ({
  foot: null,
  doubt: { text, choices },
});

/** No printed length is longer; anything beyond is not looked at, so that no text can cost time. */
const LONGEST_PRINT = 40;

const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅐": "1/7",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅑": "1/9",
  "⅒": "1/10",
};
const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉";

const SINGLE_MARK = "['’‘‛′`´ʹʼˈ＇]";
const DOUBLE_MARK = `(?:${SINGLE_MARK}{2}|["”“″〞])`;
/** Foot in the languages of the trade, with their abbreviations. Common practice. */
const WORD =
  "(?:feet|foot|ft|f(?:u|ue|ü)(?:ss|ß|s)(?:ig|ige|iger|iges)?|f|voets?|vt|v|pieds?|pi|pies?|pied[ei]|pds?|p|fot|fod|stóp)\\b\\.?|(?:fuß|füß)\\.?";
const MARK = `(?:${SINGLE_MARK}|[ -]?(?:${WORD}))`;

const PLAIN = /^[1-9]\d{0,2}$/;
const FRACTION = /^([1-9]\d{0,2}) ?\/ ?([1-9]\d{0,2})$/;
const MIXED = /^([1-9]\d{0,1})(?: ?[-–.+] ?| | et | und | and | en )([1-9]\d?) ?\/ ?([1-9]\d?)$/;
const DECIMAL = /^(\d{0,2})[.,](\d{1,4})$/;
/** The mark may stand inside: "2' 2/3", "2 pieds 2/3". */
const MARK_INSIDE = new RegExp(`^(\\d{1,2}) ?${MARK} ?(?:et |und |and |en )?(\\d{1,2} ?/ ?\\d{1,2})$`, "iu");
const MARK_BEHIND = new RegExp(`^(.*?\\d) ?${MARK}$`, "iu");
const DOUBLE_BEHIND = new RegExp(`^(.*?\\d) ?${DOUBLE_MARK}$`, "u");
const PALMS = /^(.*?\d) ?(?:palmos|palms|palmi)\.?$/iu;

/** Spanish lists count in palms; 13 of them name the 8', in Portugal 12. Common practice. */
const PALM_LENGTHS: ReadonlyMap<string, Foot> = new Map([
  ["52", footOf(32)],
  ["26", footOf(16)],
  ["24", footOf(16)],
  ["13", footOf(8)],
  ["12", footOf(8)],
  ["6", footOf(4)],
  ["6 1/2", footOf(4)],
  ["7", footOf(4)],
  ["3 1/4", footOf(2)],
]);

/** One way of writing each sign: fractions as `a/b` set off by a blank, one slash, one blank, no outer blanks. */
function plainSigns(text: string): string {
  let plain = "";
  for (const sign of text.normalize("NFC")) {
    const vulgar = VULGAR_FRACTIONS[sign];
    if (vulgar) plain += ` ${vulgar}`;
    else if (SUPERSCRIPTS.includes(sign)) {
      plain += /[⁰¹²³⁴⁵⁶⁷⁸⁹]$/u.test(plain) ? sign : ` ${sign}`;
    } else if (SUBSCRIPTS.includes(sign)) plain += String(SUBSCRIPTS.indexOf(sign));
    else if (/[⁄∕／÷]/u.test(sign)) plain += "/";
    else if (/[\s\u200a-\u200d\u2060]/u.test(sign)) plain += " ";
    else if (/[‐‑−]/u.test(sign)) plain += "-";
    else plain += sign;
  }
  return plain
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/gu, (sign) => String(SUPERSCRIPTS.indexOf(sign)))
    .replace(/ +/g, " ")
    .trim();
}

const isKnown = (foot: Foot): boolean => isUsualPitch(foot) || oldRounding(foot) !== null;

/** Known lengths first, then as given; each once (equal lengths are one object). */
const likeliestFirst = (feet: readonly Foot[]): readonly Foot[] => [
  ...new Set([...feet.filter(isKnown), ...feet.filter((foot) => !isKnown(foot))]),
];

const shown = (text: string): string => `"${text.length > LONGEST_PRINT ? `${text.slice(0, LONGEST_PRINT)}…` : text}"`;
const orList = (feet: readonly Foot[]): string => feet.map((foot) => printPitch(foot, "plain")).join(" or ");

/** `22/3` may be 2 2/3 with its gap lost: every way to part the upper figure that leaves a proper fraction. */
function lostGaps(over: string, under: number): Foot[] {
  const found: Foot[] = [];
  for (let at = 1; at < over.length; at++) {
    const [whole, part] = [Number(over.slice(0, at)), Number(over.slice(at))];
    if (over[at] !== "0" && part < under) found.push(footOf(whole * under + part, under));
  }
  return found;
}

function readFraction(printed: string, overText: string, under: number): PitchReading {
  const over = Number(overText);
  const foot = footOf(over, under);
  const gaps = lostGaps(overText, under);
  const apart = "write the whole feet apart from the fraction.";
  if (foot.under !== under) {
    const known = gaps.filter(isKnown);
    if (known.length > 0) {
      const choices = [...known, foot];
      return doubtful(`${shown(printed)} may be ${orList(choices)}; ${apart}`, choices);
    }
    // "8/4" is two lengths on one knob or line: nobody writes 2' that way.
    const choices = likeliestFirst([footOf(over), footOf(under), foot]).filter(isKnown);
    return doubtful(
      `${shown(printed)} may be two lengths, ${over}' and ${under}', or a misprint; write one length.`,
      choices,
    );
  }
  if (over < under || isUsualPitch(foot)) return settled(foot);
  if (gaps.length === 0) return settled(foot);
  const choices = likeliestFirst([...gaps, foot]);
  return doubtful(`${shown(printed)} may be ${orList(choices)}; ${apart}`, choices);
}

function readMixed(printed: string, whole: number, over: number, under: number): PitchReading {
  if (over >= under || footOf(over, under).under !== under) {
    const near = USUAL_PITCHES.filter((foot) => foot.under <= 7 && Math.floor(foot.over / foot.under) === whole);
    return doubtful(`${shown(printed)} is not a pitch: ${over}/${under} is not a proper fraction of a foot.`, near);
  }
  return settled(footOf(whole * under + over, under));
}

/** Decimals are roundings of a usual length; cut off and rounded both occur (2,66 and 2.67). */
function readDecimal(printed: string, whole: string, decimals: string): PitchReading {
  const scale = 10 ** decimals.length;
  const value = Number(whole) * scale + Number(decimals);
  if (value === 0) return doubtful(`${shown(printed)} is no length: a pipe is longer than nothing.`);
  const exact = footOf(value, scale);
  // 2.6 is 2 2/3 cut off rather than 13/5, so of the old roundings only those printed as halves count here.
  if (isUsualPitch(exact) || (oldRounding(exact) && exact.under <= 4)) return settled(exact);
  // The eleventh harmonic and beyond are printed as fractions only, and would lie near every decimal.
  const near = USUAL_PITCHES.filter((foot) => {
    if (foot.under % 11 === 0 || foot.under % 13 === 0 || foot.under % 15 === 0 || foot.under % 19 === 0) return false;
    const scaled = (foot.over * scale) / foot.under;
    return Math.floor(scaled) === value || Math.round(scaled) === value;
  });
  const [only] = near;
  if (only === undefined) return settled(exact);
  if (near.length === 1 && decimals.length >= 2) return settled(only);
  return doubtful(`${shown(printed)} may be ${orList([...near, exact])}; write it as a fraction.`, [...near, exact]);
}

function readNumber(printed: string, number: string): PitchReading {
  if (PLAIN.test(number)) return settled(footOf(Number(number)));
  const fraction = FRACTION.exec(number);
  if (fraction) return readFraction(printed, fraction[1] as string, Number(fraction[2]));
  const mixed = MIXED.exec(number);
  if (mixed) return readMixed(printed, Number(mixed[1]), Number(mixed[2]), Number(mixed[3]));
  const decimal = DECIMAL.exec(number);
  if (decimal) return readDecimal(printed, decimal[1] as string, decimal[2] as string);
  return doubtful(`${shown(printed)} is not a pitch; write it as 8, 2 2/3 or 1 3/5.`);
}

/**
 * Reads a length in any way the trade prints it: `8`, `8'`, `8 Fuß`, `2 2/3`, `2⅔′`, `2-2/3 ft`, `2 pieds 2/3`, `2,66`.
 *
 * The whole text must be one length. A text that can mean two lengths (`22/3`), names inches (`8''`) or is no length at
 * all gives a doubt with a sentence, never a guess. Old roundings are read as printed (`3` is 3'): only the stop tells
 * whether it is a quint, see {@link oldRounding}; whether organs have such a length is told by {@link isUsualPitch}.
 */
export function readPitch(text: string): PitchReading {
  if (text.length > LONGEST_PRINT) {
    return doubtful(`${shown(text)} is too long to be a pitch; write it as 8, 2 2/3 or 1 3/5.`);
  }
  const printed = text.trim();
  const plain = plainSigns(printed);
  if (plain === "") return doubtful("No pitch is printed here; write it as 8, 2 2/3 or 1 3/5.");

  const palms = PALMS.exec(plain);
  if (palms) {
    const foot = PALM_LENGTHS.get(palms[1] as string);
    return foot ? settled(foot) : doubtful(`${shown(printed)} is no usual count of palms (13 palms are 8').`);
  }
  const double = DOUBLE_BEHIND.exec(plain);
  if (double) {
    const inside = readNumber(printed, double[1] as string);
    const choices = inside.foot ? [inside.foot] : inside.doubt.choices;
    return doubtful(
      `${shown(printed)} has the mark of inches; is it ${choices.length ? orList(choices) : "a length"}?`,
      choices,
    );
  }
  const inside = MARK_INSIDE.exec(plain);
  if (inside) return readNumber(printed, `${inside[1]} ${inside[2]}`);
  const letter = /^([1-9]\d?) ?[fV]\.?$/.exec(plain);
  if (letter) {
    const foot = footOf(Number(letter[1]));
    return doubtful(
      `${shown(printed)} may be ${printPitch(foot, "plain")} or a number of ranks; write the one that is meant.`,
      [foot],
    );
  }
  const behind = MARK_BEHIND.exec(plain);
  return readNumber(printed, behind ? (behind[1] as string) : plain);
}

const TYPESET: ReadonlyMap<string, string> = new Map(
  Object.entries(VULGAR_FRACTIONS).map(([sign, plain]) => [plain, sign]),
);

const raised = (figures: number): string => [...String(figures)].map((figure) => SUPERSCRIPTS[Number(figure)]).join("");
const lowered = (figures: number): string => [...String(figures)].map((figure) => SUBSCRIPTS[Number(figure)]).join("");

/**
 * A length as words name it, without the foot mark: `8`, `2 2/3`, `8/9`. Typeset with one sign per fraction where print
 * has it (`2⅔`), else with raised and lowered figures (`2²⁄₇` has the fraction slash).
 */
export function pitchName(foot: Foot, style: "plain" | "typeset" = "plain"): string {
  const whole = Math.floor(foot.over / foot.under);
  const rest = foot.over - whole * foot.under;
  if (rest === 0) return String(whole);
  const plain = `${rest}/${foot.under}`;
  if (style === "plain") return whole === 0 ? plain : `${whole} ${plain}`;
  return `${whole === 0 ? "" : whole}${TYPESET.get(plain) ?? `${raised(rest)}⁄${lowered(foot.under)}`}`;
}

/** A length with its foot mark: `2 2/3'` plain, for files, terminals and search; `2⅔′` typeset, for screens and cards. */
export const printPitch = (foot: Foot, style: "plain" | "typeset"): string =>
  pitchName(foot, style) + (style === "plain" ? "'" : "′");
