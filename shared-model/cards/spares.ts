import type { Problem } from "../judging/problem.ts";
import { isProposable, likeness } from "../propose/state-space.ts";
import type { Stop } from "../stoplist/instrument.ts";

/**
 * Stops that would do just as well as a drawn one of their division and are not drawn, by the drawn stop's id, in printed
 * order: a proposal draws the first printed of those that are alike in all that the rules read, and any other serves.
 * Where several alike are drawn, the spare ones stand beside the last of them. Stops without a spare have no entry.
 *
 * @param drawn ids of drawn stops.
 */
export function sparesOf(
  problem: Pick<Problem, "instrument" | "shared">,
  drawn: ReadonlySet<string>,
): ReadonlyMap<string, readonly Stop[]> {
  const spares = new Map<string, readonly Stop[]>();
  for (const { stops } of problem.instrument.divisions) {
    const alike = new Map<string, Stop[]>();
    for (const stop of stops) {
      const text = likeness(stop, problem.shared);
      alike.set(text, [...(alike.get(text) ?? []), stop]);
    }
    for (const group of alike.values()) {
      const last = group.findLast((stop) => drawn.has(stop.id));
      const spare = group.filter((stop) => !drawn.has(stop.id) && isProposable(stop));
      if (last && spare.length > 0) spares.set(last.id, spare);
    }
  }
  return spares;
}
