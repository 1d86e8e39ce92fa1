import { compareFeet, type Foot, stretch } from "../../shared-model/pitch/foot.ts";
import type {
  Division,
  Half,
  Instrument,
  RankUse,
  Room,
  Stop,
  Strength,
} from "../../shared-model/stoplist/instrument.ts";
import { aidsFor, couplersFor, type Place, places } from "./random-console.ts";
import {
  above,
  compoundUses,
  foot,
  NOMINAL_KEY,
  plainUses,
  soundsThird,
  stretches,
  type Workshop,
} from "./random-pipes.ts";
import { type Manner, UNIT_RANKS, VOICES, type Voice } from "./random-voices.ts";
import { Draw } from "./seeded-random.ts";

/** What of a random instrument is fixed beforehand; all else follows from the seed. */
export interface RandomInstrumentOptions {
  /** Exactly so many stops (halves count singly), 1 to 1000. */
  readonly stops?: number;
  /** Exactly so many keyboards for the hands, 1 to 7; not more than `stops`. */
  readonly manuals?: number;
  /** Whether there is a pedal. */
  readonly pedal?: boolean;
  /** At most so many couplers. */
  readonly couplersAtMost?: number;
  readonly manner?: Manner;
}

/** A length as a jamb prints it: `2 2/3`. */
function printed(pitch: Foot): string {
  const whole = Math.floor(pitch.over / pitch.under);
  const rest = pitch.over % pitch.under;
  if (rest === 0) return `${whole}`;
  return `${whole > 0 ? `${whole} ` : ""}${rest}/${pitch.under}`;
}

/** A stop name with its pitch and half that the division does not have yet. */
function freshName(shop: Workshop, division: string, base: string, rest: string): { name: string; id: string } {
  for (let turn = 1; ; turn += 1) {
    const name = turn === 1 ? base : `${base} ${turn}`;
    const id = `${division}/${name}${rest}`;
    if (shop.taken.has(id)) continue;
    shop.taken.add(id);
    return { name, id };
  }
}

const strengthNear = (draw: Draw, usual: number): Strength => {
  const swing = draw.chance(0.25) ? (draw.chance(0.5) ? 1 : -1) : 0;
  return Math.min(5, Math.max(1, usual + swing)) as Strength;
};

function finish(
  shop: Workshop,
  place: Place,
  voice: Pick<Voice, "name" | "kinds" | "family" | "strength">,
  more: { pitch: Foot | null; half: Half; uses: readonly RankUse[]; ranks: number; tierce: boolean },
): void {
  const { draw } = shop;
  const words = [more.pitch ? printed(more.pitch) : null, more.half];
  const rest = words
    .filter((word) => word !== null)
    .map((word) => ` ${word}`)
    .join("");
  const { name, id } = freshName(shop, place.name, voice.name, rest);
  const off = draw.chance(0.03);
  const froms = more.uses.map((use) => use.from);
  const tos = more.uses.map((use) => use.to);
  shop.made.push({
    id,
    division: place.name,
    name,
    pitch: more.pitch,
    half: more.half,
    kinds: voice.kinds,
    family: voice.family,
    strength: strengthNear(draw, voice.strength + place.louder),
    brightness: 3,
    byEar: { strength: false, brightness: false },
    ranks: more.ranks,
    uses: more.uses,
    from: froms.length > 0 ? Math.min(...froms) : place.compass.low,
    to: tos.length > 0 ? Math.max(...tos) : place.compass.high,
    tierce: more.tierce,
    off,
    note: off ? draw.one(["ciphers on F#4", "out of tune", "dead in the top octave"]) : null,
  });
}

