import type { Finding } from "../../shared-model/check/check.ts";
import { stopLabel } from "../../shared-model/judging/listening.ts";
import type { ExampleConsole } from "../../shared-model/rules/example.ts";

/** What a remedy asks a hand to do: ids of stops, names of couplers. */
export interface Deed {
  readonly draw: readonly string[];
  readonly leaveOut: readonly string[];
}

const NAMES = /, | and /;

/** The ids of the stops (or the names of the couplers) that the words list; `null` when one of them is none. */
function idsOf(
  words: string,
  { instrument, state, placings }: ExampleConsole,
  drawn: boolean,
): readonly string[] | null {
  const divisions = instrument.divisions.toSorted((a, b) => {
    const played = (name: string): number => Number(placings.some((placing) => placing.keyboard === name));
    return played(b.name) - played(a.name);
  });
  const stops = divisions.flatMap((division) => division.stops).filter((stop) => state.drawn.has(stop.id) === drawn);
  const found = words.split(NAMES).map((name) => {
    const plain = name.replace(/ \([^)]*\)$/, "");
    const stop = stops.find((each) => stopLabel(each) === plain);
    const coupler = instrument.couplers.find((each) => each.name === name && state.couplers.has(name) === drawn);
    return stop?.id ?? coupler?.name ?? null;
  });
  return found.includes(null) ? null : found.filter((id) => id !== null);
}

/** What to do where a finding's remedy is a plain deed: `Draw Gedackt 8.`, `Leave out Mixtur.`, `Take X off.` */
export function deedOf({ remedy }: Finding, example: ExampleConsole): Deed | null {
  const draw = /^Draw ([^.:;]+)\.$/.exec(remedy ?? "");
  const leaveOut = /^(?:Leave out|Take) ([^.:;]+?)(?: off)?\.$/.exec(remedy ?? "");
  const ids = draw?.[1] !== undefined ? idsOf(draw[1], example, false) : null;
  if (ids) return { draw: ids, leaveOut: [] };
  const out = leaveOut?.[1] !== undefined ? idsOf(leaveOut[1], example, true) : null;
  return out && { draw: [], leaveOut: out };
}

/** The console after the deed. */
export function after({ draw, leaveOut }: Deed, example: ExampleConsole): ExampleConsole {
  const couplerNames = new Set(example.instrument.couplers.map((coupler) => coupler.name));
  const changed = (set: ReadonlySet<string>, mine: (id: string) => boolean): ReadonlySet<string> =>
    new Set([...[...set].filter((id) => !leaveOut.includes(id)), ...draw.filter(mine)]);
  return {
    ...example,
    state: {
      ...example.state,
      drawn: changed(example.state.drawn, (id) => !couplerNames.has(id)),
      couplers: changed(example.state.couplers, (id) => couplerNames.has(id)),
    },
  };
}
