import { prepare } from "../../shared-model/judging/prepare.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { musicKey } from "./organ.ts";
import { remembering } from "./remembering.ts";
import { musicOf } from "./section.ts";
import type { DeskSection } from "./work.ts";

/** Identity of an instrument: the same text gives the same object, so that what was reckoned on it is used again. */
const numbers = new WeakMap<Instrument, number>();
let count = 0;
function numberOf(instrument: Instrument): number {
  const known = numbers.get(instrument);
  if (known !== undefined) return known;
  count += 1;
  numbers.set(instrument, count);
  return count;
}

const prepared = remembering(
  ({ instrument, section }: { instrument: Instrument; section: DeskSection }) =>
    `${numberOf(instrument)} ${musicKey(section)}`,
  ({ instrument, section }): Problem | null => {
    const music = musicOf(section);
    return music && prepare(instrument, music);
  },
);

/** A section made ready to be judged on an organ; `null` while it has no texture. */
export const problemFor = (instrument: Instrument, section: DeskSection): Problem | null =>
  prepared({ instrument, section });
