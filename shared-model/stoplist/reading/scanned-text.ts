import type { PrintedLine } from "./plain-text.ts";

/**
 * What scanners take for something else: small l and capital I for 1, O for 0. Mended only where nothing but a figure can
 * stand: before feet, in ranks, and in numbers that count the lines.
 */

const FIGURE = "[\\dlIO]";
const FEET = "(?= ?(?:ft|feet|fu(?:ß|ss)|pieds?|piedi|voet|vt|['’‘′`´ʹʼ＇]))";
const LENGTH = new RegExp(
  `(?<![\\p{L}\\d])(?=${FIGURE}{0,1}\\d)([lI]${FIGURE}|${FIGURE}O)(?![\\p{L}\\d])${FEET}`,
  "gu",
);
const RANKS = /(?<![\p{L}\d])(?=[Il]*l)([Il]{2,3})(?= ?(?:ranks?|rks?|fach|rangs?|file|sterk)(?![\p{L}]))/gu;
const NUMBER = /^(\s*)([\dlIO]{1,2})(?=[.)]?\s+["“„(]?\p{Lu})/u;

const figures = (text: string): string => text.replace(/[lI]/g, "1").replace(/O/g, "0");

/** The number that stands or may stand before a line, and whether it is printed in plain figures. */
function numberBefore(text: string): { readonly value: number; readonly plain: boolean } | null {
  const match = NUMBER.exec(text);
  if (!match) return null;
  const printed = match[2] as string;
  return { value: Number(figures(printed)), plain: /^\d+$/.test(printed) };
}

/** Lines of a scanned page with the figures that their neighbours prove. */
export function withoutScanFaults(lines: readonly PrintedLine[]): readonly PrintedLine[] {
  const numbers = lines.map(({ text }) => numberBefore(text));
  const known = numbers.map((number) => number?.plain === true);
  // A mended number proves the next one; two rounds, downwards and upwards, reach every run.
  const order = [...lines.keys()];
  for (const [round, step] of [
    [order, -1],
    [[...order].reverse(), 1],
  ] as const) {
    let last: number | null = null;
    for (const at of round) {
      const number = numbers[at];
      if (!number) continue;
      if (!known[at] && last !== null && number.value === last - step) known[at] = true;
      last = known[at] ? number.value : null;
    }
  }
  return lines.map((line, at) => {
    const number = numbers[at];
    const mended =
      number && !number.plain && known[at]
        ? line.text.replace(NUMBER, (_, blank: string) => `${blank}${number.value}`)
        : line.text;
    const text = mended
      .replace(LENGTH, (printed: string) => figures(printed))
      .replace(RANKS, (printed: string) => printed.replace(/l/g, "I"));
    return text === line.text ? line : { ...line, text };
  });
}
