import { isListTitle } from "./accessories.ts";
import { couplersIn } from "./couplers.ts";
import { headingIn } from "./headings.ts";
import type { KnownNames } from "./known-names.ts";
import { listItem } from "./list-item.ts";
import type { ListSoFar } from "./list-so-far.ts";
import { hasLength, hasMarks } from "./stop-draft.ts";
import { partsOfLine } from "./stop-line.ts";
import type { WholeEntry } from "./wrapped-lines.ts";

/** How much of a coming line is looked at to tell what stands before it. */
const GLANCE = 200;

/** Whether the next lines that say anything are stops. */
export function stopsFollow(list: ListSoFar, next: readonly WholeEntry[]): boolean {
  for (const entry of next.slice(0, 3)) {
    const { body } = listItem(entry.text.slice(0, GLANCE), list.numbered);
    if (isListTitle(body)) continue;
    if (headingIn(body)?.exact || couplersIn(body, 0, list.headings, false)) return false;
    const [first] = partsOfLine(body, list.names);
    if (first?.kind === "marks") continue;
    return first?.kind === "stop" && (hasMarks(first.draft) || list.names.acquaintance(first.draft.name) !== "strange");
  }
  return false;
}

/** Whether the next line is a stop that prints its length. */
export function lengthFollows(list: ListSoFar, next: readonly WholeEntry[]): boolean {
  const [entry] = next;
  const [first] = entry ? partsOfLine(listItem(entry.text.slice(0, GLANCE), list.numbered).body, list.names) : [];
  return first?.kind === "stop" && hasLength(first.draft);
}

/** Whether as many coming lines hold lengths and no names. */
export const marksFollow = (next: readonly WholeEntry[], count: number, names: KnownNames): boolean =>
  count > 0 &&
  next.length >= count &&
  next.slice(0, count).every((entry) => {
    const parts = partsOfLine(entry.text.slice(0, GLANCE), names);
    return parts.length > 0 && parts.every((part) => part.kind === "marks" && hasMarks(part.draft));
  });
