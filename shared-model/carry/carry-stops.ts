import type { Points } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind, type KindGroup } from "../stoplist/kind.ts";

/** Points by which one stop stands less well for another. Our own setting. */
const UNLIKE = {
  /** One of several kinds in common; none, but of one group (two flutes, two chorus reeds); merely flue for flue. */
  otherKinds: 20,
  sameGroup: 60,
  reedForReed: 120,
  flueForFlue: 150,
  otherHalf: 60,
  /** Each of the five steps. */
  strength: 15,
  brightness: 5,
} as const;

const ALIKE: readonly KindGroup[] = ["flute", "chorus-reed", "short-reed", "mutation"];
const isOf = (stop: Stop, group: KindGroup): boolean =>
  stop.kinds.some((kind) => (KIND_GROUPS[group] as readonly Kind[]).includes(kind));
const isCompound = (stop: Stop): boolean => isOf(stop, "high-compound");

function unlikeKinds(one: Stop, other: Stop): Points | null {
  const common = one.kinds.filter((kind) => other.kinds.includes(kind)).length;
  if (common > 0) return common === one.kinds.length && common === other.kinds.length ? 0 : UNLIKE.otherKinds;
  if (isCompound(one) !== isCompound(other)) return null;
  if (ALIKE.some((group) => isOf(one, group) && isOf(other, group))) return UNLIKE.sameGroup;
  if (isOf(one, "reed") && isOf(other, "reed")) return UNLIKE.reedForReed;
  return isOf(one, "flue") && isOf(other, "flue") ? UNLIKE.flueForFlue : null;
}

/**
 * How far one stop is from being another, in points: 0 where nothing tells them apart but a name. By kinds, pitch, half,
 * strength and brightness, never by names. `null` where it cannot stand for it: another pitch, a flue for a reed, an effect.
 */
export function unlikeness(one: Stop, other: Stop): Points | null {
  if (other.off) return null;
  const kinds = unlikeKinds(one, other);
  if (kinds === null) return null;
  if (one.pitch !== other.pitch && !(isCompound(one) && isCompound(other))) return null;
  if (one.half !== other.half && one.half !== null && other.half !== null) return null;
  return (
    kinds +
    (one.half === other.half ? 0 : UNLIKE.otherHalf) +
    Math.abs(one.strength - other.strength) * UNLIKE.strength +
    Math.abs(one.brightness - other.brightness) * UNLIKE.brightness
  );
}

/** Two stops that stand for one another. */
export interface StopPair {
  readonly one: Stop;
  readonly other: Stop;
  readonly points: Points;
}

/**
 * Pairs stops with those that stand for them best, each used once; a half may share a whole stop with its other half. Of
 * equally good ones that of the same name, then the one nearest in the printed order, so that twins keep their places.
 */
export function pairStops(ones: readonly Stop[], others: readonly Stop[], placeOf: (stop: Stop) => number): StopPair[] {
  const all = ones.flatMap((one) =>
    others.flatMap((other) => {
      const points = unlikeness(one, other);
      if (points === null) return [];
      const apart = Math.min(999, Math.abs(placeOf(one) - placeOf(other)));
      return [{ one, other, points, tie: (one.name === other.name ? 0 : 1000) + apart }];
    }),
  );
  all.sort((a, b) => a.points - b.points || a.tie - b.tie);
  const pairs: StopPair[] = [];
  const done = new Set<Stop>();
  const taken = new Map<Stop, Stop>();
  for (const { one, other, points } of all) {
    const by = taken.get(other);
    const shares =
      by !== undefined && other.half === null && by.half !== null && one.half !== null && by.half !== one.half;
    if (done.has(one) || (by && !shares)) continue;
    done.add(one);
    taken.set(other, one);
    pairs.push({ one, other, points });
  }
  return pairs;
}
