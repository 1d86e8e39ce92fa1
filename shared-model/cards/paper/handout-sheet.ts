import type { Handout, HandoutItem } from "../handout.ts";
import { type Block, columnWidth } from "./flow.ts";
import { bodyWidth, type Sheet } from "./frame.ts";
import type { Line } from "./line.ts";
import type { Size } from "./paper.ts";
import type { Setter } from "./setter.ts";

/** From this width in millimetres on there are two columns. */
const TWO_COLUMNS = 160;
/** From one line to the next of those that are written on: enough for a pencil. */
const WRITTEN = 7.5;
const HAIR = 0.2;

const writingLine = (width: number): Line => ({
  height: WRITTEN,
  marks: [{ kind: "rule", x: 0, y: WRITTEN - HAIR, width, height: HAIR }],
});

function itemBlock({ lead, text, white }: HandoutItem, width: number, setter: Setter): Block {
  const units = [
    ...(lead === null ? [] : setter.units(lead, "sans-bold", "text")),
    ...setter.units(text, "serif", "text"),
  ];
  const block = setter.block(units, "text", width, { tag: "item", before: 0.3 * setter.em("text") });
  return { ...block, lines: [...block.lines, ...Array.from({ length: white }, () => writingLine(width))] };
}

/** The sheet of a handout: its parts under their heads, in two columns where the paper is wide enough. */
export function handoutSheet({ title, label, parts, foot }: Handout, size: Size, setter: Setter): Sheet {
  const width = bodyWidth(size);
  const columns = width >= TWO_COLUMNS ? 2 : 1;
  const wide = columnWidth(width, columns);
  const head = (text: string): Block =>
    setter.block(setter.units(text, "sans-bold", "label"), "label", wide, {
      tag: "subheading",
      before: 0.7 * setter.em("label"),
      ruled: 0.2,
    });
  return {
    title,
    corner: null,
    beside: [],
    label,
    bands: [
      {
        columns,
        before: 0,
        groups: parts.map((part) => ({
          head: head(part.head),
          headAgain: head(part.head),
          blocks: part.items.map((item) => itemBlock(item, wide, setter)),
        })),
      },
    ],
    remark: null,
    foot,
    next: null,
  };
}