/** One more stop of `voice` in the division, whole or one half of it. */
function build(shop: Workshop, place: Place, voice: Voice, pitch: Foot | null, half: Half): void {
  const low = half === "treble" ? shop.splitAt : place.compass.low;
  const high = half === "bass" ? shop.splitAt - 1 : place.compass.high;
  if (voice.compound) {
    const from = Math.min(high, Math.max(low, half === null ? (voice.begins ?? low) : low));
    const rows = stretches(shop, voice, from, high);
    const feet = rows.flatMap((row) => row.feet);
    const prints = shop.draw.chance(0.5) ? pitch : null;
    finish(shop, place, voice, {
      pitch: prints,
      half,
      uses: compoundUses(shop, rows, high),
      ranks: rows[0]?.feet.length ?? 1,
      tierce: soundsThird(feet),
    });
  } else if (pitch === null) {
    finish(shop, place, voice, { pitch, half: null, uses: [], ranks: 0, tierce: false });
  } else {
    const uses = plainUses(shop, place, voice, pitch, low, high);
    finish(shop, place, voice, { pitch, half, uses, ranks: 1, tierce: false });
  }
}

/** The stop that a division starts from: without an 8' (16' in the pedal) little can be done, so only now and then it lacks. */
function foundation(shop: Workshop, place: Place): void {
  const { draw } = shop;
  const names =
    place.kind === "pedal" ? ["Subbass", "Principal", "Bourdon"] : ["Gedackt", "Principal", "Hohlflöte", "Bourdon"];
  const voice = VOICES.find((candidate) => candidate.name === draw.one(names)) ?? (VOICES[0] as Voice);
  build(shop, place, voice, foot(place.kind === "pedal" ? "16" : "8"), null);
}

function chosenVoice(shop: Workshop, place: Place): { voice: Voice; pitch: Foot | null } {
  const { draw } = shop;
  const pedal = place.kind === "pedal";
  if (shop.made.length > 8 && draw.chance(0.01)) return { voice: VOICES[VOICES.length - 1] as Voice, pitch: null };
  const pool = VOICES.filter(
    (voice) =>
      voice.weight > 0 && voice.manners.includes(shop.manner) && (pedal ? voice.pedal : voice.manual).length > 0,
  );
  const voice = draw.weighted(pool, (candidate) => candidate.weight);
  const pitches = pedal ? voice.pedal : voice.manual;
  // The first pitch is the usual one; a second try keeps a large division from being all 8'.
  const text = draw.chance(0.5) ? (pitches[0] as string) : draw.one(pitches);
  return { voice, pitch: foot(text) };
}

/** Whether the division has a stop of that name and pitch already. */
type Alike = (name: string, pitch: Foot | null) => boolean;

/** A stop that draws a shared row; above its last pipe the row repeats an octave lower. */
function unitStop(shop: Workshop, place: Place, alike: Alike): boolean {
  const { draw } = shop;
  const unit = draw.one(UNIT_RANKS.slice(0, shop.manner === "unit" ? 4 : 1));
  const [name, pitchText] = draw.one(unit.stops);
  const [longest, pitch] = [foot(unit.longest), foot(pitchText)];
  const { low, high } = place.compass;
  const lowest = NOMINAL_KEY - above(longest, pitch);
  const highest = lowest + unit.pipes - 1;
  if (low < lowest || alike(name, pitch)) return false;
  if (!shop.ranks.some((rank) => rank.id === unit.id)) shop.ranks.push({ id: unit.id, longest, pipes: unit.pipes });
  const uses: RankUse[] = [{ rank: unit.id, pitch, from: low, to: Math.min(high, highest) }];
  if (high > highest && draw.chance(0.7)) {
    uses.push({ rank: unit.id, pitch: stretch(pitch, 2), from: highest + 1, to: high });
  }
  const kinds: Voice["kinds"] =
    pitchText === "8/3"
      ? unit.id === "flute"
        ? ["nasard"]
        : ["twelfth"]
      : pitchText === "4/3"
        ? ["larigot"]
        : unit.kinds;
  const family = pitch.under === 3 ? "mutation" : unit.family;
  finish(
    shop,
    place,
    { name, kinds, family, strength: unit.strength },
    { pitch, half: null, uses, ranks: 1, tierce: false },
  );
  return true;
}

