import { instrumentFileFromReading } from "../../shared-model/files/instrument-from-reading.ts";
import type { Question } from "../../shared-model/stoplist/reading/question.ts";
import { readStoplist } from "../../shared-model/stoplist/reading/read-stoplist.ts";
import type { Reading } from "../../shared-model/stoplist/reading/reading.ts";
import { readingJson } from "../../shared-model/stoplist/reading/reading-json.ts";
import { readListText } from "./input-file.ts";
import { readOptions, type Usage } from "./options.ts";
import { mayWrite, writeWhole } from "./output-file.ts";
import { counted, either } from "./plain-text.ts";
import { DONE, line, Refusal, type Terminal, WRONG } from "./terminal.ts";

export const READ: Usage = {
  command: "read",
  line: "registrant read LIST.txt [--out F.yaml] [--replace] [--strict] [--json]",
  does: "Reads a printed stoplist, says what it is unsure of, and writes an instrument file.",
  options: { out: { value: "a file" }, replace: "flag", strict: "flag", json: "flag" },
  operands: ["LIST.txt"],
};

function questionLine(path: string, { line: at, text, choices }: Question): string {
  const offered = choices.filter((choice) => !text.includes(choice));
  return `${path}, line ${at}: ${text}${offered.length > 0 ? ` (${either(choices)})` : ""}`;
}

/** `3 divisions, 28 stops, 4 couplers`. */
function sizes({ divisions, couplers }: Reading): string {
  const stops = divisions.reduce((sum, division) => sum + division.stops.length, 0);
  return [
    counted(divisions.length, "division"),
    counted(stops, "stop"),
    ...(couplers.length > 0 ? [counted(couplers.length, "coupler")] : []),
  ].join(", ");
}

/** `registrant read`. */
export function readCommand(words: readonly string[], terminal: Terminal): number {
  const given = readOptions(READ, words);
  const [path = ""] = given.operands;
  const out = given.value("out");
  if (given.has("replace") && out === undefined) throw new Refusal("--replace goes with --out FILE.yaml.");
  if (out !== undefined) mayWrite(out, given.has("replace"), terminal);
  const { text, isOldCode } = readListText(path, terminal);
  if (text.trim() === "") throw new Refusal(`${path}: The file is empty.`);
  if (isOldCode) {
    terminal.stderr.write(
      line(`${path}: The text is not in UTF-8; it is read as Windows-1252. Look at letters with accents.`),
    );
  }
  const reading = readStoplist(text);
  if (reading.divisions.every((division) => division.stops.length === 0)) {
    const [why] = reading.questions;
    throw new Refusal(why ? questionLine(path, why) : `${path}: No stops were found in this text; is it a stoplist?`);
  }
  const { questions } = reading;
  const isRefused = given.has("strict") && questions.length > 0;
  if (given.has("json")) terminal.stdout.write(line(JSON.stringify(readingJson(reading), null, 2)));
  else for (const question of questions) terminal.stderr.write(line(questionLine(path, question)));
  if (isRefused) {
    const open = questions.length === 1 ? "one question is open" : `${questions.length} questions are open`;
    terminal.stderr.write(line(`${path}: ${open}, so with --strict nothing is written.`));
    return WRONG;
  }
  const organ = instrumentFileFromReading(reading);
  if (out !== undefined) {
    writeWhole(out, organ, given.has("replace"), terminal);
    const asks =
      questions.length > 0
        ? ` ${counted(questions.length, "question")} ${questions.length === 1 ? "stands in it as a comment" : "stand in it as comments"}.`
        : "";
    if (!given.has("json")) terminal.stdout.write(line(`${out}: ${sizes(reading)}.${asks}`));
  } else if (!given.has("json")) terminal.stdout.write(organ);
  return DONE;
}
