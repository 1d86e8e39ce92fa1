import { marksFollow, stopsFollow } from "./coming-lines.ts";
import type { ListSoFar, Taken } from "./list-so-far.ts";
import type { LinePart } from "./stop-draft.ts";
import { giveMarks, hasLength, hasMarks } from "./stop-draft.ts";
import type { WholeEntry } from "./wrapped-lines.ts";

/** Lengths on lines of their own: behind the name they belong to, before it, or in a row behind a row of names. */
export function takeMarks(
  list: ListSoFar,
  parts: readonly LinePart[],
  entry: WholeEntry,
  next: readonly WholeEntry[],
): Taken {
  const marks = parts.flatMap((part) => (part.kind === "marks" ? [part.draft] : []));
  const waiting = list.waiting;
  if (waiting.length > 0) {
    list.lengths.push(...marks);
    return "stop";
  }
  if (
    list.named.length > 1 &&
    list.last &&
    !hasMarks(list.last.draft) &&
    marksFollow(next, list.named.length - 1, list.names)
  ) {
    list.waiting = [...list.named];
    list.lengths.push(...marks);
    return "stop";
  }
  for (const mark of marks) {
    if (list.last && !hasLength(list.last.draft) && (!hasMarks(list.last.draft) || hasLength(mark))) {
      giveMarks(mark, list.last.draft);
      list.named = [];
    } else if (
      list.last &&
      list.last.draft.ranks === null &&
      mark.ranks !== null &&
      !hasLength(mark) &&
      list.names.isCompound(list.last.draft.name)
    ) {
      giveMarks(mark, list.last.draft);
    } else if (stopsFollow(list, next)) list.pending = mark;
    else if (list.current && list.among === "stops" && hasLength(mark)) {
      list.questions.ask({
        kind: "left-out",
        line: entry.line,
        text: `"${entry.text.trim()}" is a pitch without a stop and is left out; whose is it?`,
        about: entry.text.trim(),
      });
    }
  }
  return list.taken;
}

/** Gives a row of lengths to the row of names before it. */
export function zip(list: ListSoFar): void {
  list.waiting.forEach((stop, index) => {
    const marks = list.lengths[index];
    if (marks) giveMarks(marks, stop.draft);
  });
  if (list.waiting.length > 0) list.named = [];
  list.waiting = [];
  list.lengths = [];
}
