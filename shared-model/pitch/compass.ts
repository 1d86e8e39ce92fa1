import { type Compass, type Key, keyText } from "./key.ts";
import { type KeyMeaning, type PrintedKey, plainKeySigns, printedKeyAt, usesGermanNames } from "./key-reading.ts";

export { readKey } from "./key-reading.ts";

/** A compass as printed. */
export interface CompassReading {
  readonly compass: Compass;
  /** The number of keys where the print states one; where it differs from {@link keyCount}, the print is at odds with itself. */
  readonly count?: number;
}

/** How many keys the compass has, missing ones left out. */
export const keyCount = (compass: Compass): number => compass.high - compass.low + 1 - compass.missing.length;

/**
 * The compass as files write it: `C2-G6`; missing keys follow: `C2-C6 without C#2, Eb2, F#2, G#2`. {@link readCompass}
 * reads it back.
 */
export function compassText({ low, high, missing }: Compass): string {
  const lacking = missing.length > 0 ? ` without ${missing.map(keyText).join(", ")}` : "";
  return `${keyText(low)}-${keyText(high)}${lacking}`;
}

/** No printed compass is longer; longer texts are not looked at. */
const LONGEST_PRINT = 120;
/** C7, the top key of the largest keyboards: a reading beyond it is a misreading. */
const HIGHEST = 96;
/** C1: nothing below the keys of a 16' front exists. */
const LOWEST = 24;
/** A row of fewer keys is a stop's half, a slip or something else. */
const FEWEST_KEYS = 9;

const LABEL =
  /^(?:compass|range|(?:tasten|manual|pedal|ton|klaviatur)?umfang|klaviaturumfang|[eé]tendue|estensione|omvang|extensi[oó]n|von|from|da|de|van)\b:? */iu;
