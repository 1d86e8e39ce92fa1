import { type Foot, footOf } from "../../pitch/foot.ts";
import { isUsualPitch, oldRounding, readPitch } from "../../pitch/reading.ts";

/** A length found in a line. */
export interface PitchMark {
  readonly start: number;
  readonly end: number;
  /** As printed, without the foot mark. */
  readonly printed: string;
  /** As printed, old roundings and all; `null` when the print can mean several lengths. */
  readonly foot: Foot | null;
  /** What it may mean when in doubt, likeliest first. */
  readonly choices: readonly Foot[];
  /** Whether a foot mark, a word for feet or a fraction says that it is a length at all. */
  readonly sure: boolean;
  /** The foot mark or word for feet as printed, empty when there is none. */
  readonly sign: string;
}

const VULGAR = "[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑]";
const RAISED = "[⁰¹²³⁴-⁹]{1,2}[⁄/∕][₀-₉\\d]{1,2}";
const FRACTION = `(?:${VULGAR}|${RAISED}|\\d{1,3} ?[/⁄∕] ?\\d{1,2}(?![\\d/]))`;
const SINGLE = "['’‘‛′`´ʹʼˈ＇]";
const DOUBLE = `(?:${SINGLE}{2}(?!${SINGLE})|["”“″〞])`;
/** Words for feet, and their abbreviations where a blank, a stop or the end follows. Common practice. */
const WORD =
  "(?:f(?:u|ue|ü)(?:ß|ss)(?:e|es|en|ig|iger|ige|iges)?|f(?:u|ue)s(?=\\b)|feet|foot|ft|voets?|vt|pieds?|pied[ei]|pies?|pds?|fots?|fod|stóp|pedum|pedes|ped\\." +
  "|pi(?=[.\\s,;)]|$)|(?:F|v|V|p|P)(?=[.\\s,;)\\]]|$))";
const MARK = `(?:${SINGLE}(?!${SINGLE})| ?[-–]?${WORD}(?![a-zäöüß])\\.?)`;
const PALMS = " ?(?:palmos|palms|palmi)\\b\\.?";

const FORMS = [
  `\\d{1,2}${MARK} ?(?:et |und |en )?\\d{1,2} ?/ ?\\d{1,2}(?![\\d/])`,
  `\\d{1,2}(?: ?[-–.+] ?| )?${FRACTION}`,
  FRACTION,
  "\\d{1,2}[.,]\\d{1,3}(?!\\d)",
  "\\d{1,2}(?!\\d)",
].join("|");
const PITCH = new RegExp(`(${FORMS})(${PALMS}|${DOUBLE}|${MARK})?`, "iuy");
const MARK_ONLY = new RegExp(`${MARK}$`, "u");

/** Things that are counted beside stops: a number before one of them is no length. Common practice. */
const COUNTED =
  /^(?:[ -]?(?:(?:pipes?|notes?|tones?|keys|stops?|registers?|voices?|stimmen|stemmen|jeux|registri|registros|touches|marches|tasti|teclas|toetsen|tasten|töne|noten|ranks?|rks?|rangs?|rgs?|fach|file|hileras|mm|cm|hz)(?![\p{L}])|manual|klaviat|clavi|piston|general|divisional|%)|(?:th|st|nd|rd|ter|tes|te|e|me|er|re|va)\b|ème|ère|[ºª°])/iu;

const WHOLE_FEET = new Set([1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 64]);

/** Lengths as they stand, without the inches and lost blanks that a reader would ask about. */
function settle(printed: string): Pick<PitchMark, "foot" | "choices"> | null {
  const reading = readPitch(printed);
  if (reading.foot) return { foot: reading.foot, choices: [] };
  return reading.doubt.choices.length > 0 ? { foot: null, choices: reading.doubt.choices } : null;
}

/**
 * The length that begins at `at`, or `null`. Whole numbers without a mark count when organs have stops of that many feet;
 * such a one is not sure, since stops and pages are numbered too.
 */
