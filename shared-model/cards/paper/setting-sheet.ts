import type { PieceCards, PistonSetting } from "../piece-card.ts";
import { columnsFor } from "./card-blocks.ts";
import { pressUnits } from "./change-sheet.ts";
import { type Band, columnWidth } from "./flow.ts";
import { bodyWidth, type Sheet } from "./frame.ts";
import { boxedUnit } from "./line.ts";
import type { Size } from "./paper.ts";
import type { Setter } from "./setter.ts";
import { drawnNames, stateGroups } from "./state-groups.ts";

/** One piston: what to draw before it is stored. */
function pistonBands(piston: PistonSetting, columns: number, width: number, setter: Setter): readonly Band[] {
  const changes = piston.changes.join(", ");
  const used = `for change${piston.changes.length === 1 ? "" : "s"} ${changes}`;
  const head = setter.block(
    [...pressUnits(piston.press, null, setter), ...setter.units(used, "sans", "text")],
    "stop",
    width,
    { tag: "subheading", ruled: 0.2 },
  );
  const [first, ...others] = stateGroups(piston.state, columnWidth(width, columns), setter, "label");
  return [
    { columns: 1, before: 4, keeps: true, groups: [{ head: null, headAgain: null, blocks: [head] }] },
    { columns, before: 0.5, groups: first ? [first, ...others] : others },
  ];
}

const HOW = "Draw what stands under a piston, then store it there.";

/** What to store on the pistons before the piece is played, piston by piston; `null` without any. */
export function settingSheet(
  { pistons, cautions, piece, organ }: PieceCards,
  size: Size,
  setter: Setter,
): Sheet | null {
  if (pistons.length === 0) return null;
  const width = bodyWidth(size);
  const columns = columnsFor(
    pistons.flatMap((piston) => drawnNames(piston.state)),
    width,
    setter,
  );
  const ask = boxedUnit("first", "reversed", "sans-bold", setter.size("text"));
  const blocks = [...cautions, HOW].map((sentence, index) =>
    setter.block([...(index === 0 ? [ask] : []), ...setter.units(sentence, "sans", "text")], "text", width, {
      before: 1,
    }),
  );
  return {
    title: "Pistons to set",
    corner: null,
    beside: [],
    label: piece,
    bands: [
      {
        columns: 1,
        before: 0,
        groups: [{ head: null, headAgain: null, blocks }],
      },
      ...pistons.flatMap((piston) => pistonBands(piston, columns, width, setter)),
    ],
    remark: null,
    foot: organ,
    next: null,
  };
}
