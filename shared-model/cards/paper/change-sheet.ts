import { BOX_WORDS } from "../cue-card-text.ts";
import { type CardMove, type CardPress, type CardTask, type ChangeCard, STAYS, WORKER_WORDS } from "../piece-card.ts";
import { columnsFor, handUnits, headBlock, warningsBand } from "./card-blocks.ts";
import { type Band, type Block, columnWidth, type Group } from "./flow.ts";
import { bodyWidth, type Sheet } from "./frame.ts";
import { boxedUnit, signUnit, type Unit } from "./line.ts";
import type { Size } from "./paper.ts";
import type { Setter } from "./setter.ts";
import { drawnNames, stateGroups } from "./state-groups.ts";

const LEAD: Readonly<Record<CardMove["act"], string>> = { draw: "+", cancel: "−", set: "→" };

/** What is moved, behind its sign: what is drawn is bold, what goes in is light. */
function moveBlock({ act, what, name }: CardMove, width: number, setter: Setter): Block {
  const face = act === "cancel" ? "serif" : "serif-bold";
  const caption = what === null ? [] : setter.units(what, "sans", "text");
  return setter.block(
    [...setter.units(LEAD[act], "sans-bold", "stop"), ...caption, ...setter.units(name, face, "stop")],
    "stop",
    width,
    { tag: "item", before: 0.06 * setter.em("stop"), hanging: 0.75 * setter.em("stop") },
  );
}

/** Moves with the name of a division before the first of its stops. */
function moveBlocks(moves: readonly CardMove[], width: number, setter: Setter): readonly Block[] {
  return moves.flatMap((move, index) => {
    const block = moveBlock(move, width, setter);
    const last = moves[index - 1];
    if (move.division === null || (last && last.division === move.division)) return [block];
    const named = setter.lines(setter.units(move.division, "sans", "text"), "text", width);
    return [{ ...block, before: 0.16 * setter.em("stop"), lines: [...named, ...block.lines] }];
  });
}

/** Moves that follow each other on one division's knobs, or on none. */
function runsOf(moves: readonly CardMove[]): readonly (readonly CardMove[])[] {
  const runs: CardMove[][] = [];
  for (const move of moves) {
    const last = runs.at(-1);
    if (last && (last[0] as CardMove).division === move.division) last.push(move);
    else runs.push([move]);
  }
  return runs;
}

/**
 * A head with what follows it, and a column of its own where `opens`: a group for each division, so that who acts and
 * where stands over every column on which it goes on.
 */
export function movesGroups(
  head: readonly Unit[],
  moves: readonly CardMove[],
  opens: boolean,
  set: Set,
): readonly Group[] {
  const { width, setter } = set;
  return runsOf(moves).map((run, index) => {
    const where = (run[0] as CardMove).division;
    const again = [...head, ...setter.units(where === null ? "continued" : `continued: ${where}`, "sans", "text")];
    return {
      head: index === 0 ? headBlock("", head, width, setter) : null,
      headAgain: headBlock("", again, width, setter),
      blocks: moveBlocks(run, width, setter),
      opens: opens && index === 0,
    };
  });
}

/** What groups are set to. */
interface Set {
  readonly width: number;
  readonly setter: Setter;
}

/** Who acts, what is to be done there, and when if not at the change itself. */
function workerUnits({ who, ready, turnsPage }: CardTask, does: string, setter: Setter): readonly Unit[] {
  const words = [does, ready === null ? "" : `ready: ${ready}`, turnsPage ? "turns the page" : ""];
  return [
    ...(who === "assistant" ? [] : [signUnit(who, setter.size("text"))]),
    ...setter.units(WORKER_WORDS[who], "sans-bold", "text"),
    ...setter.units(words.filter((each) => each !== "").join(", "), "sans", "text"),
  ];
}

/**
 * The groups of one task after another; those of a single task `parted` for two columns, what goes in at the left.
 */
