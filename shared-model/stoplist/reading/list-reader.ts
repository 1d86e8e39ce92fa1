import type { Compass } from "../../pitch/key.ts";
import { isAccessory, isAidsTitle, isListTitle, isProse, tremulantIn } from "./accessories.ts";
import { couplersIn, divisionsMeant, isCouplerTitle, looksLikeDivision, type PrintedCoupler } from "./couplers.ts";
import type { DivisionDraft, PlacedStop, Questions } from "./drafts.ts";
import { halfAt } from "./halves.ts";
import { type Heading, headingIn, isPullDown, mayBeStop } from "./headings.ts";
import { compassIn } from "./keys-in-line.ts";
import type { KnownNames } from "./known-names.ts";
import { listItem } from "./list-item.ts";
import { romanValue } from "./ranks-in-line.ts";
import { giveMarks, type LinePart, partsOfLine, type StopDraft, tidyName } from "./stop-line.ts";
import type { WholeEntry } from "./wrapped-lines.ts";

/** A tremulant of the whole organ (`null`) or of the divisions its words name. */
export interface PlacedTremulant {
  readonly line: number;
  readonly text: string;
  readonly scope: string | null;
  /** The division in whose list it stands, `null` among the aids. */
  readonly within: DivisionDraft | null;
  readonly whole: boolean;
}

/** What a line was taken for: needed for what may come behind it. */
type Taken = "heading" | "stop" | "aid" | "talk";

const ENCLOSURE = /(?:schwell|swell ?box|expression|jalousie|zwelkast|persian|espression|expresi)/iu;
const PREPARED_LINE =
  /^[[(]?\s*(?:vorgesehen|prepared(?: for)?|prep\.|vorbereitet|geplant|en attente|prévu|previsto|predisposto|gereserveerd)\s*[:–-]\s*(.*?)\s*[\])]?$/iu;
const ALL_IN_BRACKETS = /^[[(]([^()[\]]{3,})[\])]$/;
const OWN_COUPLER = /^(?:(unis(?:on|\.) off)|(sub[- ]?oct(?:ave|\.)?)|(?:super[- ]?)?oct(?:ave|\.)?)(?: coupler)?$/i;
const AIDS_LEAD = /^([^:]{3,60}):\s*(\S.*)$/;
const LONE_NUMERAL = /^\(?(I{1,3}|IV|VI{0,2})\)?[.:]?$/;
const HEADING_END = /:|\t|\s[-–—]\s/g;

const hasMarks = (draft: StopDraft): boolean =>
  draft.pitches.length > 0 || draft.aside.length > 0 || draft.ranks !== null || draft.composition !== null;
const hasLength = (draft: StopDraft): boolean => draft.pitches.length > 0 || draft.aside.length > 0;
const isSure = (draft: StopDraft): boolean =>
  draft.pitches.some((mark) => mark.sure) ||
  draft.aside.some((mark) => mark.sure) ||
  draft.ranks?.sign === "counted" ||
  draft.composition !== null;

/** How much of a coming line is looked at to tell what stands before it. */
const GLANCE = 200;

/** The largest organ has a quarter of these stops and a tenth of these divisions. Ours, to bound time. */
const MOST_STOPS = 5000;
const MOST_DIVISIONS = 200;

