import { addVoice, type PartSound, silence } from "../acoustics/part-sound.ts";
import type { ConsoleState, Placing } from "../console/state.ts";
import { couplersBearing } from "../judging/listening.ts";
import type { PlacedPart } from "../judging/placed-part.ts";
import type { Problem, WeighedPart } from "../judging/problem.ts";
import { type Closeness, closenessOf } from "../judging/recipe.ts";
import { AT_BOX, voicesOf } from "../judging/voices.ts";
import { yielding } from "../judging/weighing.ts";
import type { Points } from "../rules/rule.ts";
import type { Division, Stop } from "../stoplist/instrument.ts";

/** What a part, or two parts, come to at best: never fewer points, never more errors, whatever the others do. */
export interface Outlook {
  readonly most: Points;
  readonly errors: number;
}

/** A part on a keyboard, with all that is drawn there. */
export interface Way {
  readonly placing: Placing;
  readonly sound: PartSound;
  /** Names of the divisions that it hears a stop of. */
  readonly divisions: readonly string[];
  /** In the light of each reading. */
  readonly byReading: readonly (Outlook & { readonly weighed: WeighedPart; readonly excused: boolean })[];
}

function heardBy(problem: Problem, state: ConsoleState, placed: PlacedPart): { sound: PartSound; stops: Stop[] } {
  const sound = silence();
  const stops: Stop[] = [];
  for (const division of new Set(placed.reach.map((each) => each.division))) {
    const box = division.box === null ? "open" : (state.boxes.get(division.box) ?? "open");
    let speaks = false;
    for (const stop of division.stops) {
      const voice = state.drawn.has(stop.id) ? voicesOf(problem, placed, stop)?.[AT_BOX[box]] : null;
      if (!voice) continue;
      addVoice(sound, voice, sound);
      stops.push(stop);
      speaks = true;
    }
    if (speaks && (state.tremulants.has("all") || state.tremulants.has(division.name))) sound.tremulant = 1;
  }
  return { sound, stops };
}

/** A part on a keyboard: its outlook is reckoned as if every stop were another part's and came along for nothing. */
export function wayOf(
  problem: Problem,
  state: ConsoleState,
  part: number,
  keyboard: Division,
  octave: Placing["octave"],
): Way {
  const isOn = (coupler: { readonly name: string }): boolean => state.couplers.has(coupler.name);
  const couplers = couplersBearing(problem.instrument.couplers, keyboard, isOn);
  const placed = problem.place(part, keyboard, octave, couplers, state.unisonOff.has(keyboard.name));
  const { sound, stops } = heardBy(problem, state, placed);
  const byReading = problem.readings.map((_, reading) => {
    const weighed = problem.weighed(placed, reading);
    const { recipe, context, partRules, fix } = weighed;
    const matches = stops.map((stop) => recipe.matchOf(stop));
    const { gain, excused } = closenessOf(recipe, [], 0, matches, {} as Closeness);
    let most = gain + (fix ?? 0);
    let errors = (fix === null ? 1 : 0) + (sound.stops === 0 ? 1 : 0);
    for (const rule of partRules) {
      most += yielding(rule.weigh(sound, context), rule.yieldsToPrescription, excused);
      if (rule.forbids?.(sound, context) && !(rule.yieldsToPrescription && excused)) errors += 1;
    }
    return { weighed, most, errors, excused };
  });
  const placing = { part: placed.part.id, keyboard: keyboard.name, octave };
  return { placing, sound, divisions: [...new Set(stops.map((stop) => stop.division))], byReading };
}

/** What the rules about two parts give them at best, both ways round. */
export function outlookOfPair(problem: Problem, reading: number, one: Way, other: Way): Outlook {
  let [most, errors] = [0, 0];
  for (const [a, b] of [
    [one, other],
    [other, one],
  ] as const) {
    const [first, second] = [a.byReading[reading], b.byReading[reading]];
    if (!first || !second) continue;
    const excused = first.excused && second.excused;
    const [contextA, contextB] = [first.weighed.context, second.weighed.context];
    for (const rule of problem.rules.pair) {
      if (!rule.applies(contextA, contextB)) continue;
      most += yielding(rule.weigh(a.sound, b.sound, contextA, contextB), rule.yieldsToPrescription, excused);
      const silenced = rule.yieldsToPrescription && excused;
      if (!silenced && rule.forbids?.(a.sound, b.sound, contextA, contextB)) errors += 1;
    }
  }
  return { most, errors };
}