function taskGroups({ tasks, whenTime }: ChangeCard, parted: boolean, set: Set): readonly Group[] {
  const { setter } = set;
  const later = movesGroups(setter.units("when there is time", "sans-bold", "text"), whenTime, false, set);
  const [only] = tasks;
  const both = only?.moves.some((move) => move.act === "cancel") && only.moves.some((move) => move.act !== "cancel");
  if (only && tasks.length === 1 && (parted || !both)) {
    const half = (does: string, isOff: boolean): readonly Group[] => {
      const moves = only.moves.filter((move) => (move.act === "cancel") === isOff);
      return movesGroups(workerUnits(only, does, setter), moves, !isOff, set);
    };
    return [...half("puts in", true), ...later, ...half("draws", false)];
  }
  const opens = tasks.length === 2;
  return [...tasks.flatMap((task) => movesGroups(workerUnits(task, "", setter), task.moves, opens, set)), ...later];
}

/** Letters of the words for a place that stand in the head: bars in figures are far from it. */
const MOST_WHERE = 40;

/** The moment of a change, and how it goes: behind its number. */
function momentUnits(card: ChangeCard, setter: Setter): readonly Unit[] {
  const where =
    card.where !== null && card.where.length > MOST_WHERE ? `${card.where.slice(0, MOST_WHERE)}…` : card.where;
  const moment = [where, card.cue].filter((each) => each !== null).join(", ");
  const { verdict } = card;
  return [
    ...setter.units(moment, "serif", "label"),
    ...(verdict === null
      ? []
      : [boxedUnit(verdict.words, verdict.loud ? "reversed" : "outlined", "sans-bold", setter.size("text"))]),
  ];
}

/** A piston is ringed, so that its number is taken for no stop's. Another level than before stands out. */
export function pressUnits(
  { name, number, level, newLevel }: CardPress,
  by: string | null,
  setter: Setter,
): readonly Unit[] {
  const loud = newLevel && level !== null;
  const said = [level === null || loud ? null : `level ${level}`, by].filter((each) => each !== null);
  return [
    ...(loud ? [boxedUnit(`level ${level}`, "reversed", "sans-bold", setter.size("text"))] : []),
    ...setter.units(name, "serif-bold", "stop"),
    boxedUnit(String(number), "ringed", "serif-bold", setter.size("stop")),
    ...setter.units(said.join(", "), "sans", "text"),
  ];
}

/** All that is pressed for a change, in order, and with what. */
export const pressBlocks = ({ presses, pressedBy }: ChangeCard, width: number, setter: Setter): readonly Block[] =>
  presses.map((press) =>
    setter.block([...setter.units("press", "sans", "text"), ...pressUnits(press, pressedBy, setter)], "stop", width, {
      tag: "item",
      before: 0.5,
    }),
  );

/** One line a keyboard: who plays there and all that is drawn. */
function standsBand(card: ChangeCard, width: number, name: "label" | "text", setter: Setter): Band {
  const { state } = card;
  const row = (units: readonly Unit[]): Block =>
    setter.block(units, name, width, { before: 0.6, hanging: setter.em("text") });
  const keyboards = [
    ...state.divisions.map((division) => division.name),
    ...state.hands.flatMap((hand) => hand.keyboard ?? []),
  ];
  const rows = [...new Set(keyboards)].map((keyboard) => {
    const hands = state.hands.filter((hand) => hand.keyboard === keyboard).flatMap((hand) => handUnits(hand, setter));
    const stops = state.divisions.find((division) => division.name === keyboard)?.stops.map((stop) => stop.name) ?? [];
    return row([
      ...setter.units(keyboard, "sans-bold", "text"),
      ...hands,
      ...setter.units(stops.length === 0 ? "nothing drawn" : stops.join(", "), "serif", name),
    ]);
  });
  const settings = [
    ...state.couplers,
    ...state.unisonOff.map((name) => `unison off ${name}`),
    ...state.tremulants.map((name) => `tremulant ${name === "all" ? "of the whole organ" : name}`),
    ...state.boxes.map(({ name, position }) => `box ${name} ${BOX_WORDS[position]}`),
  ];
  const rest = state.hands.filter((hand) => hand.keyboard === null).flatMap((hand) => handUnits(hand, setter));
  const others = [
    ...(settings.length === 0 ? [] : [row(setter.units(settings.join(", "), "serif", name))]),
    ...(card.stays.length === 0
      ? []
      : [row([...setter.units(`${STAYS}:`, "sans", "text"), ...setter.units(card.stays.join(", "), "serif", name)])]),
    ...(rest.length === 0 ? [] : [row([...rest, ...setter.units("rest", "sans", "text")])]),
  ];
  return {
    columns: 1,
    before: 2,
    groups: [
      {
        head: headBlock("then stands", [], width, setter),
        headAgain: headBlock("then stands", setter.units("continued", "sans", "text"), width, setter),
        blocks: [...rows, ...others],
      },
    ],
  };
}