/** A division whose name nobody knows. */
const strangeHeading: Heading = {
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

/** Reads the lines of one list one after the other and remembers what they say. */
export class ListReader {
  readonly divisions: DivisionDraft[] = [];
  readonly couplers: PrintedCoupler[] = [];
  readonly tremulants: PlacedTremulant[] = [];
  /** Words that name a box: the divisions it encloses are looked up when all are known. */
  readonly boxes: string[] = [];
  title: string | null = null;
  /** Compasses stated for all manuals and for the pedal. */
  readonly stated: { manual: Compass | null; pedal: Compass | null } = { manual: null, pedal: null };
  readonly #names: KnownNames;
  readonly #questions: Questions;
  readonly #headings: readonly string[];
  readonly #numbered: boolean;
  /** Most stops of the list print a sign or word for feet: words without one must be known names. */
  readonly #mostlyMarked: boolean;
  #current: DivisionDraft | null = null;
  #among: "stops" | "aids" = "stops";
  #last: PlacedStop | null = null;
  /** Stops in a row of names whose lengths may follow in a row of their own. */
  #named: PlacedStop[] = [];
  #pending: StopDraft | null = null;
  #taken: Taken = "talk";
  #count = 0;
  #isFull = false;
  /** The half that a heading or a sub-heading says the next stops are. */
  #half: "bass" | "treble" | null = null;

  constructor(
    names: KnownNames,
    questions: Questions,
    list: { headings: readonly string[]; numbered: boolean; mostlyMarked: boolean },
  ) {
    this.#names = names;
    this.#questions = questions;
    this.#headings = list.headings;
    this.#numbered = list.numbered;
    this.#mostlyMarked = list.mostlyMarked;
  }

  /** Reads one entry; `next` are those behind it, looked at only to tell headings from other words. */
  read(entry: WholeEntry, next: readonly WholeEntry[]): void {
    for (const piece of this.#pieces(entry)) {
      if (this.#isFull) return;
      this.#taken = this.#readPiece(piece, next);
      if (this.#count < MOST_STOPS && this.divisions.length < MOST_DIVISIONS) continue;
      this.#isFull = true;
      const limit = this.#count < MOST_STOPS ? `${MOST_DIVISIONS} divisions` : `${MOST_STOPS} stops`;
      this.#questions.ask(
        entry.line,
        `This text holds more than ${limit}; nothing behind this line was read. Paste one organ's list.`,
        "length",
      );
    }
  }

  /** A row whose cells hold couplers or headings of their own is read cell by cell. */
  #pieces(entry: WholeEntry): WholeEntry[] {
    const cells = entry.text.split("\t");
    const parted =
      cells.length > 1 &&
      cells.some(
        (cell) =>
          cell.length > 2 &&
          couplersIn(cell, entry.line, this.#headings, false) !== null &&
          !partsOfLine(cell, this.#names).every((part) => part.kind === "marks"),
      );
    const texts = parted ? cells : [entry.text];
    return texts.flatMap((text) =>
      inlineHeadings(text).map((piece) =>
        piece === entry.text ? entry : { ...entry, text: piece, lineAt: (): number => entry.line },
      ),
    );
  }

  #readPiece(entry: WholeEntry, next: readonly WholeEntry[]): Taken {
    const prepared = PREPARED_LINE.exec(listItem(entry.text, this.#numbered).body);
    const item = listItem(prepared ? (prepared[1] as string) : entry.text, this.#numbered);
    const body = item.body.replace(ALL_IN_BRACKETS, (whole, inner: string) =>
      partsOfLine(inner, this.#names).some((part) => part.kind === "stop" && isSure(part.draft)) ? inner : whole,
    );
    if (body === "" || !/[\p{L}\p{N}]/u.test(body)) return this.#taken;

    if (this.#readHalfTitle(body)) return "heading";
    const heading = this.#headingOf(entry, item.body, next);
    if (heading) return heading;
    const words = body.replace(/\s+/g, " ");
    if (isAidsTitle(words) || isCouplerTitle(words)) return this.#beginAids();
    const lead = AIDS_LEAD.exec(body);
    if (lead && isAidsTitle(lead[1] as string) && !isListTitle(lead[1] as string)) {
      this.#beginAids();
      return this.#readAids(entry, lead[2] as string, next);
    }
    if (isListTitle(words)) return "talk";
    if (isPullDown(body) && this.#current?.kind === "pedal" && this.#current.stops.length === 0) {
      this.#current.pullDown = true;
      return "aid";
    }
    // "Reeds: Trumpet 8, Clarion 4"
    if (lead && isListTitle(lead[1] as string))
      return this.#readPiece(
        {
          ...entry,
          text: lead[2] as string,
          lineAt: (place) => entry.lineAt(place + entry.text.length - (lead[2] as string).length),
        },
        next,
      );
    return this.#readBody(entry, body, item.bulleted || item.number !== null, prepared !== null, next);
  }

  /** "Mano derecha:", "Bassi": a word for a half over the stops that are it. */
  #readHalfTitle(text: string): boolean {
    const words = text.replace(/[\s:.]+$/, "").replace(/\s*\([^()]*\)$/, "");
    const mark = words.length > 2 ? halfAt(words, 0) : null;
    if (!mark || mark.end !== words.length || mark.half === "both" || this.#current?.kind === "pedal") return false;
    if (!mark.sure && !/:\s*$/.test(text)) return false;
    this.#half = mark.half;
    return true;
  }

  /** What stands behind "Spielhilfen:" on the same line, piece by piece. */
  #readAids(entry: WholeEntry, text: string, next: readonly WholeEntry[]): Taken {
    const whole = this.#readCouplers(text, entry.line, []);
    if (whole) return whole;
    for (const piece of text.split(/\s*[;,](?!\d)\s*|\t/).filter((one) => one !== ""))
      this.#readBody({ ...entry, text: piece }, piece, false, false, next);
    return "aid";
  }

  #beginAids(): Taken {
    this.#among = "aids";
    this.#last = null;
    this.#named = [];
    return "aid";
  }

  // --- headings

  #headingOf(entry: WholeEntry, body: string, next: readonly WholeEntry[]): Taken | null {
    const text = entry.text.replace(/^[-–—•*·]\s*/u, "");
    for (const candidate of text === body ? [text] : [text, body]) {
      const heading = headingIn(candidate);
      if (heading && this.#isHeading(heading, candidate, entry, next)) return this.#begin(heading, entry.line);
      if (/^P[.:]?$/.test(candidate) && this.divisions.length > 0 && this.#stopsFollow(next)) {
        return this.#begin({ ...(headingIn("Pedal") as Heading), name: "P" }, entry.line);
      }
      const lead = this.#leadingHeading(candidate);
      if (lead) {
        if (!lead.heading.exact) this.#askAboutHeading(lead.heading.name, entry.line);
        this.#begin(lead.heading, entry.line);
        const offset = entry.text.length - lead.rest.length;
        return this.#readPiece({ ...entry, text: lead.rest, lineAt: (place) => entry.lineAt(place + offset) }, next);
      }
    }
    return this.#loneNumeral(entry, next) ?? this.#strangeHeading(entry, body, next);
  }

  /** A heading with stops behind it on the same line. */
  #leadingHeading(text: string): { heading: Heading; rest: string } | null {
    for (const end of [...text.matchAll(HEADING_END)].slice(0, 3)) {
      const rest = text.slice(end.index + end[0].length).trim();
      const lead = text.slice(0, end.index);
      const heading = lead.length > 80 || rest === "" ? null : headingIn(lead);
      if (!heading?.exact) {
        const loose =
          heading &&
          end[0] === ":" &&
          lead.split(/\s+/).length <= 5 &&
          !isProse(lead) &&
          this.#knownStops(rest) >= 2 &&
          !this.#hasStop(lead);
        if (loose) return { heading: { ...heading, exact: true }, rest };
        const strange = end[0] === ":" && end.index > 1 ? this.#strangeLead(lead, rest) : null;
        if (strange) return { heading: strange, rest };
        continue;
      }
      const parts = partsOfLine(rest, this.#names).filter((part) => part.kind === "stop");
      const known = parts.filter(
        (part) => part.kind === "stop" && (hasMarks(part.draft) || this.#names.knows(part.draft.name)),
      );
      const isColon = end[0] === ":";
      if (isColon && headingIn(rest)?.exact && !known.some((part) => part.kind === "stop" && hasMarks(part.draft)))
        continue;
      if (known.length >= (isColon ? 1 : 2)) return { heading, rest };
      if (isColon && tremulantIn(rest)) return { heading, rest };
    }
    return null;
  }

  /** An unknown word before a colon and stops: a division, with a question. */
  #strangeLead(lead: string, rest: string): Heading | null {
    const name = tidyName(lead);
    if (
      name.length > 30 ||
      name.split(/\s+/).length > 3 ||
      !/^\p{Lu}/u.test(name) ||
      this.#names.acquaintance(name) !== "strange"
    )
      return null;
    if (
      isListTitle(name) ||
      isAidsTitle(name) ||
      isCouplerTitle(name) ||
      isProse(name) ||
      isAccessory(name) ||
      tremulantIn(name)
    )
      return null;
    if (halfAt(name, 0)?.end === name.length || couplersIn(`${lead}: ${rest}`, 0, this.#headings, false)) return null;
    return this.#knownStops(rest) >= 2 ? { ...strangeHeading, name } : null;
  }

  #knownStops(text: string): number {
    return partsOfLine(text, this.#names).filter(
      (part) => part.kind === "stop" && hasMarks(part.draft) && this.#names.knows(part.draft.name),
    ).length;
  }

  #askAboutHeading(name: string, line: number): void {
    this.#questions.ask(line, `"${name}" stands over stops like a heading; is it a division of its own?`, name, [
      "a manual division",
      "the pedal",
      "part of the division before",
    ]);
  }

  #isHeading(heading: Heading, text: string, entry: WholeEntry, next: readonly WholeEntry[]): boolean {
    if (couplersIn(text, entry.line, this.#headings, false)) return false;
    if (this.#among === "aids" && this.#current && this.#divisionNamed(heading) && !this.#stopsFollow(next))
      return false;
    const plainName = this.#names.isPlainName(tidyName(heading.name));
    if (heading.exact && !mayBeStop(heading) && !plainName) return true;
    const stressed =
      /:\s*$/.test(text) ||
      heading.keyboard !== null ||
      heading.compass !== null ||
      /\borgan|orgel|werk|clavier|division/i.test(text);
    const upper = heading.name === heading.name.toUpperCase();
    if (!this.#stopsFollow(next)) return heading.exact && stressed;
    if (heading.exact) return stressed || entry.blankBefore || upper || this.#mostlyMarked;
    if (isProse(text) || text.split(/\s+/).length > 10) return false;
    const whole = text.replace(/[^\p{L}]/gu, "");
    return (
      (whole === whole.toUpperCase() || /:\s*$/.test(text) || (entry.blankBefore && heading.keyboard !== null)) &&
      !this.#hasStop(text)
    );
  }

  #hasStop(text: string): boolean {
    return partsOfLine(text, this.#names).some((part) => part.kind === "stop" && hasLength(part.draft));
  }

  /** Whether the next lines that say anything are stops. */
  #stopsFollow(next: readonly WholeEntry[]): boolean {
    for (const entry of next.slice(0, 3)) {
      const { body } = listItem(entry.text.slice(0, GLANCE), this.#numbered);
      if (isListTitle(body)) continue;
      if (headingIn(body)?.exact) return false;
      const [first] = partsOfLine(body, this.#names);
      if (first?.kind === "marks") continue;
      return (
        first?.kind === "stop" && (hasMarks(first.draft) || this.#names.acquaintance(first.draft.name) !== "strange")
      );
    }
    return false;
  }

  #divisionNamed(heading: Heading): boolean {
    return this.divisions.some((one) => one.name?.toLowerCase() === heading.name.toLowerCase());
  }

  #begin(heading: Heading, line: number): Taken {
    const { name, role, kind, keyboard, compass, enclosed, pullDown } = heading;
    this.#among = "stops";
    this.#last = null;
    this.#named = [];
    this.#pending = null;
    this.#half = heading.half === "both" ? null : heading.half;
    const open = this.#current;
    // "I. Manual" and, on the next line, "Hauptwerk": one division.
    if (
      open &&
      open.stops.length === 0 &&
      open.line < line &&
      kind === "manual" &&
      open.kind === "manual" &&
      !heading.numberOnly &&
      isNumberOnly(open) &&
      keyboard === null
    ) {
      const merged: DivisionDraft = {
        ...open,
        name,
        role,
        compass: open.compass ?? compass,
        enclosed: open.enclosed || enclosed,
      };
      this.divisions[this.divisions.indexOf(open)] = merged;
      this.#current = merged;
      return "heading";
    }
    const same = this.divisions.find((one) => one.name?.toLowerCase() === name.toLowerCase() && one.kind === kind);
    if (
      same &&
      (same.stops.length === 0 || same.keyboard === null || keyboard === null || same.keyboard === keyboard)
    ) {
      this.#current = same;
      same.compass ??= compass;
      same.keyboard ??= keyboard;
      same.enclosed ||= enclosed;
      return "heading";
    }
    this.#current = { name, role, kind, keyboard, compass, enclosed, line, pullDown, stops: [] };
    this.divisions.push(this.#current);
    return "heading";
  }

  /** A Roman numeral alone over stops numbers a keyboard; behind a compound it is its ranks. */
  #loneNumeral(entry: WholeEntry, next: readonly WholeEntry[]): Taken | null {
    const match = LONE_NUMERAL.exec(entry.text.trim());
    const keyboard = match ? romanValue(match[1] as string) : null;
    if (!match || keyboard === null || !this.#stopsFollow(next)) return null;
    const waiting = this.#last !== null && !hasMarks(this.#last.draft);
    const expected = this.divisions.filter((one) => one.kind === "manual").length + 1;
    if (waiting || (keyboard !== expected && !entry.blankBefore)) return null;
    const name = match[1] as string;
    return this.#begin({ ...strangeHeading, name, keyboard, exact: true, numberOnly: true }, entry.line);
  }

  /** Words of an unknown kind that stand over stops as a heading would. */
  #strangeHeading(entry: WholeEntry, body: string, next: readonly WholeEntry[]): Taken | null {
    if (body !== entry.text.trim() || body.length > 50 || !this.#stopsFollow(next)) return null;
    const colon = /:\s*$/.test(body);
    const letters = body.replace(/[^\p{L}]/gu, "");
    const upper =
      letters.length > 2 &&
      letters === letters.toUpperCase() &&
      this.#headings.some((name) => name === name.toUpperCase());
    if (!(colon || (upper && entry.blankBefore)) || this.#hasStop(body) || isListTitle(body) || isAidsTitle(body))
      return null;
    const name = tidyName(body.replace(/:\s*$/, ""));
    if (this.#names.acquaintance(name) !== "strange" || isProse(body) || isAccessory(body) || tremulantIn(body))
      return null;
    if (couplersIn(body, entry.line, this.#headings, false) || this.divisions.length === 0) return null;
    this.#askAboutHeading(name, entry.line);
    return this.#begin({ ...strangeHeading, name }, entry.line);
  }

  // --- everything else

  #readBody(entry: WholeEntry, body: string, listed: boolean, prepared: boolean, next: readonly WholeEntry[]): Taken {
    const parts = partsOfLine(body, this.#names);
    const [first] = parts;
    const drafts = parts.flatMap((part) => (part.kind === "stop" ? [part.draft] : []));
    const strong = drafts.some((draft) => isSure(draft) && this.#names.acquaintance(draft.name) !== "strange");
    const shaken = /^(?:\d+ |zwei |two |deux )?tr[eé]m/i.test(body) && !/[;,]/.test(body) && !drafts.some(hasLength);
    if (shaken && this.#readTremulant(body, entry.line, true)) return "aid";
    const own = this.#readOwnCoupler(body, entry, next);
    if (own) return own;
    const coupled = this.#readCouplers(body, entry.line, drafts);
    if (coupled) return coupled;
    const sounds = drafts.some((draft) => hasMarks(draft) && this.#names.knows(draft.name) && !tremulantIn(draft.name));
    if (!sounds && this.#readTremulant(body, entry.line, parts.length === 1)) return "aid";
    const offset = Math.max(0, entry.text.indexOf(body.slice(0, 20)));
    const lineOf = (draft: StopDraft): number => entry.lineAt(offset + draft.at);
    if (!strong) {
      const known = drafts.some((draft) => hasMarks(draft) && this.#names.knows(draft.name));
      if (isAccessory(body) && !known) {
        const pieces = body.split(/\s*[;,](?!\d)\s*/).filter((piece) => piece !== "");
        if (pieces.length > 1 && pieces.some((piece) => tremulantIn(piece))) {
          for (const piece of pieces) if (!this.#readTremulant(piece, entry.line, true)) this.#accessory(piece);
          return "aid";
        }
        return this.#accessory(body);
      }
      if (isProse(body) && !this.#isStopDespiteProse(parts, known)) return this.#talk(body, entry, listed);
    }
    const marksOnly = parts.length > 0 && parts.every((part) => part.kind === "marks");
    if (marksOnly) return this.#takeMarks(parts, entry, next);
    this.#zip();
    let taken: Taken = "talk";
    for (const part of parts) {
      if (part.kind === "words") {
        if (this.#readTremulant(part.text, entry.line, false) || this.#readCouplers(part.text, entry.line, []))
          taken = "aid";
        else if (part === first || this.#last === null) taken = this.#talk(part.text, entry, listed);
        else this.#last.draft.remarks.push(part.text);
      } else if (part.kind === "marks") {
        if (this.#last) giveMarks(part.draft, this.#last.draft);
      } else if (this.#isStop(part, parts, listed, body)) {
        if (prepared) part.draft.prepared = true;
        this.#place({ draft: part.draft, line: lineOf(part.draft) });
        taken = "stop";
      } else if (part === first) taken = this.#talk(body, entry, listed);
      else if (!isAccessory(part.draft.name) && !this.#readTremulant(part.draft.name, entry.line, false))
        this.#last?.draft.remarks.push(part.draft.name);
    }
    return taken;
  }

  /** Octave couplers within a division, printed among its stops (`Sub Octave`, `Unison Off`). */
  #readOwnCoupler(text: string, entry: WholeEntry, next: readonly WholeEntry[]): Taken | null {
    const match = OWN_COUPLER.exec(text.trim());
    const division = this.#current;
    if (!match || !division || division.kind === "pedal" || division.name === null) return null;
    const [, off, sub] = match;
    const beside = next.slice(0, 2).some((one) => /^(?:sub|unison)/i.test(listItem(one.text, this.#numbered).body));
    if (off === undefined && sub === undefined && this.#taken !== "aid" && !beside) return null;
    if (off === undefined) {
      const pitches = [sub === undefined ? 4 : 16] as const;
      this.couplers.push({ line: entry.line, text, first: division.name, second: division.name, by: "self", pitches });
    }
    return "aid";
  }

  #readCouplers(text: string, line: number, drafts: readonly StopDraft[]): Taken | null {
    if (drafts.some((draft) => draft.pitches.length > 0 && this.#names.knows(draft.name)) || compassIn(text).compass)
      return null;
    const found = couplersIn(text, line, this.#headings, this.#among === "aids" || this.#taken === "aid");
    const unread = found?.unread.filter((piece) => !isProse(piece)) ?? [];
    if (!found || (found.couplers.length === 0 && unread.length === 0)) return null;
    this.couplers.push(...found.couplers);
    let shaken = false;
    for (const piece of unread) {
      if (shaken && looksLikeDivision(piece, this.#headings) && this.#readTremulant(`Tremulant ${piece}`, line, false))
        continue;
      shaken = this.#readTremulant(piece, line, false);
      if (shaken || isAccessory(piece)) continue;
      this.#questions.ask(
        line,
        `"${piece}" stands among the couplers and names no two divisions of this list; what does it couple?`,
        piece,
        this.divisions.map((one) => one.name ?? "the manual"),
      );
    }
    return "aid";
  }

  #readTremulant(text: string, line: number, alone: boolean): boolean {
    const found = tremulantIn(text);
    if (!found) return false;
    const words = text.trim().split(/\s+/).length;
    if (words > 12 || (isAccessory(text) && !alone)) return false;
    this.tremulants.push({
      line,
      text,
      scope: found.scope,
      within: this.#among === "stops" ? this.#current : null,
      whole: found.whole,
    });
    return true;
  }

  #accessory(text: string): Taken {
    if (ENCLOSURE.test(text)) this.boxes.push(text);
    return "aid";
  }

  /** A line that also talks may still be a stop: `Sordun 16' (1612)`, `Quintadena 8', old`. */
  #isStopDespiteProse(parts: readonly LinePart[], known: boolean): boolean {
    const [first] = parts;
    if (first?.kind !== "stop") return false;
    const { draft } = first;
    if (known) return !isProse(draft.name);
    return (
      isSure(draft) &&
      !isProse(draft.name) &&
      draft.name.split(/\s+/).length <= 4 &&
      !draft.remarks.some((one) => isProse(one))
    );
  }

  #isStop(
    part: Extract<LinePart, { kind: "stop" }>,
    parts: readonly LinePart[],
    listed: boolean,
    body: string,
  ): boolean {
    const { draft } = part;
    const acquaintance = this.#names.acquaintance(draft.name);
    const bare = acquaintance === "strange" ? this.#names.acquaintance(draft.bareName) : acquaintance;
    if (!isSure(draft) && isAccessory(draft.name)) return false;
    if (!hasLength(draft) && tremulantIn(draft.name)) return false;
    if (bare === "known") return this.#among === "stops" || isSure(draft);
    const words = draft.name.split(/\s+/).length;
    if (words > 7 || isProse(draft.name)) return false;
    if (isSure(draft)) return this.#among === "stops" || bare === "like";
    if (this.#among === "aids") return false;
    if (hasMarks(draft))
      return (
        bare === "like" || (!this.#mostlyMarked && words <= 4 && /^\p{Lu}/u.test(draft.name)) || (listed && words <= 5)
      );
    if (bare === "like") return !/[.!?]$/.test(body) || parts.length > 1;
    return (
      listed &&
      words <= 4 &&
      this.#last !== null &&
      /^\p{Lu}/u.test(draft.name) &&
      (this.#current !== null || this.divisions.length > 0)
    );
  }

  /** A division for stops printed under no heading. */
  #place(stop: PlacedStop): void {
    if (!this.#current) {
      this.#current = {
        name: null,
        role: "main",
        kind: "manual",
        keyboard: null,
        compass: null,
        enclosed: false,
        line: stop.line,
        pullDown: false,
        stops: [],
      };
      this.divisions.push(this.#current);
    }
    if (this.#among === "aids" && !this.#taken.startsWith("stop")) {
      this.#questions.ask(
        stop.line,
        `${stop.draft.name} stands among the couplers and aids; it is read as a stop of ${this.#current.name ?? "the manual"}.`,
        stop.draft.name,
        this.divisions.map((one) => one.name ?? "the manual"),
      );
    }
    if (this.#pending) {
      giveMarks(this.#pending, stop.draft);
      this.#pending = null;
    }
    if (this.#half) stop.draft.half ??= { start: 0, end: 0, half: this.#half, sure: true, partOfName: false };
    if (/^contras\b/i.test(stop.draft.name) && this.#current.kind === "manual") stop.draft.atPedal = true;
    this.#current.stops.push(stop);
    this.#count += 1;
    this.#last = stop;
    if (hasMarks(stop.draft)) this.#named = [];
    else this.#named.push(stop);
  }

  /** Lengths on lines of their own: behind the name they belong to, before it, or in a row behind a row of names. */
  #takeMarks(parts: readonly LinePart[], entry: WholeEntry, next: readonly WholeEntry[]): Taken {
    const marks = parts.flatMap((part) => (part.kind === "marks" ? [part.draft] : []));
    const waiting = this.#waiting;
    if (waiting.length > 0) {
      this.#rows.push(...marks);
      return "stop";
    }
    if (
      this.#named.length > 1 &&
      this.#last &&
      !hasMarks(this.#last.draft) &&
      marksFollow(next, this.#named.length - 1, this.#names)
    ) {
      this.#waiting = [...this.#named];
      this.#rows.push(...marks);
      return "stop";
    }
    for (const mark of marks) {
      if (this.#last && !hasLength(this.#last.draft) && (!hasMarks(this.#last.draft) || hasLength(mark))) {
        giveMarks(mark, this.#last.draft);
        this.#named = [];
      } else if (
        this.#last &&
        this.#last.draft.ranks === null &&
        mark.ranks !== null &&
        !hasLength(mark) &&
        this.#names.isCompound(this.#last.draft.name)
      ) {
        giveMarks(mark, this.#last.draft);
      } else if (this.#stopsFollow(next)) this.#pending = mark;
      else if (this.#current && this.#among === "stops" && hasLength(mark)) {
        this.#questions.ask(
          entry.line,
          `"${entry.text.trim()}" is a pitch without a stop; whose is it?`,
          entry.text.trim(),
        );
      }
    }
    return this.#taken;
  }

  #waiting: PlacedStop[] = [];
  #rows: StopDraft[] = [];

  /** Gives a row of lengths to the row of names before it. */
  #zip(): void {
    this.#waiting.forEach((stop, index) => {
      const marks = this.#rows[index];
      if (marks) giveMarks(marks, stop.draft);
    });
    if (this.#waiting.length > 0) this.#named = [];
    this.#waiting = [];
    this.#rows = [];
  }

  /** Words that are no stop: the title, prose, or something to ask about. */
  #talk(text: string, entry: WholeEntry, listed: boolean): Taken {
    const compass = compassIn(text).compass;
    if (compass) this.#state(text);
    const started = this.divisions.some((one) => one.stops.length > 0) || this.#current !== null;
    if (!started) {
      if (
        this.title === null &&
        !isListTitle(text) &&
        !/[,;!.]$/.test(entry.text) &&
        text.length <= 120 &&
        /\p{L}{3}/u.test(text)
      )
        this.title = titleOf(entry.text);
      return "talk";
    }
    if (compass || this.#among === "aids" || isProse(text) || isAccessory(text)) return "talk";
    const words = text.trim().split(/\s+/);
    const small = /^[\p{Ll}(]/u.test(text.trim());
    if (small || words.length > 8 || text.includes("@")) {
      if (this.#last && small && words.length <= 12) this.#last.draft.remarks.push(text.trim());
      return "talk";
    }
    if (/^[*†‡§]/u.test(entry.text.trim()) && !listed) return "talk";
    if (!/\p{L}{2}/u.test(text)) return "talk";
    const near = this.#names.nearest(text.trim());
    this.#questions.ask(
      entry.line,
      `"${text.trim()}" was not understood and is left out; if it is a stop, print its pitch behind it.`,
      text.trim(),
      near,
    );
    return "talk";
  }

  /** "Manuale C-g3 / Pedal C-f3": compasses for the keyboards of the whole list. */
  #state(text: string): void {
    for (const piece of text.split(/[/;]|,\s(?=\p{Lu}\p{Ll})/u)) {
      const { compass } = compassIn(piece);
      if (!compass) continue;
      if (/ped/i.test(piece)) this.stated.pedal ??= compass;
      else this.stated.manual ??= compass;
    }
  }

  /** To be called when no line is left. */
  finish(): void {
    this.#zip();
  }

  /** Divisions that the words of a box name. */
  isEnclosed(division: DivisionDraft): boolean {
    if (division.name === null) return false;
    const coupled = this.divisions.flatMap((one) => (one.name === null ? [] : [{ ...one, name: one.name }]));
    return this.boxes.some((box) =>
      box
        .split(/[\s,/+&]+/)
        .some(
          (word) =>
            word.length > 1 &&
            !/schwell|jalousie|box|kasten/i.test(word) &&
            divisionsMeant(word, coupled).some((one) => one.name === division.name),
        ),
    );
  }
}

const isNumberOnly = (division: DivisionDraft): boolean =>
  division.name !== null && (headingIn(division.name)?.numberOnly ?? false);

const marksFollow = (next: readonly WholeEntry[], count: number, names: KnownNames): boolean =>
  count > 0 &&
  next.length >= count &&
  next.slice(0, count).every((entry) => {
    const parts = partsOfLine(entry.text.slice(0, GLANCE), names);
    return parts.length > 0 && parts.every((part) => part.kind === "marks" && hasMarks(part.draft));
  });

const titleOf = (text: string): string | null => {
  const title = text
    .split("\t")[0]
    ?.replace(/\s+(?:[IVX]+|\d) (?:manuale?|manuals|claviers|klaviere).*$/i, "")
    .replace(/^[\s*#"“„_–-]+|[\s*#"”“_:–-]+$/gu, "");
  return title && /\p{L}{3}/u.test(title) ? title : null;
};

const KEYBOARD_PHRASE =
  /(?<![\p{L}\d])(?:I{1,3}|IV|V)\s?\.?\s?(?:Man(?:ual)?|Klav(?:ier)?|Clav(?:ier)?)\b\.?:?\s|(?<=[\s;,.'’′])(?:Ped(?:al|aal|ale|\.)?|Pédale):?\s(?=\p{Lu})/gu;

/** A line that prints a whole list: parted before each keyboard that it names. */
function inlineHeadings(text: string): string[] {
  // "Manual: Gedackt 8, Prinzipal 4; Pedal: Subbass 16"
  const named = text.split(/[;.]\s+(?=\p{Lu}[\p{L}. -]{1,24}:\s)/u);
  if (named.length > 1 && named.every((piece) => /^[^:]{2,26}:\s.*\d/u.test(piece))) return named;
  if (text.length < 30) return [text];
  const places = [...text.matchAll(KEYBOARD_PHRASE)].filter((match) => !/[-–/]\s?$/.test(text.slice(0, match.index)));
  const keyboards = places.filter((match) => /[IV]/.test(match[0][0] as string));
  if (keyboards.length === 0 || !(places.length >= 2 || (keyboards[0] as RegExpExecArray).index > 0)) return [text];
  const feet = text.match(/\d\s?['’′`´]|\d\s?(?:Fu|vt|voet|pied|ft)/g)?.length ?? 0;
  if (feet < 2) return [text];
  const pieces: string[] = [];
  let from = 0;
  for (const [index, place] of places.entries()) {
    if (place.index > from) pieces.push(text.slice(from, place.index));
    const head = place[0].trim();
    const end = place.index + place[0].length;
    const until = places[index + 1]?.index ?? text.length;
    pieces.push(`${head.replace(/:$/, "")}: ${text.slice(end, until)}`);
    from = until;
  }
  return pieces.map((piece) => piece.replace(/[\s,;]+$/, "").trim()).filter((piece) => piece !== "");
}
