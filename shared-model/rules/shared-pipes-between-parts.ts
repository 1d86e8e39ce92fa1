import { kindBits, type PartSound } from "../acoustics/part-sound.ts";
import { pitchBit } from "../acoustics/pitch-set.ts";
import { isCompound } from "../acoustics/voice.ts";
import { stretch } from "../pitch/foot.ts";
import type { Instrument, Stop } from "../stoplist/instrument.ts";
import { isOneSilent, partName } from "./balance.ts";
import { idsOf, named } from "./naming.ts";
import type { HeardStop, PairRule, PartContext } from "./rule.ts";

const HANDS = 200;
const WITH_FEET = 80;
const MOST = 400;

/** Octaves from the written key to the key of the stop's division. */
function octavesAway(stop: Stop, context: PartContext): number {
  if (stop.division === context.keyboard.name) return context.octave;
  const coupler = context.couplers.find((each) => each.from === stop.division && each.to === context.keyboard.name);
  return context.octave + (coupler?.pitch === 4 ? 1 : coupler?.pitch === 16 ? -1 : 0);
}

/** The pipes of one row that a part can ask for through a stop. */
interface Stretch {
  readonly stop: Stop;
  /** First and last pipe, in semitones above a pipe of 64'. */
  readonly low: number;
  readonly high: number;
  /** How a sound shows that the stop is drawn: by its kinds, and by its pitch where it has one. */
  readonly kindsLow: number;
  readonly kindsHigh: number;
  readonly pitch: number;
}
type Rows = ReadonlyMap<string, readonly Stretch[]>;

const sharedOf = new WeakMap<Instrument, ReadonlySet<string>>();
/** Rows of pipes that more than one stop draws on. */
function sharedRows(instrument: Instrument): ReadonlySet<string> {
  let shared = sharedOf.get(instrument);
  if (!shared) {
    const stops = instrument.divisions.flatMap((division) => division.stops);
    const drawers = new Map<string, Set<Stop>>();
    for (const stop of stops) {
      for (const { rank } of stop.uses) drawers.set(rank, (drawers.get(rank) ?? new Set()).add(stop));
    }
    shared = new Set([...drawers].filter(([, by]) => by.size > 1).map(([rank]) => rank));
    sharedOf.set(instrument, shared);
  }
  return shared;
}

const rowsOfContext = new WeakMap<PartContext, Rows>();
/** What a part can ask for of each shared row, where it lies. Reckoned once for each placing, since `weigh` asks often. */
function rowsOf(context: PartContext): Rows {
  const known = rowsOfContext.get(context);
  if (known) return known;
  const shared = sharedRows(context.instrument);
  const rows = new Map<string, Stretch[]>();
  for (const stop of context.reach.flatMap((division) => division.stops)) {
    const away = octavesAway(stop, context);
    const sounds = stop.pitch && (away >= 0 ? stretch(stop.pitch, 1, 2 ** away) : stretch(stop.pitch, 2 ** -away));
    const kinds = kindBits(stop.kinds);
    for (const use of stop.uses) {
      const low = Math.max(use.from, context.part.low + 12 * away);
      const high = Math.min(use.to, context.part.high + 12 * away);
      if (!shared.has(use.rank) || low > high) continue;
      const height = Math.round(12 * Math.log2((64 * use.pitch.under) / use.pitch.over));
      const row = rows.get(use.rank) ?? [];
      row.push({
        stop,
        low: low + height,
        high: high + height,
        kindsLow: kinds.low,
        kindsHigh: kinds.high,
        pitch: sounds && !isCompound(stop) ? pitchBit(sounds) : 0,
      });
      rows.set(use.rank, row);
    }
  }
  rowsOfContext.set(context, rows);
  return rows;
}

const shows = (sound: PartSound, { pitch, kindsLow, kindsHigh }: Stretch): boolean =>
  (pitch & ~sound.plain) === 0 && (kindsLow & ~sound.kindsLow) === 0 && (kindsHigh & ~sound.kindsHigh) === 0;

const meet = (one: Stretch, other: Stretch): boolean => one.low <= other.high && other.low <= one.high;

/** Whether a coupler lets both parts hear one division: what they then share is the stop itself, no robbed pipe. */
const areCoupled = (first: PartContext, second: PartContext): boolean =>
  first.reach.some((division) => second.reach.includes(division));

