import type { ConsoleState } from "../console/state.ts";
import { judge } from "../judging/judge.ts";
import { keyboardsFor, type Problem } from "../judging/problem.ts";
import { foundationPresent } from "../rules/foundation-present.ts";
import { oneKeyboardOneSound } from "../rules/one-keyboard-one-sound.ts";
import { stopOff } from "../rules/stop-off.ts";
import type { Division } from "../stoplist/instrument.ts";

/** What an organ lacks for a section for which nothing serves. */
export interface Missing {
  readonly rule: string;
  readonly text: string;
}

/** What is wrong with a part on a keyboard whatever is drawn: with each stop by itself, and with all of them. */
function faultsOn(problem: Problem, part: string, keyboard: Division): readonly Missing[] {
  const stops = keyboard.stops.filter((stop) => !stop.off).map((stop) => stop.id);
  if (stops.length === 0) {
    const why = keyboard.stops.length > 0 ? "all of them are marked off" : "it has none";
    return [{ rule: stopOff.id, text: `No stop can be drawn on the ${keyboard.name}: ${why}.` }];
  }
  const drawings = [stops, ...stops.map((stop) => [stop])];
  const judged = drawings.map((drawn) => {
    const state: ConsoleState = {
      drawn: new Set(drawn),
      couplers: new Set(),
      tremulants: new Set(),
      boxes: new Map(),
      unisonOff: new Set(),
    };
    const reasons = judge(problem, state, [{ part, keyboard: keyboard.name, octave: 0 }])?.reasons ?? [];
    return reasons.filter((reason) => reason.severity === "error");
  });
  const [whole = [], ...single] = judged;
  return single.some((errors) => errors.length === 0) ? [] : whole;
}

/** Why nothing serves: for each part, what stands against it on every keyboard; else that the parts cannot go together. */
export function missingMeans(problem: Problem): readonly Missing[] {
  const { section } = problem;
  const missing = new Map<string, Missing>();
  for (const part of section.parts) {
    if (part.optional) continue;
    const keyboards = keyboardsFor(problem, section.parts.indexOf(part));
    if (keyboards.length === 0) {
      missing.set(part.id, { rule: foundationPresent.id, text: `There is no manual on which to play the ${part.id}.` });
      continue;
    }
    const against = keyboards.map((keyboard) => faultsOn(problem, part.id, keyboard));
    if (against.some((errors) => errors.length === 0)) continue;
    const who = section.parts.length > 1 ? `${part.id}: ` : "";
    for (const { rule, text } of against.flat()) missing.set(text, { rule, text: `${who}${text}` });
  }
  if (missing.size > 0) return [...missing.values()];
  return [
    {
      rule: oneKeyboardOneSound.id,
      text: `Each part can be played by itself, but the organ has not enough keyboards and stops for ${section.parts.length} at once.`,
    },
  ];
}
