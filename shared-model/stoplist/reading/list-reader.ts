import { isAccessory, isAidsTitle, isListTitle, isProse, tremulantIn } from "./accessories.ts";
import { accessory, readCouplers, readOwnCoupler, readTremulant } from "./aid-lines.ts";
import { couplersIn, isCouplerTitle } from "./couplers.ts";
import type { Questions } from "./drafts.ts";
import { halfTitle } from "./halves.ts";
import { beginDivision } from "./heading-lines.ts";
import { isPullDown } from "./headings.ts";
import { inlineHeadings } from "./inline-headings.ts";
import type { KnownNames } from "./known-names.ts";
import { takeMarks, zip } from "./lengths-apart.ts";
import { listItem, withoutCounting } from "./list-item.ts";
import { ListSoFar, type ListTraits, type Taken } from "./list-so-far.ts";
import { giveMarks, hasLength, hasMarks, isSure, type LinePart, type StopDraft } from "./stop-draft.ts";
import { partsOfLine } from "./stop-line.ts";
import { talk } from "./talk-lines.ts";
import type { WholeEntry } from "./wrapped-lines.ts";

const PREPARED_LINE =
  /^[[(]?\s*(?:vorgesehen|prepared(?: for)?|prep\.|vorbereitet|geplant|en attente|prévu|previsto|predisposto|gereserveerd)\s*[:–-]\s*(.*?)\s*[\])]?$/iu;
const ALL_IN_BRACKETS = /^[[(]([^()[\]]{3,})[\])]$/;
const AIDS_LEAD = /^([^:]{3,60}):\s*(\S.*)$/;

/** The largest organ has a quarter of these stops and a tenth of these divisions. Ours, to bound time. */
const MOST_STOPS = 5000;
const MOST_DIVISIONS = 200;

/** Reads the lines of one list one after the other. */
export class ListReader {
  readonly #list: ListSoFar;
  #isFull = false;

  constructor(names: KnownNames, questions: Questions, traits: ListTraits) {
    this.#list = new ListSoFar(names, questions, traits);
  }

