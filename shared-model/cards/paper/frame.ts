import { type Band, type Body, bodiesOf } from "./flow.ts";
import { boxedUnit, type Line, type Unit, unitsOf, unitWidth } from "./line.ts";
import { type Mark, moved, type Page, type PageBlock } from "./page.ts";
import { MARGIN, type Size } from "./paper.ts";
import type { Setter } from "./setter.ts";
import type { SizeName } from "./type.ts";

/** What stands on one card, which may take several pages. */
export interface Sheet {
  /** Large, at the upper left. */
  readonly title: string;
  /** A mark at the upper right: how loud it is. */
  readonly corner: string | null;
  /** In the middle between them, behind the title: when it is needed, who is needed. */
  readonly beside: readonly Unit[];
  /** Under the title; `null` without. */
  readonly label: string | null;
  /** In the order of reading, set to the width of the body. */
  readonly bands: readonly Band[];
  /** What may be left out where it would cost a page. */
  readonly remark: Band | null;
  /** At the foot, left: shortened where the line is full. */
  readonly foot: string;
  /** At the foot, right. */
  readonly next: string | null;
  /** The same in less room: taken where it saves a page. */
  readonly tighter?: Sheet;
}

const HEAVY = 0.9;
const HAIR = 0.25;

/** The room between the margins. */
export const bodyWidth = ({ width }: Size): number => width - 2 * MARGIN;

/** The head of a page: its blocks, and how many millimetres it takes with its rule. */
interface Head {
  readonly blocks: readonly PageBlock[];
  readonly height: number;
}

function stacked(lines: readonly Line[], top: number, tag: PageBlock["tag"]): { block: PageBlock; bottom: number } {
  const marks: Mark[] = [];
  let y = top;
  for (const line of lines) {
    marks.push(...line.marks.map((mark) => moved(mark, MARGIN, y)));
    y += line.height;
  }
  return { block: { tag, marks }, bottom: y };
}

/** At most so many lines of a text; where there are more, the last ends in an ellipsis. */
function cappedLines(text: string, most: number, set: (text: string) => readonly Line[]): readonly Line[] {
  const lines = set(text);
  if (lines.length <= most) return lines;
  let [low, high] = [0, text.length];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (set(`${text.slice(0, middle).trimEnd()}…`).length <= most) low = middle;
    else high = middle;
  }
  return set(`${text.slice(0, low).trimEnd()}…`);
}

/** How many lines a head may take. */
interface Caps {
  readonly title: number;
  readonly label: number;
}
/** Tried in this order until the head leaves room for what it heads. */
const CAPS: readonly Caps[] = [
  { title: 3, label: 3 },
  { title: 2, label: 1 },
  { title: 1, label: 1 },
];
/** The part of a page's height that a head may take. */
const MOST_HEAD = 0.42;

/** The title in the largest size in which it takes one line, or two of the next sizes, else cut off in the smallest. */
function plainTitle(
  title: string,
  width: number,
  most: number,
  setter: Setter,
): { lines: readonly Line[]; name: SizeName } {
  const set = (name: SizeName, text: string): readonly Line[] =>
    setter.lines(setter.units(text, "serif-bold", name), name, width);
  for (const name of ["title", "stop", "label"] as const) {
    const lines = set(name, title);
    if (lines.length <= (name === "title" ? 1 : Math.min(2, most))) return { lines, name };
  }
  return { lines: cappedLines(title, most, (text) => set("text", text)), name: "text" };
}

/** The title, and beside it what goes on its line; the rest on lines of their own. */
function titleLines({ title, beside }: Sheet, width: number, most: number, setter: Setter): readonly Line[] {
  const { lines, name } = plainTitle(title, width, most, setter);
  if (lines.length > 1 || name === "text") return [...lines, ...setter.lines(beside, "label", width)];
  const units = setter.units(title, "serif-bold", name);
  const together = (count: number): readonly Line[] => setter.lines([...units, ...beside.slice(0, count)], name, width);
  let count = beside.length;
  while (count > 0 && together(count).length > 1) count -= 1;
  return [...together(count), ...setter.lines(beside.slice(count), "label", width)];
}

function labelLines(label: string, width: number, most: number, setter: Setter): readonly Line[] {
  const large = setter.lines(setter.units(label, "serif", "label"), "label", width);
  if (large.length <= Math.min(2, most)) return large;
  return cappedLines(label, most, (text) => setter.lines(setter.units(text, "serif", "text"), "text", width));
}

function headWith(sheet: Sheet, size: Size, caps: Caps, setter: Setter): Head {
  const width = bodyWidth(size);
  const corner = sheet.corner === null ? null : unitsOf(sheet.corner, "dynamic", setter.size("title"));
  const wide = corner ? corner.reduce((sum, unit) => sum + unitWidth(unit, setter.measure), 0) + 3 : 0;
  const title = stacked(titleLines(sheet, width - wide, caps.title, setter), MARGIN, "heading");
  const blocks: PageBlock[] = [title.block];
  let bottom = title.bottom;
  if (corner) {
    const line = setter.lines(corner, "title", wide + 1)[0];
    const marks = (line?.marks ?? []).map((mark) => moved(mark, size.width - MARGIN - wide + 3, MARGIN));
    blocks.push({ tag: "paragraph", marks });
    bottom = Math.max(bottom, MARGIN + (line?.height ?? 0));
  }
  if (sheet.label !== null) {
    const label = stacked(labelLines(sheet.label, width, caps.label, setter), bottom, "paragraph");
    blocks.push(label.block);
    bottom = label.bottom;
  }
  return { blocks, height: bottom - MARGIN + HEAVY + 2.5 };
}