/** The same pipes as a stop of another division, at the same pitch; `false` when none fits this compass. */
function duplexed(shop: Workshop, place: Place, alike: Alike): boolean {
  const { low, high } = place.compass;
  const others = shop.made.filter(
    (stop) =>
      stop.division !== place.name &&
      stop.half === null &&
      stop.pitch !== null &&
      stop.uses.length === 1 &&
      stop.from <= low &&
      stop.to >= high,
  );
  if (others.length === 0) return false;
  const other = shop.draw.one(others);
  if (alike(other.name, other.pitch)) return false;
  const uses = other.uses.map((use) => ({ ...use, from: low, to: high }));
  const { pitch, ranks, tierce } = other;
  finish(shop, place, { ...other, kinds: other.kinds as Voice["kinds"] }, { pitch, half: null, uses, ranks, tierce });
  return true;
}

/** Fills a division; returns its stops in an order as printed. */
function fill(shop: Workshop, place: Place, wanted: number): Stop[] {
  const { draw } = shop;
  const start = shop.made.length;
  const count = (): number => shop.made.length - start;
  if (wanted > 0 && shop.manner !== "unit" && draw.chance(0.9)) foundation(shop, place);
  // A second stop alike is rare, but a large division has to have some: the table of voices is finite.
  let refused = 0;
  const alike: Alike = (name, pitch) => {
    const there = shop.made.slice(start).some((stop) => stop.name === name && (stop.pitch === pitch || stop.ranks > 1));
    if (there) refused += 1;
    return there && refused < 25;
  };
  while (count() < wanted) {
    if (shop.manner === "unit" && draw.chance(0.85) && unitStop(shop, place, alike)) continue;
    if (shop.manner !== "divided" && draw.chance(0.04) && duplexed(shop, place, alike)) continue;
    if (shop.manner === "romantic" && draw.chance(0.03) && unitStop(shop, place, alike)) continue;
    const { voice, pitch } = chosenVoice(shop, place);
    if (alike(voice.name, pitch)) continue;
    const split =
      shop.manner === "divided" &&
      place.kind === "manual" &&
      draw.chance(0.75) &&
      place.compass.low < shop.splitAt &&
      place.compass.high > shop.splitAt;
    if (!split || pitch === null) {
      build(shop, place, voice, pitch, null);
      continue;
    }
    const trebleOnly = voice.begins !== undefined || draw.chance(0.2);
    // Halves of one name an octave apart join two tessituras; common in Iberian reeds.
    const bassPitch = !voice.compound && draw.chance(0.1) ? stretch(pitch, 1, 2) : pitch;
    if (!trebleOnly && count() < wanted) build(shop, place, voice, bassPitch, "bass");
    if (count() < wanted) build(shop, place, voice, pitch, "treble");
  }
  const stops = shop.made.slice(start);
  if (draw.chance(0.3)) return stops;
  const families: string[] = VOICES.map((voice) => voice.family);
  const rank = (stop: Stop): number => families.indexOf(stop.family);
  return stops.sort((a, b) => rank(a) - rank(b) || (a.pitch && b.pitch ? compareFeet(a.pitch, b.pitch) : 0));
}

/** Stops per division: the first manual and the pedal get rather more, and each at least one while there are enough. */
function shares(draw: Draw, list: readonly Place[], stops: number): number[] {
  const counts = list.map(() => 0);
  const order = list
    .map((_, index) => index)
    .sort((a, b) => Number(list[a]?.kind === "pedal") - Number(list[b]?.kind === "pedal"));
  for (let left = stops, turn = 0; left > 0; left -= 1, turn += 1) {
    const index = order[turn] ?? draw.weighted(order, (at) => (at === 0 ? 3 : list[at]?.kind === "floating" ? 1 : 2));
    counts[index] = (counts[index] ?? 0) + 1;
  }
  return counts;
}

