import { type FileKind, fileKindOf } from "../../shared-model/files/file-kind.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { readRegistrationFile } from "../../shared-model/files/registration-file.ts";
import { readSectionFile } from "../../shared-model/files/section-file.ts";
import type { Trouble } from "../../shared-model/files/trouble.ts";
import { troubleLine, troubleText } from "../../shared-model/files/trouble-words.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { readText } from "./input-file.ts";
import { readOptions, type Usage } from "./options.ts";
import { counted } from "./plain-text.ts";
import { registrationTroubles } from "./registration-form.ts";
import { DONE, line, REFUSED, Refusal, type Terminal } from "./terminal.ts";

export const VALIDATE: Usage = {
  command: "validate",
  line: "registrant validate F.yaml... [--json]",
  does: "Checks the form of instrument, section, registration and piece files.",
  options: { json: "flag" },
  operands: ["a file"],
  repeats: true,
};

interface Validated {
  readonly file: string;
  /** `null` when it does not say, or cannot be read at all. */
  readonly kind: FileKind | null;
  readonly troubles: readonly Trouble[];
  /** Why it cannot be read at all. */
  readonly refusal: string | null;
  /** What it holds, in a few words; empty when it is not right. */
  readonly holds: string;
}

const isRight = ({ troubles, refusal }: Validated): boolean =>
  refusal === null && troubles.every((trouble) => trouble.severity !== "error");

const organWords = ({ name, divisions, couplers }: Instrument): string => {
  const stops = divisions.reduce((sum, division) => sum + division.stops.length, 0);
  const sizes = [counted(divisions.length, "division"), counted(stops, "stop"), counted(couplers.length, "coupler")];
  return `${name}, ${sizes.join(", ")}`;
};

function validatePiece(
  file: string,
  text: string,
  organ: { instrument: Instrument } | null,
): Pick<Validated, "troubles" | "holds"> {
  const { piece, troubles } = readPieceFile(text, file, organ?.instrument ?? null);
  const sections = counted(piece?.sections.length ?? 0, "section");
  return {
    troubles,
    holds: organ
      ? `a piece of ${sections}, held against ${organ.instrument.name}`
      : `a piece of ${sections} (name its organ beside it to have the stops looked up)`,
  };
}

/** `organ`: the one that is validated beside it, on which a registration's stops are looked up. */
function validate(file: string, text: string, organ: { file: string; instrument: Instrument } | null): Validated {
  const kind = fileKindOf(text);
  const seen = { file, kind, refusal: null };
  switch (kind) {
    case "piece":
      return { ...seen, ...validatePiece(file, text, organ) };
    case "section": {
      const { section, troubles } = readSectionFile(text, file);
      return { ...seen, troubles, holds: section ? "a section" : "" };
    }
    case "registration": {
      if (organ) {
        const { troubles } = readRegistrationFile(text, file, organ.instrument);
        return { ...seen, troubles, holds: `a registration for ${organ.instrument.name}` };
      }
      return {
        ...seen,
        troubles: registrationTroubles(text, file),
        holds: "a registration (name its organ beside it to have the stops looked up)",
      };
    }
    default: {
      const { instrument, troubles } = readInstrumentFile(text, file);
      return { ...seen, troubles, holds: instrument ? organWords(instrument) : "" };
    }
  }
}

const validatedJson = (each: Validated) => ({
  file: each.file,
  kind: each.kind,
  valid: isRight(each),
  troubles: [
    ...(each.refusal === null ? [] : [{ severity: "error", line: null, column: null, text: each.refusal }]),
    ...each.troubles.map((trouble) => ({
      severity: trouble.severity,
      line: trouble.line,
      column: trouble.column,
      text: troubleText(trouble),
    })),
  ],
});

/** `registrant validate`. */
export function validateCommand(words: readonly string[], terminal: Terminal): number {
  const given = readOptions(VALIDATE, words);
  const texts = given.operands.map((file): { file: string; text: string; refusal: string | null } => {
    try {
      return { file, text: readText(file, terminal), refusal: null };
    } catch (error) {
      if (error instanceof Refusal) return { file, text: "", refusal: error.message };
      throw error;
    }
  });
  const organs = texts.flatMap(({ file, text }) => {
    const instrument = fileKindOf(text) === "instrument" ? readInstrumentFile(text, file).instrument : null;
    return instrument ? [{ file, instrument }] : [];
  });
  const [only = null] = organs.length === 1 ? organs : [];
  const all = texts.map(({ file, text, refusal }): Validated => {
    return refusal === null ? validate(file, text, only) : { file, kind: null, troubles: [], refusal, holds: "" };
  });
  const status = all.every(isRight) ? DONE : REFUSED;
  if (given.has("json")) {
    terminal.stdout.write(line(JSON.stringify({ files: all.map(validatedJson) }, null, 2)));
    return status;
  }
  for (const each of all) {
    if (each.refusal !== null) terminal.stderr.write(line(each.refusal));
    // What is noted beside errors belongs to the trouble; of a file that is right, it is what was asked for.
    const told = isRight(each) ? terminal.stdout : terminal.stderr;
    for (const trouble of each.troubles) told.write(line(troubleLine(trouble)));
    if (isRight(each)) terminal.stdout.write(line(`${each.file}: right. It holds ${each.holds}.`));
  }
  return status;
}