const alone = (blocks: readonly Block[], before: number): Band => ({
  columns: 1,
  before,
  groups: [{ head: null, headAgain: null, blocks }],
});

const heads = (groups: readonly Group[]): number => groups.filter((group) => group.head !== null).length;

/** So many moves of one kind stand one under another across the whole card. */
const FEW = 5;

/** What has to be done: pistons first, then in columns what hands and feet move; said in a word when it is nothing. */
function doingBands(card: ChangeCard, width: number, setter: Setter): readonly Band[] {
  const { presses, tasks, whenTime } = card;
  if (presses.length + tasks.length + whenTime.length === 0) {
    return [alone([setter.block(setter.units("nothing changes", "serif", "stop"), "stop", width)], 1)];
  }
  const turns = tasks.filter((task) => task.turnsPage && task.moves.length === 0);
  const turning = turns.map((task) => setter.block(workerUnits(task, "", setter), "text", width, { before: 1 }));
  const moves = [...tasks.flatMap((task) => task.moves), ...whenTime];
  const names = moves.map((move) => `+ ${move.what ?? ""} ${move.name}`);
  const groups = (columns: number, parted: boolean): readonly Group[] =>
    taskGroups(card, parted, { width: columnWidth(width, columns), setter });
  const columns = heads(groups(1, true)) === 1 && moves.length <= FEW ? 1 : columnsFor(names, width, setter);
  return [
    alone([...pressBlocks(card, width, setter), ...turning], 1),
    { columns, before: 1.5, groups: groups(columns, columns > 1) },
  ];
}

/**
 * The sheet of one change: the moment and who acts, what goes in and what comes out, and smaller beneath how the console
 * stands then.
 *
 * @param next where the change after it is, for the foot; `null` for the last.
 */
export function changeSheet(card: ChangeCard, piece: string, next: string | null, size: Size, setter: Setter): Sheet {
  const width = bodyWidth(size);
  const detail = card.verdict?.detail ?? null;
  const told = detail === null ? [] : [setter.block(setter.units(detail, "sans", "text"), "text", width)];
  const doing =
    card.verdict === null
      ? [openingBand(card, width, setter)]
      : [...(told.length === 0 ? [] : [alone(told, 0)]), ...doingBands(card, width, setter)];
  const sheet = (name: "label" | "text"): Sheet => ({
    title: String(card.number),
    corner: card.dynamic,
    beside: momentUnits(card, setter),
    label: [card.section, card.state.label].filter((each) => each !== null).join(": "),
    bands: [
      warningsBand(card.warnings, width, setter),
      ...doing,
      ...(card.verdict === null ? [] : [standsBand(card, width, name, setter)]),
    ],
    remark: null,
    foot: piece,
    next,
  });
  return { ...sheet("label"), tighter: sheet("text") };
}

/** How the console is set up before the first note. */
function openingBand(card: ChangeCard, width: number, setter: Setter): Band {
  const columns = columnsFor(drawnNames(card.state), width, setter);
  const wide = columnWidth(width, columns);
  const press = pressBlocks(card, wide, setter);
  const groups = stateGroups(card.state, wide, setter, "stop");
  return {
    columns,
    before: 0,
    groups: press.length === 0 ? groups : [{ head: null, headAgain: null, blocks: press }, ...groups],
  };
}

/** `Next: bar 49, easy.` at the foot of the card before. */
export function nextWords(card: ChangeCard | undefined): string | null {
  if (!card) return null;
  const said = [card.where ?? `change ${card.number}`, card.verdict?.brief ?? null];
  return `next: ${said.filter((each) => each !== null).join(", ")}`;
}