function sizeOf(draw: Draw, options: RandomInstrumentOptions): { stops: number; manuals: number } {
  const stops =
    options.stops ??
    Math.max(
      options.manuals ?? 3,
      draw.weighted(
        [draw.between(3, 8), draw.between(9, 30), draw.between(31, 70), draw.between(71, 160), draw.between(161, 450)],
        (size) => (size < 9 ? 4 : size < 31 ? 6 : size < 71 ? 4 : 1),
      ),
    );
  const usual =
    stops < 9
      ? draw.between(1, 2)
      : stops < 31
        ? draw.between(1, 3)
        : stops < 71
          ? draw.between(2, 4)
          : draw.between(3, 7);
  return { stops, manuals: options.manuals ?? Math.min(usual, stops) };
}

/**
 * A valid instrument made from the seed alone: the same seed and options give an equal value on every machine.
 *
 * Rows of pipes are counted from C2: a row whose first pipe is as long as the nominal pitch has its first pipe there,
 * so a stop that begins higher leaves the row's lowest numbers unused.
 *
 * @throws RangeError when the options contradict each other or leave the generator's range.
 */
export function randomInstrument(seed: number, options: RandomInstrumentOptions = {}): Instrument {
  const draw = new Draw(seed);
  const { stops, manuals } = sizeOf(draw, options);
  if (!(stops >= 1 && stops <= 1000 && manuals >= 1 && manuals <= 7 && manuals <= stops)) {
    throw new RangeError(`No organ of ${stops} stops on ${manuals} manuals can be made here.`);
  }
  const manners: Manner[] =
    manuals === 1
      ? ["divided", "divided", "poor", "baroque", "unit"]
      : stops < 20
        ? ["baroque", "romantic", "unit", "poor"]
        : ["baroque", "romantic", "romantic", "unit"];
  const manner = options.manner ?? draw.one(manners);
  const pedal = options.pedal ?? draw.chance(manuals === 1 ? 0.4 : 0.93);
  const list = places(draw, manner, manuals, pedal, stops);
  const shop: Workshop = { draw, manner, ranks: [], taken: new Set(), made: [], splitAt: draw.one([60, 61]) };
  const counts = shares(draw, list, stops);
  // A pedal without stops of its own (a pull-down), where the manuals can take its share.
  const last = list.length - 1;
  if (pedal && (manner === "divided" || manner === "poor") && draw.chance(0.4)) {
    counts[0] = (counts[0] ?? 0) + (counts[last] ?? 0);
    counts[last] = 0;
  }
  const bare = new Set(list.filter((_, index) => counts[index] === 0).map((place) => place.name));
  const divisions = list.map((place, index): Division => {
    const { name, kind, keyboard, compass, box } = place;
    return { name, kind, keyboard, compass, box, stops: fill(shop, place, counts[index] ?? 0) };
  });
  const late = manner === "romantic" || manner === "unit";
  const names = list.map((place) => place.name);
  const hands = list.filter((place) => place.kind !== "pedal").map((place) => place.name);
  const couplers = couplersFor(draw, manner, list, bare).slice(0, options.couplersAtMost ?? Number.POSITIVE_INFINITY);
  return {
    name: `Random organ ${seed}`,
    place: null,
    builder: null,
    year: null,
    history: null,
    a4: draw.one([440, 440, 415, 392, 435, 465]),
    temperament: draw.chance(0.5) ? "equal" : null,
    room: draw.one<Room>(["dry", "medium", "live"]),
    roomByEar: true,
    divisions,
    ranks: shop.ranks,
    couplers,
    tremulants: draw.chance(0.15) ? ["all"] : hands.filter(() => draw.chance(0.4)),
    unisonOff: late ? hands.filter(() => draw.chance(0.2)) : [],
    aids: aidsFor(draw, late, names),
    toys: draw.chance(0.2) ? ["Zimbelstern"] : [],
  };
}
