import type { Wanted } from "../../shared-model/music/prescription.ts";
import type { Dynamic, Tradition } from "../../shared-model/music/texture.ts";
import type { Stop } from "../../shared-model/stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../../shared-model/stoplist/kind.ts";

/** What the matching reads of a stop. */
export type ScenarioStop = Pick<Stop, "division" | "name" | "kinds" | "pitch" | "half">;

/** What sounds for one part. */
export interface SoundingPart {
  /** Division whose keys play it. */
  readonly keyboard: string;
  readonly octave: -1 | 0 | 1;
  readonly stops: readonly ScenarioStop[];
}

/** A proposal, as far as a teacher's expectation reads it. */
export interface Proposed {
  /** By id of the part. */
  readonly parts: ReadonlyMap<string, SoundingPart>;
  /** Divisions whose tremulant is on, or `all`. */
  readonly tremulants: ReadonlySet<string>;
  /** `X to Y`. */
  readonly couplers: ReadonlySet<string>;
}

/** What a teacher wants to see drawn for one part, by kind and pitch. */
export interface ExpectedPart {
  readonly must: readonly Wanted[];
  /** From each inner list at least one. */
  readonly oneOf: readonly (readonly Wanted[])[];
  /** Allowed beside them where `only` holds. */
  readonly may: readonly Wanted[];
  readonly mustNot: readonly Wanted[];
  /** Nothing beyond must, one-of and may. */
  readonly only: boolean;
  /** At most so many stops; `null`: as many as it takes. */
  readonly atMost: number | null;
  /** Parts whose keyboard it must not share. */
  readonly apartFrom: readonly string[];
  /** Whether a tremulant reaches what it sounds; `null`: either. */
  readonly shaken: boolean | null;
  /** Octaves away from the written keys; `null`: any. */
  readonly octave: -1 | 0 | 1 | null;
}

/** One registration that a teacher expects among the proposals, or one condition on all of them. */
export interface Expectation {
  /** What a teacher would call it. */
  readonly what: string;
  /** By id of the part; parts that it does not name are free. */
  readonly parts: ReadonlyMap<string, ExpectedPart>;
  /** Couplers that must be on, and that must be off. */
  readonly couplers: readonly string[];
  readonly noCouplers: readonly string[];
}

/** An organ, a texture, and what a good teacher would expect to be proposed. */
export interface Scenario {
  readonly id: string;
  /** Name of the organ's file without the ending. */
  readonly organ: string;
  readonly texture: string;
  readonly tradition: Tradition;
  readonly dynamic: Dynamic | null;
  /** Id of a source of the published cases or of the prescriptions, or `common practice`. */
  readonly source: string;
  /** Why a teacher expects this. */
  readonly why: string;
  /** How many proposals are looked at. */
  readonly among: number;
  /** Each is met by one of the proposals looked at. */
  readonly some: readonly Expectation[];
  /** Each is met by every proposal looked at. */
  readonly every: readonly Expectation[];
}

/** Whether the stop is one that the words mean. A stop of several kinds serves for each. */
export function isWanted(stop: ScenarioStop, wanted: Wanted): boolean {
  if (wanted.pitch !== undefined && stop.pitch !== wanted.pitch) return false;
  if (wanted.half !== undefined && stop.half !== wanted.half) return false;
  if (wanted.kind === undefined) return true;
  const kinds: readonly Kind[] =
    wanted.kind in KIND_GROUPS ? KIND_GROUPS[wanted.kind as keyof typeof KIND_GROUPS] : [wanted.kind as Kind];
  return stop.kinds.some((kind) => kinds.includes(kind));
}

const isShaken = (part: SoundingPart, tremulants: ReadonlySet<string>): boolean =>
  part.stops.length > 0 && (tremulants.has("all") || part.stops.some((stop) => tremulants.has(stop.division)));

const label = (wanted: Wanted): string => {
  const { kind, pitch, half } = wanted;
  const foot = pitch === undefined ? null : `${pitch.over}${pitch.under === 1 ? "" : `/${pitch.under}`}`;
  return [kind ?? "any stop", foot, half].filter((word) => word !== null && word !== undefined).join(" ");
};

function partFaults(id: string, expected: ExpectedPart, proposed: Proposed): readonly string[] {
  const part = proposed.parts.get(id);
  if (part === undefined) return [`${id}: not played`];
  const faults: string[] = [];
  const drawn = (wanted: Wanted): boolean => part.stops.some((stop) => isWanted(stop, wanted));
  for (const wanted of expected.must) if (!drawn(wanted)) faults.push(`${id}: no ${label(wanted)}`);
  for (const list of expected.oneOf) if (!list.some(drawn)) faults.push(`${id}: none of ${list.map(label).join(", ")}`);
  for (const wanted of expected.mustNot) if (drawn(wanted)) faults.push(`${id}: has ${label(wanted)}`);
  if (expected.only) {
    const welcome = [...expected.must, ...expected.oneOf.flat(), ...expected.may];
    for (const stop of part.stops) {
      if (!welcome.some((wanted) => isWanted(stop, wanted))) faults.push(`${id}: ${stop.name} is too much`);
    }
  }
  if (expected.atMost !== null && part.stops.length > expected.atMost) {
    faults.push(`${id}: more than ${expected.atMost} stops`);
  }
  for (const other of expected.apartFrom) {
    if (proposed.parts.get(other)?.keyboard === part.keyboard) faults.push(`${id}: on the keyboard of ${other}`);
  }
  if (expected.shaken !== null && isShaken(part, proposed.tremulants) !== expected.shaken) {
    faults.push(`${id}: ${expected.shaken ? "not shaken" : "shaken"}`);
  }
  if (expected.octave !== null && part.octave !== expected.octave) faults.push(`${id}: in another octave`);
  return faults;
}

/** Why a proposal is not what was expected, a line for each fault; empty when it is. */
function expectationFaults(expectation: Expectation, proposed: Proposed): readonly string[] {
  return [
    ...[...expectation.parts].flatMap(([id, part]) => partFaults(id, part, proposed)),
    ...expectation.couplers.filter((name) => !proposed.couplers.has(name)).map((name) => `${name} is off`),
    ...expectation.noCouplers.filter((name) => proposed.couplers.has(name)).map((name) => `${name} is on`),
  ];
}

/**
 * What a list of proposals, best first, leaves to be desired: a line for each expectation that none of the proposals
 * looked at meets (with the faults of the nearest one), and for each condition that one of them breaks.
 */
export function scenarioFaults(scenario: Scenario, proposals: readonly Proposed[]): readonly string[] {
  const looked = proposals.slice(0, scenario.among);
  if (looked.length === 0) return ["nothing is proposed"];
  const missing = scenario.some.flatMap((expectation) => {
    const faults = looked.map((proposed) => expectationFaults(expectation, proposed));
    if (faults.some((each) => each.length === 0)) return [];
    const nearest = faults.reduce((best, each) => (each.length < best.length ? each : best));
    return [`not among the first ${scenario.among}: ${expectation.what} (nearest: ${nearest.join("; ")})`];
  });
  const broken = scenario.every.flatMap((expectation) =>
    looked.flatMap((proposed, place) => {
      const faults = expectationFaults(expectation, proposed);
      return faults.length === 0 ? [] : [`proposal ${place + 1} breaks: ${expectation.what} (${faults.join("; ")})`];
    }),
  );
  return [...missing, ...broken];
}
