import type { CueCard } from "../cue-card.ts";
import { columnsFor, warningsBand, weighUnit } from "./card-blocks.ts";
import { columnWidth } from "./flow.ts";
import { bodyWidth, type Sheet } from "./frame.ts";
import type { Size } from "./paper.ts";
import type { Setter } from "./setter.ts";
import { drawnNames, stateGroups } from "./state-groups.ts";

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
        groups: stateGroups(card, wide, setter, "stop"),
      },
      warningsBand(warnings, width, setter),
    ],
    remark: why && { columns: 1, before: 3, groups: [{ head: null, headAgain: null, blocks: [why] }] },
    foot: card.organ,
    next: null,
  };
}
