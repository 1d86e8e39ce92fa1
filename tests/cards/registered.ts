import type { ConsoleState } from "../../shared-model/console/state.ts";
import { readRegistrationFile } from "../../shared-model/files/registration-file.ts";
import { type Judgement, judge } from "../../shared-model/judging/judge.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import { textureById } from "../../shared-model/music/textures/catalogue.ts";
import { demoOrgan } from "../instruments/demo-organs.ts";

export interface Registered {
  readonly problem: Problem;
  readonly state: ConsoleState;
  readonly judgement: Judgement;
}

/** A registration file for a demo organ, read and judged. It must name a texture and the keyboard of every part that is played. */
export function registered(organ: string, lines: string): Registered {
  const instrument = demoOrgan(organ);
  const { registration, troubles } = readRegistrationFile(`registrant: registration/1\n${lines}`, organ, instrument);
  const texture = textureById(registration?.texture ?? "");
  if (!registration?.keyboards || !texture)
    throw new Error(`The registration cannot be read: ${JSON.stringify(troubles)}`);
  const { name, bars, keyboards, octaves, state } = registration;
  const problem = prepare(
    instrument,
    sectionOf(texture, { name, bars, tradition: registration.tradition ?? undefined }),
  );
  const placings = problem.section.parts.flatMap(({ id }) => {
    const keyboard = keyboards[id];
    return keyboard === undefined ? [] : [{ part: id, keyboard, octave: octaves[id] ?? (0 as const) }];
  });
  const judgement = judge(problem, state, placings);
  if (!judgement) throw new Error("The keyboards are coupled in a ring.");
  return { problem, state, judgement };
}
