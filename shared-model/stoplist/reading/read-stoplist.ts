import { type Compass, type Key, LOWEST_KEY } from "../../pitch/key.ts";
import { foldedSpelling } from "../glossary/spelling.ts";
import { isFarewell } from "./accessories.ts";
import { inReadingOrder } from "./columns.ts";
import type { Coupled, PrintedCoupler } from "./couplers.ts";
import { divisionsMeant } from "./couplers.ts";
import { type DivisionDraft, type PlacedStop, Questions } from "./drafts.ts";
import { headingIn } from "./headings.ts";
import { KnownNames } from "./known-names.ts";
import { isNumbered, listItem } from "./list-item.ts";
import { ListReader } from "./list-reader.ts";
import type { ListSoFar } from "./list-so-far.ts";
import { printedLines } from "./plain-text.ts";
import { GROUP_ANSWERS, PEDAL_STOP_ANSWERS, SHAKES_ALL } from "./question.ts";
import { withoutRankLetters, withRows } from "./rank-letters.ts";
import type { ReadDivision, Reading, ReadStop } from "./reading.ts";
import { settledCouplers } from "./settle-couplers.ts";
import { printsPitch, settledStops } from "./settle-stops.ts";
import { partsOfLine } from "./stop-line.ts";
import { type WholeEntry, wholeEntries } from "./wrapped-lines.ts";

/** How couplers and tremulants name the one manual of a list without headings, whose own name is `null`. */
const UNNAMED_MANUAL = "Manual";

const LOOK_AHEAD = 40;

/** Headings that stand alone on their lines, for words in couplers that come before them. */
function headingsOf(entries: readonly WholeEntry[]): string[] {
  const names = new Set<string>();
  for (const { text } of entries) {
    const lead = headingIn(text) ?? headingIn(listItem(text, false).body) ?? headingIn(text.split(":")[0] ?? "");
    if (lead?.exact) names.add(lead.name);
    if (names.size >= 200) break;
  }
  return [...names];
}

/** Whether most lines with a length print a foot mark or a word for feet. */
function isMostlyMarked(entries: readonly WholeEntry[], names: KnownNames): boolean {
  let [marked, bare] = [0, 0];
  for (const { text } of entries.slice(0, 400)) {
    for (const part of partsOfLine(listItem(text, false).body, names)) {
      if (part.kind === "words") continue;
      for (const mark of part.draft.pitches) {
        if (mark.sure) marked += 1;
        else bare += 1;
      }
    }
  }
  return marked > bare;
}

/** Two blocks of stops without headings are often the halves of one keyboard: asked, not guessed. */
function askAboutBlocks(
  divisions: readonly DivisionDraft[],
  entries: readonly WholeEntry[],
  questions: Questions,
): void {
  const [only] = divisions;
  if (!only || divisions.length > 1 || only.name !== null) return;
  const lines = new Set(only.stops.map(({ line }) => line));
  const starts = entries.filter(({ line, blankBefore }) => blankBefore && lines.has(line)).map(({ line }) => line);
  const second = starts.find((line) => only.stops.filter((stop) => stop.line < line).length >= 3);
  if (starts.length !== 2 || second === undefined) return;
  const [before, behind] = [
    only.stops.filter(({ line }) => line < second),
    only.stops.filter(({ line }) => line >= second),
  ];
  if (before.length < 3 || behind.length < 3) return;
  questions.ask({
    kind: "groups",
    line: second,
    text: "The list falls into two groups without headings; they are read as one manual. Are they its bass and treble halves, or two keyboards?",
    about: only.stops.find(({ line }) => line === second)?.draft.name ?? "",
    choices: Object.values(GROUP_ANSWERS),
  });
}

