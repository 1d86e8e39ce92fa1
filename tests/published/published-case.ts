import type { Dynamic, Hands, Role, Tradition } from "../../shared-model/music/texture.ts";
import { compareFeet, type Foot, footText } from "../../shared-model/pitch/foot.ts";

/** Where a published registration was printed or handed down. */
export interface PublishedSource {
  readonly id: string;
  readonly author: string;
  readonly title: string;
  /** `null` where the source bears no date. */
  readonly year: number | null;
  readonly where: string;
  readonly address: string | null;
  /** `read`: seen by the project; `memory`: known from the literature, not seen. */
  readonly evidence: "read" | "memory";
}

/** What a source asks of one division. Stops are named in the words of the cases, unique within a division. */
export interface PublishedPart {
  readonly division: string;
  readonly role: Role;
  /** Part of the catalogue's texture that it registers; `null` where the division sounds on another part's keys. */
  readonly part: string | null;
  /** Division whose keys play it. */
  readonly keyboard: string;
  readonly voice: "treble" | "tenor" | "bass" | null;
  /** The source can do without this part. The counting of a met case does not: see {@link isMet}. */
  readonly optional: boolean;
  readonly must: readonly string[];
  readonly may: readonly string[];
  readonly mustNot: readonly string[];
  readonly oneOf: readonly (readonly string[])[];
  /** Lowest pitch among the drawn stops of the part; `null` where the source leaves it open. */
  readonly lowest: Foot | null;
}

/** A part written out by hand, for a case that is an instance of no texture of the catalogue. */
export interface WrittenPart {
  readonly part: string;
  readonly role: Role;
  readonly hands: Hands;
  readonly low: string;
  readonly high: string;
  readonly sounding: 16 | 8 | 4 | 2;
  readonly octave: -1 | 0 | 1;
}

/** What the player adds where the source is silent. */
export interface AddedPart {
  readonly part: string;
  readonly division: string;
  readonly stops: readonly string[];
}

/** One published registration on one organ. */
export interface PublishedCase {
  readonly id: string;
  /** Texture of the catalogue; `null`: none of its own, the check alone applies. */
  readonly texture: string | null;
  readonly tradition: Tradition;
  readonly dynamic: Dynamic | null;
  /** Id of the organ: the name of its file. */
  readonly instrument: string;
  readonly source: PublishedSource;
  readonly where: string;
  readonly evidence: "read" | "memory";
  readonly confidence: "high" | "medium" | "low";
  readonly fit: "own" | "school";
  /** The source's own word for the registration. */
  readonly term: string;
  readonly parts: readonly PublishedPart[];
  readonly written: readonly WrittenPart[];
  /** Stops of a free division for a part that the texture requires and the source passes over; for the check only. */
  readonly added: AddedPart | null;
  readonly tremulant: "required" | "forbidden" | "unstated";
  /** `X to Y`, by divisions. */
  readonly couplers: readonly string[];
  readonly exclusions: "stated" | "implied";
  /** How the project reads a source that is odd or leaves something open. */
  readonly reading: string | null;
  /** By division and the cases' word: the pitch of every stop of the organ; `null` for a compound without one. */
  readonly pitches: ReadonlyMap<string, ReadonlyMap<string, Foot | null>>;
}

/** Drawn stops by division, in the words of the cases. */
export type DrawnByDivision = ReadonlyMap<string, ReadonlySet<string>>;

const namesOf = (part: PublishedPart): readonly string[] => [...part.must, ...part.may, ...part.oneOf.flat()];

function lowestFault(published: PublishedCase, part: PublishedPart, drawn: ReadonlySet<string>): string | null {
  if (part.lowest === null) return null;
  const pitches = published.pitches.get(part.division);
  // Two parts may be halves of one division: each answers for its own stops, and both for stops of neither.
  const elsewhere = published.parts.filter((other) => other !== part && other.division === part.division);
  const own = [...drawn].filter((name) => {
    return namesOf(part).includes(name) || !elsewhere.some((other) => namesOf(other).includes(name));
  });
  const feet = own.map((name) => pitches?.get(name) ?? null).filter((foot) => foot !== null);
  const lowest = feet.sort(compareFeet)[0];
  if (lowest === undefined) return `${part.division}: nothing drawn sounds ${footText(part.lowest)} ft`;
  const order = compareFeet(lowest, part.lowest);
  if (order < 0) return `${part.division}: ${footText(lowest)} ft is deeper than ${footText(part.lowest)} ft`;
  return order > 0 ? `${part.division}: nothing drawn sounds as deep as ${footText(part.lowest)} ft` : null;
}

/**
 * Why a drawn registration does not meet a published one, a line for each fault; empty when it meets it.
 * A division that the case does not name is free.
 */
export function faultsOf(published: PublishedCase, drawn: DrawnByDivision): readonly string[] {
  const faults: string[] = [];
  for (const division of new Set(published.parts.map((part) => part.division))) {
    const parts = published.parts.filter((part) => part.division === division);
    const stops = drawn.get(division) ?? new Set<string>();
    const welcome = new Set(parts.flatMap(namesOf));
    for (const name of stops) if (!welcome.has(name)) faults.push(`${division}: ${name} is outside the list`);
    for (const part of parts) {
      for (const name of part.must) if (!stops.has(name)) faults.push(`${division}: ${name} is missing`);
      for (const names of part.oneOf) {
        if (!names.some((name) => stops.has(name))) faults.push(`${division}: none of ${names.join(", ")} is drawn`);
      }
      for (const name of part.mustNot) if (stops.has(name)) faults.push(`${division}: ${name} is shut out`);
      const fault = lowestFault(published, part, stops);
      if (fault !== null) faults.push(fault);
    }
  }
  return faults;
}

/**
 * Whether the drawn stops of each named division hold all of must, one of each one-of list, nothing of mustnot and
 * nothing beyond must, may and one-of, and whether the lowest pitch holds. Couplers and tremulant are not asked.
 */
export const isMet = (published: PublishedCase, drawn: DrawnByDivision): boolean =>
  faultsOf(published, drawn).length === 0;

/**
 * The plainest registration that the case allows: all of must, the first of each one-of list, and the first of may
 * for a part that would otherwise have nothing; and what is added in a free division.
 */
export function plainestDrawn(published: PublishedCase): DrawnByDivision {
  const drawn = new Map<string, Set<string>>();
  for (const part of published.parts) {
    const stops = drawn.get(part.division) ?? new Set<string>();
    drawn.set(part.division, stops);
    const wanted = [...part.must, ...part.oneOf.map((names) => names[0])];
    if (wanted.length === 0) wanted.push(part.may[0]);
    for (const name of wanted) if (name !== undefined) stops.add(name);
  }
  if (published.added !== null) drawn.set(published.added.division, new Set(published.added.stops));
  return drawn;
}

/** Part to the division whose keys play it; parts that only sound on another's keys have no entry. */
export function keyboardsOf(published: PublishedCase): Readonly<Record<string, string>> {
  const keyboards: Record<string, string> = {};
  for (const part of published.parts) if (part.part !== null) keyboards[part.part] = part.keyboard;
  if (published.added !== null) keyboards[published.added.part] = published.added.division;
  return keyboards;
}
