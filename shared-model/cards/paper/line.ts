import type { Mark, Sign } from "./page.ts";
import { ABOVE, type Face, FRACTION_SIZE, LEADING, type Measure, POINT } from "./type.ts";

/** How a run of text is set off. */
type Look = "plain" | "reversed" | "outlined" | "ringed";

/** Text in one face and size, or a sign as large as such text. */
export interface Run {
  readonly text: string;
  readonly face: Face;
  /** Points. */
  readonly size: number;
  readonly fraction: boolean;
  readonly look: Look;
  readonly sign: Sign | null;
}

/** Runs that are never parted: a stop's last word and its pitch. */
export interface Unit {
  readonly runs: readonly Run[];
  /** Whether it follows the unit before it without a space: what comes after a hyphen. */
  readonly tight: boolean;
}

/** One line of type, its marks measured from its own upper left corner. */
export interface Line {
  readonly height: number;
  readonly marks: readonly Mark[];
}

const plain = (text: string, face: Face, size: number): Run => ({
  text,
  face,
  size,
  fraction: false,
  look: "plain",
  sign: null,
});

/** A sign as tall as the capitals of text of that size, and a little more. */
export const signUnit = (sign: Sign, size: number): Unit => ({
  runs: [{ ...plain("", "serif", size), sign }],
  tight: false,
});

/** Words in a box of their own, white on black or outlined, or a number in a ring. */
export const boxedUnit = (text: string, look: Look, face: Face, size: number): Unit => ({
  runs: [{ ...plain(text, face, size), look }],
  tight: false,
});

/** What stays with the word before it: a pitch, a number, a number of ranks. */
const STAYS = /\s+(?!(?:\d|[IVX]+(?:-[IVX]+)?(?:\s|$)))/u;

/** Behind a hyphen between parts of a word that can stand at the end and the beginning of a line. */
const BEHIND_HYPHEN = /(?<=\p{L}{3}-)(?=\p{L}{3})/u;
/** Between a whole number and its fraction: close together on paper, two words to a reader aloud. */
const BEFORE_FRACTION = /(?<=\d) (?=\d{1,2}\/\d{1,2}(?![\d/]))/gu;
const HAIR_SPACE = "\u200a";
const BROKEN_NUMBER = /(?<![\d/])(\d{1,2}\/\d{1,2})(?![\d/])/u;

/**
 * A text cut where a line may break: between words and behind hyphens. A pitch stays with its stop (`Nasat 2 2/3`), and
 * so do its ranks (`Mixtur IV`); broken numbers become fractions.
 */
export function unitsOf(text: string, face: Face, size: number): readonly Unit[] {
  const runsOf = (piece: string, index: number): readonly Run[] => {
    if (piece === "") return [];
    const run = plain(piece, face, size);
    return index % 2 === 1 ? [{ ...run, size: size * FRACTION_SIZE, fraction: true }] : [run];
  };
  return text
    .trim()
    .split(STAYS)
    .filter((word) => word !== "")
    .flatMap((word) => word.replace(/\s+/gu, " ").split(BEHIND_HYPHEN))
    .map((part, index, all) => ({
      runs: part.replace(BEFORE_FRACTION, HAIR_SPACE).split(BROKEN_NUMBER).flatMap(runsOf),
      tight: /\p{L}{3}-$/u.test(all[index - 1] ?? "") && !part.startsWith("-"),
    }));
}

/** White round boxed words, in parts of the size. */
const PADDING = 0.22;
/** Width of a sign and the white behind it, in parts of the size. */
const SIGN_WIDTH = 0.82;

function runWidth(run: Run, measure: Measure): number {
  const unit = run.size * POINT;
  if (run.sign !== null) return SIGN_WIDTH * unit;
  const text = measure(run.text, run.face, run.size, run.fraction);
  if (run.look === "plain") return text;
  const boxed = text + 2 * PADDING * unit;
  return run.look === "ringed" ? Math.max(boxed, RING * unit) : boxed;
}

/** Width of a unit in millimetres. */
export const unitWidth = (unit: Unit, measure: Measure): number =>
  unit.runs.reduce((sum, run) => sum + runWidth(run, measure), 0);

/** Height of a ring round a number, in parts of the size: never wider than it is tall for a single digit. */
const RING = 1.2;

/** The marks of one run that begins at `x` on the baseline `y`. */
function runMarks(run: Run, x: number, y: number, measure: Measure): readonly Mark[] {
  const unit = run.size * POINT;
  if (run.sign !== null) {
    const size = 0.72 * unit;
    return [{ kind: "sign", sign: run.sign, x, y: y - 0.33 * unit - size / 2, size }];
  }
  const { text, face, size, fraction } = run;
  const width = measure(text, face, size, fraction);
  const set = (left: number): Mark => ({
    kind: "text",
    text,
    face,
    size,
    x: left,
    y,
    width,
    fraction,
    reversed: run.look === "reversed",
  });
  if (run.look === "plain") return [set(x)];
  const all = runWidth(run, measure);
  const height = (run.look === "ringed" ? RING : 1.16) * unit;
  const top = y - 0.33 * unit - height / 2;
  return [
    {
      kind: "frame",
      x,
      y: top,
      width: all,
      height,
      filled: run.look === "reversed",
      round: run.look === "ringed" ? height / 2 : 0.5,
    },
    set(x + (all - width) / 2),
  ];
}

