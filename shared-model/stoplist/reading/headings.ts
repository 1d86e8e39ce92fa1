import type { Compass } from "../../pitch/key.ts";
import { foldedSpelling } from "../glossary/spelling.ts";
import { remembered } from "../remembered.ts";
import { DIVISION_LIMB, divisionRole, QUALIFIERS, type Role, rolesOfShort } from "./division-words.ts";
import { type HalfMark, halfAt } from "./halves.ts";
import { compassIn } from "./keys-in-line.ts";
import { romanValue } from "./ranks-in-line.ts";

/** A line, or the start of one, read as the heading of a division. */
export interface Heading {
  readonly name: string;
  readonly role: Role;
  readonly kind: "manual" | "pedal";
  readonly keyboard: number | null;
  readonly compass: Compass | null;
  readonly enclosed: boolean;
  /** Nothing is left over: the words can be nothing else. When false, only what follows tells. */
  readonly exact: boolean;
  /** The name is that of the keyboard alone (`II. Manual`), so that a division's name printed behind it takes its place. */
  readonly numberOnly: boolean;
  /** A half in brackets (`Órgano Mayor (mano izquierda)`): what stands below is that half of divided stops. */
  readonly half: HalfMark["half"] | null;
  /** The pedal has no stops of its own and hangs on a manual (`Pedal angehängt`). */
  readonly pullDown: boolean;
}

/** First to sixth, in the six languages, folded. Common practice. */
const ORDINALS: readonly (readonly [pattern: string, number: number])[] = [
  ["erst(?:e[srnm]?)?|first|1st|premi[eè]re?|1er|1[eè]re|prim[oae]r?a?|1[ºª°ao]|eerste|f[oø]rste|f[oö]rsta", 1],
  [
    "zweit(?:e[srnm]?)?|second|2nd|deuxi[eè]me|seconde?|2[eèé]?(?:me|de?)?|second[oa]|segund[oa]|2[ºª°ao]|tweede|anden|andra",
    2,
  ],
  ["dritt(?:e[srnm]?)?|third|3rd|troisi[eè]me|3[eèé]?(?:me|de)?|terz[oa]|tercer[oa]?|3[ºª°ao]|derde|tredje", 3],
  ["viert(?:e[srnm]?)?|fourth|4th|quatri[eè]me|4[eèé]?(?:me|de)?|quart[oa]|cuart[oa]|4[ºª°ao]|vierde", 4],
  ["f[uü]nft(?:e[srnm]?)?|fifth|5th|cinqui[eè]me|5[eèé]?(?:me|de)?|quint[oa]|5[ºª°ao]|vijfde", 5],
  ["sechst(?:e[srnm]?)?|sixth|6th|sixi[eè]me|6[eèé]?(?:me|de)?|sest[oa]|sext[oa]|6[ºª°ao]|zesde", 6],
];
const ORDINAL = ORDINALS.map(([pattern]) => `(${pattern})`).join("|");
const BOARD =
  "(?:manualen?|manuaal|manuali?|manuał|manuál|sormio|billentyűzet|manuale|man\\.?|clavier|clav\\.?|klavier|klaviatur|kl\\.?|keyboard|keyb\\.?|tastiera|tast\\.?|teclado|tecl\\.?|klaver|m(?=[ .]*[IVX\\d]))";
const NUMBER = "(?:(I{1,3}|IV|VI{0,2})|(\\d))";
const DOT = "(?: ?[.):°ºª]|e|er)?";
const BOARD_FIRST = new RegExp(
  `(?<![\\p{L}\\d])${BOARD} ?(?:no?[.°º] ?|nr\\.? ?)?${NUMBER}(?![\\p{L}\\d'’′/])\\.?`,
  "iu",
);
const NUMBER_FIRST = new RegExp(`(?<![\\p{L}\\d])${NUMBER}${DOT} ?-?(?<=[\\s.)°ºªIVe-])${BOARD}(?![\\p{L}])`, "iu");
const ORDINAL_FIRST = new RegExp(`(?<![\\p{L}\\d])(?:${ORDINAL})\\.?[ -]?${BOARD}(?![\\p{L}])`, "iu");
const BOARD_ORDINAL = new RegExp(`(?<![\\p{L}\\d])${BOARD} (?:${ORDINAL})(?![\\p{L}])`, "iu");
const LEADING_NUMERAL = /^\(?(I{1,3}|IV|VI{0,2}|\d)\)?(?:[.):]| ?[-–—:=]|(?=\s))\s*(?=\p{L})/u;
const TRAILING_NUMERAL = /(?:^|[\s,–-])\(?(I{1,3}|IV|VI{0,2})\)?[.:]?$/u;

