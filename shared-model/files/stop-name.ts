import type { Foot } from "../pitch/foot.ts";
import { pitchName } from "../pitch/reading.ts";
import type { Half, Stop } from "../stoplist/instrument.ts";
import { folded, nearestOf } from "./nearest.ts";
import { partStopText, romanNumeral } from "./stop-text.ts";
import { unlike } from "./unlike.ts";

/** What a stop is called by. */
export interface CalledStop {
  readonly name: string;
  readonly pitch: Foot | null;
  readonly ranks: number;
  readonly half: Half;
}

/** A stop's words as a file writes them: `Nasat 2 2/3`, `Dulzian 8 bass`; ranks only when asked for (`Mixtur IV`). */
export const stopWords = (stop: CalledStop, withRanks = false): string =>
  [
    stop.name,
    withRanks && stop.ranks > 1 ? romanNumeral(stop.ranks) : null,
    stop.pitch ? pitchName(stop.pitch) : null,
    stop.half,
  ]
    .filter((word) => word !== null)
    .join(" ");

/** The stop's name within its division, by which `drawn` lists and references find it alone: its id without the division. */
export const stopLabel = (stop: Pick<Stop, "id" | "division">): string => stop.id.slice(stop.division.length + 1);

/**
 * Labels for the stops of one division, unique and in the same order: name, pitch and half; with the ranks where stops
 * alike so far differ in them; with a number behind (`(2)`) where they still do not differ.
 */
export function labelsFor(stops: readonly CalledStop[]): readonly string[] {
  const ranksOf = new Map<string, Set<number>>();
  for (const stop of stops) {
    const short = stopWords(stop);
    const ranks = ranksOf.get(short);
    if (ranks) ranks.add(stop.ranks);
    else ranksOf.set(short, new Set([stop.ranks]));
  }
  const taken = new Set<string>();
  return stops.map((stop) => {
    const short = stopWords(stop);
    const label = (ranksOf.get(short)?.size ?? 1) > 1 ? stopWords(stop, true) : short;
    const unique = unlike(label, (one) => taken.has(one));
    taken.add(unique);
    return unique;
  });
}

/** The stops of one division, made ready to be found by their names. */
export interface StopIndex<T> {
  readonly stops: readonly T[];
  readonly labels: readonly string[];
  readonly foldedLabels: readonly string[];
  readonly foldedNames: readonly string[];
}

/** Makes the index for {@link findStops}; `labels` are those of {@link labelsFor}, in the order of `stops`. */
export const stopIndex = <T extends CalledStop>(stops: readonly T[], labels = labelsFor(stops)): StopIndex<T> => ({
  stops,
  labels,
  foldedLabels: labels.map(folded),
  foldedNames: stops.map((stop) => folded(stop.name)),
});

const TAKINGS = [
  { half: false, pitch: false, ranks: false },
  { half: true, pitch: false, ranks: false },
  { half: false, pitch: true, ranks: false },
  { half: true, pitch: true, ranks: false },
  { half: false, pitch: false, ranks: true },
  { half: true, pitch: false, ranks: true },
  { half: false, pitch: true, ranks: true },
  { half: true, pitch: true, ranks: true },
] as const;

/** What a stop's words lead to: the stops meant (one, or all halves of one name and pitch), or why not. */
export type StopFound<T> =
  | { readonly stops: readonly T[] }
  | { readonly stops: null; readonly why: "unknown"; readonly nearest: readonly string[] }
  | { readonly stops: null; readonly why: "ambiguous"; readonly choices: readonly string[] };

const sameKnob = (a: CalledStop, b: CalledStop): boolean => a.pitch === b.pitch && a.ranks === b.ranks;

/** Several stops are one answer only as the halves of a divided stop. */
const areHalves = (stops: readonly CalledStop[]): boolean =>
  stops.length === 2 &&
  stops.every((stop) => stop.half !== null && sameKnob(stop, stops[0] as CalledStop)) &&
  stops[0]?.half !== stops[1]?.half;

/**
 * The stops that a text names among those of one division. The pitch may be left off where the name is unique; `bass` or
 * `treble` behind it names one half, without that word every half of that name and pitch is meant. Case and accents do
 * not count.
 */
export function findStops<T extends CalledStop>(text: string, index: StopIndex<T>): StopFound<T> {
  const { stops, labels, foldedLabels, foldedNames } = index;
  const whole = folded(text);
  const exact = stops.filter((_, at) => foldedLabels[at] === whole);
  if (exact.length === 1) return { stops: exact };
  for (const take of TAKINGS) {
    const said = partStopText(text, take);
    if (said.name === "" || (said.printedPitch !== null && said.pitch === null)) continue;
    const name = folded(said.name);
    const hits = stops.flatMap((stop, at) =>
      foldedNames[at] === name &&
      (said.pitch === null || stop.pitch === said.pitch) &&
      (said.ranks === null || stop.ranks === said.ranks) &&
      (said.half === null || stop.half === said.half)
        ? [{ stop, at }]
        : [],
    );
    const found = hits.map((hit) => hit.stop);
    if (found.length === 1 || areHalves(found)) return { stops: found };
    if (found.length > 1) {
      return { stops: null, why: "ambiguous", choices: hits.slice(0, 6).map((hit) => labels[hit.at] as string) };
    }
  }
  const said = partStopText(text, { half: true, pitch: true, ranks: true }).name;
  const near = new Set(
    [
      ...nearestOf(
        said || text,
        stops.map((stop) => stop.name),
      ),
      ...nearestOf(text, labels),
    ].map(folded),
  );
  const nearest = labels.filter((_, at) => near.has(foldedNames[at] as string) || near.has(foldedLabels[at] as string));
  return { stops: null, why: "unknown", nearest: nearest.slice(0, 4) };
}
