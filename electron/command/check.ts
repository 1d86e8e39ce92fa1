import { type CheckedRegistration, checkRegistration, type Finding } from "../../shared-model/check/check.ts";
import type { WrittenRegistration } from "../../shared-model/files/registration-file.ts";
import { sectionOfMusic } from "../../shared-model/files/written-section.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import { citations } from "../../shared-model/music/prescriptions/citation.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { checkJson } from "./check-json.ts";
import { guessWords } from "./guess-words.ts";
import { readOptions, type Usage } from "./options.ts";
import { readOrgan, readRegistration } from "./organ.ts";
import { counted, wrapped } from "./plain-text.ts";
import { decimal } from "./proposal-json.ts";
import { sectionWords } from "./propose.ts";
import { reasonLines, registrationLines } from "./registration-text.ts";
import { DONE, line, Refusal, type Terminal, WRONG } from "./terminal.ts";

export const CHECK: Usage = {
  command: "check",
  line: "registrant check ORGAN.yaml REGISTRATION.yaml [--reasons] [--json]",
  does: "Says what is wrong with a registration drawn by hand, and what to do.",
  options: { reasons: "flag", json: "flag" },
  operands: ["ORGAN.yaml", "REGISTRATION.yaml"],
};

/** A registration file, judged on its organ. */
export interface CheckedFile {
  readonly instrument: Instrument;
  readonly written: WrittenRegistration;
  readonly problem: Problem;
  readonly checked: CheckedRegistration;
}

/**
 * Reads an organ and a registration and judges it.
 *
 * @throws Refusal for either file, and for a registration that cannot be played as it is written.
 */
export function checkFiles(organ: string, registration: string, terminal: Terminal): CheckedFile {
  const instrument = readOrgan(organ, terminal);
  const written = readRegistration(registration, instrument, terminal);
  const problem = prepare(instrument, sectionOfMusic(written));
  const checked = checkRegistration(problem, written);
  if ("unplayable" in checked) throw new Refusal(`${registration}: ${checked.unplayable}`);
  if (!checked.sure) {
    terminal.stderr.write(
      line(
        `${registration}: There are more ways to play these parts than were tried; name their keyboards to be sure.`,
      ),
    );
  }
  return { instrument, written, problem, checked };
}

const SEVERITIES = { error: "ERROR", warning: "warning", note: "note" } as const;

const findingLines = ({ severity, text, remedy, rule, source }: Finding): readonly string[] => [
  ...wrapped(text, SEVERITIES[severity].padEnd(9)),
  ...(remedy === null ? [] : wrapped(remedy, `${" ".repeat(9)}> `)),
  ...wrapped(`(${rule}: ${citations(source)})`, " ".repeat(9)),
];

function summary(findings: readonly Finding[]): string {
  const count = (severity: Finding["severity"]): number => findings.filter((each) => each.severity === severity).length;
  if (findings.length === 0) return "Nothing is wrong with it.";
  return `${counted(count("error"), "error")}, ${counted(count("warning"), "warning")}, ${counted(count("note"), "note")}.`;
}

/** `registrant check`. */
export function checkCommand(words: readonly string[], terminal: Terminal): number {
  const given = readOptions(CHECK, words);
  const [organ = "", registration = ""] = given.operands;
  const { instrument, written, problem, checked } = checkFiles(organ, registration, terminal);
  const { findings, judgement } = checked;
  const status = findings.some((finding) => finding.severity === "error") ? WRONG : DONE;
  if (given.has("json")) {
    terminal.stdout.write(line(JSON.stringify(checkJson(problem, checked), null, 2)));
    return status;
  }
  const { section } = problem;
  const isFound = section.parts.some((part) => written.keyboards?.[part.id] === undefined);
  const lines = [
    ...wrapped(`${instrument.name}: ${sectionWords(section)}`),
    ...(isFound ? wrapped("The file leaves keyboards open; the parts are put where they sound best:") : []),
    ...registrationLines(problem, written.state, judgement, "  "),
    "",
    ...findings.flatMap(findingLines),
    ...(findings.length > 0 ? [""] : []),
    ...wrapped(`${summary(findings)} Score ${decimal(judgement.score)}.`),
    ...guessWords(problem, judgement.parts),
    ...(given.has("reasons") ? ["", ...reasonLines(judgement.reasons, "  ", true)] : []),
  ];
  terminal.stdout.write(line(lines.join("\n")));
  return status;
}
