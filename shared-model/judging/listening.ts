import { addVoice, type PartSound, silence } from "../acoustics/part-sound.ts";
import { zonesBetween } from "../acoustics/voice.ts";
import type { BoxPosition, ConsoleState, Placing } from "../console/state.ts";
import { pitchName } from "../pitch/reading.ts";
import type { Heard, HeardStop } from "../rules/rule.ts";
import type { Coupler, Division, Stop } from "../stoplist/instrument.ts";
import { type PlacedPart, settlingOrder } from "./placed-part.ts";
import type { Problem } from "./problem.ts";
import { AT_BOX, voicesOf } from "./voices.ts";

/** `Gedackt 8`, `Nasat 2 2/3`, `Dulzian 8 bass`: a stop as rules and cards name it. */
export function stopLabel(stop: Stop): string {
  const pitch = stop.pitch ? ` ${pitchName(stop.pitch)}` : "";
  return `${stop.name}${pitch}${stop.half ? ` ${stop.half}` : ""}`;
}

/** Couplers of the state that bear on a keyboard, in the instrument's order, fixed ones left out. */
export function couplersBearing(
  couplers: readonly Coupler[],
  keyboard: Division,
  isOn: (coupler: Coupler) => boolean,
): readonly Coupler[] {
  const bearing = new Set<Coupler>();
  const visit = (name: string, carried: boolean): void => {
    for (const coupler of couplers) {
      if (coupler.to !== name || !(coupler.fixed || isOn(coupler)) || bearing.has(coupler)) continue;
      if (!carried) continue;
      bearing.add(coupler);
      visit(coupler.from, coupler.through);
    }
  };
  visit(keyboard.name, true);
  return couplers.filter((each) => bearing.has(each) && !each.fixed);
}

/** What one part hears of a state. */
export interface PartState {
  readonly placing: Placing;
  readonly placed: PlacedPart;
  readonly sound: PartSound;
  readonly own: readonly Stop[];
  readonly borrowed: readonly Stop[];
  readonly shutBoxes: number;
  /** Drawn stops of its own keyboard that it does not hear because the unison is off. */
  readonly silenced: readonly Stop[];
}

/** What each part hears of a state, in the section's order; `null` when the keyboards are coupled in a ring. */
export function listen(
  problem: Problem,
  state: ConsoleState,
  placings: readonly Placing[],
): readonly PartState[] | null {
  const { instrument, section } = problem;
  const placed = placings.map((placing) => {
    const index = section.parts.findIndex((part) => part.id === placing.part);
    const keyboard = instrument.divisions.find((division) => division.name === placing.keyboard) as Division;
    const on = couplersBearing(instrument.couplers, keyboard, (coupler) => state.couplers.has(coupler.name));
    return problem.place(index, keyboard, placing.octave, on, state.unisonOff.has(keyboard.name));
  });
  const order = settlingOrder(placed);
  if (!order) return null;
  const boxOf = (division: Division): BoxPosition =>
    division.box ? (state.boxes.get(division.box) ?? "open") : "open";
  const settled = new Set<string>();
  const counted = new Set<string>();
  const result: PartState[] = [];
  for (const index of order) {
    const one = placed[index] as PlacedPart;
    const sound = silence();
    const own: Stop[] = [];
    const borrowed: Stop[] = [];
    let shutBoxes = 0;
    const divisions = [...new Set(one.reach.map((each) => each.division))];
    for (const division of instrument.divisions) {
      if (!divisions.includes(division)) continue;
      const box = boxOf(division);
      let heardHere = false;
      for (const stop of division.stops) {
        if (!state.drawn.has(stop.id)) continue;
        const voice = voicesOf(problem, one, stop)?.[AT_BOX[box]];
        if (!voice) continue;
        addVoice(sound, voice, sound);
        heardHere = true;
        (settled.has(stop.id) ? borrowed : own).push(stop);
      }
      if (!heardHere) continue;
      if (state.tremulants.has("all") || state.tremulants.has(division.name)) sound.tremulant = 1;
      if (box !== "open" && division.box && !counted.has(division.box)) {
        counted.add(division.box);
        shutBoxes += 1;
      }
    }
    for (const stop of own) settled.add(stop.id);
    const silenced = one.unisonOff && !divisions.includes(one.keyboard);
    const drawn = silenced ? one.keyboard.stops.filter((stop) => state.drawn.has(stop.id)) : [];
    result[index] = {
      placing: placings[index] as Placing,
      placed: one,
      sound,
      own,
      borrowed,
      shutBoxes,
      silenced: drawn,
    };
  }
  return result;
}

/** A stop that words may name, and whether it speaks over a whole zone of the part, so that drawing it would serve. */
interface Nameable {
  readonly heard: HeardStop;
  readonly serves: boolean;
}

const nameable = new WeakMap<PlacedPart, readonly Nameable[]>();

/**
 * Every stop of the divisions that reach a placed part, in printed order, with the written keys on which it is silent.
 * Reckoned once: a large organ has many, and each judgement asks for all of them.
 */
function nameableStops(problem: Problem, placed: PlacedPart): readonly Nameable[] {
  let all = nameable.get(placed);
  if (all) return all;
  const low = placed.zones.starts[0] as number;
  const keys = Array.from({ length: placed.zones.high - low + 1 }, (_, index) => low + index);
  all = problem.stops.flatMap((stop): readonly Nameable[] => {
    const reached = placed.reach.find((each) => each.division.name === stop.division);
    if (!reached) return [];
    const away = 12 * (placed.octave + reached.shift);
    const silent = keys.filter((key) => key + away < stop.from || key + away > stop.to);
    const serves = !stop.off && zonesBetween(placed.zones, stop.from - away, stop.to - away) !== 0;
    return [{ heard: { stop, label: stopLabel(stop), silent }, serves }];
  });
  nameable.set(placed, all);
  return all;
}

/** What a rule's words may name of what a part hears. */
export function heardOf(problem: Problem, part: PartState): Heard {
  const drawn = new Set([...part.own, ...part.borrowed]);
  const stops: HeardStop[] = [];
  const undrawn: HeardStop[] = [];
  for (const { heard, serves } of nameableStops(problem, part.placed)) {
    if (drawn.has(heard.stop)) stops.push(heard);
    else if (serves) undrawn.push(heard);
  }
  return { stops, undrawn };
}
