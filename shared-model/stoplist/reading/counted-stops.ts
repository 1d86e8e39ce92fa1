import type { PrintedLine } from "./plain-text.ts";

/** A figure where the number of a knob can stand: at the start of a line, behind a heading's colon, between stops. */
const PLACE = /(?:^|(?<=[:;,\t])|(?<=\s{2}))(\s*)(\d{1,3})[.)]?(\s+)(?=["“„(*]?\p{Lu})/gu;
/** So many knobs that nobody numbers feet in that order by chance. */
const ENOUGH = 6;

/**
 * Knobs numbered through a whole list (`Swell: 1 Open Diapason 8, 2 Oboe 8` ... `9 Swell to Great`) lose their numbers:
 * only where every figure in such a place counts on from the one before, through several on one line.
 */
export function withoutKnobNumbers(lines: readonly PrintedLine[]): readonly PrintedLine[] {
  const found = lines.map(({ text }) => [...text.matchAll(PLACE)].map((match) => Number(match[2])));
  const all = found.flat();
  const counts = all.length >= ENOUGH && all.every((number, at) => number === (all[0] as number) + at) && all[0] === 1;
  if (!counts || !found.some((numbers) => numbers.length > 1)) return lines;
  return lines.map((line) => {
    const text = line.text.replace(PLACE, "$1");
    return text === line.text ? line : { ...line, text };
  });
}
