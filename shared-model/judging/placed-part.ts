import { mannerOf, momentsOf } from "../acoustics/moments.ts";
import { addVoice, silence, type Voice } from "../acoustics/part-sound.ts";
import { type Hearing, keysInZones, type Listening, voiceOf, type Zones, zonesOf } from "../acoustics/voice.ts";
import { dividingKey, inItsHalf, keysBeyond, mayLack } from "../console/range.ts";
import { type Reached, reachOf } from "../console/reach.ts";
import type { BoxPosition } from "../console/state.ts";
import type { Part } from "../music/texture.ts";
import { hasOneManual } from "../rules/balance.ts";
import type { Coupler, Division, Instrument, Stop } from "../stoplist/instrument.ts";

/** Keys of a keyboard put to use: what reaches them, whatever music is played. Reckoned once for an instrument. */
export interface Seat {
  readonly keyboard: Division;
  readonly octave: -1 | 0 | 1;
  /** Couplers on that bear on this keyboard, fixed ones left out, in the instrument's order. */
  readonly couplers: readonly Coupler[];
  /** Whether the keyboard's own unison is off: its stops then sound there through octave couplers only. */
  readonly unisonOff: boolean;
  readonly reach: readonly Reached[];
  readonly zones: Zones;
  /** Written keys of the catalogue's range that this keyboard does not have, cut away with a note; 0 when none. */
  readonly cutKeys: number;
  readonly listening: Omit<Listening, "pedal">;
  keysIn(zones: number): number;
}

/** A part put on a keyboard: what reaches it and over which keys, before a stop is drawn. */
export interface PlacedPart extends Seat {
  readonly part: Part;
  /** The same with the keys that are used here, which on a divided keyboard may be others than the catalogue's. */
  readonly played: Part;
  readonly seat: Seat;
}

const ranksOf = new WeakMap<Instrument, ReadonlyMap<string, number>>();

/** Ranks that several stops draw, by number: their pipes speak once. Reckoned once for an instrument. */
export function sharedRanks(instrument: Instrument): ReadonlyMap<string, number> {
  const known = ranksOf.get(instrument);
  if (known) return known;
  const users = new Map<string, Set<string>>();
  for (const division of instrument.divisions) {
    for (const stop of division.stops) {
      for (const use of stop.uses) {
        const set = users.get(use.rank) ?? new Set();
        users.set(use.rank, set.add(stop.id));
      }
    }
  }
  const shared = new Map([...users].filter(([, stops]) => stops.size > 1).map(([rank], index) => [rank, index]));
  ranksOf.set(instrument, shared);
  return shared;
}

/** Written keys at which something begins or ends for a part played so. */
function edgesOf(reach: readonly Reached[], octave: number, low: number, high: number): ReadonlySet<number> {
  const edges = new Set<number>([low, high + 1]);
  for (const { division, shift } of reach) {
    const away = 12 * (octave + shift);
    for (const stop of division.stops) {
      edges.add(stop.from - away).add(stop.to + 1 - away);
      for (const use of stop.uses) edges.add(use.from - away);
    }
  }
  return edges;
}

const seatsOf = new WeakMap<Instrument, Map<string, Seat>>();

/**
 * Puts a part on a keyboard. A default range of the catalogue that passes the end of the keyboard is cut there, unless
 * more than a third of it would be lost (then it is left whole, and the rules say that it cannot be played there).
 *
 * @param followed whether a rule about the part follows its loudness stop by stop.
 */
export function placePart(
  instrument: Instrument,
  part: Part,
  keyboard: Division,
  octave: -1 | 0 | 1,
  couplers: readonly Coupler[],
  unisonOff: boolean,
  followed = false,
): PlacedPart {
  let seats = seatsOf.get(instrument);
  if (!seats) {
    seats = new Map();
    seatsOf.set(instrument, seats);
  }
  const played = playedOn(instrument, part, keyboard);
  const key = `${mannerOf(part)} ${played.low} ${played.high} ${part.stated} ${keyboard.name} ${octave} ${unisonOff} ${followed} ${couplers.map((each) => each.name).join("|")}`;
  let seat = seats.get(key);
  if (!seat) {
    seat = seatFor(instrument, played, keyboard, octave, couplers, unisonOff, followed);
    seats.set(key, seat);
  }
  const here = seat;
  return {
    part,
    played,
    seat: here,
    keyboard,
    octave,
    couplers,
    unisonOff,
    reach: here.reach,
    cutKeys: here.cutKeys,
    get zones() {
      return here.zones;
    },
    get listening() {
      return here.listening;
    },
    keysIn: here.keysIn,
  };
}

