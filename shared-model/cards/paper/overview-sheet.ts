import { type ChangeCard, type PieceCards, pressWords, type TimeLineSection } from "../piece-card.ts";
import type { Band, Block } from "./flow.ts";
import { bodyWidth, type Sheet } from "./frame.ts";
import type { Line } from "./line.ts";
import { type Mark, moved } from "./page.ts";
import type { Size } from "./paper.ts";
import type { Setter } from "./setter.ts";

/** Height of the curve in millimetres between the softest and the loudest section. */
const CURVE = 16;
/** Thickness of its line. */
const WEIGHT = 0.8;

/** The piece from left to right: a line as high as it is loud, and the number of each change where there is room for it. */
function timeLine(sections: readonly TimeLineSection[], width: number, setter: Setter): Line {
  const all = sections.reduce((sum, section) => sum + section.length, 0);
  const foot = CURVE + 2;
  const text = 1.25 * setter.em("text");
  const marks: Mark[] = [];
  const points: [number, number][] = [];
  let [x, free] = [0, 0];
  for (const { number, length, level } of sections) {
    const end = x + (length / all) * width;
    const y = WEIGHT + (1 - level) * (CURVE - 2 * WEIGHT);
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

/** One row of the list: number, bars, what sounds, and how it is reached; `brief`: without the sound of a named section. */
function rowBlock(card: ChangeCard, brief: boolean, width: number, setter: Setter): Block {
  const sounds = [card.section, brief && card.section !== null ? null : card.state.label]
    .filter((each) => each !== null)
    .join(": ");
  const reached = [...card.presses.map(pressWords), card.verdict?.words ?? null];
  const said = reached.filter((each) => each !== null).join(", ");
  return setter.block(
    [
      ...setter.units(String(card.number), "serif-bold", "text"),
      ...(card.where === null ? [] : setter.units(`${card.where}:`, "sans", "text")),
      ...(card.dynamic === null ? [] : setter.units(card.dynamic, "dynamic", "text")),
      ...setter.units(sounds, "serif", "text"),
      ...(said === "" ? [] : setter.units(`(${said})`, "sans", "text")),
    ],
    "text",
    width,
    { tag: "item", before: 0.8, hanging: 1.6 * setter.em("text") },
  );
}

/** The whole piece on a page: how loud it is from beginning to end, and its changes in a list. */
export function overviewSheet(
  { changes, timeLine: sections, piece, organ }: PieceCards,
  size: Size,
  setter: Setter,
): Sheet {
  const width = bodyWidth(size);
  const curve: Block = {
    tag: "paragraph",
    lines: [timeLine(sections, width, setter)],
    before: 0,
    ruled: null,
  };
  const alone = (blocks: readonly Block[], before: number): Band => ({
    columns: 1,
    before,
    groups: [{ head: null, headAgain: null, blocks }],
  });
  const sheet = (brief: boolean): Sheet => ({
    title: piece,
    corner: null,
    beside: [],
    label: null,
    bands: [
      ...(sections.length < 2 ? [] : [alone([curve], 0)]),
      alone(
        changes.map((card) => rowBlock(card, brief, width, setter)),
        1.5,
      ),
    ],
    remark: null,
    foot: organ,
    next: null,
  });
  return { ...sheet(false), tighter: sheet(true) };
}
