import type { PrintedLine } from "./plain-text.ts";
import { remarkIn } from "./remarks.ts";

const SIGN = "\\*{1,3}|[†‡§¹²³⁴⁵]";
/** `* prepared for only`, `(*) = from the Great`: a sign and what it says of the stops that carry it. */
const NOTE = new RegExp(`^\\s*\\(?(${SIGN})\\)?\\s*(?:[=:–—-]\\s*)?(\\p{L}.{3,60}?)[.;]?\\s*$`, "u");
const LONGEST = 60;

const escaped = (sign: string): string => sign.replace(/[*]/g, "\\*");

/**
 * Puts what a footnote says (`* prepared for`) to the stops that carry its sign. Only notes that change what a stop is
 * are put there; all others are left to the reader.
 */
export function withFootnotes(lines: readonly PrintedLine[]): readonly PrintedLine[] {
  const notes = lines.flatMap(({ text }, at) => {
    const [, sign, note] = NOTE.exec(text) ?? [];
    return sign && note && note.length <= LONGEST && remarkIn(note) ? [{ at, sign, note }] : [];
  });
  if (notes.length === 0) return lines;
  return lines.map((line, at) => {
    if (notes.some((note) => note.at === at)) return { ...line, text: "" };
    let { text } = line;
    for (const { sign, note } of notes) {
      const mark = escaped(sign);
      const behind = new RegExp(`(?<=[\\p{L}\\d'’′.)])\\s?\\(?(?<!\\*)${mark}(?!\\*)\\)?(?=$|[\\s,;])`, "gu");
      const before = new RegExp(`^(\\s*(?:\\d{1,3}[.)]?\\s+)?)\\(?${mark}(?!\\*)\\)?\\s*(?=["“\\p{Lu}\\d])(.*)$`, "u");
      text = text.replace(behind, ` (${note})`).replace(before, `$1$2 (${note})`);
    }
    return text === line.text ? line : { ...line, text };
  });
}
