import { cueCard } from "../../shared-model/cards/cue-card.ts";
import { cueCardText } from "../../shared-model/cards/cue-card-text.ts";
import { registrationPages } from "../../shared-model/cards/pages.ts";
import { fileKindOf } from "../../shared-model/files/file-kind.ts";
import { checkFiles } from "./check.ts";
import { readText } from "./input-file.ts";
import { readOptions, type Usage } from "./options.ts";
import { PRINT_OPTIONS, PRINT_USAGE, printCards, printOrder } from "./print-cards.ts";
import { DONE, Refusal, type Terminal, WRONG } from "./terminal.ts";

export const CARDS: Usage = {
  command: "cards",
  line: `registrant cards ORGAN.yaml REGISTRATION.yaml ${PRINT_USAGE}`,
  does: "Prints the cue card of a registration, to be read at the console.",
  options: PRINT_OPTIONS,
  operands: ["ORGAN.yaml", "REGISTRATION.yaml"],
};
export const CARD: Usage = { ...CARDS, command: "card", line: CARDS.line.replace("cards", "card") };

/** `registrant cards` and `registrant card`. */
export async function cardsCommand(usage: Usage, words: readonly string[], terminal: Terminal): Promise<number> {
  const given = readOptions(usage, words);
  const order = printOrder(given, terminal);
  const [organ = "", registration = ""] = given.operands;
  if (fileKindOf(readText(registration, terminal)) === "piece") {
    throw new Refusal(
      `${registration}: This is a piece; cards for pieces come with a later version. Give a registration file.`,
    );
  }
  const { written, problem, checked } = checkFiles(organ, registration, terminal);
  const card = cueCard(problem, written.state, checked.judgement, checked.findings);
  if (order) await printCards(order, (form) => registrationPages(card, form), terminal);
  else terminal.stdout.write(cueCardText(card));
  return checked.findings.some((finding) => finding.severity === "error") ? WRONG : DONE;
}
