import type { Entry } from "./columns.ts";
import { couplersIn, isCouplerLabel } from "./couplers.ts";
import { headingIn } from "./headings.ts";

/** An entry, or several that a narrow page or a mail has broken; `lineAt` finds the line of a place in the text. */
export interface WholeEntry {
  readonly line: number;
  readonly text: string;
  readonly blankBefore: boolean;
  readonly lineAt: (place: number) => number;
}

const SEPARATORS = /[,;](?=\s|$)/g;
/** A line that is a row of stops, long enough to have been broken by its page. */
const isRow = (text: string): boolean =>
  text.length >= 45 && (text.match(SEPARATORS)?.length ?? 0) >= 2 && !text.includes("\t");
const BEGINS_ANEW = /^\s*(?:[-•*·–—†]|\d{1,3}[.)]\s|\(?\d{1,3}\)|#)/u;
const HEADING_BEFORE_COLON = /^([^:]{1,60}):/;

/** The last stop of the row is cut off, or the next line goes on in the middle of one. */
const isCut = (row: string, next: string): boolean => {
  if (/[,;]$/.test(row) || /^[\p{Ll}\d½⅓⅔]/u.test(next)) return true;
  const last = row.split(/[,;]/).at(-1) ?? "";
  return !/[\d½⅓⅔]|[IVX]{2}|[IV]$/.test(last) && /[,;]/.test(next);
};

/** The first line of a list, with no figure but a year and no colon: its title, which goes on nowhere. */
const isTitle = (text: string, index: number): boolean => index === 0 && !/[\d:]/.test(text.replace(/\b\d{4}\b/g, ""));

/** A row of couplers ends where its line ends. */
const isCouplers = (row: string): boolean => couplersIn(row, 0, [], false)?.unread.length === 0;

const startsAnew = (text: string): boolean => {
  if (BEGINS_ANEW.test(text) || headingIn(text)?.exact) return true;
  const lead = HEADING_BEFORE_COLON.exec(text)?.[1];
  return lead !== undefined;
};

/** Joins the lines of a row of stops that a page has broken in the middle of a name or between a name and its pitch. */
export function wholeEntries(entries: readonly Entry[]): WholeEntry[] {
  const whole: WholeEntry[] = [];
  for (let index = 0; index < entries.length; index++) {
    const first = entries[index] as Entry;
    let text = first.text;
    const starts: { place: number; line: number }[] = [{ place: 0, line: first.line }];
    let last = first;
    while (index + 1 < entries.length && text.length < 10_000) {
      const next = entries[index + 1] as Entry;
      if (
        !isRow(last.text) ||
        isTitle(last.text, index) ||
        headingIn(text)?.exact ||
        /\.$/.test(last.text) ||
        next.blankBefore ||
        next.line !== last.line + 1 ||
        startsAnew(next.text) ||
        !isCut(text, next.text) ||
        isCouplerLabel(text) ||
        isCouplers(text) ||
        isCouplerLabel(next.text)
      )
        break;
      starts.push({ place: text.length + 1, line: next.line });
      text += ` ${next.text}`;
      last = next;
      index += 1;
    }
    const lineAt = (place: number): number => starts.findLast((one) => one.place <= place)?.line ?? first.line;
    whole.push({ line: first.line, text, blankBefore: first.blankBefore, lineAt });
  }
  return whole;
}
