import type { CardHand, CueCard } from "../cue-card.ts";
import { OCTAVE_WORDS } from "../cue-card-text.ts";
import { type Band, type Block, columnWidth } from "./flow.ts";
import { boxedUnit, signUnit, type Unit } from "./line.ts";
import type { Sign } from "./page.ts";
import type { Setter } from "./setter.ts";
import type { SizeName } from "./type.ts";

const SIGN: Readonly<Record<string, Sign>> = {
  "Right hand": "right",
  "Left hand": "left",
  "Both hands": "both",
  Feet: "feet",
};

/** Who plays there: the sign, the words, and an octave that is not the written one. */
export function handUnits({ who, what, octave }: CardHand, setter: Setter): readonly Unit[] {
  const sign = SIGN[who];
  const words = [who.toLowerCase(), what === null ? "" : `(${what})`].filter((each) => each !== "").join(" ");
  const shifted = OCTAVE_WORDS[octave];
  return [
    ...(sign ? [signUnit(sign, setter.size("text"))] : []),
    ...setter.units(words, "sans", "text"),
    ...(shifted === "" ? [] : setter.units(shifted, "sans-bold", "text")),
  ];
}

/** A head over a column: a name, and what is to be said of it. */
export function headBlock(name: string, rest: readonly Unit[], width: number, setter: Setter): Block {
  return setter.block([...setter.units(name, "sans-bold", "text"), ...rest], "text", width, {
    tag: "subheading",
    before: 0.24 * setter.em("stop"),
    ruled: 0.2,
  });
}

/** One thing to draw, with what hangs before it and what may be drawn in its place. */
export function drawBlock(
  lead: readonly Unit[],
  name: string,
  or: readonly string[],
  width: number,
  setter: Setter,
  size: SizeName,
): Block {
  const hanging = 0.5 * setter.em(size);
  const block = setter.block([...lead, ...setter.units(name, "serif-bold", size)], size, width, {
    tag: "item",
    before: 0.06 * setter.em(size),
    hanging,
  });
  const others = or.flatMap((each) =>
    setter.lines(setter.units(`or ${each}`, "serif", "label"), "label", width - hanging, 0).map((line) => ({
      ...line,
      marks: line.marks.map((mark) => ("points" in mark ? mark : { ...mark, x: mark.x + hanging })),
    })),
  );
  return { ...block, lines: [...block.lines, ...others] };
}

/** Narrowest column in em of the stops: two words side by side. */
const LEAST_COLUMN = 7.5;

/** As many columns as fit without cutting a word that is drawn. */
export function columnsFor(names: readonly string[], width: number, setter: Setter): number {
  const em = setter.em("stop");
  const widest = setter.widest(names.flatMap((name) => setter.units(name, "serif-bold", "stop"))) + em;
  for (let columns = 4; columns > 1; columns -= 1) {
    const each = columnWidth(width, columns);
    if (each >= LEAST_COLUMN * em && each >= widest) return columns;
  }
  return 1;
}

export const weighUnit = (text: string, setter: Setter): Unit =>
  boxedUnit(text, "outlined", "sans-bold", setter.size("text"));

/** What is wrong with a registration, each sentence behind a word for how wrong it is. */
export function warningsBand(warnings: CueCard["warnings"], width: number, setter: Setter): Band {
  const size = setter.size("text");
  const blocks = warnings.map(({ severity, text, remedy }) => {
    const label =
      severity === "error" ? boxedUnit("must change", "reversed", "sans-bold", size) : weighUnit("weigh", setter);
    const todo = severity === "error" && remedy !== null ? ` ${remedy}` : "";
    return setter.block([label, ...setter.units(`${text}${todo}`, "sans", "text")], "text", width, { before: 1 });
  });
  return { columns: 1, before: 3, groups: [{ head: null, headAgain: null, blocks }] };
}