export function pitchAt(text: string, at: number): PitchMark | null {
  PITCH.lastIndex = at;
  const match = PITCH.exec(text);
  if (!match) return null;
  let [, printed = "", mark = ""] = match;
  const inside = MARK_ONLY.exec(printed);
  const end = at + match[0].length;
  if (mark === "" && /^[a-zäöü]/i.test(text.slice(end, end + 1)) && !/[½-⅞⅐⅑]$/u.test(printed)) return null;
  if (mark === "" && COUNTED.test(text.slice(end, end + 12))) return null;
  // "8 Contras" counts pedal pipes or keys; "16 Contras" is their length.
  if (mark === "" && printed !== "16" && /^ contras(?![\p{L}])/iu.test(text.slice(end, end + 12))) return null;
  if (mark.trim() !== "" && /palm/i.test(mark)) printed += mark;
  const whole = /^\d+$/.test(printed) ? Number(printed) : null;
  const decimal = /^\d+[.,]\d+$/.test(printed);
  if (whole === 0) return null;
  if (mark === "" && whole !== null && !WHOLE_FEET.has(whole)) return null;
  const settled = settle(printed.replace(/\+/g, " "));
  if (!settled) return null;
  const known = settled.foot && (isUsualPitch(settled.foot) || oldRounding(settled.foot));
  if (decimal && !known) return null;
  const mixed = /\d\D+\d+ ?\//.test(printed);
  if (mark === "" && whole === null && !mixed && !known && settled.choices.length === 0) return null;
  const printedOnly = inside ? printed : printed.trim();
  return {
    start: at,
    end,
    printed: printedOnly,
    ...settled,
    sure: mark !== "" || (whole === null && !decimal) || decimal,
    sign: mark.trim(),
  };
}

const step = (over: number, under = 1): Foot => footOf(over, under);
/** Steps above an 8' that English lists print for the ranks of a compound (`15.19.22`), with their lengths. Common practice. */
const INTERVALS: ReadonlyMap<number, Foot> = new Map([
  [1, step(8)],
  [5, step(16, 3)],
  [8, step(4)],
  [10, step(16, 5)],
  [12, step(8, 3)],
  [15, step(2)],
  [17, step(8, 5)],
  [19, step(4, 3)],
  [21, step(8, 7)],
  [22, step(1)],
  [24, step(4, 5)],
  [26, step(2, 3)],
  [28, step(4, 7)],
  [29, step(1, 2)],
  [31, step(2, 5)],
  [33, step(1, 3)],
  [36, step(1, 4)],
]);
const STEPS =
  /\d{1,2}(?:(?:st|nd|rd|th)?(?:[.·•]| ?[-–,&] ?| )\d{1,2}(?:st|nd|rd|th)?){1,7}(?![\d'’′/½-⅞]| ?(?:ft|feet|foot|fu[ßs]|vt|voet|pied|p\.))/y;

/** Ranks printed as steps above the base (`12.15`, `19-22-26`). */
export interface StepsMark {
  readonly end: number;
  readonly composition: readonly Foot[];
}

/** The row of steps that begins at `at`, or `null`: at least two, rising, none of them possible as a row of lengths. */
export function stepsAt(text: string, at: number): StepsMark | null {
  STEPS.lastIndex = at;
  const match = STEPS.exec(text);
  if (!match) return null;
  const steps = (match[0].match(/\d+/g) ?? []).map(Number);
  const feet = steps.map((one) => INTERVALS.get(one));
  if (feet.some((one) => one === undefined)) return null;
  if (steps.some((one, index) => index > 0 && one <= (steps[index - 1] as number))) return null;
  if (!steps.some((one) => one >= 15)) return null;
  // "1.33" is a decimal figure.
  if (steps.length === 2 && steps[0] === 1) return null;
  return { end: at + match[0].length, composition: feet as Foot[] };
}
