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
  if (wanted.pitch !== undefined && (pitch === null || footText(pitch) !== footText(wanted.pitch))) return false;
  if (wanted.half !== undefined && stop.half !== null && stop.half !== wanted.half) return false;
  return true;
}

const tables = new WeakMap<Instrument, Map<Wanted, Map<number, ReadonlySet<Stop>>>>();

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
  let row = table.get(wanted);
  if (!row) {
    row = new Map();
    table.set(wanted, row);
  }
  let stops = row.get(up);
  if (!stops) {
    const found = new Set<Stop>();
    for (const division of instrument.divisions) {
      for (const stop of division.stops) {
        const pitch = stop.pitch && (up >= 0 ? stretch(stop.pitch, 1, 2 ** up) : stretch(stop.pitch, 2 ** -up));
        if (isWanted(wanted, stop, pitch)) found.add(stop);
      }
    }
    stops = found;
    row.set(up, stops);
  }
  return stops;
}

/** `Principal 8`, `any 2`: a wanted stop in words. */
export function wantedText(wanted: Wanted): string {
  const kind = wanted.kind ? wanted.kind.replaceAll("-", " ") : "a stop of";
  return wanted.pitch ? `${kind} ${pitchName(wanted.pitch)}` : kind;
}