/** Rows on which the two sounds can ask for one pipe. */
function rowsRobbed(
  first: PartSound,
  second: PartSound,
  firstContext: PartContext,
  secondContext: PartContext,
): number {
  let rows = 0;
  const others = rowsOf(secondContext);
  for (const [rank, stretches] of rowsOf(firstContext)) {
    const across = others.get(rank);
    if (!across) continue;
    if (
      stretches.some((one) => shows(first, one) && across.some((other) => meet(one, other) && shows(second, other)))
    ) {
      rows += 1;
    }
  }
  return rows;
}

/** Stops of the first part that ask for pipes of the second's. */
function robbing(
  first: readonly HeardStop[],
  second: readonly HeardStop[],
  firstContext: PartContext,
  secondContext: PartContext,
): readonly HeardStop[] {
  const drawn = new Set(second.map((each) => each.stop));
  const others = rowsOf(secondContext);
  const robbers = new Set<Stop>();
  for (const [rank, stretches] of rowsOf(firstContext)) {
    const across = (others.get(rank) ?? []).filter((each) => drawn.has(each.stop));
    for (const one of stretches) if (across.some((other) => meet(one, other))) robbers.add(one.stop);
  }
  const found = first.filter((each) => robbers.has(each.stop));
  // Stops on one row of which no two meet here, taken for others of the same kinds and pitches.
  const shared = sharedRows(firstContext.instrument);
  return found.length > 0 ? found : first.filter((each) => each.stop.uses.some((use) => shared.has(use.rank)));
}

export const sharedPipesBetweenParts: PairRule = {
  id: "shared-pipes-between-parts",
  conventions: [22],
  reads: "pair",
  statement:
    "Two parts do not draw on one row of pipes: a pipe that both ask for sounds once, and one of them loses a note.",
  why: "In unit and borrowed stops several knobs draw the same pipes.",
  source: "common practice",
  severity: "warning",
  yieldsToPrescription: false,
  applies: (first, second) => first.part.id < second.part.id,
  most: () => 0,
  weigh: (first, second, firstContext, secondContext) => {
    const [low, high] = [first.ranksLow & second.ranksLow, first.ranksHigh & second.ranksHigh];
    if ((low | high) === 0) return 0;
    if (isOneSilent(first, second) || areCoupled(firstContext, secondContext)) return 0;
    const ranks = rowsRobbed(first, second, firstContext, secondContext);
    const feet = firstContext.part.hands === "feet" || secondContext.part.hands === "feet";
    return ranks === 0 ? 0 : -Math.min(MOST, (feet ? WITH_FEET : HANDS) * ranks);
  },
  words: (_first, _second, firstContext, secondContext, heard) => {
    const one = robbing(heard.first.stops, heard.second.stops, firstContext, secondContext);
    const other = robbing(heard.second.stops, heard.first.stops, secondContext, firstContext);
    const ids = [...new Set([...idsOf(one), ...idsOf(other)])];
    const taken = new Set([...one, ...other].flatMap((each) => each.stop.uses.map((use) => use.rank)));
    const way = heard.second.undrawn.find(
      (each) => each.silent.length === 0 && each.stop.uses.every((use) => !taken.has(use.rank)),
    );
    return {
      text: `${named(one)} in the ${partName(firstContext)} and ${named(other)} in the ${partName(secondContext)} draw on the same pipes: where both ask for one pipe it sounds once.`,
      remedy: way
        ? `Draw ${way.label} for the ${partName(secondContext)} instead.`
        : `The ${secondContext.keyboard.name} has no stop on pipes of its own.`,
      stops: ids,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Manual I: Gedackt 8 {gedackt} | Manual II: Flöte 4 {gedackt} (Principal 8)",
        plays: "voice on Manual I, left-hand voice on Manual II",
        says: "Gedackt 8 in the first voice and Flöte 4 in the second voice draw on the same pipes: where both ask for one pipe it sounds once.",
      },
      {
        organ: "Manual: Gedackt 8 {gedackt} (Principal 8) | Pedal: Subbass 16 {gedackt}",
        plays: "accompaniment on Manual, bass on Pedal",
        ranges: { accompaniment: "C2-C4" },
        says: "Gedackt 8 in the accompaniment and Subbass 16 in the bass draw on the same pipes: where both ask for one pipe it sounds once.",
      },
    ],
    silent: [
      { organ: "Manual I: Gedackt 8 | Manual II: Flöte 4", plays: "voice on Manual I, left-hand voice on Manual II" },
      {
        organ: "Manual: Gedackt 8 {gedackt} | Pedal: Subbass 16 {gedackt}",
        plays: "accompaniment on Manual, bass on Pedal",
        ranges: { accompaniment: "C4-C6", bass: "C2-C3" },
      },
    ],
  },
};
