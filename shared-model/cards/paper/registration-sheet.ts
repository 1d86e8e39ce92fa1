import type { CardHand, CueCard } from "../cue-card.ts";
import { BOX_WORDS, OCTAVE_WORDS } from "../cue-card-text.ts";
import { type Band, type Block, columnWidth, type Group } from "./flow.ts";
import { bodyWidth, type Sheet } from "./frame.ts";
import { boxedUnit, signUnit, type Unit } from "./line.ts";
import type { Sign } from "./page.ts";
import type { Size } from "./paper.ts";
import type { Setter } from "./setter.ts";

const SIGN: Readonly<Record<string, Sign>> = {
  "Right hand": "right",
  "Left hand": "left",
  "Both hands": "both",
  Feet: "feet",
};

/** Who plays there: the sign, the words, and an octave that is not the written one. */
function handUnits({ who, what, octave }: CardHand, setter: Setter): readonly Unit[] {
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
function headBlock(name: string, rest: readonly Unit[], width: number, setter: Setter): Block {
  return setter.block([...setter.units(name, "sans-bold", "text"), ...rest], "text", width, {
    tag: "subheading",
    before: 0.24 * setter.em("stop"),
    ruled: 0.2,
  });
}

/** One thing to draw, with what hangs before it and what may be drawn in its place. */
function drawBlocks(lead: readonly Unit[], name: string, or: readonly string[], width: number, setter: Setter): Block {
  const hanging = 0.5 * setter.em("stop");
  const block = setter.block([...lead, ...setter.units(name, "serif-bold", "stop")], "stop", width, {
    tag: "item",
    before: 0.06 * setter.em("stop"),
    hanging,
  });
  const others = or.flatMap((each) =>
    setter.lines(setter.units(`or ${each}`, "serif", "label"), "label", width - hanging, 0).map((line) => ({
      ...line,
      marks: line.marks.map((mark) => (mark.kind === "line" ? mark : { ...mark, x: mark.x + hanging })),
    })),
  );
  return { ...block, lines: [...block.lines, ...others] };
}

/** Keyboards in the card's order: divisions with something drawn, then keyboards that sound by couplers only. */
function divisionGroups(card: CueCard, width: number, setter: Setter): readonly Group[] {
  const handsOn = (name: string): readonly Unit[] =>
    card.hands.filter((hand) => hand.keyboard === name).flatMap((hand) => handUnits(hand, setter));
  const again = setter.units("continued", "sans", "text");
  const group = (name: string, blocks: readonly Block[]): Group => ({
    head: headBlock(name, handsOn(name), width, setter),
    headAgain: headBlock(name, again, width, setter),
    blocks,
  });
  const drawn = card.divisions.map(({ name, stops }) =>
    group(
      name,
      stops.map((stop) => drawBlocks([], stop.name, stop.or, width, setter)),
    ),
  );
  const named = new Set(card.divisions.map((division) => division.name));
  const bare = [...new Set(card.hands.flatMap((hand) => hand.keyboard ?? []))].filter((name) => !named.has(name));
  const nothing = setter.units("nothing drawn", "sans", "text");
  return [...drawn, ...bare.map((name) => group(name, [setter.block(nothing, "text", width, { tag: "item" })]))];
}

/** Couplers, tremulants and boxes: each with a word for what it is. */
function settingsGroup(card: CueCard, width: number, setter: Setter): Group {
  const set = (kind: string, name: string): Block =>
    drawBlocks(setter.units(kind, "sans", "text"), name, [], width, setter);
  const resting = card.hands.filter((hand) => hand.keyboard === null);
  return {
    head: headBlock("Also set", [], width, setter),
    headAgain: headBlock("Also set", setter.units("continued", "sans", "text"), width, setter),
    blocks: [
      ...card.couplers.map((name) => set("couple", name)),
      ...card.unisonOff.map((name) => set("unison off", name)),
      ...card.tremulants.map((name) => set("tremulant", name === "all" ? "the whole organ" : name)),
      ...card.boxes.map(({ name, position }) => set("box", `${name} ${BOX_WORDS[position]}`)),
      ...resting.map((hand) =>
        setter.block([...handUnits(hand, setter), ...setter.units("rest", "sans", "text")], "text", width),
      ),
    ],
  };
}

/** Everything that is drawn at the console: decides how narrow a column may be. */
const drawnNames = (card: CueCard): readonly string[] => [
  ...card.divisions.flatMap((division) => division.stops.map((stop) => stop.name)),
  ...card.couplers,
  ...card.tremulants,
];

/** Narrowest column in em of the stops: two words side by side. */
const LEAST_COLUMN = 7.5;

/** As many columns as fit without cutting a word that is drawn. */
function columnsFor(names: readonly string[], width: number, setter: Setter): number {
  const em = setter.em("stop");
  const widest = setter.widest(names.flatMap((name) => setter.units(name, "serif-bold", "stop"))) + em;
  for (let columns = 4; columns > 1; columns -= 1) {
    const each = columnWidth(width, columns);
    if (each >= LEAST_COLUMN * em && each >= widest) return columns;
  }
  return 1;
}

const weighUnit = (text: string, setter: Setter): Unit => boxedUnit(text, "outlined", "sans-bold", setter.size("text"));

/** What is wrong with a registration, each sentence behind a word for how wrong it is. */
function warningsBand(warnings: CueCard["warnings"], width: number, setter: Setter): Band {
  const size = setter.size("text");
  const blocks = warnings.map(({ severity, text, remedy }) => {
    const label =
      severity === "error" ? boxedUnit("must change", "reversed", "sans-bold", size) : weighUnit("weigh", setter);
    const todo = severity === "error" && remedy !== null ? ` ${remedy}` : "";
    return setter.block([label, ...setter.units(`${text}${todo}`, "sans", "text")], "text", width, { before: 1 });
  });
  return { columns: 1, before: 3, groups: [{ head: null, headAgain: null, blocks }] };
}

/** The sheet of a single registration. */
export function registrationSheet(card: CueCard, size: Size, setter: Setter): Sheet {
  const width = bodyWidth(size);
  const columns = columnsFor(drawnNames(card), width, setter);
  const wide = columnWidth(width, columns);
  const bars = card.bars === null ? "" : /^\d/.test(card.bars) ? `bars ${card.bars}` : card.bars;
  const title = [card.section ?? "", bars].filter((each) => each !== "").join(", ");
  const why = card.why === null ? null : setter.block(setter.units(card.why, "sans", "text"), "text", width);
  const errors = card.warnings.filter((warning) => warning.severity === "error");
  const warnings = card.warnings.filter((warning) => warning.severity === "warning");
  const notice = warnings.length === 0 ? [] : [weighUnit(`weigh ${warnings.length}`, setter)];
  return {
    title: title === "" ? card.label : title,
    corner: null,
    beside: notice,
    label: title === "" ? null : card.label,
    bands: [
      warningsBand(errors, width, setter),
      {
        columns,
        before: 2,
        groups: [...divisionGroups(card, wide, setter), settingsGroup(card, wide, setter)],
      },
      warningsBand(warnings, width, setter),
    ],
    remark: why && { columns: 1, before: 3, groups: [{ head: null, headAgain: null, blocks: [why] }] },
    foot: card.organ,
    next: null,
  };
}
