import { pitchName } from "../../shared-model/pitch/reading.ts";
import type { Stop } from "../../shared-model/stoplist/instrument.ts";
import { keyboardsOf, type PublishedCase, plainestDrawn, type WrittenPart } from "./published-case.ts";
import type { PublishedInstrument } from "./published-cases.ts";

/** The content of a registration file. */
export interface RegistrationContent {
  readonly registrant: "registration/1";
  readonly texture?: string;
  readonly parts?: readonly Omit<WrittenPart, "octave">[];
  readonly tradition: string;
  readonly keyboards: Readonly<Record<string, string>>;
  readonly octaves: Readonly<Record<string, -1 | 0 | 1>>;
  readonly drawn: Readonly<Record<string, readonly string[]>>;
  readonly couplers: readonly string[];
  readonly tremulants: readonly string[];
}

/** The stop as a registration file names it: with its pitch only where the name alone fits several. */
function stopWords(stop: Stop, others: readonly Stop[]): string {
  const alone = others.every((other) => other.name !== stop.name || other.pitch === stop.pitch);
  const pitch = alone || stop.pitch === null ? "" : ` ${pitchName(stop.pitch)}`;
  return `${stop.name}${pitch}${stop.half === null ? "" : ` ${stop.half}`}`;
}

/**
 * The plainest registration of a published case as a registration file would hold it: one that the check must accept.
 *
 * @throws Error when the organ lacks a stop that the case names.
 */
export function registrationOf(published: PublishedCase, organ: PublishedInstrument): RegistrationContent {
  const drawn: Record<string, string[]> = {};
  for (const [division, names] of plainestDrawn(published)) {
    const stops = organ.stops.get(division) ?? new Map<string, Stop>();
    drawn[division] = [...names].map((name) => {
      const stop = stops.get(name);
      if (stop === undefined) throw new Error(`${published.id}: ${division} has no ${name}.`);
      return stopWords(stop, [...stops.values()]);
    });
  }
  const raised = published.written.filter((part) => part.octave !== 0);
  return {
    registrant: "registration/1",
    ...(published.texture === null
      ? { parts: published.written.map(({ octave: _, ...part }) => part) }
      : { texture: published.texture }),
    tradition: published.tradition,
    keyboards: keyboardsOf(published),
    octaves: Object.fromEntries(raised.map((part) => [part.part, part.octave])),
    drawn,
    couplers: published.couplers,
    tremulants: published.tremulant === "required" ? organ.instrument.tremulants : [],
  };
}
