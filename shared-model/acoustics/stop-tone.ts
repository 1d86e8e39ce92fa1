import type { Foot } from "../pitch/foot.ts";
import type { RankUse, Room, Stop } from "../stoplist/instrument.ts";
import type { Kind } from "../stoplist/kind.ts";
import { compassTrim, type Tone } from "./partials.ts";

/**
 * What tone and level a stop's pipes have where nothing better is known than its kind and its strength by ear. Levels are
 * those of one note near middle C at a listener in an ordinary church; only their differences matter. They are our own
 * estimates, set on the agreed scenarios of balance, and the first thing to correct by ear on a real organ.
 */
interface Custom {
  readonly tone: Tone;
  /** dB at strength 3. */
  readonly db: number;
}

/** The yardstick of all others: a principal of strength 3. */
export const PRINCIPAL: Custom = { tone: "principal", db: 65 };
const MIXTURE: Custom = { tone: "principal", db: 60 };
const TIERCE_COMPOUND: Custom = { tone: "principal", db: 64 };
const OPEN: Custom = { tone: "open-flute", db: 67 };
const STOPPED: Custom = { tone: "stopped-flute", db: 65 };
const HALF_STOPPED: Custom = { tone: "half-stopped", db: 65 };
const STRING: Custom = { tone: "string", db: 58 };
const SOFT_STRING: Custom = { tone: "string", db: 54 };
const TRUMPET: Custom = { tone: "chorus-reed", db: 66 };
const OBOE: Custom = { tone: "oboe", db: 62 };
const CROMORNE: Custom = { tone: "cromorne", db: 60 };
const SHORT: Custom = { tone: "short-reed", db: 58 };
const CORNET_GROUND: Custom = { tone: "half-stopped", db: 62 };
const CORNET_RANK: Custom = { tone: "open-flute", db: 64 };

/** `null` for what has no pipes of a pitch. */
const CUSTOM_OF_KIND: Readonly<Record<Kind, Custom | null>> = {
  principal: PRINCIPAL,
  twelfth: PRINCIPAL,
  quint: PRINCIPAL,
  "stopped-flute": STOPPED,
  "open-flute": OPEN,
  "harmonic-flute": OPEN,
  nasard: OPEN,
  tierce: OPEN,
  larigot: OPEN,
  septieme: OPEN,
  none: OPEN,
  quintadena: { tone: "quintadena", db: 64 },
  string: STRING,
  "soft-string": SOFT_STRING,
  celeste: STRING,
  mixture: MIXTURE,
  cymbal: MIXTURE,
  rauschpfeife: MIXTURE,
  sesquialtera: TIERCE_COMPOUND,
  tertian: TIERCE_COMPOUND,
  cornet: CORNET_RANK,
  trumpet: TRUMPET,
  "horizontal-trumpet": TRUMPET,
  tuba: TRUMPET,
  cornett: TRUMPET,
  oboe: OBOE,
  bassoon: OBOE,
  horn: OBOE,
  schalmei: OBOE,
  musette: OBOE,
  clarinet: CROMORNE,
  cromorne: CROMORNE,
  dulcian: CROMORNE,
  regal: SHORT,
  "voix-humaine": SHORT,
  percussion: null,
  effect: null,
};

/** dB between two neighbouring steps of strength: soft to normal to loud. */
const STRENGTH_STEP = 4;
/** dB per octave of partials between two neighbouring steps of brightness. */
const BRIGHTNESS_STEP = 1.5;
/** A stop loses so much in dB for each octave that it sounds above the unison. */
const HIGH_PITCH_TRIM = 1.2;
const USUAL = 3;

/** The tone and level of one rank of a stop. */
interface RankTone {
  readonly tone: Tone;
  /** dB of a pipe sounding middle C. */
  readonly db: number;
  /** dB for each octave of partials. */
  readonly brighter: number;
}

const octavesAbove = (pitch: Foot): number => Math.max(0, Math.log2((8 * pitch.under) / pitch.over));
const isAt = (pitch: Foot, feet: number): boolean => pitch.over === feet && pitch.under === 1;

/** Pedal stops are winded and scaled to carry: dB above a manual stop of the same kind. */
function pedalTrim(tone: Tone, pitch: Foot): number {
  if (isAt(pitch, 16)) return tone === "stopped-flute" ? 4 : tone === "principal" ? 3 : tone === "chorus-reed" ? 2 : 0;
  return isAt(pitch, 8) && tone === "stopped-flute" ? 1 : 0;
}

function customOf(stop: Stop, use: RankUse): Custom | null {
  const [kind] = stop.kinds;
  if (kind === "cornet" && isAt(use.pitch, 8)) return CORNET_GROUND;
  if (kind === "stopped-flute" && stop.family === "flute-half-stopped") return HALF_STOPPED;
  return kind ? CUSTOM_OF_KIND[kind] : null;
}

/**
 * Tone and level of the pipes that a stop takes from one of its ranks; `null` for effects.
 *
 * @param shared whether other stops draw the rank too: then its pipes are as strong wherever they are used.
 */
export function rankToneOf(stop: Stop, use: RankUse, pedal: boolean, shared: boolean): RankTone | null {
  const custom = customOf(stop, use);
  if (!custom) return null;
  const { tone } = custom;
  const high = shared ? 0 : -HIGH_PITCH_TRIM * octavesAbove(use.pitch);
  return {
    tone,
    db: custom.db + STRENGTH_STEP * (stop.strength - USUAL) + high + (pedal ? pedalTrim(tone, use.pitch) : 0),
    brighter: BRIGHTNESS_STEP * (stop.brightness - USUAL),
  };
}

/** Level in dB of a pipe of that rank that sounds `hz`. */
export const pipeLevel = (rank: RankTone, hz: number): number => rank.db + compassTrim(hz);

/** What a room does: dB in all, and dB for each octave of frequency away from 1 kHz. Our own estimate. */
export const ROOM_GAIN: Readonly<Record<Room, { readonly db: number; readonly tilt: number }>> = {
  // Carpets, people and curtains swallow the height first; stone gives it back.
  dry: { db: -2, tilt: -0.8 },
  medium: { db: 0, tilt: 0 },
  live: { db: 2, tilt: 0.5 },
};
