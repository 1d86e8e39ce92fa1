import type { Room } from "../stoplist/instrument.ts";
import { chordStrength, type Phons } from "./hearing.ts";
import { HANDS_ALIKE } from "./moments.ts";
import { compassTrim } from "./partials.ts";
import { BAND_COUNT, pipePattern } from "./pipe.ts";
import { PRINCIPAL } from "./stop-tone.ts";

const known = new Map<Room, Phons>();

/**
 * Strength in a room of the principal 8 against which all other stops are judged by ear: about 8300 hundredths of a phon
 * in one of medium life. What is louder or softer than that means the same in every room.
 */
export function yardstickIn(room: Room): Phons {
  let phons = known.get(room);
  if (phons === undefined) {
    const chord = new Float64Array(BAND_COUNT);
    for (const key of HANDS_ALIKE) {
      const hz = 440 * 2 ** ((key - 69) / 12);
      const { tone, db } = PRINCIPAL;
      const pipe = pipePattern({ tone, hz, db: db + compassTrim(hz), brighter: 0, box: "open", room });
      pipe.forEach((each, b) => {
        chord[b] = (chord[b] as number) + each;
      });
    }
    phons = chordStrength(chord);
    known.set(room, phons);
  }
  return phons;
}