const COUNT =
  /(?:^|[ ,;:(–])(\d{2}) (?:notes?|keys|t[oö]nen?|tasten|noten|toetsen|touches|marches|tasti|note|teclas|notas|pedals|pedali)(?![a-z])/iu;
const SHORT_OCTAVE =
  /,? ?(?:with |mit |avec |con |met |prima )?(?:a |una? )?(?:short octave|kurze[rn]? (?:bass-?)?oktave|octave courte|(?:prima )?ottava corta|octava corta|kort oktaaf|korte? octaaf|in sesta)/iu;
const WITHOUT = /,? ?(?:without|ohne|sans|zonder|senza|sin|no|lacking)(?: low)? (.*)$/iu;
const BETWEEN = /[ ,;.+]*/y;

/**
 * Keys that a short octave lacks, counted from its lowest. C/E: no C sharp, E flat, F sharp, G sharp. G/B: A sounds on the
 * key of C sharp, B and the other sharps below D are wanting (from memory).
 */
const shortOctaveGaps = (low: Key): readonly Key[] =>
  (low % 12 === 7 ? [1, 3, 4, 6] : [1, 3, 6, 8]).map((gap) => low + gap);

interface Ends {
  readonly low: readonly PrintedKey[];
  /** Lowest two keys as `C/E`: the first sounds on the key that looks like the second. */
  readonly short: boolean;
  readonly high: readonly PrintedKey[];
}

/** A row of keys from `at` on, up to the first sign that is neither a key nor a blank or comma between keys. */
function keysFrom(text: string, at: number, german: boolean): { keys: PrintedKey[]; end: number } {
  const keys: PrintedKey[] = [];
  let end = at;
  while (keys.length < 16) {
    BETWEEN.lastIndex = end;
    const start = keys.length === 0 ? end : end + (BETWEEN.exec(text)?.[0].length ?? 0);
    const key = printedKeyAt(text, start, german);
    if (!key) break;
    keys.push(key);
    end = key.end;
  }
  return { keys, end };
}

function endsOf(text: string): Ends | null {
  const german = usesGermanNames(text);
  const low = keysFrom(text, 0, german);
  if (low.keys.length === 0) return null;
  let at = low.end;
  let short = false;
  if (text[at] === "/" && low.keys.length === 1) {
    const shown = printedKeyAt(text, at + 1, german);
    if (!shown || (shown.step - (low.keys[0] as PrintedKey).step + 12) % 12 !== 4) return null;
    short = true;
    at = shown.end;
  }
  const dash = /^ ?(?:–|-) ?/u.exec(text.slice(at));
  if (!dash) return null;
  const high = keysFrom(text, at + dash[0].length, german);
  if (high.keys.length === 0 || high.end !== text.length) return null;
  return { low: low.keys, short, high: high.keys };
}

/** Keys of a printed row, upward; `null` when they do not rise or an octave is not known. */
function rising(row: readonly PrintedKey[], first: Key): Key[] | null {
  const keys: Key[] = [first];
  for (const printed of row.slice(1)) {
    const last = keys[keys.length - 1] as Key;
    const next = printed.meanings.find(({ key }) => key > last && key <= last + 12);
    if (!next) return null;
    keys.push(next.key);
  }
  return keys;
}

const between = (keys: readonly Key[]): Key[] =>
  keys.flatMap((key, at) => {
    const next = keys[at + 1];
    return next === undefined ? [] : Array.from({ length: next - key - 1 }, (_, step) => key + 1 + step);
  });

const USUAL_COUNT = (count: number): boolean => (count >= 25 && count <= 32) || count >= 41;

interface Option {
  readonly compass: Compass;
  readonly distance: number;
}

function optionOf(ends: Ends, low: KeyMeaning, high: KeyMeaning, count: number | undefined): Option | null {
  const lows = rising(ends.low, low.key);
  const highs = rising(ends.high, high.key);
  if (!lows || !highs) return null;
  const top = highs[highs.length - 1] as Key;
  const missing = [...between(lows), ...(ends.short ? shortOctaveGaps(low.key) : []), ...between(highs)];
  const compass = { low: low.key, high: top, missing };
  const keys = keyCount(compass);
  if (low.key < LOWEST || top > HIGHEST || keys < FEWEST_KEYS || high.key <= (lows[lows.length - 1] as Key))
    return null;
  const agrees = keys === count ? -20 : 0;
  const mixed = low.notation === high.notation ? 0 : 2;
  return { compass, distance: low.distance + high.distance + mixed + agrees + (USUAL_COUNT(keys) ? 0 : 3) };
}

/** The meaning that a stated number of keys gives to an upper end whose octave is not said. */
function byCount(ends: Ends, low: KeyMeaning, count: number): KeyMeaning[] {
  const lows = rising(ends.low, low.key);
  const [only] = ends.high;
  if (!lows || !only || ends.high.length > 1 || !only.bare) return [];
  const missing = between(lows).length + (ends.short ? shortOctaveGaps(low.key).length : 0);
  const key = low.key + count - 1 + missing;
  return key % 12 === only.step ? [{ key, notation: low.notation, distance: 0 }] : [];
}

function bestOption(ends: Ends, count: number | undefined): Compass | null {
  const [first] = ends.low;
  const [top] = ends.high;
  if (!first || !top) return null;
  const lows: readonly KeyMeaning[] =
    first.meanings.length === 0 ? [{ key: 36 + first.step, notation: "syllable", distance: 0 }] : first.meanings;
  const options = lows.flatMap((low) => {
    const counted = count === undefined ? [] : byCount(ends, low, count);
    // After CC an English list means any octave by a letter alone: only a count can tell which.
    const printed = first.doubled > 0 && top.bare && ends.low.length === 1 ? [] : top.meanings;
    return [...counted, ...printed].flatMap((high) => optionOf(ends, low, high, count) ?? []);
  });
  const nearest = Math.min(...options.map(({ distance }) => distance));
  const best = options.filter(({ distance }) => distance === nearest).map(({ compass }) => compass);
  const [compass] = best;
  if (!compass || best.some((other) => other.high !== compass.high || other.low !== compass.low)) return null;
  if (first.doubled !== 3 || compass.low !== 24) return compass;
  // "CCC–f1": the upper key says its octave.
  const keys = compass.high - 35 - compass.missing.length;
  if (!top.bare && (keys === count || (keys >= 25 && keys <= 32))) {
    return { low: 36, high: compass.high, missing: compass.missing.map((key) => key + 12) };
  }
  // CCC names the 16' pipe of the lowest pedal key, not a key an octave lower.
  return { low: 36, high: compass.high + 12, missing: compass.missing.map((key) => key + 12) };
}

function lackingKeys(text: string, compass: Compass): Key[] | null {
  const list = text.replace(/ (?:and|und|et|en|e|y) /giu, ", ");
  const { keys, end } = keysFrom(list, 0, usesGermanNames(list));
  if (keys.length === 0 || end !== list.length) return null;
  const found = keys.map((printed) => {
    const lowest = compass.low + ((printed.step - (compass.low % 12) + 12) % 12);
    return printed.bare ? lowest : (printed.meanings[0]?.key ?? lowest);
  });
  return found.every((key) => key > compass.low && key < compass.high) ? found : null;
}

const lacking = (compass: Compass, keys: readonly Key[]): Compass => ({
  ...compass,
  missing: [...new Set([...compass.missing, ...keys])].sort((a, b) => a - b),
});

const shortOctave = ({ low, high, missing }: Compass): Compass => {
  const bottom = low % 12 === 4 ? low - 4 : low;
  return lacking({ low: bottom, high, missing }, shortOctaveGaps(bottom));
};

/** A count below the chromatic one tells of a short octave (four keys) or a lacking low C sharp (one). Common practice. */
function byShortCount(compass: Compass, count: number): Compass {
  if (compass.missing.length > 0 || compass.low % 12 !== 0) return compass;
  const gap = keyCount(compass) - count;
  if (gap === 4) return shortOctave(compass);
  return gap === 1 ? lacking(compass, [compass.low + 1]) : compass;
}

/**
 * Reads a compass in the ways it is printed: `C-g'''`, `C–f1`, `C, D – c3`, `CDEFGA–c'''`, `C/E-c3`, `C2-G6`, `CC-g3`,
 * `FF,GG-a`, `ut1 à sol5`, `Do1-Do5`, `C–c3 without C#`, `E–c3, kurze Oktave`, `UT à SOL, 56 notes`, or only `61 keys`, which
 * count from C2. Keys left out between listed ones are missing; so are those that the stated number leaves out below.
 *
 * `null` when the text is no compass or may be two (`CC-f`: English lists mean any octave by a letter alone).
 */
export function readCompass(text: string): CompassReading | null {
  if (text.length > LONGEST_PRINT) return null;
  let rest = plainKeySigns(text)
    .replace(/[[\]()]/g, " ")
    .replace(/ +/g, " ")
    .trim();
  for (let label = LABEL.exec(rest); label; label = LABEL.exec(rest)) rest = rest.slice(label[0].length);

  const stated = COUNT.exec(rest);
  const count = stated ? Number(stated[1]) : undefined;
  if (stated) rest = rest.replace(stated[0], " ");
  const short = SHORT_OCTAVE.test(rest);
  rest = rest.replace(SHORT_OCTAVE, "");
  const without = WITHOUT.exec(rest)?.[1]?.trim();
  rest = rest.replace(WITHOUT, "");
  rest = rest
    .replace(/ (?:up to|to|TO|bis(?: in?s)?|BIS|à|À|a|al|tot|t\/m|until|till|hasta) /u, "–")
    .replace(/ +/g, " ")
    .replace(/^[ ,;:=]+|[ ,;:.=]+$/g, "");

  if (rest === "") {
    const high = 36 + (count ?? 0) - 1 + (short ? 4 : 0);
    if (count === undefined || without !== undefined || high > HIGHEST) return null;
    const whole = { low: 36, high, missing: [] };
    return { compass: short ? shortOctave(whole) : whole, count };
  }
  const ends = endsOf(rest);
  let compass = ends && bestOption(ends, count);
  if (!compass) return null;
  if (short) compass = shortOctave(compass);
  if (without !== undefined) {
    const keys = lackingKeys(without, compass);
    if (!keys) return null;
    compass = lacking(compass, keys);
  }
  if (count === undefined) return { compass };
  return { compass: byShortCount(compass, count), count };
}
