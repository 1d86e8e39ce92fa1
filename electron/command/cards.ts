import { cueCard } from "../../shared-model/cards/cue-card.ts";
import { cueCardText } from "../../shared-model/cards/cue-card-text.ts";
import { fileKindOf } from "../../shared-model/files/file-kind.ts";
import { checkFiles } from "./check.ts";
import { readText } from "./input-file.ts";
import { readOptions, type Usage } from "./options.ts";
import { DONE, Refusal, type Terminal, WRONG } from "./terminal.ts";

export const CARDS: Usage = {
  command: "cards",
  line: "registrant cards ORGAN.yaml REGISTRATION.yaml",
  does: "Prints the cue card of a registration, to be read at the console.",
  options: { pdf: { value: "a file" } },
  operands: ["ORGAN.yaml", "REGISTRATION.yaml"],
};
export const CARD: Usage = { ...CARDS, command: "card", line: "registrant card ORGAN.yaml REGISTRATION.yaml" };

/** `registrant cards` and `registrant card`. */
export function cardsCommand(usage: Usage, words: readonly string[], terminal: Terminal): number {
  const given = readOptions(usage, words);
  if (given.value("pdf") !== undefined) {
    throw new Refusal("Cards in PDF come with a later version; without --pdf they are printed as text.");
  }
  const [organ = "", registration = ""] = given.operands;
  if (fileKindOf(readText(registration, terminal)) === "piece") {
    throw new Refusal(
      `${registration}: This is a piece; cards for pieces come with a later version. Give a registration file.`,
    );
  }
  const { written, problem, checked } = checkFiles(organ, registration, terminal);
  terminal.stdout.write(cueCardText(cueCard(problem, written.state, checked.judgement, checked.findings)));
  return checked.findings.some((finding) => finding.severity === "error") ? WRONG : DONE;
}
