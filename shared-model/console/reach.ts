import type { Coupler, Division, Instrument } from "../stoplist/instrument.ts";

/** A division as a keyboard reaches it: `shift` octaves higher (1) or lower (-1) than the key, by way of `couplers`. */
export interface Reached {
  readonly division: Division;
  readonly shift: number;
  readonly couplers: readonly Coupler[];
}

/**
 * Every division that sounds on a keyboard, its own first: by the couplers that are on, and by what those carry on
 * (`through`). A division may come twice, at the unison and through an octave coupler.
 *
 * @param unisonIsOff silences the keyboard's own unison and nothing else: its octave couplers on itself still play its
 * stops, and so do couplers to other keyboards. Common practice; where a builder has it otherwise, the console says so.
 */
export function reachOf(
  instrument: Instrument,
  keyboard: Division,
  isOn: (coupler: Coupler) => boolean,
  unisonIsOff = false,
): readonly Reached[] {
  const reached: Reached[] = unisonIsOff ? [] : [{ division: keyboard, shift: 0, couplers: [] }];
  // Shortest ways first: a division that comes by a coupler of its own does not come by way of another keyboard.
  const ways: Reached[] = [{ division: keyboard, shift: 0, couplers: [] }];
  for (const way of ways) {
    const last = way.couplers.at(-1);
    if (last && !last.through) continue;
    for (const coupler of instrument.couplers) {
      if (coupler.to !== way.division.name || !isOn(coupler) || way.couplers.includes(coupler)) continue;
      const division = instrument.divisions.find((each) => each.name === coupler.from);
      if (!division) continue;
      const shift = way.shift + (coupler.pitch === 4 ? 1 : coupler.pitch === 16 ? -1 : 0);
      const next: Reached = { division, shift, couplers: [...way.couplers, coupler] };
      if (!reached.some((each) => each.division === division && each.shift === shift)) reached.push(next);
      if (division !== way.division) ways.push(next);
    }
  }
  return reached;
}
