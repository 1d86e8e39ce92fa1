import { kindBits } from "../acoustics/part-sound.ts";
import { type PitchSet, pitchBit } from "../acoustics/pitch-set.ts";
import type { Division, Instrument } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";
import type { PartContext } from "./rule.ts";

/** What a rule may know of a division before a stop is drawn, worked out once: `applies` and `most` ask for every keyboard. */
interface DivisionFacts {
  readonly kindsLow: number;
  readonly kindsHigh: number;
  /** Every length that one of its stops or ranks has. */
  readonly lengths: PitchSet;
  readonly halves: boolean;
  /** A flue among the halves. */
  readonly flueHalves: boolean;
  readonly off: boolean;
  readonly tierce: boolean;
  /** A celeste of one rank, which needs a partner. */
  readonly loneCeleste: boolean;
}

const REEDS: readonly Kind[] = KIND_GROUPS.reed;
const known = new WeakMap<Division, DivisionFacts>();

function factsOf(division: Division): DivisionFacts {
  const made = known.get(division);
  if (made) return made;
  const { stops } = division;
  const kinds = kindBits(stops.flatMap((stop) => stop.kinds));
  const pitches = stops.flatMap((stop) => [...(stop.pitch ? [stop.pitch] : []), ...stop.uses.map((use) => use.pitch)]);
  const facts: DivisionFacts = {
    kindsLow: kinds.low,
    kindsHigh: kinds.high,
    lengths: pitches.reduce((set, pitch) => set | pitchBit(pitch), 0),
    halves: stops.some((stop) => stop.half !== null),
    flueHalves: stops.some((stop) => stop.half !== null && !stop.kinds.some((kind) => REEDS.includes(kind))),
    off: stops.some((stop) => stop.off),
    tierce: stops.some((stop) => stop.tierce || stop.kinds.includes("tierce")),
    loneCeleste: stops.some((stop) => stop.kinds.includes("celeste") && stop.ranks < 2),
  };
  known.set(division, facts);
  return facts;
}

/** Whether any stop that the keyboard reaches is of one of these kinds (bits from `kindBits`). */
export const reachesKind = (context: PartContext, kinds: { readonly low: number; readonly high: number }): boolean =>
  context.reach.some((division) => {
    const facts = factsOf(division);
    return (facts.kindsLow & kinds.low) !== 0 || (facts.kindsHigh & kinds.high) !== 0;
  });

/** Whether any stop that the keyboard reaches is a half. */
export const isDivided = (context: PartContext): boolean => context.reach.some((division) => factsOf(division).halves);
/** Whether any flue that the keyboard reaches is a half. */
export const hasDividedFlues = (context: PartContext): boolean =>
  context.reach.some((division) => factsOf(division).flueHalves);
/** Whether any stop that the keyboard reaches is marked off. */
export const reachesOff = (context: PartContext): boolean => context.reach.some((division) => factsOf(division).off);
/** Whether any stop that the keyboard reaches holds a third. */
export const reachesTierce = (context: PartContext): boolean =>
  context.reach.some((division) => factsOf(division).tierce);
/** Whether the keyboard reaches a celeste of one rank. */
export const reachesLoneCeleste = (context: PartContext): boolean =>
  context.reach.some((division) => factsOf(division).loneCeleste);

const octaveFixed = new WeakMap<Instrument, boolean>();
function hasFixedOctaveCoupler(instrument: Instrument): boolean {
  let fixed = octaveFixed.get(instrument);
  if (fixed === undefined) {
    fixed = instrument.couplers.some((coupler) => coupler.fixed && coupler.pitch !== 8);
    octaveFixed.set(instrument, fixed);
  }
  return fixed;
}
const movesByOctaves = (context: PartContext): boolean =>
  context.octave !== 0 ||
  context.couplers.some((coupler) => coupler.pitch !== 8) ||
  hasFixedOctaveCoupler(context.instrument);

/** Whether the keyboard may sound any of these lengths: a bound, so an octave away or through an octave coupler anything may. */
export const mayReach = (context: PartContext, lengths: PitchSet): boolean =>
  movesByOctaves(context) || context.reach.some((division) => (factsOf(division).lengths & lengths) !== 0);
