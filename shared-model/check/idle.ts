import type { ConsoleState } from "../console/state.ts";
import type { Judgement } from "../judging/judge.ts";
import { stopLabel } from "../judging/listening.ts";
import type { Problem } from "../judging/problem.ts";
import type { Idle } from "../rules/nothing-idle.ts";
import type { Division, Stop } from "../stoplist/instrument.ts";

/** What is set at the console and heard by no part, all of it in the instrument's order; stops that are off are left out. */
export function idleIn(
  problem: Problem,
  state: ConsoleState,
  { parts, idle }: Pick<Judgement, "parts" | "idle">,
): Idle {
  const { instrument, stops } = problem;
  const heardIds = new Set(parts.flatMap((part) => part.heard));
  const hears = (division: Division): boolean => division.stops.some((stop) => heardIds.has(stop.id));
  const bringing = new Set<string>();
  for (const { placed, heard } of parts) {
    for (const { division, couplers } of placed.reach) {
      if (!division.stops.some((stop) => heard.includes(stop.id))) continue;
      for (const coupler of couplers) bringing.add(coupler.name);
    }
  }
  const sounding = instrument.divisions.filter(hears);
  const unheard = stops.filter((stop) => idle.includes(stop.id) && !stop.off);
  const playedWithoutUnison = parts.filter((part) => part.placed.unisonOff);
  const silencedAt = new Set(playedWithoutUnison.map((part) => part.placing.keyboard));
  // Where the part hears nothing at all, an error says so already.
  const saidAlready = new Set(
    playedWithoutUnison.filter((part) => part.sound.stops === 0).map((part) => part.placing.keyboard),
  );
  const boxes = [...new Set(instrument.divisions.flatMap((division) => division.box ?? []))];
  return {
    stops: unheard.filter((stop) => !silencedAt.has(stop.division)).map(asHeard),
    couplers: instrument.couplers
      .filter((coupler) => !coupler.fixed && state.couplers.has(coupler.name) && !bringing.has(coupler.name))
      .map((coupler) => coupler.name),
    tremulants: instrument.tremulants.filter((name) => {
      if (!state.tremulants.has(name)) return false;
      return name === "all" ? sounding.length === 0 : !sounding.some((division) => division.name === name);
    }),
    boxes: boxes.filter((box) => {
      const position = state.boxes.get(box) ?? "open";
      return position !== "open" && !sounding.some((division) => division.box === box);
    }),
    unisonOff: instrument.unisonOff.filter(
      (name) => state.unisonOff.has(name) && !parts.some((part) => part.placing.keyboard === name),
    ),
    silenced: unheard.filter((stop) => silencedAt.has(stop.division) && !saidAlready.has(stop.division)).map(asHeard),
  };
}

/** A stop for a rule's words that is about no keys in particular. */
export const asHeard = (stop: Stop) => ({ stop, label: stopLabel(stop), silent: [] });
