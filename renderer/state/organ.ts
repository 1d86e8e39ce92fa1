import { type InstrumentReading, readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { remembering } from "./remembering.ts";
import { tempoSaid } from "./section.ts";
import type { DeskSection } from "./work.ts";

/** The organ that an instrument file's text describes, with what is wrong with the text. */
export const organOf = remembering(
  (text: string) => text,
  (text): InstrumentReading => readInstrumentFile(text, "the organ"),
);

/** What of a section bears on the sound: its registration, name and bars do not. */
export function musicKey(section: DeskSection): string {
  const { texture, parts, tradition, dynamic, ranges, sounding } = section;
  const tempo = tempoSaid(section) ?? "as usual";
  return JSON.stringify([texture ?? parts, tradition, dynamic ?? "as usual", tempo, ranges, sounding]);
}