function firstHead(sheet: Sheet, size: Size, setter: Setter): Head {
  const heads = CAPS.map((caps) => headWith(sheet, size, caps, setter));
  return heads.find((head) => head.height <= MOST_HEAD * size.height) ?? (heads.at(-1) as Head);
}

/** The head of a page on which a card goes on. */
function laterHead(sheet: Sheet, size: Size, setter: Setter): Head {
  const width = bodyWidth(size);
  const mark = boxedUnit("continued", "reversed", "sans-bold", setter.size("text"));
  const set = (text: string): readonly Line[] =>
    setter.lines([...setter.units(text, "serif-bold", "label"), mark], "label", width);
  const title = stacked(cappedLines(sheet.title, 2, set), MARGIN, "heading");
  return { blocks: [title.block], height: title.bottom - MARGIN + HEAVY + 2.5 };
}

/** The last line of a page: what it belongs to at the left, where it goes on at the right. */
function footOf(sheet: Sheet, size: Size, at: number, of: number, setter: Setter): PageBlock {
  const width = bodyWidth(size);
  const pages = of > 1 ? setter.units(`${at} of ${of}`, "sans", "text") : [];
  const set = (units: readonly Unit[]): readonly Line[] => setter.lines([...pages, ...units], "text", width);
  const right =
    at < of
      ? set([boxedUnit("goes on", "reversed", "sans-bold", setter.size("text"))])
      : cappedLines(sheet.next ?? "", 1, (text) => set(setter.units(text, "sans-bold", "text")));
  const marks = right[0]?.marks ?? [];
  const top = size.height - MARGIN - 1.25 * setter.em("text");
  const end = Math.max(0, ...marks.map((mark) => ("width" in mark ? mark.x + mark.width : 0)));
  const left = width - end - 4;
  const foot = (text: string): readonly Line[] => setter.lines(setter.units(text, "sans", "text"), "text", left);
  const words = left > 15 ? (cappedLines(sheet.foot, 1, foot)[0]?.marks ?? []) : [];
  return {
    tag: "paragraph",
    marks: [
      ...words.map((mark) => moved(mark, MARGIN, top)),
      ...marks.map((mark) => moved(mark, size.width - MARGIN - end, top)),
    ],
  };
}

/** A card on its pages. */
export interface Framed {
  readonly pages: readonly Page[];
  /** Whether the remark had to be left out, or the sheet be set in less room. */
  readonly short: boolean;
}

/**
 * One card on as many pages as it needs. The page says where it goes on, and a strip above its foot stays white.
 *
 * @param pencil millimetres of that strip.
 */
export function framed(sheet: Sheet, size: Size, pencil: number, setter: Setter): Framed {
  const roomy = framedAsIs(sheet, size, pencil, setter);
  if (!sheet.tighter || roomy.pages.length === 1) return roomy;
  const tight = framedAsIs(sheet.tighter, size, pencil, setter);
  return tight.pages.length < roomy.pages.length ? { ...tight, short: true } : roomy;
}

function framedAsIs(sheet: Sheet, size: Size, pencil: number, setter: Setter): Framed {
  const width = bodyWidth(size);
  const foot = 1.25 * setter.em("text") + HAIR + 1;
  const head = firstHead(sheet, size, setter);
  const later = laterHead(sheet, size, setter);
  const under = (top: Head): number => size.height - 2 * MARGIN - top.height - foot - pencil;
  const set = (bands: readonly Band[]): readonly Body[] => bodiesOf(bands, width, under(head), under(later));
  const plain = set(sheet.bands);
  const remarked = sheet.remark ? set([...sheet.bands, sheet.remark]) : plain;
  const short = remarked.length > plain.length;
  const bodies: readonly Body[] = short ? plain : remarked;
  const pages = bodies.map((body, index) => {
    const top = index === 0 ? head : later;
    const down = MARGIN + top.height;
    const heavy: Mark = { kind: "rule", x: MARGIN, y: down - 2.5 - HEAVY / 2, width, height: HEAVY };
    const hair: Mark = { kind: "rule", x: MARGIN, y: size.height - MARGIN - foot, width, height: HAIR };
    return {
      width: size.width,
      height: size.height,
      blocks: [
        ...top.blocks,
        ...body.blocks.map(({ tag, marks }) => ({ tag, marks: marks.map((mark) => moved(mark, MARGIN, down)) })),
        footOf(sheet, size, index + 1, bodies.length, setter),
      ],
      ornaments: [heavy, ...body.ornaments.map((mark) => moved(mark, MARGIN, down)), hair],
    };
  });
  return { pages, short };
}