  /** Reads one entry; `next` are those behind it, looked at only to tell headings from other words. */
  read(entry: WholeEntry, next: readonly WholeEntry[]): void {
    for (const piece of this.#pieces(entry)) {
      if (this.#isFull) return;
      this.#list.taken = this.#readPiece(piece, next);
      if (this.#list.count < MOST_STOPS && this.#list.divisions.length < MOST_DIVISIONS) continue;
      this.#isFull = true;
      const limit = this.#list.count < MOST_STOPS ? `${MOST_DIVISIONS} divisions` : `${MOST_STOPS} stops`;
      this.#list.questions.ask({
        kind: "whole-text",
        line: entry.line,
        text: `This text holds more than ${limit}; nothing behind this line was read. Paste one organ's list.`,
        about: "length",
      });
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
          couplersIn(cell, entry.line, this.#list.headings, false) !== null &&
          !partsOfLine(cell, this.#list.names).every((part) => part.kind === "marks"),
      );
    // "IV\tSwell to Great": the numeral numbers the coupler.
    const texts = parted ? cells.slice(/^[IVX]{1,5}[.)]?$/.test(cells[0] as string) ? 1 : 0) : [entry.text];
    return texts.flatMap((text) =>
      inlineHeadings(text).map((piece) =>
        piece === entry.text ? entry : { ...entry, text: piece, lineAt: (): number => entry.line },
      ),
    );
  }

  #readPiece(entry: WholeEntry, next: readonly WholeEntry[]): Taken {
    const prepared = PREPARED_LINE.exec(listItem(entry.text, this.#list.numbered).body);
    const item = listItem(prepared ? (prepared[1] as string) : entry.text, this.#list.numbered);
    const body = withoutCounting(item.body, item.number).replace(ALL_IN_BRACKETS, (whole, inner: string) =>
      partsOfLine(inner, this.#list.names).some((part) => part.kind === "stop" && isSure(part.draft)) ? inner : whole,
    );
    if (prepared && body === "") {
      this.#list.isPreparing = true;
      return "heading";
    }
    if (body === "" || !/[\p{L}\p{N}]/u.test(body)) return this.#list.taken;

    if (this.#readHalfTitle(body)) return "heading";
    const halves = this.#behindHalfTitle(entry, body);
    if (halves) return this.#readPiece(halves, next);
    const heading = prepared ? null : beginDivision(this.#list, entry, item.body, next);
    if (heading !== null) return typeof heading === "string" ? heading : this.#readPiece(heading, next);
    const words = body.replace(/\s+/g, " ");
    if (isAidsTitle(words) || isCouplerTitle(words)) return this.#list.beginAids();
    const lead = AIDS_LEAD.exec(body);
    const isPartOfList = lead !== null && isListTitle(`${(lead[1] as string).replace(/^\d{1,3} /, "")}:`);
    if (lead && isAidsTitle(lead[1] as string) && !isPartOfList) {
      if (tremulantIn(lead[1] as string)) return this.#readBody(entry, body, false, false, next);
      this.#list.beginAids();
      return this.#readAids(entry, lead[2] as string, next);
    }
    if (isListTitle(words)) return "talk";
    if (isPullDown(body) && this.#list.current?.kind === "pedal" && this.#list.current.stops.length === 0) {
      this.#list.current.pullDown = true;
      return "aid";
    }
    // "Reeds: Trumpet 8, Clarion 4"
    if (lead && isPartOfList)
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
    const mark = halfTitle(text);
    if (!mark || this.#list.current?.kind === "pedal") return false;
    if (!mark.sure && !/:\s*$/.test(text)) return false;
    this.#list.half = mark.half;
    return true;
  }

  /** "Mano izquierda: Flautado, Octava, ...": the half is told, and what stands behind it is left to be read; `null` for any other line. */
  #behindHalfTitle(entry: WholeEntry, body: string): WholeEntry | null {
    const [, lead = "", rest = ""] = AIDS_LEAD.exec(body) ?? [];
    const mark = lead === "" ? null : halfTitle(lead);
    if (!mark?.sure || this.#list.current?.kind === "pedal") return null;
    const stops = partsOfLine(rest, this.#list.names).filter(
      (part) => part.kind === "stop" && this.#list.names.knows(part.draft.name),
    );
    if (stops.length < 2) return null;
    this.#list.half = mark.half;
    return { ...entry, text: rest, lineAt: (place) => entry.lineAt(place + entry.text.length - rest.length) };
  }

  /** What stands behind "Spielhilfen:" on the same line, piece by piece. */
  #readAids(entry: WholeEntry, text: string, next: readonly WholeEntry[]): Taken {
    const whole = readCouplers(this.#list, text, entry.line, []);
    if (whole) return whole;
    for (const piece of text.split(/\s*[;,](?!\d)\s*|\t/).filter((one) => one !== ""))
      this.#readBody({ ...entry, text: piece }, piece, false, false, next);
    return "aid";
  }

  #readBody(entry: WholeEntry, body: string, listed: boolean, prepared: boolean, next: readonly WholeEntry[]): Taken {
    const sentences = body.split(/(?<=\p{L}{4})\.\s+(?=\p{Lu}\p{Ll}{2})/u);
    if (sentences.length > 1 && sentences.length <= 12 && sentences.every((one) => this.#isAid(one))) {
      for (const one of sentences) this.#readBody({ ...entry, text: one }, one, false, false, next);
      return "aid";
    }
    const aids = body.split(/\s*[;,](?!\d)\s*/).filter((piece) => piece !== "");
    if (aids.length > 2 && aids.length <= 20 && aids.every((piece) => this.#isAid(piece)) && aids.some(tremulantIn)) {
      for (const piece of aids)
        if (isAccessory(piece) && !tremulantIn(piece)) accessory(this.#list, piece);
        else this.#readBody({ ...entry, text: piece }, piece, false, false, next);
      return "aid";
    }
    const parts = partsOfLine(body, this.#list.names);
    const [first] = parts;
    const drafts = parts.flatMap((part) => (part.kind === "stop" ? [part.draft] : []));
    const strong = drafts.some((draft) => isSure(draft) && this.#list.names.acquaintance(draft.name) !== "strange");
    const shaken = /^(?:\d+ |zwei |two |deux )?tr[eé]m/i.test(body) && !/[;,]/.test(body) && !drafts.some(hasLength);
    if (shaken && readTremulant(this.#list, body, entry.line, true)) return "aid";
    const own = readOwnCoupler(this.#list, body, entry, next);
    if (own) return own;
    const coupled = readCouplers(this.#list, body, entry.line, drafts);
    if (coupled) return coupled;
    const sounds = drafts.some(
      (draft) => hasMarks(draft) && this.#list.names.knows(draft.name) && !tremulantIn(draft.name),
    );
    if (!sounds && readTremulant(this.#list, body, entry.line, parts.length === 1)) return "aid";
    const offset = Math.max(0, entry.text.indexOf(body.slice(0, 20)));
    const lineOf = (draft: StopDraft): number => entry.lineAt(offset + draft.at);
    if (!strong) {
      const known = drafts.some((draft) => hasMarks(draft) && this.#list.names.knows(draft.name));
      if (isAccessory(body) && !known) {
        const pieces = body.split(/\s*[;,](?!\d)\s*/).filter((piece) => piece !== "");
        if (pieces.length > 1 && pieces.some((piece) => tremulantIn(piece))) {
          for (const piece of pieces)
            if (!readTremulant(this.#list, piece, entry.line, true)) accessory(this.#list, piece);
          return "aid";
        }
        return accessory(this.#list, body);
      }
      if (isProse(body) && !this.#isStopDespiteProse(parts, known)) return talk(this.#list, body, entry, listed);
    }
    const marksOnly = parts.length > 0 && parts.every((part) => part.kind === "marks");
    if (marksOnly) return takeMarks(this.#list, parts, entry, next);
    zip(this.#list);
    let taken: Taken = "talk";
    for (const part of parts) {
      if (part.kind === "words") {
        if (
          readTremulant(this.#list, part.text, entry.line, false) ||
          readCouplers(this.#list, part.text, entry.line, [])
        )
          taken = "aid";
        else if (part === first || this.#list.last === null) taken = talk(this.#list, part.text, entry, listed);
        else this.#list.last.draft.remarks.push(part.text);
      } else if (part.kind === "marks") {
        if (this.#list.last) giveMarks(part.draft, this.#list.last.draft);
      } else if (this.#isStop(part, parts, listed, body)) {
        if (prepared) part.draft.prepared = true;
        this.#list.place({ draft: part.draft, line: lineOf(part.draft) });
        taken = "stop";
      } else if (part === first) taken = talk(this.#list, body, entry, listed);
      else if (!isAccessory(part.draft.name) && !readTremulant(this.#list, part.draft.name, entry.line, false))
        this.#list.last?.draft.remarks.push(part.draft.name);
    }
    return taken;
  }

  #isAid(text: string): boolean {
    const words = text.split(/\s+/).length;
    if (words > 8 || isProse(text)) return false;
    return tremulantIn(text) !== null || isAccessory(text) || couplersIn(text, 0, this.#list.headings, true) !== null;
  }

  /** A line that also talks may still be a stop: `Sordun 16' (1612)`, `Quintadena 8', old`. */
  #isStopDespiteProse(parts: readonly LinePart[], known: boolean): boolean {
    const [first] = parts;
    if (first?.kind !== "stop") return false;
    const { draft } = first;
    if (known) return !isProse(draft.name) || this.#list.names.isPlainName(draft.name);
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
    const acquaintance = this.#list.names.acquaintance(draft.name);
    const bare = acquaintance === "strange" ? this.#list.names.acquaintance(draft.bareName) : acquaintance;
    const isPlain = hasMarks(draft) && this.#list.names.isPlainName(draft.name);
    if (!isSure(draft) && !isPlain && isAccessory(draft.name)) return false;
    if (!hasLength(draft) && tremulantIn(draft.name)) return false;
    if (bare === "known") return this.#list.among === "stops" || isSure(draft);
    const words = draft.name.split(/\s+/).length;
    if (words > 7 || isProse(draft.name)) return false;
    if (isSure(draft)) return this.#list.among === "stops" || bare === "like";
    if (this.#list.among === "aids") return false;
    if (hasMarks(draft))
      return (
        bare === "like" ||
        (!this.#list.mostlyMarked && words <= 4 && /^\p{Lu}/u.test(draft.name)) ||
        (listed && words <= 5)
      );
    if (bare === "like") return !/[.!?]$/.test(body) || parts.length > 1;
    return (
      listed &&
      words <= 4 &&
      this.#list.last !== null &&
      /^\p{Lu}/u.test(draft.name) &&
      (this.#list.current !== null || this.#list.divisions.length > 0)
    );
  }

  /** What the list has said, to be called when no line is left. */
  finish(): ListSoFar {
    zip(this.#list);
    return this.#list;
  }
}
