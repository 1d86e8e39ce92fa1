import { isAccessory, isProse, tremulantIn } from "./accessories.ts";
import { couplersIn, looksLikeDivision } from "./couplers.ts";
import { compassIn } from "./keys-in-line.ts";
import { listItem } from "./list-item.ts";
import type { ListSoFar, Taken } from "./list-so-far.ts";
import type { StopDraft } from "./stop-draft.ts";
import type { WholeEntry } from "./wrapped-lines.ts";

const ENCLOSURE = /(?:schwell|swell ?box|expression|jalousie|zwelkast|persian|espression|expresi)/iu;
const OWN_COUPLER = /^(?:(unis(?:on|\.) off)|(sub[- ]?oct(?:ave|\.)?)|(?:super[- ]?)?oct(?:ave|\.)?)(?: coupler)?$/i;

/** The number of a coupler in a list of them (`IV  Swell to Great`), not the number of a keyboard (`II Man. to I`). */
const NUMERAL = /^\(?[IVX]{1,5}[.):]?\s+(?!(?:man|klav|clav|tast|tecl)[\p{L}.]*\s|koppel|coupler)(?=\p{Lu}\p{Ll})/iu;

/** Octave couplers within a division, printed among its stops (`Sub Octave`, `Unison Off`). */
export function readOwnCoupler(
  list: ListSoFar,
  text: string,
  entry: WholeEntry,
  next: readonly WholeEntry[],
): Taken | null {
  const pieces = text
    .trim()
    .split(/\s*[;,]\s*|\t/)
    .map((piece) => OWN_COUPLER.exec(piece));
  const division = list.current;
  if (!division || division.kind === "pedal" || division.name === null) return null;
  const own = pieces.filter((piece) => piece !== null);
  const beside = next.slice(0, 2).some((one) => /^(?:sub|unison)/i.test(listItem(one.text, list.numbered).body));
  // "Octave" alone is a stop, unless what stands beside it tells.
  const told = own.some(([, off, sub]) => off !== undefined || sub !== undefined) || list.taken === "aid" || beside;
  if (own.length < pieces.length || !told) return null;
  for (const [, off, sub] of own) {
    if (off === undefined) {
      const pitches = [sub === undefined ? 4 : 16] as const;
      list.couplers.push({ line: entry.line, text, first: division.name, second: division.name, by: "self", pitches });
    } else list.unisonOff.push({ line: entry.line, text, words: division.name });
  }
  return "aid";
}

/** Takes the line as couplers; what stands among them and couples nothing known is asked about. `null` when it is none. */
export function readCouplers(list: ListSoFar, text: string, line: number, drafts: readonly StopDraft[]): Taken | null {
  if (drafts.some((draft) => draft.pitches.length > 0 && list.names.knows(draft.name)) || compassIn(text).compass)
    return null;
  const expected = list.among === "aids" || list.taken === "aid";
  const unnumbered = expected ? text.replace(NUMERAL, "") : text;
  const found =
    (unnumbered === text ? null : couplersIn(unnumbered, line, list.headings, expected)) ??
    couplersIn(text, line, list.headings, expected);
  const unread = found?.unread.filter((piece) => !isProse(piece)) ?? [];
  if (!found || (found.couplers.length === 0 && found.unisonOff.length === 0 && unread.length === 0)) return null;
  list.couplers.push(...found.couplers);
  list.unisonOff.push(...found.unisonOff.map((words) => ({ line, text, words })));
  let shaken = false;
  for (const piece of unread) {
    // "Tremblants doux et fort"
    if (shaken && /^(?:doux|forts?|lents?|vite)$/i.test(piece)) continue;
    if (shaken && looksLikeDivision(piece, list.headings) && readTremulant(list, `Tremulant ${piece}`, line, false))
      continue;
    shaken = readTremulant(list, piece, line, false);
    if (shaken || isAccessory(piece)) continue;
    list.questions.ask({
      kind: "left-out",
      line,
      text: `"${piece}" stands among the couplers and names no two divisions of this list, so it is left out; what does it couple?`,
      about: piece,
      choices: list.divisions.map((one) => one.name ?? "the manual"),
    });
  }
  return "aid";
}

/** Takes the words as a tremulant; `alone` tells that the line holds nothing else. False when they are none. */
export function readTremulant(list: ListSoFar, text: string, line: number, alone: boolean): boolean {
  const found = tremulantIn(text);
  if (!found) return false;
  const words = text.trim().split(/\s+/).length;
  if (words > 12 || (isAccessory(text) && !alone)) return false;
  list.tremulants.push({
    line,
    text,
    scope: found.scope,
    within: list.among === "stops" ? list.current : null,
    whole: found.whole,
  });
  return true;
}

/** Notes a line about the console; words that name a box are kept. */
export function accessory(list: ListSoFar, text: string): Taken {
  if (ENCLOSURE.test(text)) list.boxes.push(text);
  return "aid";
}
