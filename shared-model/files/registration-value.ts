import type { Registration } from "../music/piece.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { stopLabel } from "./stop-name.ts";
import type { YamlGroup } from "./yaml-words.ts";

const unlessEmpty = <T extends object>(value: T): T | undefined => (Object.keys(value).length > 0 ? value : undefined);

/**
 * A registration as the keys of a file, by the instrument's own names and in its order; what is empty or as usual (boxes
 * open, parts as written) is left out.
 */
export function registrationValue(instrument: Instrument, { keyboards, octaves, state }: Registration): YamlGroup {
  const drawn = instrument.divisions.map(({ name, stops }): readonly [string, readonly string[]] => [
    name,
    stops.filter((stop) => state.drawn.has(stop.id)).map(stopLabel),
  ]);
  const couplers = instrument.couplers.filter((each) => !each.fixed && state.couplers.has(each.name));
  return {
    keyboards: keyboards === null ? undefined : unlessEmpty(keyboards),
    octaves: unlessEmpty(Object.fromEntries(Object.entries(octaves).filter(([, octave]) => octave !== 0))),
    drawn: Object.fromEntries(drawn.filter(([, labels]) => labels.length > 0)),
    couplers: unlessEmpty(couplers.map((each) => each.name)),
    tremulants: unlessEmpty(instrument.tremulants.filter((name) => state.tremulants.has(name))),
    "unison-off": unlessEmpty(instrument.unisonOff.filter((name) => state.unisonOff.has(name))),
    boxes: unlessEmpty(Object.fromEntries([...state.boxes].filter(([, position]) => position !== "open"))),
  };
}
