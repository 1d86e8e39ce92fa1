import { idleIn } from "../../shared-model/check/idle.ts";
import { type JudgedPart, judge } from "../../shared-model/judging/judge.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import { type Proposal, USUAL_COUNT } from "../../shared-model/propose/propose.ts";
import type { Division, Stop } from "../../shared-model/stoplist/instrument.ts";

/** Written keys of the part on which none of the stops has a pipe, by the keys of stops and keyboard alone. */
function silentKeys({ placed }: JudgedPart, heard: readonly Stop[]): { silent: number; keys: number } {
  const { zones, keyboard, octave, reach } = placed;
  const low = zones.starts[0] as number;
  let silent = 0;
  for (let written = low; written <= zones.high; written++) {
    const key = written + 12 * octave;
    const there = key >= keyboard.compass.low && key <= keyboard.compass.high;
    const speaks = reach.some(({ division, shift }) =>
      heard.some(
        (stop) => stop.division === division.name && key + 12 * shift >= stop.from && key + 12 * shift <= stop.to,
      ),
    );
    if (!there || !speaks) silent += 1;
  }
  return { silent, keys: zones.high - low + 1 };
}

function partFaults(problem: Problem, part: JudgedPart): readonly string[] {
  const { id, hands, stated } = part.placed.part;
  const heard = problem.stops.filter((stop) => part.heard.includes(stop.id));
  if (heard.length === 0) return [`the ${id} hears nothing`];
  const faults: string[] = [];
  // Where the catalogue says how far a part goes, up to a third of it may be out of reach, as `every-key-speaks` has it.
  const { silent, keys } = silentKeys(part, heard);
  if (stated ? silent > 0 : silent * 3 > keys) faults.push(`${silent} of the ${keys} keys of the ${id} are silent`);
  for (const stop of heard) {
    if (silentKeys(part, [stop]).silent === keys) faults.push(`${stop.id} has no key of the ${id}`);
  }
  const kind = part.placed.keyboard.kind;
  // A pedal of which the part would lose more than a third of its keys is none for it.
  const { low, high } = part.placed.part;
  const within = ({ compass }: Division): number => Math.min(high, compass.high) - Math.max(low, compass.low) + 1;
  const hasPedal = problem.instrument.divisions.some(
    (division) => division.kind === "pedal" && within(division) * 3 >= (high - low + 1) * 2,
  );
  if (kind !== (hands === "feet" && hasPedal ? "pedal" : "manual")) faults.push(`the ${id} is played on a ${kind}`);
  return faults;
}

function proposalFaults(problem: Problem, { found, judgement }: Proposal): readonly string[] {
  const { instrument, section } = problem;
  const { state, placings } = found;
  const faults: string[] = [];
  for (const reason of judgement.reasons) {
    if (reason.severity === "error") faults.push(`breaks ${reason.rule}: ${reason.text}`);
    if (!Number.isInteger(reason.points)) faults.push(`${reason.rule} gives ${reason.points}, no whole hundredths`);
  }
  if (judgement.forbidden) faults.push("is forbidden");
  const sum = judgement.reasons.reduce((points, reason) => points + reason.points, 0);
  if (sum !== judgement.score) faults.push(`the reasons give ${sum}, the score is ${judgement.score}`);
  if (judgement.score !== found.score) faults.push(`judged ${judgement.score}, found with ${found.score}`);
  const again = judge(problem, state, placings);
  if (again?.score !== found.score) faults.push(`judged again ${again?.score}, found with ${found.score}`);

  const stops = new Map(problem.stops.map((stop) => [stop.id, stop]));
  for (const id of state.drawn) {
    const stop = stops.get(id);
    if (!stop) faults.push(`draws ${id}, which the organ has not`);
    else if (stop.off) faults.push(`draws ${id}, which is off`);
    else if (stop.family === "effect" || stop.family === "percussion") faults.push(`draws the effect ${id}`);
  }
  const couplers = new Set(instrument.couplers.map(({ name }) => name));
  for (const name of state.couplers) if (!couplers.has(name)) faults.push(`has no coupler ${name}`);
  for (const name of state.tremulants) if (!instrument.tremulants.includes(name)) faults.push(`no tremulant ${name}`);
  const boxes = new Set(instrument.divisions.map(({ box }) => box));
  for (const box of state.boxes.keys()) if (!boxes.has(box)) faults.push(`has no box ${box}`);

  for (const part of section.parts) {
    const times = placings.filter((placing) => placing.part === part.id).length;
    if (times > 1 || (times === 0 && !part.optional)) faults.push(`the ${part.id} is played ${times} times`);
  }
  for (const part of judgement.parts) faults.push(...partFaults(problem, part));
  for (const id of judgement.idle) faults.push(`${id} is idle`);
  const idle = idleIn(problem, state, judgement);
  for (const name of [...idle.couplers, ...idle.tremulants, ...idle.boxes]) faults.push(`${name} is idle`);
  return faults;
}

/** What no organist would put up with in a list of proposals, a line for each; empty when all is as it must be. */
export function nonsenseIn(problem: Problem, proposals: readonly Proposal[]): readonly string[] {
  const faults = proposals.flatMap((proposal, index) => [
    ...(proposal.place === index + 1 ? [] : [`place ${proposal.place} stands at ${index + 1}`]),
    ...proposalFaults(problem, proposal).map((fault) => `proposal ${index + 1} ${fault}`),
  ]);
  if (proposals.length > USUAL_COUNT) faults.push(`${proposals.length} proposals where ${USUAL_COUNT} were asked for`);
  const drawings = proposals.map(({ found }) => found.drawing);
  if (new Set(drawings).size !== drawings.length) faults.push("one registration stands there twice");
  return faults;
}
