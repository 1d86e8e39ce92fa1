import type { Block } from "./flow.ts";
import { type Line, linesOf, type Unit, unitsOf, unitWidth } from "./line.ts";
import type { Tag } from "./page.ts";
import { type Face, type Measure, POINT, SIZES, type SizeName } from "./type.ts";

/** How a block of text is set; left out is set plainly. */
export interface BlockForm {
  readonly tag?: Tag;
  /** Millimetres of white above. */
  readonly before?: number;
  /** Millimetres that lines after the first are set in. */
  readonly hanging?: number;
  readonly ruled?: number;
}

/** Sets text at one enlargement, with one measure. */
export interface Setter {
  readonly measure: Measure;
  /** Points. */
  size(name: SizeName): number;
  /** Millimetres of one em of that size. */
  em(name: SizeName): number;
  units(text: string, face: Face, name: SizeName): readonly Unit[];
  /** Lines of a mixture of units; `name` is the size that parts its lines. */
  lines(units: readonly Unit[], name: SizeName, width: number, hanging?: number): readonly Line[];
  block(units: readonly Unit[], name: SizeName, width: number, form?: BlockForm): Block;
  /** The widest unit in millimetres; 0 without any. */
  widest(units: readonly Unit[]): number;
}

export function setterAt(scale: number, measure: Measure): Setter {
  const size = (name: SizeName): number => SIZES[name] * scale;
  const lines: Setter["lines"] = (units, name, width, hanging = 0) =>
    linesOf(units, { width, size: size(name), hanging }, measure);
  return {
    measure,
    size,
    em: (name) => size(name) * POINT,
    units: (text, face, name) => unitsOf(text, face, size(name)),
    lines,
    block: (units, name, width, { tag = "paragraph", before = 0, hanging = 0, ruled } = {}) => ({
      tag,
      lines: lines(units, name, width, hanging),
      before,
      ruled: ruled ?? null,
    }),
    widest: (units) => Math.max(0, ...units.map((unit) => unitWidth(unit, measure))),
  };
}
