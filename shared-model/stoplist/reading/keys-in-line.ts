import { readCompass, readKey } from "../../pitch/compass.ts";
import { type Compass, type Key, LOWEST_KEY } from "../../pitch/key.ts";

/** A phrase that says from which key a stop speaks, or up to which. */
export interface KeyMark {
  readonly start: number;
  readonly end: number;
  readonly key: Key;
  /** `from`: the lowest key; `to`: the highest. */
  readonly end_of: "from" | "to";
}

const ACCIDENTAL = "(?:is|es|s|#|♯|b|♭)?";
const PRIMES = "['’‘′`´\"″]{1,4}|[¹²³⁴]";
const LETTER_KEY = `[a-hA-H]${ACCIDENTAL} ?(?:${PRIMES}|°|[0-4](?!\\d)|1\\d(?!\\d)|2\\d(?!\\d))?(?![\\p{L}\\d])`;
const WORD_KEY = `(?:tenor|ten\\.|middle|mid\\.?|fiddle|gamut|bottom|low|treble|gro(?:ß|ss)(?:en?|es)|kleine?[ns]?|klein)[ -][a-hA-H](?:#|♯|b|♭|is|es)?(?![\\p{L}\\d])`;
const SYLLABLE_KEY = "(?:ut|do|r[eé]|mi|fa|sol|la|si)(?:[#♯]| di[eè]se| diesis)? ?-?\\d{1,2}(?!\\d)";
const DOUBLED_KEY = `(?:${[..."ABCDEFG"].map((letter) => `${letter}{2,3}`).join("|")})(?![\\p{L}\\d])`;
/** The second C of the keyboard, where half-long stops begin. */
const SECOND_C = "(?:2e|2ème|2de|2nd|second|deuxième) (?:ut|do|c)(?![\\p{L}\\d])";
const SECOND_C_ALONE = new RegExp(`^${SECOND_C}$`, "iu");
const KEY = `(?:${SECOND_C}|${WORD_KEY}|${SYLLABLE_KEY}|${DOUBLED_KEY}|${LETTER_KEY})`;
const FROM =
  "(?:from|ab dem|ab|vanaf|v\\.a\\.|van|à partir (?:du|de l['’]|d['’]|de)|depuis (?:le |l['’])?|dès (?:le |l['’])?|dal|dall['’]|da|desde(?: el)?|fra|från|aus dem|starting (?:at|from)|begins at|commencing)";
const FROM_KEY = new RegExp(`${FROM} ?(${KEY})(?: (?:up|upwards|aufwärts|en haut|in su|in poi|opwaarts))?`, "iuy");
const TO_KEY = new RegExp(`(?:up to|to|bis|tot|jusqu['’](?:à|au) ?|fino al|fino a|hasta(?: el)?) ?(${KEY})`, "iuy");
const BARE_TENOR = /(?:t\. ?c\.|TC|GG|ten(?:or|\.)? c|middle c|mid\. c)(?![\p{L}\d])/iuy;
/** `c'-g'''` and the like stand in brackets behind a short stop. */
const BARE_KEY = new RegExp(`^(${KEY}) ?(?:up|upwards|[-–] ?)?$`, "iu");

const SECONDS = /°$/u;
const TENOR_OCTAVE = /^[a-h]0$/i;