const LETTERS = new Intl.Segmenter("en", { granularity: "grapheme" });

/** Letters of a name that at least stay with its pitch. */
const KEPT = 4;

/** Cuts a unit that is wider than a whole line: no letter is lost, and a hyphen says that the word goes on. */
function cutUnit(unit: Unit, width: number, measure: Measure): readonly Unit[] {
  const { runs, tight } = unit;
  const at = runs.findIndex((run) => run.sign === null && run.look === "plain" && run.text.length > 1);
  const run = runs[at];
  if (!run || unitWidth(unit, measure) <= width) return [unit];
  const letters = [...LETTERS.segment(run.text)].map((each) => each.segment);
  const head = (count: number): Unit => ({
    runs: [...runs.slice(0, at), { ...run, text: `${letters.slice(0, count).join("").trimEnd()}-` }],
    tight,
  });
  // Where a pitch follows, some letters of the name go with it.
  const space = letters.findIndex((letter) => /\s/u.test(letter));
  const end = space < 0 ? letters.length : space;
  let taken = Math.max(1, end < letters.length || at < runs.length - 1 ? end - KEPT : end - 1);
  while (taken > 1 && unitWidth(head(taken), measure) > width) taken -= 1;
  const rest = [{ ...run, text: letters.slice(taken).join("").trimStart() }, ...runs.slice(at + 1)];
  return [head(taken), ...cutUnit({ runs: rest, tight: true }, width, measure)];
}

/** The runs of a line, each with the white before it. Neighbours that look alike become one, so that words stay whole when copied. */
function joinedRuns(units: readonly Unit[], space: number): readonly { readonly run: Run; readonly gap: number }[] {
  const joined: { run: Run; gap: number }[] = [];
  for (const [index, unit] of units.entries()) {
    for (const [at, run] of unit.runs.entries()) {
      const parted = at === 0 && index > 0 && !unit.tight;
      const last = joined.at(-1);
      if (last && looksAlike(last.run, run)) {
        last.run = { ...last.run, text: `${last.run.text}${parted ? " " : ""}${run.text}` };
      } else joined.push({ run, gap: parted ? space : 0 });
    }
  }
  return joined;
}

/** One line from units that fit on it. */
function lineOf(units: readonly Unit[], indent: number, size: number, measure: Measure): Line {
  const unit = size * POINT;
  const baseline = (ABOVE + (LEADING - 1.22) / 2) * unit;
  const marks: Mark[] = [];
  let x = indent;
  for (const { run, gap } of joinedRuns(units, spaceWidth(size, measure))) {
    x += gap;
    marks.push(...runMarks(run, x, baseline, measure));
    x += runWidth(run, measure);
  }
  return { height: LEADING * unit, marks };
}

const looksAlike = (one: Run, other: Run): boolean =>
  isText(one) &&
  isText(other) &&
  one.face === other.face &&
  one.size === other.size &&
  !one.fraction &&
  !other.fraction;

const isText = (run: Run): boolean => run.sign === null && run.look === "plain";

const spaceWidth = (size: number, measure: Measure): number => measure(" ", "serif", size, false);

/** How a paragraph is set. */
export interface Setting {
  /** Millimetres that a line may take. */
  readonly width: number;
  /** Points of the largest text in it, which parts its lines. */
  readonly size: number;
  /** Millimetres that every line but the first is set in. */
  readonly hanging: number;
}

/** Units set in lines, each as full as it can be. A unit wider than a whole line is cut. */
export function linesOf(units: readonly Unit[], setting: Setting, measure: Measure): readonly Line[] {
  const { width, size, hanging } = setting;
  const space = spaceWidth(size, measure);
  const lines: Line[] = [];
  let current: Unit[] = [];
  let filled = 0;
  const indent = (): number => (lines.length === 0 ? 0 : hanging);
  const end = (): void => {
    lines.push(lineOf(current, indent(), size, measure));
    current = [];
  };
  for (const unit of units.flatMap((each) => cutUnit(each, width - hanging, measure))) {
    const needs = unitWidth(unit, measure);
    const gap = unit.tight ? 0 : space;
    if (current.length > 0 && filled + gap + needs > width + 1e-6) end();
    filled = current.length === 0 ? indent() + needs : filled + gap + needs;
    current.push(unit);
  }
  if (current.length > 0) end();
  return lines;
}
