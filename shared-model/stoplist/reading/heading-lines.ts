import { isAccessory, isAidsTitle, isListTitle, isProse, tremulantIn } from "./accessories.ts";
import { lengthFollows, stopsFollow } from "./coming-lines.ts";
import { couplersIn, isCouplerTitle } from "./couplers.ts";
import { halfAt } from "./halves.ts";
import { type Heading, headingIn, mayBeStop } from "./headings.ts";
import type { ListSoFar, Taken } from "./list-so-far.ts";
import { HEADING_ANSWERS } from "./question.ts";
import { romanValue } from "./ranks-in-line.ts";
import { hasLength, hasMarks } from "./stop-draft.ts";
import { partsOfLine } from "./stop-line.ts";
import { tidyName } from "./stop-name.ts";
import type { WholeEntry } from "./wrapped-lines.ts";

const LONE_NUMERAL = /^\(?(I{1,3}|IV|VI{0,2})\)?[.:]?$/;
const HEADING_END = /:|\t|\s[-–—]\s/g;
const STOPS_IN_BRACKETS = /^(.{2,60}?)\s\((.*\d.*)\)$/;

/** A division whose name nobody knows. */
const UNNAMED: Heading = {
  name: "",
  role: "other",
  kind: "manual",
  keyboard: null,
  compass: null,
  enclosed: false,
  exact: false,
  numberOnly: false,
  half: null,
  pullDown: false,
};

/**
 * Begins the division that a line heads: `heading` when that is all the line holds, what stands behind it on the line when
 * there is more to read, `null` when the line is no heading.
 */
export function beginDivision(
  list: ListSoFar,
  entry: WholeEntry,
  body: string,
  next: readonly WholeEntry[],
): Taken | WholeEntry | null {
  const text = entry.text.replace(/^[-–—•*·]\s*/u, "");
  for (const candidate of text === body ? [text] : [text, body]) {
    const heading = headingIn(candidate);
    const bracketed = bracketedStops(list, candidate);
    if (bracketed) {
      list.begin(bracketed.heading, entry.line);
      return { ...entry, text: bracketed.rest, lineAt: () => entry.line };
    }
    if (heading && isHeading(list, heading, candidate, entry, next)) return list.begin(heading, entry.line);
    if (/^P[.:]?$/.test(candidate) && list.divisions.length > 0 && stopsFollow(list, next)) {
      return list.begin({ ...(headingIn("Pedal") as Heading), name: "P" }, entry.line);
    }
    const lead = leadingHeading(list, candidate);
    if (lead) {
      if (!lead.heading.exact) askAboutHeading(list, lead.heading.name, entry.line);
      list.begin(lead.heading, entry.line);
      const offset = entry.text.length - lead.rest.length;
      return { ...entry, text: lead.rest, lineAt: (place) => entry.lineAt(place + offset) };
    }
  }
  return loneNumeral(list, entry, next) ?? strangeHeading(list, entry, body, next);
}

/** "Pedal (Subbass 16, Violon 8)" */
function bracketedStops(list: ListSoFar, text: string): { heading: Heading; rest: string } | null {
  const [, lead = "", rest = ""] = STOPS_IN_BRACKETS.exec(text) ?? [];
  const heading = lead === "" ? null : headingIn(lead);
  return heading?.exact && knownStops(list, rest) >= 2 ? { heading, rest } : null;
}

/** A heading with stops behind it on the same line. */
function leadingHeading(list: ListSoFar, text: string): { heading: Heading; rest: string } | null {
  for (const end of [...text.matchAll(HEADING_END)].slice(0, 3)) {
    const rest = text.slice(end.index + end[0].length).trim();
    const lead = text.slice(0, end.index);
    const pedal = lead === "P" && end[0] === ":" && list.divisions.length > 0 ? headingIn("Pedal") : null;
    const numeral = end[0] === ":" ? numeralAsHeading(lead) : null;
    const byNumeral = numeral && /^\p{L}[^:]*$/u.test(rest) && knownStops(list, rest) >= 1 ? numeral : null;
    const found = lead.length > 80 || rest === "" ? null : (headingIn(lead) ?? byNumeral);
    const heading = pedal ? { ...pedal, name: lead } : found;
    if (!heading?.exact) {
      const loose =
        heading &&
        end[0] === ":" &&
        lead.split(/\s+/).length <= 5 &&
        !isProse(lead) &&
        knownStops(list, rest) >= 2 &&
        !hasStop(list, lead);
      if (loose) return { heading: { ...heading, exact: true }, rest };
      const strange = end[0] === ":" && end.index > 1 ? strangeLead(list, lead, rest) : null;
      if (strange) return { heading: strange, rest };
      continue;
    }
    const parts = partsOfLine(rest, list.names).filter((part) => part.kind === "stop");
    const known = parts.filter(
      (part) => part.kind === "stop" && (hasMarks(part.draft) || list.names.knows(part.draft.name)),
    );
    const isColon = end[0] === ":";
    if (isColon && headingIn(rest)?.exact && !known.some((part) => part.kind === "stop" && hasMarks(part.draft)))
      continue;
    if (known.length >= (isColon ? 1 : 2)) return { heading, rest };
    if (isColon && tremulantIn(rest)) return { heading, rest };
  }
  return null;
}

