import type { BoxPosition } from "../console/state.ts";
import type { PlacedPart } from "../judging/placed-part.ts";
import type { Problem } from "../judging/problem.ts";
import { voicesOf } from "../judging/voices.ts";
import type { Stop } from "../stoplist/instrument.ts";
import type { Base, Candidate } from "./candidate.ts";
import { isProposable } from "./state-space.ts";

/** What a placed part shares with the parts placed before it, whatever they draw. */
export interface Sharing {
  /** Stops of shared divisions that an earlier part would hear: it settles them, drawn or not. */
  readonly settled: ReadonlySet<Stop>;
  /** A box or a tremulant is shared without any division being so. */
  readonly byBox: boolean;
  /** No division is shared: nothing that an earlier part draws is heard here. */
  readonly byBoxAlone: boolean;
}

/** What a part shares with those before it; `null` when nothing that they draw concerns it. */
export function sharingFor(problem: Problem, earlier: readonly PlacedPart[], next: PlacedPart): Sharing | null {
  const reach = new Set(next.reach.map((each) => each.division.name));
  const settled = new Set<Stop>();
  let shares = false;
  for (const placed of earlier) {
    for (const { division } of placed.reach) {
      if (!reach.has(division.name)) continue;
      shares = true;
      for (const stop of division.stops) {
        if (isProposable(stop) && voicesOf(problem, placed, stop)) settled.add(stop);
      }
    }
  }
  const byBox =
    problem.instrument.tremulants.includes("all") ||
    next.reach.some(
      ({ division }) =>
        division.box !== null && earlier.some((one) => one.reach.some((other) => other.division.box === division.box)),
    );
  return shares || byBox ? { settled, byBox, byBoxAlone: !shares } : null;
}

/** What the sets drawn before settle for the next part. */
export function baseFor(
  problem: Problem,
  drawn: readonly Candidate[],
  next: PlacedPart,
  { settled, byBox, byBoxAlone }: Sharing,
): Base {
  const stops: Stop[] = [];
  const tremulants = new Set<string>();
  const divisions = new Set<string>();
  const boxes = new Map<string, BoxPosition>();
  for (const candidate of drawn) {
    for (const stop of candidate.stops) {
      if (byBox || settled.has(stop)) divisions.add(stop.division);
      if (settled.has(stop) && !stops.includes(stop) && voicesOf(problem, next, stop)) stops.push(stop);
    }
    for (const name of candidate.tremulants) if (!byBoxAlone || name === "all") tremulants.add(name);
    for (const [box, at] of candidate.boxes) boxes.set(box, at);
  }
  return { drawn: stops, tremulants, divisions, boxes };
}

/** One text for all bases on which a part that shares no division finds the same: most sets of an earlier part are alike in that. */
export function meansText({ instrument }: Problem, next: PlacedPart, { tremulants, divisions, boxes }: Base): string {
  const settled = instrument.divisions
    .filter((each) => each.box !== null && divisions.has(each.name))
    .map(({ box }) => box as string);
  const heard = new Set(next.reach.flatMap(({ division }) => division.box ?? []));
  const at = [...heard].map((box) => `${box} ${boxes.get(box) ?? (settled.includes(box) ? "open" : "free")}`);
  return `${tremulants.size > 0} ${divisions.size > 0} ${at.join()}`;
}