/** A part with the keys that hands use of it on a keyboard: each keeps to its half where only halves tell them apart. */
function playedOn(instrument: Instrument, part: Part, keyboard: Division): Part {
  const { hands, stated, apartFrom } = part;
  if (stated || apartFrom.length === 0 || !(hands === "left" || hands === "right")) return part;
  const divide = hasOneManual(instrument) ? dividingKey(keyboard) : null;
  return divide === null ? part : { ...part, ...inItsHalf(part, hands, divide) };
}

function seatFor(
  instrument: Instrument,
  part: Part,
  keyboard: Division,
  octave: -1 | 0 | 1,
  couplers: readonly Coupler[],
  unisonOff: boolean,
  followed: boolean,
): Seat {
  const reach = reachOf(instrument, keyboard, (coupler) => coupler.fixed || couplers.includes(coupler), unisonOff);
  const [kbLow, kbHigh] = [keyboard.compass.low - 12 * octave, keyboard.compass.high - 12 * octave];
  const [cutLow, cutHigh] = [Math.max(part.low, kbLow), Math.min(part.high, kbHigh)];
  const cutKeys = part.stated ? 0 : keysBeyond(part, { low: kbLow, high: kbHigh });
  const cut = cutKeys > 0 && mayLack(cutKeys, part.high - part.low + 1);
  const [low, high] = cut ? [cutLow, cutHigh] : [part.low, part.high];
  let zones: Zones | undefined;
  let listening: Seat["listening"] | undefined;
  const memo = new Map<number, number>();
  const seat: Seat = {
    keyboard,
    octave,
    couplers,
    unisonOff,
    reach,
    cutKeys: cut ? cutKeys : 0,
    // Most placings are given up by their bound alone, before anybody asks which keys speak.
    get zones() {
      zones ??= zonesOf(low, high, edgesOf(reach, octave, kbLow, kbHigh));
      return zones;
    },
    get listening() {
      listening ??= {
        moments: momentsOf(mannerOf(part), low, high),
        a4: instrument.a4,
        room: instrument.room,
        followed,
      };
      return listening;
    },
    keysIn: (set) => {
      let keys = memo.get(set);
      if (keys === undefined) {
        keys = keysInZones(seat.zones, set);
        memo.set(set, keys);
      }
      return keys;
    },
  };
  return seat;
}

/** How a placed part hears a division reached with `shift`. */
function hearingOf(
  placed: PlacedPart,
  reached: Reached,
  shared: ReadonlyMap<string, number>,
  box: BoxPosition,
): Hearing {
  return {
    zones: placed.zones,
    away: 12 * (placed.octave + reached.shift),
    low: placed.keyboard.compass.low - 12 * placed.octave,
    high: placed.keyboard.compass.high - 12 * placed.octave,
    sharedRank: (rank) => shared.get(rank),
    boxed: reached.division.box !== null,
    box: reached.division.box === null ? "open" : box,
    listening: { ...placed.listening, pedal: reached.division.kind === "pedal" },
  };
}

/** All that a stop adds to a placed part, over every way in which its division is reached; `null` when it is not heard. */
export function heardVoice(
  placed: PlacedPart,
  stop: Stop,
  shared: ReadonlyMap<string, number>,
  box: BoxPosition,
): Voice | null {
  let sum: Voice | null = null;
  for (const reached of placed.reach) {
    if (reached.division.name !== stop.division) continue;
    const voice = voiceOf(stop, hearingOf(placed, reached, shared, box));
    if (!voice) continue;
    if (!sum) {
      sum = voice;
      continue;
    }
    // One knob heard at two pitches (an octave coupler): its pipes sound twice, it is drawn once.
    const both = silence();
    addVoice(sum, voice, both);
    both.stops = 1;
    both.short = Math.min(sum.short, voice.short);
    both.enclosed = voice.enclosed;
    both.sharedVoices = voice.sharedVoices;
    both.dead = voice.dead;
    sum = both;
  }
  return sum;
}

/**
 * The order in which parts settle what is drawn: a part comes after every part whose keyboard is coupled to its own, so
 * that the player of a keyboard has the first say over its stops. `null` when two keyboards are coupled to each other.
 */
export function settlingOrder(placed: readonly PlacedPart[]): readonly number[] | null {
  const order: number[] = [];
  const left = placed.map((_, index) => index);
  while (left.length > 0) {
    const at = left.findIndex((index) => {
      const mine = placed[index] as PlacedPart;
      return !left.some(
        (other) =>
          other !== index &&
          (placed[other] as PlacedPart).keyboard !== mine.keyboard &&
          mine.reach.some((each) => each.division === (placed[other] as PlacedPart).keyboard),
      );
    });
    if (at < 0) return null;
    order.push(...left.splice(at, 1));
  }
  return order;
}
