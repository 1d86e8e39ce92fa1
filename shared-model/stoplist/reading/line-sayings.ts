import { readStoplist } from "./read-stoplist.ts";
import type { Reading } from "./reading.ts";

/** What one line of a printed list says besides stops, which carry their lines themselves. */
export interface LineSaying {
  /** It names the organ. */
  readonly isName: boolean;
  /** It tells who made the organ, or when. */
  readonly isMaker: boolean;
  /** Divisions that it heads. */
  readonly heads: readonly string[];
  /** Divisions whose compass, number or box it tells. */
  readonly describes: readonly string[];
  readonly couplers: Reading["couplers"];
  readonly tremulants: readonly string[];
}

/** More lines without stops than a list has; behind them nothing is said of what they say. */
const MOST_LINES = 60;

const couplerWords = ({ from, to, pitch }: Reading["couplers"][number]): string => `${from} to ${to} ${pitch}`;

function saidBy(whole: Reading, without: Reading): LineSaying | null {
  const left = new Set(without.divisions.map((division) => division.name));
  const couplers = new Set(without.couplers.map(couplerWords));
  const facts = (reading: Reading): ReadonlyMap<string | null, string> =>
    new Map(
      reading.divisions.map(({ name, low, high, missing, enclosed, keyboard }) => [
        name,
        JSON.stringify([low, high, missing, enclosed, keyboard]),
      ]),
    );
  const [now, then] = [facts(whole), facts(without)];
  const names = whole.divisions.flatMap(({ name }) => (name === null ? [] : [name]));
  const heads = names.filter((name) => !left.has(name));
  const saying: LineSaying = {
    isName: whole.name !== null && without.name !== whole.name,
    isMaker:
      (whole.builder !== null && without.builder !== whole.builder) ||
      (whole.year !== null && without.year !== whole.year),
    heads,
    describes: names.filter((name) => left.has(name) && now.get(name) !== then.get(name)),
    // A heading that goes takes its couplers along; they are said elsewhere.
    couplers: heads.length > 0 ? [] : whole.couplers.filter((each) => !couplers.has(couplerWords(each))),
    tremulants: heads.length > 0 ? [] : whole.tremulants.filter((name) => !without.tremulants.includes(name)),
  };
  const isSilent =
    !saying.isName &&
    !saying.isMaker &&
    [saying.heads, saying.describes, saying.couplers, saying.tremulants].every((list) => list.length === 0);
  return isSilent ? null : saying;
}

/**
 * For each line without a stop, what it says: found by reading the list without it and looking at what is missing then.
 * So it holds however the reader came to its result. Lines that say nothing are left out.
 *
 * @param read reads a list; default as it is printed.
 */
export function lineSayings(
  text: string,
  read: (text: string) => Reading = readStoplist,
): ReadonlyMap<number, LineSaying> {
  const reading = read(text);
  const lines = text.split(/\r\n|\r|\n/u);
  const withStops = new Set(reading.divisions.flatMap((division) => division.stops.map((stop) => stop.line)));
  const sayings = new Map<number, LineSaying>();
  let looked = 0;
  for (const [index, line] of lines.entries()) {
    if (line.trim() === "" || withStops.has(index + 1)) continue;
    looked += 1;
    if (looked > MOST_LINES) break;
    const saying = saidBy(reading, read(lines.map((each, at) => (at === index ? "" : each)).join("\n")));
    if (saying) sayings.set(index + 1, saying);
  }
  return sayings;
}
