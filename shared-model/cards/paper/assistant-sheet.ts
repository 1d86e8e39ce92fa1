import type { CardTask, ChangeCard, PieceCards } from "../piece-card.ts";
import { columnsFor } from "./card-blocks.ts";
import { movesGroups, pressBlocks } from "./change-sheet.ts";
import { columnWidth, type Group } from "./flow.ts";
import { bodyWidth, type Sheet } from "./frame.ts";
import type { Size } from "./paper.ts";
import type { Setter } from "./setter.ts";

/** A piston that the assistant presses is a task like any other. */
const PRESSING: CardTask = { who: "assistant", ready: null, turnsPage: false, moves: [] };

/** What the assistant has to do at one change; empty for nothing. */
function tasksOf({ tasks, pressedBy }: ChangeCard): readonly CardTask[] {
  const own = tasks.filter((task) => task.who === "assistant");
  const now = own.some((task) => task.ready === null);
  return pressedBy === "assistant" && !now ? [...own, PRESSING] : own;
}

function entriesOf(card: ChangeCard, width: number, setter: Setter): readonly Group[] {
  return tasksOf(card).flatMap((task): readonly Group[] => {
    const when = [card.where, task.ready === null ? card.cue : `ready: ${task.ready}`].filter((each) => each !== null);
    const head = setter.block(
      [...setter.units(String(card.number), "serif-bold", "stop"), ...setter.units(when.join(", "), "serif", "label")],
      "stop",
      width,
      { tag: "subheading", before: 0.4 * setter.em("stop"), ruled: 0.2 },
    );
    const turn = setter.units("turn the page", "sans-bold", "label");
    const first = card.pressedBy === "assistant" && task.ready === null ? pressBlocks(card, width, setter) : [];
    const last = task.turnsPage ? [setter.block(turn, "label", width, { tag: "item", before: 0.5 })] : [];
    const number = setter.units(String(card.number), "sans-bold", "text");
    const moved = movesGroups(number, task.moves, false, { width, setter });
    const groups = moved.length > 0 ? moved : [{ head: null, headAgain: null, blocks: [] }];
    return groups.map((group, index) => ({
      ...group,
      head: index === 0 ? head : null,
      blocks: [...(index === 0 ? first : []), ...group.blocks, ...(index === groups.length - 1 ? last : [])],
    }));
  });
}

/** The assistant's own card: every change that needs a second pair of hands, in playing order; `null` when none does. */
export function assistantSheet(
  { changes, piece, organ, assistant }: PieceCards,
  size: Size,
  setter: Setter,
): Sheet | null {
  const width = bodyWidth(size);
  const own = changes.filter((card) => tasksOf(card).length > 0);
  if (own.length === 0) return null;
  const names = own.flatMap((card) => tasksOf(card).flatMap((task) => task.moves.map((move) => `+ ${move.name}`)));
  const columns = columnsFor(names, width, setter);
  const wide = columnWidth(width, columns);
  const side = assistant === null ? "" : ` at the ${assistant}, as the player sees it`;
  return {
    title: "Assistant",
    corner: null,
    beside: [],
    label: `${piece}: you stand${side === "" ? " beside the player" : side}`,
    bands: [{ columns, before: 0, groups: own.flatMap((card) => entriesOf(card, wide, setter)) }],
    remark: null,
    foot: organ,
    next: null,
  };
}
