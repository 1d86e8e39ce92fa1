import type { BoxPosition } from "../console/state.ts";
import type { Room } from "../stoplist/instrument.ts";
import { BANDS } from "./bands.ts";
import { excitationOf } from "./excitation.ts";
import { boxLoss, partialsOf, type Tone } from "./partials.ts";
import { ROOM_GAIN } from "./stop-tone.ts";

/**
 * Excitations of single pipes as whole numbers, so that a sum of pipes is the same in whatever order it is added: a
 * sixteenth of a unit is far below what is heard, and a hundred full organs stay far below what a number can hold.
 */
export const EXCITATION_UNIT = 16;
export const BAND_COUNT = BANDS.length;

const OPEN: Readonly<Record<BoxPosition, number>> = { open: 1, half: 0.3, closed: 0 };
const MOST_KEPT = 30_000;
const kept = new Map<string, Float64Array>();

/** A pipe as a listener gets it. */
export interface Pipe {
  readonly tone: Tone;
  /** What it sounds. */
  readonly hz: number;
  readonly db: number;
  readonly brighter: number;
  readonly box: BoxPosition;
  readonly room: Room;
}

/** Excitation of every band of {@link BANDS} by one pipe, in whole {@link EXCITATION_UNIT}ths. Reckoned once; do not change it. */
export function pipePattern(pipe: Pipe): Float64Array {
  const { tone, hz, db, brighter, box, room } = pipe;
  const key = `${tone} ${hz} ${db} ${brighter} ${box} ${room}`;
  const known = kept.get(key);
  if (known) return known;
  const { db: gain, tilt } = ROOM_GAIN[room];
  const lines = partialsOf(tone, hz, db, brighter).map((line) => ({
    hz: line.hz,
    db: line.db + gain + tilt * Math.log2(line.hz / 1000) - (box === "open" ? 0 : boxLoss(line.hz, OPEN[box])),
  }));
  const pattern = excitationOf(lines, BANDS, "diffuse").map((each) => Math.round(each * EXCITATION_UNIT));
  // Values are the same whether kept or not, so forgetting costs time and nothing else.
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, pattern);
  return pattern;
}