/** Headings without stops: pull-down pedals stay, summaries of keyboards go, others are asked about. */
function withStops(
  divisions: readonly DivisionDraft[],
  couplers: PrintedCoupler[],
  questions: Questions,
): DivisionDraft[] {
  const isFilled = (division: DivisionDraft): boolean => division.stops.length > 0;
  if (!divisions.some(isFilled)) return [];
  return divisions.filter((division) => {
    if (isFilled(division)) return true;
    if (division.kind === "pedal") {
      const isCoupled = couplers.some(
        (one) =>
          one.by === "pedal" ||
          divisionsMeant(one.second ?? "", named([division])).length > 0 ||
          divisionsMeant(one.first ?? "", named([division])).length > 0,
      );
      if (division.pullDown && !isCoupled)
        couplers.push({
          line: division.line,
          text: division.name ?? "Pedal",
          first: null,
          second: null,
          by: "pedal",
          pitches: [8],
        });
      if (division.pullDown || isCoupled) return true;
    }
    const summary =
      headingIn(division.name ?? "")?.numberOnly || /^manual|^clavier|^pedal|^manuaal/i.test(division.name ?? "");
    if (!summary)
      questions.ask({
        kind: "left-out",
        line: division.line,
        text: `No stops are printed under ${division.name}, so it is left out; is it a division of its own?`,
        about: division.name ?? "",
      });
    return false;
  });
}

/** Lines behind a letter's farewell: a name, an address. */
const LAST_LINES = 6;

/** The entries without the end of the letter in which they were sent. */
function withoutFarewell(entries: readonly WholeEntry[]): readonly WholeEntry[] {
  const end = entries.findIndex(({ text }, at) => at >= entries.length - LAST_LINES && isFarewell(text));
  return end > 0 ? entries.slice(0, end) : entries;
}

const WHOLE_ORGAN = /orgel$|organ$|^grand[- ]?orgue|^orgue|^[oó]rgano|^gran/iu;

/** "Hauptorgel" over the divisions of an organ, with no stops of its own: its name. */
function titleDivision(divisions: readonly DivisionDraft[]): DivisionDraft | null {
  const [first, second] = divisions;
  if (!first || !second || first.stops.length > 0 || first.kind === "pedal" || first.keyboard !== null) return null;
  return WHOLE_ORGAN.test(first.name ?? "") && second.stops.length > 0 && second.role === first.role ? first : null;
}

const named = (divisions: readonly DivisionDraft[]): Coupled[] =>
  divisions.map(({ name, role, kind, keyboard }) => ({ name: name ?? UNNAMED_MANUAL, role, kind, keyboard }));

/** A coupler to the pedal of a list that prints no pedal: the pedal has no stops of its own. */
function pedalOfCouplers(divisions: readonly DivisionDraft[], couplers: readonly PrintedCoupler[]): DivisionDraft[] {
  const hasPedal = divisions.some(({ kind }) => kind === "pedal");
  const wanted = couplers.find(
    (one) =>
      one.by === "pedal" || [one.first, one.second].some((end) => end !== null && headingIn(end)?.kind === "pedal"),
  );
  if (hasPedal || !wanted || divisions.length === 0) return [];
  return [
    {
      name: "Pedal",
      role: "pedal",
      kind: "pedal",
      keyboard: null,
      compass: null,
      enclosed: false,
      line: wanted.line,
      pullDown: true,
      stops: [],
    },
  ];
}

