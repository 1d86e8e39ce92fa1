import { isCompound } from "../acoustics/voice.ts";
import type { Wanted } from "../music/prescription.ts";
import { type Foot, footText, stretch } from "../pitch/foot.ts";
import { pitchName } from "../pitch/reading.ts";
import type { Instrument, Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind, type KindGroup } from "../stoplist/kind.ts";

/** Whether a stop, sounding at `pitch` for the part, is what a recipe asks for. */
function isWanted(wanted: Wanted, stop: Stop, pitch: Foot | null): boolean {
  if (wanted.kind !== undefined) {
    const group = (KIND_GROUPS as Partial<Record<string, readonly Kind[]>>)[wanted.kind as KindGroup];
    const kinds = group ?? [wanted.kind as Kind];
    const tierceMixture = wanted.kind === "tierce-sounding" && isCompound(stop) && stop.tierce;
    if (!tierceMixture && !stop.kinds.some((kind) => kinds.includes(kind))) return false;
    if (wanted.kind === "foundation" && !(pitch && [4, 8, 16, 32].includes(pitch.over) && pitch.under === 1))
      return false;
  }
  if (wanted.pitch !== undefined && pitch !== wanted.pitch) return false;
  if (wanted.half !== undefined && stop.half !== null && stop.half !== wanted.half) return false;
  return true;
}

const askedOf = new WeakMap<Wanted, string>();
/** One text for all that ask for the same stops: recipes name a Principal 8 hundreds of times. */
function askedText(wanted: Wanted): string {
  let text = askedOf.get(wanted);
  if (text === undefined) {
    const { kind = "any", pitch, half = "whole" } = wanted;
    text = `${kind} ${pitch ? footText(pitch) : "any"} ${half}`;
    askedOf.set(wanted, text);
  }
  return text;
}

/** What an instrument's stops sound when heard some octaves higher than their names say, and what was wanted of them. */
interface Heard {
  readonly pitches: readonly (readonly [Stop, Foot | null])[];
  readonly wanted: Map<string, ReadonlySet<Stop>>;
}
const tables = new WeakMap<Instrument, Map<number, Heard>>();

/**
 * Every stop of the instrument that is what a recipe asks for when it sounds `up` octaves higher than its name says.
 * Reckoned once for an instrument, whatever the section.
 */
export function wantedStops(instrument: Instrument, wanted: Wanted, up: number): ReadonlySet<Stop> {
  let table = tables.get(instrument);
  if (!table) {
    table = new Map();
    tables.set(instrument, table);
  }
  let heard = table.get(up);
  if (!heard) {
    const octaves = (pitch: Foot): Foot => (up >= 0 ? stretch(pitch, 1, 2 ** up) : stretch(pitch, 2 ** -up));
    const pitches = instrument.divisions.flatMap(({ stops }) =>
      stops.map((stop) => [stop, stop.pitch && octaves(stop.pitch)] as const),
    );
    heard = { pitches, wanted: new Map() };
    table.set(up, heard);
  }
  const key = askedText(wanted);
  let stops = heard.wanted.get(key);
  if (!stops) {
    stops = new Set(heard.pitches.flatMap(([stop, pitch]) => (isWanted(wanted, stop, pitch) ? [stop] : [])));
    heard.wanted.set(key, stops);
  }
  return stops;
}

/** `Principal 8`, `any 2`: a wanted stop in words. */
export function wantedText(wanted: Wanted): string {
  const kind = wanted.kind ? wanted.kind.replaceAll("-", " ") : "a stop of";
  return wanted.pitch ? `${kind} ${pitchName(wanted.pitch)}` : kind;
}