const COUNT =
  /(?:(?:zunächst|mit|with|de|of|avec|met|con|à|a) )?\(?\b\d{1,3} ?(?:klingende |speaking |sprekende )?(?:stops?|register[ns]?|stimmen|stemmen|jeux|registri|registros|voices|ranks|rangs|reihen|pipes|pfeifen|voces|stemmer|juegos|wind|mm)\b\)?/giu;
const RANGE_WORD =
  /(?:tasten|manual|pedal|klaviatur)?umfang|compass|range|étendue|estensione|omvang|extensión|tasten|kurze oktave|short octave|ottava corta|octava corta|korte? octaaf/giu;
const ENCLOSED =
  /(?<!un)enclosed|in swell ?box|under expression|exp\.|expressi[fv]e?|expressif|expresiv[oa]|espressiv[oa]|im schwell(?:er|kasten)|schwellbar|in (?:de )?zwelkast|en caja expresiva|en boîte expressive|in cassa espressiva|w szafie ekspresyjnej|ekspresyjn[ya]|v žaluziové skříni|žaluziov[áýé]|paisutinkaapissa|redőny|i svellkasse|i svällare/iu;
const PULL_DOWN =
  /angehängt|pull-?down|aangehangen|en tirasse|attaccata|costantemente unit[ao]|permanently coupled|fest angekoppelt|unit[ao] al(?:la|l['’])? ?(?:manuale|tastiera|organo|grand['’]organo)|sempre unit[ao]|fast gekoppelt|enganchado/iu;
