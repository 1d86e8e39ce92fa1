import { type InstrumentReading, readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { musicOf, tempoSaid } from "./section.ts";
import type { DeskSection } from "./work.ts";

const KEPT = 12;

/** Remembers the latest answers of a dear pure function, by a text that stands for its arguments. */
function remembering<Argument, Answer>(keyOf: (argument: Argument) => string, reckon: (argument: Argument) => Answer) {
  const known = new Map<string, Answer>();
  return (argument: Argument): Answer => {
    const key = keyOf(argument);
    const old = known.get(key);
    if (old !== undefined) return old;
    const answer = reckon(argument);
    known.set(key, answer);
    const [oldest] = known.keys();
    if (known.size > KEPT && oldest !== undefined) known.delete(oldest);
    return answer;
  };
}

/** The organ that an instrument file's text describes, with what is wrong with the text. */
export const organOf = remembering(
  (text: string) => text,
  (text): InstrumentReading => readInstrumentFile(text, "the organ"),
);

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

/** What of a section bears on the sound: its registration, name and bars do not. */
export function musicKey(section: DeskSection): string {
  const { texture, parts, tradition, dynamic, ranges, sounding } = section;
  const tempo = tempoSaid(section) ?? "as usual";
  return JSON.stringify([texture ?? parts, tradition, dynamic ?? "as usual", tempo, ranges, sounding]);
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
