import type { Problem } from "../../shared-model/judging/problem.ts";
import type { Proposal } from "../../shared-model/propose/propose.ts";
import type { Stop } from "../../shared-model/stoplist/instrument.ts";
import type { Proposed } from "./scenario.ts";

/** A proposal as a scenario reads it: what sounds for each part, the tremulants and the couplers. */
export function proposedFrom(problem: Problem, { found, judgement }: Proposal): Proposed {
  const stops = new Map(problem.stops.map((stop) => [stop.id, stop]));
  const parts = judgement.parts.map(({ placing, heard }) => {
    const { part, keyboard, octave } = placing;
    return [part, { keyboard, octave, stops: heard.map((id) => stops.get(id) as Stop) }] as const;
  });
  return { parts: new Map(parts), tremulants: found.state.tremulants, couplers: found.state.couplers };
}