/** A key in any of the printed ways; the small octave also as `c0` and `c°`. */
function keyOf(text: string): Key | null {
  const trimmed = text.trim();
  if (SECOND_C_ALONE.test(trimmed)) return readKey("tenor c");
  if (SECONDS.test(trimmed) || TENOR_OCTAVE.test(trimmed)) return readKey(trimmed.slice(0, -1).toLowerCase());
  const numbered = /^c ?(1\d|2\d)$/i.exec(trimmed);
  if (numbered) return LOWEST_KEY - 1 + Number(numbered[1]);
  // On a keyboard that begins at CC, a stop from GG begins above it.
  const doubled = /^[A-G]{2}$/.test(trimmed) ? readKey(trimmed) : null;
  if (doubled !== null) return doubled < LOWEST_KEY ? doubled + 12 : doubled;
  return readKey(trimmed.replace(/^([a-h](?:is|es|s|#|b)?) (?=['’′\d])/i, "$1"));
}

const bareKey = (words: string): Key | null =>
  words === "GG" ? keyOf(words) : readKey(/^t/i.test(words) ? "tenor c" : "middle c");

/** The phrase that begins at `at` (`ab c1`, `from tenor C`, `dal Sol 20`, `up to B`), or `null`. */
export function keyPhraseAt(text: string, at: number): KeyMark | null {
  for (const [pattern, endOf] of [
    [FROM_KEY, "from"],
    [TO_KEY, "to"],
  ] as const) {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    const key = match ? keyOf(match[1] as string) : null;
    if (match && key !== null) return { start: at, end: at + match[0].length, key, end_of: endOf };
  }
  BARE_TENOR.lastIndex = at;
  const tenor = BARE_TENOR.exec(text);
  const key = tenor ? bareKey(tenor[0]) : null;
  return tenor && key !== null ? { start: at, end: at + tenor[0].length, key, end_of: "from" } : null;
}

/** Whether the whole text is a key phrase (`from GG`): then it is not the name of another stop. */
export const isKeyPhrase = (text: string): boolean => keyPhraseAt(text.trim(), 0)?.end === text.trim().length;

/** The key that is all a bracket holds (`(ré3)`, `(tenor c)`, `(c1)`), or `null`. */
export function keyAlone(text: string): Key | null {
  const match = BARE_KEY.exec(text.trim());
  // A letter alone is a label of ranks or a footnote as often as a key, but for the c of tenor C.
  if (/^[abd-hA-H]$/.test(text.trim())) return null;
  return match ? keyOf(match[1] as string) : null;
}

/** English octaves: `in alt` begins at g'', `in altissimo` an octave higher. From memory. */
const KEY_IN_ALT = /([A-Ga-g])((?:is|#|♯|b|♭)?) ?in alt(issimo)?\b/giu;
const END = `(?:${WORD_KEY}|(?:ut|do|r[eé]|mi|fa|sol|la|si)(?![a-zé]) ?\\d{0,2}|[A-G]{2,3}(?![a-zA-Z\\d])|[A-Ha-h]${ACCIDENTAL}(?:${PRIMES}|[0-9](?!\\d)| in alt(?:issimo)?)?(?![\\p{L}\\d]))`;
const COMPASS = new RegExp(
  `(?<![\\p{L}\\d])(?:[A-H](?:is|#)?(?:, ?| |/)?){0,8}${END} ?(?:-|–|—|bis|to|tot|t/m|à|a|al|till|÷) ?(?:in[sß] ?)?${END}(?:,? ?[a-h]\\d)?`,
  "iu",
);
const NOTES =
  /(?:de |mit |of )?\b(\d{2}) ?(?:notes?|keys|t[oö]nen?|tasten|noten|toetsen|touches|marches|tasti|teclas|notas|pedals)\b/iu;

const SHORT_OCTAVE = /short octave|kurze[rn]? oktave|octave courte|ottava corta|octava corta|korte? oc?taaf/iu;

/** `sans 1er ut#`, `ohne Cis`: the key beside the lowest C was often left out. */
const WITHOUT_C_SHARP =
  /(?<![\p{L}])(?:without|lacking|ohne|sans|zonder|senza|sin|no)(?: the| le| das)?(?: (?:low(?:est)?|bottom|1er|premier|first|unteres?|tiefes?|gro(?:ß|ss)es?|primo))?,? (?:C ?[#♯]|c ?sharp|cis|(?:ut|do) ?[#♯]|ut di[eè]se|do diesis)(?![\p{L}\d])/iu;

/** Keys that the print leaves out elsewhere than in the row of keys. */
function withGaps(compass: Compass, text: string, row: string | undefined): Compass {
  if (compass.low % 12 !== 0 || compass.missing.length > 0) return compass;
  const cSharp = compass.low + 1;
  if (WITHOUT_C_SHARP.test(text)) return { ...compass, missing: [cSharp] };
  // No keyboard ends at C sharp: so many keys reach the D where the lowest C sharp is wanting, as in old France. Common practice.
  if (row === undefined && compass.high % 12 === 1) return { ...compass, high: compass.high + 1, missing: [cSharp] };
  const short = row !== undefined && SHORT_OCTAVE.test(text) ? readCompass(`${row}, short octave`) : null;
  return short ? { ...compass, missing: short.compass.missing } : compass;
}

/** No keyboard begins at the C of 16': a list that prints C1 or Do1 there counts from great C, as Italy and France do. Common practice. */
const fromGreatC = (compass: Compass): Compass =>
  compass.low > 24
    ? compass
    : { low: compass.low + 12, high: compass.high + 12, missing: compass.missing.map((key) => key + 12) };

/** A compass found somewhere in a heading: what stands there, and what it means when that is plain. */
export interface CompassMark {
  readonly texts: readonly string[];
  readonly compass: Compass | null;
}

/** Every compass or number of keys printed in a heading. */
export function compassIn(text: string): CompassMark {
  const row = COMPASS.exec(text)?.[0];
  const notes = NOTES.exec(text)?.[0];
  const short = SHORT_OCTAVE.exec(text)?.[0];
  const texts = [row, notes].filter((one): one is string => one !== undefined);
  const plain = row?.replace(
    KEY_IN_ALT,
    (_, letter: string, sharp: string, higher: string | undefined) =>
      `${letter.toLowerCase()}${sharp}${(/[c-f]/i.test(letter) ? 3 : 2) + (higher === undefined ? 0 : 1)}`,
  );
  const glued = plain?.replace(/^([A-G]{2,})(?=[-–])/, (letters) =>
    /^(.)\1+$/.test(letters) ? letters : [...letters].join(","),
  );
  const spaced = glued?.replace(/([a-h]\d)([a-h]\d)$/, "$1, $2");
  const stated = [spaced, notes].filter((one) => one !== undefined);
  const wanted = [stated.join(", "), ...(short !== undefined && spaced === undefined ? ["short octave"] : [])].join(
    ", ",
  );
  const reading = stated.length === 0 ? null : (readCompass(wanted) ?? (spaced ? readCompass(spaced) : null));
  return { texts, compass: reading && fromGreatC(withGaps(reading.compass, text, spaced)) };
}
