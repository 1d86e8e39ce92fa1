import type { RegistrationDrawing } from "../../pictures/registration-picture.ts";
import type { Shape, Words } from "../../pictures/shapes.ts";
import type { Mark, Page } from "./page.ts";
import { MARGIN, type Paper, sizeOf } from "./paper.ts";
import { type Face, type Measure, POINT } from "./type.ts";

/** Share of its length at which a line of type stands on its point. */
const ANCHOR = { start: 0, middle: 0.5, end: 1 } as const;

/** The page on which a registration is drawn, lying across: a page of its own, to be studied at home. */
export function picturePage(drawing: RegistrationDrawing, paper: Paper, measure: Measure): Page {
  const { width, height } = sizeOf(paper, "wide");
  const scale = Math.min((width - 2 * MARGIN) / drawing.width, (height - 2 * MARGIN) / drawing.height);
  const left = (width - scale * drawing.width) / 2;
  const place = ([x, y]: readonly [number, number]): readonly [number, number] => [
    left + scale * x,
    MARGIN + scale * y,
  ];

  const set = (said: Words): Mark => {
    const face: Face = said.bold ? "serif-bold" : "serif";
    const size = (scale * said.size) / POINT;
    const length = measure(said.text, face, size, false);
    const [x, y] = place([said.x, said.y]);
    const start = x - ANCHOR[said.anchor] * length;
    return { kind: "text", text: said.text, face, size, x: start, y, width: length, fraction: false, reversed: false };
  };
  const marked = (shape: Shape): Mark => {
    if (shape.kind === "words") return set(shape);
    const [points, weight] = [shape.points.map(place), scale * shape.weight];
    if (shape.kind === "area") return { kind: "area", points, fill: shape.fill, weight };
    const dashes = shape.dashes.map((each) => scale * each);
    return { kind: "line", points, weight, ...(dashes.length > 0 && { dashes }) };
  };
  return {
    width,
    height,
    blocks: drawing.read.map((said, at) => ({ tag: at === 0 ? "heading" : "paragraph", marks: [set(said)] })),
    ornaments: drawing.shapes.map(marked),
  };
}
