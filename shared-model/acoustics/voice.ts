import type { BoxPosition } from "../console/state.ts";
import { stretch } from "../pitch/foot.ts";
import type { Key } from "../pitch/key.ts";
import type { Room, Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";
import { Blend, type SoundingPipe } from "./blend.ts";
import { loudnessBoundsOf } from "./loudness-bounds.ts";
import type { Moments } from "./moments.ts";
import { kindBits, type PartSound, silence, type Voice } from "./part-sound.ts";
import { pipePattern } from "./pipe.ts";
import { countPitches, OCTAVES, P, type PitchSet, pitchBit } from "./pitch-set.ts";
import { pipeLevel, rankToneOf } from "./stop-tone.ts";

/**
 * Stretches of a part's written range over which no stop begins or ends, so that "speaks here" is one bit. At most 30:
 * on an organ with more edges than that the narrowest stretches are joined, and a stop counts there only if it fills it.
 */
export interface Zones {
  /** First written key of each zone, ascending. */
  readonly starts: readonly Key[];
  /** Last written key of the last zone. */
  readonly high: Key;
  /** Set of all zones. */
  readonly all: number;
}

/** Zones of the written range `low`..`high`, parted at the written keys `edges` (first keys of a new stretch). */
export function zonesOf(low: Key, high: Key, edges: Iterable<Key>): Zones {
  const starts = [...new Set([low, ...edges])].filter((key) => key >= low && key <= high).sort((a, b) => a - b);
  while (starts.length > 30) {
    let narrowest = 1;
    for (let i = 2; i < starts.length; i++) {
      const width = (starts[i] as number) - (starts[i - 1] as number);
      if (width < (starts[narrowest] as number) - (starts[narrowest - 1] as number)) narrowest = i;
    }
    starts.splice(narrowest, 1);
  }
  return { starts, high, all: 2 ** starts.length - 1 };
}

/** The zones that lie wholly between two written keys. */
export function zonesBetween(zones: Zones, from: Key, to: Key): number {
  let set = 0;
  for (let i = 0; i < zones.starts.length; i++) {
    const last = i + 1 < zones.starts.length ? (zones.starts[i + 1] as number) - 1 : zones.high;
    if ((zones.starts[i] as number) >= from && last <= to) set |= 1 << i;
  }
  return set;
}

/** How many keys the zones of a set hold. */
export function keysInZones(zones: Zones, set: number): number {
  let keys = 0;
  for (let i = 0; i < zones.starts.length; i++) {
    if (!(set & (1 << i))) continue;
    const last = i + 1 < zones.starts.length ? (zones.starts[i + 1] as number) - 1 : zones.high;
    keys += last - (zones.starts[i] as number) + 1;
  }
  return keys;
}

const some = (kinds: readonly Kind[], group: readonly Kind[]): boolean => kinds.some((kind) => group.includes(kind));

const MIXTURES: readonly Kind[] = ["mixture", "cymbal", "rauschpfeife"];
const TIERCE_COMPOUNDS: readonly Kind[] = ["sesquialtera", "tertian"];
const FLUTES: readonly Kind[] = [...KIND_GROUPS.flute, "quintadena", "nasard", "tierce", "larigot"];
const SOLO_REEDS: readonly Kind[] = ["oboe", "clarinet", "bassoon", "horn"];

/** Whether a stop is a compound whose ranks belong together, unlike a plain stop or a doubled rank. */
export const isCompound = (stop: Stop): boolean =>
  some(stop.kinds, MIXTURES) || some(stop.kinds, TIERCE_COMPOUNDS) || stop.kinds.includes("cornet");

/** How a part hears the stops of one division: where the keys lie, and what the box lets through. */
export interface Hearing {
  readonly zones: Zones;
  /** Semitones from the written key to the key of the stop's division. */
  readonly away: number;
  /** Written keys that the keyboard played has. */
  readonly low: Key;
  readonly high: Key;
  /** Bit number of a rank that several stops share; `undefined` for others. */
  sharedRank(rank: string): number | undefined;
  readonly boxed: boolean;
  readonly box: BoxPosition;
  /** Where and to which keys to listen; left out where only names and pitches matter. */
  readonly listening?: Listening;
}

/** What a listener needs to know besides the stop. */
export interface Listening {
  readonly moments: Moments;
  /** Hertz of A4. */
  readonly a4: number;
  readonly room: Room;
  /** Whether the stop stands in the pedal. */
  readonly pedal: boolean;
  /** Whether a rule about the part follows its loudness stop by stop. */
  readonly followed: boolean;
}

const A4: Key = 69;
/** No builder puts a pipe above this; mixtures break back before it. */
const HIGHEST_HZ = 8500;

/** The pipes of a stop that sound at a written key. */
function pipesOf(stop: Stop, hearing: Hearing, listening: Listening, key: Key): readonly SoundingPipe[] {
  if (key < hearing.low || key > hearing.high) return [];
  const played = key + hearing.away;
  const pipes: SoundingPipe[] = [];
  for (const use of stop.uses) {
    if (played < use.from || played > use.to) continue;
    const shared = hearing.sharedRank(use.rank) !== undefined;
    const tone = rankToneOf(stop, use, listening.pedal, shared);
    if (!tone) continue;
    const steps = 12 * Math.log2((8 * use.pitch.under) / use.pitch.over);
    // A pipe that serves several stops is tuned to the scale; a mutation's own pipes are tuned pure.
    const number = played + (shared ? Math.round(steps) : steps);
    const hz = listening.a4 * 2 ** ((number - A4) / 12);
    if (hz > HIGHEST_HZ) continue;
    pipes.push({
      shared: shared ? `${use.rank} ${number}` : null,
      pattern: pipePattern({
        tone: tone.tone,
        hz,
        db: pipeLevel(tone, hz),
        brighter: tone.brighter,
        box: hearing.box,
        room: listening.room,
      }),
    });
  }
  return pipes;
}

const coverField = new Map<PitchSet, "cover32" | "cover16" | "cover8" | "cover4" | "cover2">([
  [P["32"] as number, "cover32"],
  [P["16"] as number, "cover16"],
  [P["8"] as number, "cover8"],
  [P["4"] as number, "cover4"],
  [P["2"] as number, "cover2"],
]);

/** The series that a mutation belongs to: the shortest unison of at least 8' that it is a harmonic of. */
function seriesField(pitch: { over: number; under: number }): "mutation8" | "mutation16" | "mutation32" {
  if ((8 * pitch.under) % pitch.over === 0) return "mutation8";
  return (16 * pitch.under) % pitch.over === 0 ? "mutation16" : "mutation32";
}

/** Everything that {@link pipesOf} reads, as a text. */
function signatureOf(stop: Stop, hearing: Hearing, listening: Listening): string {
  const { away, low, high, box, sharedRank } = hearing;
  const { moments, a4, room, pedal } = listening;
  const uses = stop.uses.map(({ rank, pitch, from, to }) => {
    const shared = sharedRank(rank) === undefined ? "" : rank;
    return `${shared} ${pitch.over}/${pitch.under} ${from} ${to}`;
  });
  const half = stop.family === "flute-half-stopped" ? "half" : "";
  return [
    stop.kinds[0],
    half,
    stop.strength,
    stop.brightness,
    uses.join(","),
    [away, low, high, box, a4, room, pedal].join(" "),
    moments.played.join(";"),
    moments.alike.join(","),
  ].join("|");
}

/** What a stop adds to a part that hears it so; `null` when no key of the part's range makes it speak. */
export function voiceOf(stop: Stop, hearing: Hearing): Voice | null {
  const { zones, away } = hearing;
  const shift = away / 12;
  const from = Math.max(stop.from - away, hearing.low);
  const to = Math.min(stop.to - away, hearing.high);
  const cover = zonesBetween(zones, from, to);
  if (cover === 0) return null;
  const voice: PartSound = silence();
  const compound = isCompound(stop);
  const sound = (pitch: { over: number; under: number }) =>
    shift >= 0 ? stretch(pitch, 1, 2 ** shift) : stretch(pitch, 2 ** -shift);
  if (compound) {
    const middle = Math.round((Math.max(from, zones.starts[0] as number) + Math.min(to, zones.high)) / 2) + away;
    for (const use of stop.uses) {
      const pitch = sound(use.pitch);
      if (use.from <= middle && middle <= use.to) voice.compound |= pitchBit(pitch);
      const field = coverField.get(pitchBit(pitch));
      const stretchCover = zonesBetween(zones, Math.max(use.from - away, from), Math.min(use.to - away, to));
      if (field && stop.kinds.includes("cornet")) voice[field] |= stretchCover;
    }
    if (some(stop.kinds, MIXTURES)) {
      voice.mixtures = 1;
      voice.crowned = cover;
      voice.mixture = voice.compound;
      voice.tierceMixtures = stop.tierce ? 1 : 0;
    }
    if (stop.kinds.includes("cornet")) voice.cornets = 1;
    if (some(stop.kinds, TIERCE_COMPOUNDS)) voice.tierceCompounds = 1;
    if (voice.mixtures === 0) voice.mutation8 = cover;
    voice.tierces = stop.tierce ? 1 : 0;
    voice.cover = voice.cover8 | voice.cover4 | voice.cover16 | voice.cover2;
  } else {
    const pitch = stop.pitch ? sound(stop.pitch) : null;
    const bit = pitch ? pitchBit(pitch) : 0;
    if (!pitch || bit === 0) return null;
    voice.plain = bit;
    voice.plainVoices = countPitches(bit);
    if (stop.kinds.includes("principal") || stop.kinds.includes("twelfth")) voice.principal = bit;
    voice.principalVoices = countPitches(voice.principal);
    if (some(stop.kinds, FLUTES)) voice.flute = bit;
    if (stop.kinds.includes("stopped-flute")) voice.stopped = bit;
    if (stop.kinds.includes("string") || stop.kinds.includes("soft-string")) voice.string = bit;
    if (stop.kinds.includes("celeste")) voice.celeste = bit;
    if (some(stop.kinds, KIND_GROUPS.reed)) voice.reed = bit;
    if (some(stop.kinds, KIND_GROUPS["chorus-reed"])) voice.chorusReed = bit;
    if (some(stop.kinds, SOLO_REEDS)) voice.soloReed = bit;
    if (some(stop.kinds, KIND_GROUPS["short-reed"])) voice.shortReed = bit;
    if (bit & OCTAVES) {
      voice.cover = cover;
      const field = coverField.get(bit);
      if (field) voice[field] = cover;
    } else {
      voice.mutation = voice.reed ? 0 : bit;
      voice[seriesField(pitch)] = cover;
      voice.tierces = stop.tierce || stop.kinds.includes("tierce") ? 1 : 0;
    }
  }
  const bits = kindBits(stop.kinds);
  voice.stops = 1;
  voice.speaks = cover;
  voice.kindsLow = bits.low;
  voice.kindsHigh = bits.high;
  for (const rank of new Set(stop.uses.map((use) => use.rank))) {
    const shared = hearing.sharedRank(rank);
    if (shared === undefined || shared >= 62) continue;
    voice.sharedVoices += 1;
    if (shared < 31) voice.ranksLow |= 1 << shared;
    else voice.ranksHigh |= 1 << (shared - 31);
  }
  voice.short = cover === zones.all ? 0 : 1;
  voice.dead = stop.off ? 1 : 0;
  voice.enclosed = hearing.boxed ? 1 : 0;
  const { listening } = hearing;
  if (listening) {
    voice.blend = Blend.ofStop(
      listening.moments,
      (key) => pipesOf(stop, hearing, listening, key),
      () => signatureOf(stop, hearing, listening),
    );
    if (listening.followed) {
      const shares = stop.uses.some((use) => hearing.sharedRank(use.rank) !== undefined);
      Object.assign(voice, loudnessBoundsOf(voice.blend, shares));
    }
  }
  voice.shut = hearing.boxed ? (hearing.box === "open" ? 0 : hearing.box === "half" ? 1 : 2) : 0;
  return voice;
}