function settledTremulants(list: ListSoFar, divisions: readonly DivisionDraft[], questions: Questions): string[] {
  const coupled = named(divisions);
  const found: string[] = [];
  const add = (name: string): void => {
    if (!found.includes(name)) found.push(name);
  };
  for (const { line, text, scope, within, whole } of list.tremulants) {
    const words = scope?.split(/\s*[,/+&]\s*|\s+/).filter((word) => word.length > 0) ?? [];
    const phrase = scope === null ? [] : divisionsMeant(scope, coupled);
    const meant =
      phrase.length === 1
        ? phrase
        : words.flatMap((word) => {
            const one = /\p{Lu}|[IV]/u.test(word) ? divisionsMeant(word, coupled) : [];
            return one.length === 1 ? one : [];
          });
    const home =
      within && divisions.includes(within) ? within : (divisions.find((one) => one.name === within?.name) ?? null);
    if (meant.length > 0) for (const one of meant) add(one.name);
    else if (whole) add("all");
    else if (home?.kind === "manual" && home.name !== null && divisions.length > 1) add(home.name);
    else {
      add("all");
      if (scope !== null && words.length <= 3 && /^\p{Lu}/u.test(scope) && divisions.length > 1) {
        questions.ask({
          kind: "tremulant",
          line,
          text: `"${text.trim()}" names no division of this list; it is taken for the whole organ. What does it shake?`,
          about: text.trim(),
          choices: [...coupled.map((one) => one.name), SHAKES_ALL],
        });
      }
    }
  }
  return found.includes("all") && found.length > 1 ? found.filter((name) => name !== "all").concat("all") : found;
}

/** Keyboards whose own pitch can be turned off; words that name none of this list are silent, since nothing else is lost. */
function settledUnisonOff(list: ListSoFar, divisions: readonly DivisionDraft[]): string[] {
  const coupled = named(divisions);
  const found = list.unisonOff.flatMap(({ words }) => {
    const meant = divisionsMeant(words, coupled).filter(({ kind }) => kind === "manual");
    return meant.length === 1 ? meant.map(({ name }) => name) : [];
  });
  return [...new Set(found)];
}

const low = (compass: Compass | null): number | null => compass?.low ?? null;
const high = (compass: Compass | null): number | null => compass?.high ?? null;

/** Names that two divisions share are told apart, since couplers and files name divisions. */
function distinctNames(divisions: readonly DivisionDraft[]): void {
  const seen = new Map<string, number>();
  for (const division of divisions) {
    if (division.name === null) continue;
    const count = (seen.get(division.name) ?? 0) + 1;
    seen.set(division.name, count);
    if (count > 1) division.name = `${division.name} ${division.keyboard ?? count}`;
  }
}

/**
 * Reads a printed stoplist in any usual layout and in the languages of the trade. What the list leaves open comes back as
 * questions with their lines; the reading holds the rest. Never throws; text that is too long or is no text gives no divisions and one question.
 *
 * `readStoplist("Principal 8'\nMixtur IV")` is one manual without a name, with two stops.
 */
export function readStoplist(text: string): Reading {
  const printed = printedLines(text);
  const questions = new Questions();
  questions.add(printed.questions);
  if (printed.lines.length === 0 && printed.questions.length > 0) {
    return {
      name: null,
      builder: null,
      year: null,
      divisions: [],
      couplers: [],
      unisonOff: [],
      tremulants: [],
      questions: questions.list(),
    };
  }
  const names = new KnownNames();
  const { lines, letters } = withoutRankLetters(printed.lines, questions);
  const entries = withoutFarewell(wholeEntries(inReadingOrder(lines, names)));
  const reader = new ListReader(names, questions, {
    headings: headingsOf(entries),
    numbered: isNumbered(entries.map((entry) => entry.text)),
    mostlyMarked: isMostlyMarked(entries, names),
  });
  entries.forEach((entry, index) => {
    reader.read(entry, entries.slice(index + 1, index + 1 + LOOK_AHEAD));
  });
  const list = reader.finish();

  const couplers = [...list.couplers];
  const title = list.title === null ? titleDivision(list.divisions) : null;
  const kept = withStops(
    list.divisions.filter((division) => division !== title),
    couplers,
    questions,
  );
  const divisions = [...kept, ...pedalOfCouplers(kept, couplers)];
  distinctNames(divisions);
  lendByPedal(divisions);
  countFromTop(divisions);
  const stops = divisions.flatMap((division) => division.stops);
  if (stops.length === 0)
    questions.ask({
      kind: "whole-text",
      line: 1,
      text: "No stops were found in this text; is it a stoplist?",
      about: "",
    });
  const mostlyPrinted = stops.filter(printsPitch).length * 2 > stops.length;
  askAboutBlocks(divisions, entries, questions);
  const settled = divisions.map((division): ReadDivision => {
    const statedCompass = division.kind === "pedal" ? list.stated.pedal : list.stated.manual;
    const compass = division.compass ?? statedCompass;
    const settledHere = settledStops(division, names, questions, mostlyPrinted);
    askAboutPedalStops(division, settledHere, questions);
    return {
      name: division.name,
      kind: division.kind,
      keyboard: division.keyboard,
      low: low(compass),
      high: high(compass),
      missing: compass?.missing ?? [],
      enclosed: division.enclosed || list.isEnclosed(division),
      stops: settledHere,
    };
  });
  return {
    name: list.title ?? title?.name ?? null,
    builder: list.made?.builder ?? null,
    year: list.made?.year ?? null,
    divisions: withRows(settled, letters),
    couplers: settledCouplers(couplers, named(divisions), questions),
    unisonOff: settledUnisonOff(list, divisions),
    tremulants: settledTremulants(list, divisions, questions),
    questions: questions.list(),
  };
}

