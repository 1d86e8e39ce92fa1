import type { CardTask, ChangeCard, PieceCards } from "../piece-card.ts";
import { columnsFor, headBlock } from "./card-blocks.ts";
import { moveBlocks, pressBlocks } from "./change-sheet.ts";
import { type Block, columnWidth, type Group } from "./flow.ts";
import { bodyWidth, type Sheet } from "./frame.ts";
import type { Unit } from "./line.ts";
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
  return tasksOf(card).map((task) => {
    const when = [card.where, task.ready === null ? card.cue : `ready: ${task.ready}`].filter((each) => each !== null);
    const head: readonly Unit[] = [
      ...setter.units(String(card.number), "serif-bold", "stop"),
      ...setter.units(when.join(", "), "serif", "label"),
    ];
    const turn: readonly Block[] = task.turnsPage
      ? [
          setter.block(setter.units("turn the page", "sans-bold", "label"), "label", width, {
            tag: "item",
            before: 0.5,
          }),
        ]
      : [];
    return {
      head: setter.block(head, "stop", width, {
        tag: "subheading",
        before: 0.4 * setter.em("stop"),
        ruled: 0.2,
      }),
      headAgain: headBlock(`${card.number}`, setter.units("continued", "sans", "text"), width, setter),
      blocks: [
        ...(card.pressedBy === "assistant" && task.ready === null ? pressBlocks(card, width, setter) : []),
        ...moveBlocks(task.moves, width, setter),
        ...turn,
      ],
    };
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
