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
  const visit = (name: string, shift: number, path: readonly Coupler[]): void => {
    for (const coupler of instrument.couplers) {
      if (coupler.to !== name || !isOn(coupler) || path.includes(coupler)) continue;
      if (path.length > 0 && !(path[path.length - 1] as Coupler).through) continue;
      const division = instrument.divisions.find((each) => each.name === coupler.from);
      if (!division) continue;
      const total = shift + (coupler.pitch === 4 ? 1 : coupler.pitch === 16 ? -1 : 0);
      const way = [...path, coupler];
      if (!reached.some((each) => each.division === division && each.shift === total)) {
        reached.push({ division, shift: total, couplers: way });
      }
      if (division.name !== name) visit(division.name, total, way);
    }
  };
  visit(keyboard.name, 0, []);
  return reached;
}