/** `II` before a colon and stops numbers a keyboard. */
function numeralAsHeading(text: string): Heading | null {
  const [, name = ""] = LONE_NUMERAL.exec(text.trim()) ?? [];
  const keyboard = romanValue(name);
  return keyboard === null ? null : { ...UNNAMED, name, keyboard, exact: true, numberOnly: true };
}

/** An unknown word before a colon and stops: a division, with a question. */
function strangeLead(list: ListSoFar, lead: string, rest: string): Heading | null {
  const name = tidyName(lead);
  if (
    name.length > 30 ||
    name.split(/\s+/).length > 3 ||
    !/^\p{Lu}/u.test(name) ||
    list.names.acquaintance(name) !== "strange"
  )
    return null;
  if (
    isListTitle(name) ||
    isListTitle(`${name}:`) ||
    isAidsTitle(name) ||
    isCouplerTitle(name) ||
    isProse(name) ||
    isAccessory(name) ||
    tremulantIn(name)
  )
    return null;
  if (halfAt(name, 0)?.end === name.length || couplersIn(`${lead}: ${rest}`, 0, list.headings, false)) return null;
  return knownStops(list, rest) >= 2 ? { ...UNNAMED, name } : null;
}

function knownStops(list: ListSoFar, text: string): number {
  return partsOfLine(text, list.names).filter(
    (part) => part.kind === "stop" && hasMarks(part.draft) && list.names.knows(part.draft.name),
  ).length;
}

function askAboutHeading(list: ListSoFar, name: string, line: number): void {
  list.questions.ask({
    kind: "heading",
    line,
    text: `"${name}" stands over stops like a heading and is read as a manual division; is it one?`,
    about: name,
    choices: Object.values(HEADING_ANSWERS),
  });
}

function isHeading(
  list: ListSoFar,
  heading: Heading,
  text: string,
  entry: WholeEntry,
  next: readonly WholeEntry[],
): boolean {
  if (couplersIn(text, entry.line, list.headings, false)) return false;
  if (list.among === "aids" && list.current && list.hasDivision(heading) && !stopsFollow(list, next)) return false;
  const plainName = list.names.isPlainName(tidyName(heading.name));
  if (heading.exact && !mayBeStop(heading) && !plainName) return true;
  // "Hornwerk III" between stops that print their marks is a compound.
  const isCompound = plainName && heading.role !== "echo" && !entry.blankBefore && /\s[IVX]+$/.test(text);
  if (isCompound && list.last !== null && hasMarks(list.last.draft)) return false;
  const stressed =
    /:\s*$/.test(text) ||
    heading.keyboard !== null ||
    heading.compass !== null ||
    /\borgan|orgel|werk|clavier|division/i.test(text);
  const upper = heading.name === heading.name.toUpperCase();
  if (!stopsFollow(list, next)) return heading.exact && stressed;
  // "Solo" without a length between stops that print theirs.
  const unlikeStops =
    list.last !== null && hasMarks(list.last.draft) && !hasStop(list, text) && lengthFollows(list, next);
  if (heading.exact) return stressed || entry.blankBefore || upper || list.mostlyMarked || unlikeStops;
  if (isProse(text) || text.split(/\s+/).length > 10) return false;
  const whole = text.replace(/[^\p{L}]/gu, "");
  return (
    (whole === whole.toUpperCase() || /:\s*$/.test(text) || (entry.blankBefore && heading.keyboard !== null)) &&
    !hasStop(list, text)
  );
}

function hasStop(list: ListSoFar, text: string): boolean {
  return partsOfLine(text, list.names).some((part) => part.kind === "stop" && hasLength(part.draft));
}

/** A Roman numeral alone over stops numbers a keyboard; behind a compound it is its ranks. */
function loneNumeral(list: ListSoFar, entry: WholeEntry, next: readonly WholeEntry[]): Taken | null {
  const heading = numeralAsHeading(entry.text);
  if (!heading || !stopsFollow(list, next)) return null;
  const waiting = list.last !== null && !hasMarks(list.last.draft);
  const expected = list.divisions.filter((one) => one.kind === "manual").length + 1;
  if (waiting || (heading.keyboard !== expected && !entry.blankBefore)) return null;
  return list.begin(heading, entry.line);
}

/** Words of an unknown kind that stand over stops as a heading would. */
function strangeHeading(list: ListSoFar, entry: WholeEntry, body: string, next: readonly WholeEntry[]): Taken | null {
  if (body !== entry.text.trim() || body.length > 50 || !stopsFollow(list, next)) return null;
  const colon = /:\s*$/.test(body);
  const letters = body.replace(/[^\p{L}]/gu, "");
  const upper =
    letters.length > 2 &&
    letters === letters.toUpperCase() &&
    list.headings.some((name) => name === name.toUpperCase());
  if (
    !(colon || (upper && entry.blankBefore)) ||
    hasStop(list, body) ||
    isListTitle(body) ||
    isAidsTitle(body) ||
    isCouplerTitle(body)
  )
    return null;
  const name = tidyName(body.replace(/:\s*$/, ""));
  if (list.names.acquaintance(name) !== "strange" || isProse(body) || isAccessory(body) || tremulantIn(body))
    return null;
  if (couplersIn(body, entry.line, list.headings, false) || list.divisions.length === 0) return null;
  askAboutHeading(list, name, entry.line);
  return list.begin({ ...UNNAMED, name }, entry.line);
}
