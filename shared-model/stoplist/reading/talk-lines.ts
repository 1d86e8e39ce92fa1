import { isAccessory, isLetter, isListTitle, isProse } from "./accessories.ts";
import { compassIn } from "./keys-in-line.ts";
import type { ListSoFar, Taken } from "./list-so-far.ts";
import { makerIn, titleIn } from "./title.ts";
import type { WholeEntry } from "./wrapped-lines.ts";

/** The menu of a page: many short words, parted by strokes or cells. */
function isMenu(text: string): boolean {
  const cells = text.split(/[\t|•·»]/).map((cell) => cell.trim());
  return cells.length >= 3 && cells.every((cell) => cell.length > 0 && cell.length <= 24 && !/\d/.test(cell));
}

const titleOf = (text: string): string | null => {
  const title = text
    .split("\t")[0]
    ?.replace(/\s+(?:[IVX]+|\d) (?:manuale?|manuals|claviers|klaviere).*$/i, "")
    .replace(/^[\s*#"“„_–-]+|[\s*#"”“_:–-]+$/gu, "");
  return title && /\p{L}{3}/u.test(title) ? title : null;
};

function nameOrgan(list: ListSoFar, text: string | null): void {
  if (text === null) return;
  const { name, builder, year } = titleIn(text);
  list.title = name;
  if (builder !== null || year !== null) list.made = { builder, year };
}

/** Words that are no stop: the title, prose, or something to ask about. */
export function talk(list: ListSoFar, text: string, entry: WholeEntry, listed: boolean): Taken {
  // "One manual, 54 notes (C-f3), no pedal": the part that was looked at may be its beginning alone.
  const said = compassIn(text).compass ? text : entry.text;
  const { compass } = compassIn(said);
  if (compass) state(list, said);
  const started = list.divisions.some((one) => one.stops.length > 0) || list.current !== null;
  if (!started) {
    const made = makerIn(entry.text);
    if (made) list.made ??= made;
    else if (
      list.title === null &&
      compass === null &&
      !isLetter(text) &&
      !isLetter(entry.text) &&
      !isMenu(entry.text) &&
      !isListTitle(text) &&
      !/[,;!.]$/.test(entry.text) &&
      text.length <= 120 &&
      /\p{L}{3}/u.test(text)
    )
      nameOrgan(list, titleOf(entry.text));
    return "talk";
  }
  if (compass || list.among === "aids" || isProse(text) || isAccessory(text)) return "talk";
  const words = text.trim().split(/\s+/);
  const small = /^[\p{Ll}(]/u.test(text.trim());
  if (small || words.length > 8 || text.includes("@")) {
    if (list.last && small && words.length <= 12) list.last.draft.remarks.push(text.trim());
    return "talk";
  }
  if (/^[*†‡§¹²³⁴⁵⁶⁷⁸⁹⁰]/u.test(entry.text.trim()) && !listed) return "talk";
  if (!/\p{L}{2}/u.test(text) || isSentence(text, words)) return "talk";
  const near = list.names.nearest(text.trim());
  list.questions.ask({
    kind: "left-out",
    line: entry.line,
    text: `"${text.trim()}" was not understood and is left out; if it is a stop, print its pitch behind it.`,
    about: text.trim(),
    choices: near,
  });
  return "talk";
}

/** `Der Schlüssel liegt beim Mesner.`: several words in small letters, no figure, and a full stop. */
const isSentence = (text: string, words: readonly string[]): boolean =>
  words.length >= 4 &&
  /\p{L}{3}[.!?]$/u.test(text.trim()) &&
  !/\d/.test(text) &&
  words.filter((word) => /^\p{Ll}{4}/u.test(word)).length >= 2;

/** "Manuale C-g3 / Pedal C-f3": compasses for the keyboards of the whole list. */
function state(list: ListSoFar, text: string): void {
  const pieces = text.split(
    /[/;]|,\s(?=\p{L}{3})|\s(?:and|und|et|en|e|y)\s(?=(?:\p{Ll}{2,3}\s|l['’])?(?:man|p[eé]d))/iu,
  );
  const stated = pieces.filter((piece) => compassIn(piece).compass !== null);
  for (const piece of stated) {
    // What stands apart ("45 notas, octava corta") is said of the one compass that there is.
    const { compass } = compassIn(stated.length === 1 ? text : piece);
    if (!compass) continue;
    if (/(?<!(?:no|without|ohne|sans|senza|sin|zonder) )ped/i.test(piece)) list.stated.pedal ??= compass;
    else list.stated.manual ??= compass;
  }
}
