import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import type { WrittenMusic } from "../../shared-model/files/music-entry.ts";
import { readRegistrationFile, type WrittenRegistration } from "../../shared-model/files/registration-file.ts";
import { readSectionFile } from "../../shared-model/files/section-file.ts";
import type { Trouble } from "../../shared-model/files/trouble.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import { nearestTexture } from "../../shared-model/music/section.ts";
import type { Section } from "../../shared-model/music/texture.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { readStoplist } from "../../shared-model/stoplist/reading/read-stoplist.ts";
import { readText } from "./input-file.ts";
import { counted } from "./plain-text.ts";
import { line, Refusal, type Terminal } from "./terminal.ts";

/** Notes that say why so little can be done with the file: told whatever is asked of it. */
const TELLING: readonly Trouble["code"][] = [
  "no-stops",
  "no-manual",
  "all-off",
  "stop-off",
  "drawn-twice",
  "pin-empty",
  "bars-backwards",
  "bars-out-of-order",
  "other-organ",
];

/** Errors end the command. Of the notes the telling ones are told and the others counted, since `validate` lists them. */
export function settle<T>(path: string, value: T | null, troubles: readonly Trouble[], terminal: Terminal): T {
  if (value === null) {
    throw new Refusal(
      troubles
        .filter((each) => each.severity === "error")
        .map(troubleLine)
        .join("\n"),
    );
  }
  const telling = troubles.filter((trouble) => TELLING.includes(trouble.code));
  for (const trouble of telling) terminal.stderr.write(line(troubleLine(trouble)));
  const others = troubles.length - telling.length;
  if (others > 0) {
    const notes = counted(others, "note");
    terminal.stderr.write(line(`${path}: ${notes} on the file; "registrant validate ${path}" shows what was assumed.`));
  }
  return value;
}

/** Fewer stops than these are no printed list: any text may happen to name one. */
const LEAST_OF_A_LIST = 2;

/** Whether the text is a stoplist as it was printed, for which `read` makes the file. */
const isPrintedList = (text: string): boolean =>
  !/^\s*["']?(?:registrant|divisions)["']?\s*:/mu.test(text) &&
  readStoplist(text).divisions.reduce((sum, { stops }) => sum + stops.length, 0) >= LEAST_OF_A_LIST;

/**
 * The organ of a file.
 *
 * @throws Refusal with every error of the file, each with line and column; with what to do where it is a printed list.
 */
export function readOrgan(path: string, terminal: Terminal): Instrument {
  const text = readText(path, terminal);
  const { instrument, troubles } = readInstrumentFile(text, path);
  if (instrument === null && isPrintedList(text)) {
    const words = `This is a printed stoplist; read it first: registrant read ${path} --out organ.yaml`;
    throw new Refusal(`${path}: ${words}`);
  }
  return settle(path, instrument, troubles, terminal);
}

/** A registration drawn on the organ; as {@link readOrgan}. */
export function readRegistration(path: string, organ: Instrument, terminal: Terminal): WrittenRegistration {
  const { registration, troubles } = readRegistrationFile(readText(path, terminal), path, organ);
  return settle(path, registration, troubles, terminal);
}

/** The music of a section file; as {@link readOrgan}. */
export function readMusic(path: string, terminal: Terminal): WrittenMusic {
  const { section, troubles } = readSectionFile(readText(path, terminal), path);
  return settle(path, section, troubles, terminal);
}

/** The id of the texture, or of the neutral one whose recipes serve parts written by hand. */
export const textureIdOf = (section: Section): string => section.texture ?? nearestTexture(section.parts).id;