/** What indexes and builders print behind a heading: kinds of action, wind pressures. Common practice. */
const TECHNICAL =
  /(?:key|stop) action \p{L}+|[-–—,;(]?\s*(?:(?:reeds?|flues?|flue ?work|zungen|labialen?)\s+)?\d[\d½¼¾⅛⅜⅝⅞ /.,]*(?:inch(?:es)?|in\.|”|″|"|mm|cm)(?:\s(?:of\s)?(?:wind|water)(?:\s(?:pressure|gauge))?)?\)?/giu;
const COMPASS_IN_WORDS = /compass[- –]low (\S+)[,;]? compass[- –]high (\S+)/iu;
const YEAR = /(?<!\d)1[3-9]\d\d(?!\d)|(?<!\d)20[0-4]\d(?!\d)/;

const LONGEST_HEADING = 140;

interface Numbered {
  readonly number: number | null;
  readonly phrase: string | null;
  readonly rest: string;
}

const keyboardNumber = (roman: string | undefined, figure: string | undefined): number | null => {
  const value = roman ? romanValue(roman.toUpperCase()) : Number(figure);
  return value !== null && value >= 1 && value <= 7 ? value : null;
};

/** The number of the keyboard, the words that said it, and what is left. */
function numberIn(text: string): Numbered {
  const without = (match: RegExpExecArray): string =>
    `${text.slice(0, match.index)} , ${text.slice(match.index + match[0].length)}`;
  for (const pattern of [NUMBER_FIRST, BOARD_FIRST]) {
    const match = pattern.exec(text);
    const number = match && keyboardNumber(match[1], match[2]);
    if (match && number) return { number, phrase: match[0], rest: without(match) };
  }
  for (const pattern of [ORDINAL_FIRST, BOARD_ORDINAL]) {
    const match = pattern.exec(text);
    if (!match) continue;
    const at = ORDINALS.findIndex((_, index) => match[index + 1] !== undefined);
    return { number: at + 1, phrase: match[0], rest: without(match) };
  }
  const leading = LEADING_NUMERAL.exec(text);
  if (leading) {
    const value = /\d/.test(leading[1] as string) ? Number(leading[1]) : romanValue(leading[1] as string);
    if (value && value <= 7) return { number: value, phrase: null, rest: text.slice(leading[0].length) };
  }
  const trailing = TRAILING_NUMERAL.exec(text);
  if (trailing && trailing.index > 0)
    return { number: romanValue(trailing[1] as string), phrase: null, rest: text.slice(0, trailing.index) };
  return { number: null, phrase: null, rest: text };
}

interface Named {
  readonly name: string;
  readonly role: Role;
  /** Words that are neither the name nor its usual company. */
  readonly leftOver: number;
}

/** Words that may stand before the name of a division without being part of it. */
const ARTICLE =
  /^(?:im|in|das|der|die|dem|le|la|les|il|el|het|lo|the|op|au|auf|nel|en|l['’]|von|van|de|du|des|d|di|del|of|and|und|et|e|y)$/i;

function roleOf(words: readonly string[]): Role | null {
  const folded = words.map(foldedSpelling);
  const joined = folded.join("");
  const known = divisionRole(joined);
  if (known) return known;
  const [only] = folded;
  if (words.length === 1 && only !== undefined) {
    if (DIVISION_LIMB.test(only)) return /^ped/.test(only) ? "pedal" : "other";
    const shorts = rolesOfShort(only.replace(/\W/g, ""));
    if (shorts.length > 0 && /^\p{Lu}/u.test(words[0] as string) && only.length >= 2) return shorts[0] ?? null;
  }
  return null;
}

/** The longest run of words that names a division; the words around it are its company or left over. */
function nameIn(text: string): Named | null {
  // "Swell, enclosed": behind a comma the word is no part of the name.
  const [first = "", ...others] = text.split(/\s*[,;]\s*/).filter((piece) => /[\p{L}\p{N}]/u.test(piece));
  const areCompany = others.every((piece) => piece.split(/\s+/).every((word) => QUALIFIERS.has(foldedSpelling(word))));
  return (others.length > 0 && areCompany ? nameInPiece(first) : null) ?? nameInPiece(text);
}

function nameInPiece(text: string): Named | null {
  const words = text.split(/[\s,;:/]+|\s[-–—]\s/u).filter((word) => /[\p{L}\p{N}]/u.test(word));
  if (words.length === 0 || words.length > 12) return null;
  for (let length = Math.min(3, words.length); length >= 1; length--) {
    for (let start = 0; start + length <= words.length; start++) {
      const role = roleOf(words.slice(start, start + length));
      if (!role) continue;
      let [first, last] = [start, start + length];
      const isCompany = (word: string | undefined): boolean =>
        word !== undefined && QUALIFIERS.has(foldedSpelling(word));
      while (isCompany(words[first - 1])) first -= 1;
      while (isCompany(words[last])) last += 1;
      const outside = words.length - (last - first);
      while (first < start && ARTICLE.test(words[first] as string)) first += 1;
      while (last > start + length && ARTICLE.test(words[last - 1] as string)) last -= 1;
      return { name: words.slice(first, last).join(" "), role, leftOver: outside };
    }
  }
  return null;
}

const trim = (text: string): string =>
  text
    .replace(/\s+/g, " ")
    // Old print ends headings with a full stop; behind a short word it may be an abbreviation.
    .replace(/(?<=\p{L}{5}|\b(?:great|swell|choir|solo|echo))\.\s*$/iu, "")
    .replace(/^[\s,;:.=*•_–—-]+/u, "")
    .replace(/[\s,;:=*_–—-]+$/u, "")
    .trim();

/**
 * The heading that the text is, or `null`. The text must hold nothing but the heading; lines that carry stops behind it are
 * parted before.
 */
export const headingIn: (text: string) => Heading | null = remembered(readHeading);

function readHeading(text: string): Heading | null {
  if (text.length > 2 * LONGEST_HEADING) return null;
  const printed = trim(
    text
      .replace(TECHNICAL, " , ")
      .replace(COMPASS_IN_WORDS, "$1–$2")
      .replace(/\bkeys (\d\d)\b/i, "$1 keys"),
  );
  if (printed === "" || printed.length > LONGEST_HEADING || YEAR.test(printed)) return null;
  const compass = compassIn(printed);
  let rest = printed;
  for (const one of compass.texts) rest = rest.replace(one, " , ");
  rest = rest
    .replace(COUNT, " , ")
    .replace(RANGE_WORD, " ")
    .replace(/(?<=[-–—,;]\s*)unenclosed/giu, " ")
    .replace(/\(\s*[,;\s]*\)/g, " ");
  const enclosed = ENCLOSED.test(printed) && !/unenclosed/i.test(printed);
  const isSwell = (name: string): boolean =>
    /^(?:swell|schwell|zwel|sv[aäe]e?ll|(?:sw|sww|schw|schww|zw)\.?$)/i.test(name) && !/unenclosed/i.test(printed);
  const pullDown = PULL_DOWN.test(printed);
  const counted = numberIn(trim(rest));
  // "V - Solo (5ème clavier)" says its number twice.
  const again = counted.phrase === null ? null : LEADING_NUMERAL.exec(counted.rest);
  const numbered =
    again && romanValue(again[1] as string) === counted.number
      ? { ...counted, rest: counted.rest.slice(again[0].length) }
      : counted;
  const inBrackets = [...numbered.rest.matchAll(/\(([^()]*)\)/g)].map((match) => match[1] as string);
  const plain = trim(numbered.rest.replace(/\([^()]*\)/g, " ").replace(PULL_DOWN, " ")).replace(/\s+,/g, ",");
  const trailing = numbered.number === null ? numberIn(plain) : null;
  const unnumbered = trailing?.number != null ? trim(trailing.rest) : plain;
  // "Manual II in swell box": the box is said of a keyboard that has no other name.
  const isBoxOnly = trim(unnumbered.replace(ENCLOSED, " ")) === "" && nameIn(unnumbered) === null;
  const outer = isBoxOnly ? "" : unnumbered;
  const bracketNumber = inBrackets
    .map((one) => numberIn(trim(one)).number ?? romanValue(trim(one)))
    .find((one) => one !== null);
  const keyboard = numbered.number ?? trailing?.number ?? bracketNumber ?? null;
  const halves = inBrackets.flatMap((one) => {
    const mark = halfAt(one.trim(), 0);
    return mark && mark.end === one.trim().length && one.trim().length > 2 ? [mark.half] : [];
  });
  const base = { compass: compass.compass, enclosed, pullDown, keyboard, half: halves[0] ?? null };
  if (trim(outer) === "" || /^[\s\p{P}]*$/u.test(outer)) {
    if (numbered.phrase === null) return null;
    const name = trim(numbered.phrase);
    const named = inBrackets.map((one) => nameIn(one)).find((one) => one !== null && one.leftOver === 0);
    if (named)
      return {
        ...base,
        enclosed: enclosed || isSwell(named.name),
        name: named.name,
        role: named.role,
        kind: kindOf(named.role),
        exact: true,
        numberOnly: false,
      };
    return { ...base, name, role: "other", kind: "manual", exact: true, numberOnly: true };
  }
  const named = nameIn(outer);
  if (!named) return null;
  return {
    ...base,
    enclosed: enclosed || isSwell(named.name),
    keyboard: named.role === "pedal" ? null : keyboard,
    name: named.name,
    role: named.role,
    kind: kindOf(named.role),
    exact: named.leftOver === 0,
    numberOnly: false,
  };
}

const kindOf = (role: Role): "manual" | "pedal" => (role === "pedal" ? "pedal" : "manual");

const STOPS_AS_WELL: ReadonlySet<Role> = new Set(["echo", "bombarde", "solo", "other", "orchestral", "far"]);

/** Whether the words say that a pedal hangs on a manual. */
export const isPullDown = (text: string): boolean => text.length < 60 && PULL_DOWN.test(text);

/** Whether the heading's name may as well be a stop (`Echo`, `Bombarde`), so that its setting must decide. */
export const mayBeStop = (heading: Heading): boolean => STOPS_AS_WELL.has(heading.role) && !heading.numberOnly;
