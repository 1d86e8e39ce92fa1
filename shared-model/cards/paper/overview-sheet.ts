import { type ChangeCard, type PieceCards, pressWords, type TimeLineSection } from "../piece-card.ts";
import { type Band, type Block, columnWidth } from "./flow.ts";
import { bodyWidth, type Sheet } from "./frame.ts";
import type { Line } from "./line.ts";
import { type Mark, moved } from "./page.ts";
import type { Size } from "./paper.ts";
import type { Setter } from "./setter.ts";

/** Height of the curve between the softest and the loudest section, in parts of the size of text: 16 mm at the desk's. */
const CURVE = 3;
/** Thickness of its line. */
const WEIGHT = 0.8;

/** The piece from left to right: a line as high as it is loud, and the number of each change where there is room for it. */
function timeLine(sections: readonly TimeLineSection[], width: number, setter: Setter): Line {
  const all = sections.reduce((sum, section) => sum + section.length, 0);
  const curve = CURVE * setter.em("text");
  const foot = curve + 2;
  const text = 1.25 * setter.em("text");
  const marks: Mark[] = [];
  const points: [number, number][] = [];
  let [x, free] = [0, 0];
  for (const { number, length, level } of sections) {
    const end = x + (length / all) * width;
    const y = WEIGHT + (1 - level) * (curve - 2 * WEIGHT);
    points.push([x, y], [end, y]);
    marks.push({ kind: "rule", x, y: foot, width: 0.25, height: 1.5 });
    const [label] = setter.lines(setter.units(String(number), "sans", "text"), "text", width);
    const wide = Math.max(0, ...(label?.marks ?? []).map((mark) => ("width" in mark ? mark.width : 0)));
    // Numbers that would meet are left out: the list below has them all.
    if (label && x >= free && x + wide <= width) {
      marks.push(...label.marks.map((mark) => moved(mark, x, foot + 1)));
      free = x + wide + 1.5;
    }
    x = end;
  }
  marks.push({ kind: "line", points, weight: WEIGHT }, { kind: "rule", x: 0, y: foot, width, height: 0.25 });
  return { height: foot + 1 + text, marks };
}

/**
 * How much an overview says of a change: all; not the sound of a section that has a name; a section that grows in one row;
 * nothing but number, bars and name.
 */
export type Density = "all" | "named" | "grown" | "bare";

/** How an overview is set. */
export interface OverviewForm {
  readonly density: Density;
  readonly columns: number;
}

/** Changes that stand in one row of the list: one, or all of a section that grows. */
type Row = readonly [ChangeCard, ...ChangeCard[]];

function rowsOf({ changes, timeLine: sections }: PieceCards, density: Density): readonly Row[] {
  if (density === "all" || density === "named") return changes.map((card): Row => [card]);
  const rows: ChangeCard[][] = [];
  for (const [at, card] of changes.entries()) {
    const goesOn = at > 0 && sections[at]?.section === sections[at - 1]?.section;
    if (goesOn) rows.at(-1)?.push(card);
    else rows.push([card]);
  }
  return rows as unknown as readonly Row[];
}

/** How the changes of a row go: `easy`, `10 changes, 8 need help`. */
function verdictsIn(row: Row): string | null {
  const [first] = row;
  if (row.length === 1) return first.verdict?.words ?? null;
  const hard = row.filter((card) => card.verdict?.loud).length;
  return `${row.length} changes${hard > 0 ? `, ${hard} need help` : ""}`;
}

/** One row of the list: number, bars, what sounds, and how it is reached. */
function rowBlock(row: Row, density: Density, width: number, setter: Setter): Block {
  const [card] = row;
  const last = row.at(-1) as ChangeCard;
  const isNamed = density !== "all" && card.section !== null;
  const sounds = [card.section, isNamed ? null : card.state.label].filter((each) => each !== null).join(": ");
  const reached = row.length === 1 ? card.presses.map(pressWords) : [];
  const said = density === "bare" ? "" : [...reached, verdictsIn(row)].filter((each) => each !== null).join(", ");
  const number = last === card ? String(card.number) : `${card.number}–${last.number}`;
  const where = density === "bare" ? (card.where?.replace(/^bars? /, "") ?? null) : card.where;
  return setter.block(
    [
      ...setter.units(number, "serif-bold", "text"),
      ...(where === null ? [] : setter.units(`${where}:`, "sans", "text")),
      ...(card.dynamic === null ? [] : setter.units(card.dynamic, "dynamic", "text")),
      ...setter.units(sounds, "serif", "text"),
      ...(said === "" ? [] : setter.units(`(${said})`, "sans", "text")),
    ],
    "text",
    width,
    { tag: "item", before: 0.15 * setter.em("text"), hanging: (density === "bare" ? 0.8 : 1.6) * setter.em("text") },
  );
}

/** The whole piece: how loud it is from beginning to end, and its changes in a list. */
export function overviewSheet(cards: PieceCards, form: OverviewForm, size: Size, setter: Setter): Sheet {
  const { timeLine: sections, piece, organ } = cards;
  const { density, columns } = form;
  const width = bodyWidth(size);
  const curve: Block = {
    tag: "paragraph",
    lines: [timeLine(sections, width, setter)],
    before: 0,
    ruled: null,
  };
  const wide = columnWidth(width, columns);
  const band = (count: number, blocks: readonly Block[], before: number): Band => ({
    columns: count,
    before,
    groups: [{ head: null, headAgain: null, blocks }],
  });
  return {
    title: piece,
    corner: null,
    beside: [],
    label: null,
    bands: [
      ...(sections.length < 2 ? [] : [band(1, [curve], 0)]),
      band(
        columns,
        rowsOf(cards, density).map((row) => rowBlock(row, density, wide, setter)),
        1.5,
      ),
    ],
    remark: null,
    foot: organ,
    next: null,
  };
}