/** Fewer keys than any whole manual has. */
const SHORT_MANUAL = 45;
/** The usual ends of French keyboards, c and d above the third octave, where a list does not say how they end. */
const [HIGH_C, HIGH_D]: readonly [Key, Key] = [84, 86];

/** A manual of few notes has its bass keys missing (`Récit, 27 notes`): it ends where the others do. Common practice. */
function countFromTop(divisions: readonly DivisionDraft[]): void {
  const manuals = divisions.filter(({ kind }) => kind === "manual");
  const keysOf = ({ low, high }: Compass): number => high - low + 1;
  const whole = manuals.flatMap(({ compass }) => (compass && keysOf(compass) >= SHORT_MANUAL ? [compass.high] : []));
  for (const division of manuals) {
    const { compass } = division;
    if (!compass || compass.low !== LOWEST_KEY || keysOf(compass) >= SHORT_MANUAL) continue;
    const count = keysOf(compass);
    const high = whole.length > 0 ? Math.max(...whole) : (HIGH_D - count + 1) % 12 === 0 ? HIGH_D : HIGH_C;
    division.compass = { ...compass, low: high - count + 1, high };
  }
}

/** "Violone 16 (Pedal)" under a manual, where the pedal prints the same stop: the pedal lends it. */
function lendByPedal(divisions: readonly DivisionDraft[]): void {
  const pedal = divisions.filter(({ kind }) => kind === "pedal").flatMap(({ stops }) => stops);
  for (const { draft } of divisions.filter(({ kind }) => kind === "manual").flatMap(({ stops }) => stops)) {
    const isTwin = ({ draft: other }: PlacedStop): boolean =>
      foldedSpelling(other.name) === foldedSpelling(draft.name) && other.pitches[0]?.foot === draft.pitches[0]?.foot;
    if (!draft.atPedal || draft.borrowed !== null || !pedal.some(isTwin)) continue;
    draft.atPedal = false;
    draft.borrowed = "Pedal";
  }
}

/** Stops that the list gives to the pedal though they stand under a manual stay where they are printed, with a question. */
function askAboutPedalStops(division: DivisionDraft, stops: readonly ReadStop[], questions: Questions): void {
  if (division.kind === "pedal") return;
  const atPedal = division.stops.filter(({ draft }) => draft.atPedal);
  const [first] = atPedal;
  if (!first || stops.length === 0) return;
  const list = atPedal.map(({ draft }) => draft.name).join(", ");
  questions.ask({
    kind: "pedal-stops",
    line: first.line,
    text: `${list}: printed under a manual, played by the pedal, and read where it is printed. Does it belong to a pedal division?`,
    about: first.draft.name,
    stops: atPedal.map(({ draft }) => draft.name),
    choices: Object.values(PEDAL_STOP_ANSWERS),
  });
}
