import { type Handout, handoutPages } from "../../shared-model/cards/handout.ts";
import { PAPERS } from "../../shared-model/cards/paper/paper.ts";
import { visitHandout } from "../../shared-model/cards/visit-handout.ts";
import { readOptions, type Usage } from "./options.ts";
import { readOrgan } from "./organ.ts";
import { wrapped } from "./plain-text.ts";
import { PRINT_OPTIONS, printCards, printOrder } from "./print-cards.ts";
import { COLUMNS, DONE, line, type Terminal } from "./terminal.ts";

const { pdf, paper, replace } = PRINT_OPTIONS;

export const VISIT: Usage = {
  command: "visit",
  line: `registrant visit ORGAN.yaml [--pdf F.pdf [--paper ${PAPERS.join("|")}] [--replace]]`,
  does: "Prints a sheet for a visit to an organ: what to ask, to see and to listen for, and what to take care of.",
  options: { pdf, paper, replace },
  operands: ["ORGAN.yaml"],
};

function textOf({ title, label, parts, foot }: Handout): string {
  const lines = parts.flatMap(({ head, items }) => [
    "",
    head,
    ...items.flatMap(({ lead, text, white }) => [
      ...wrapped(lead === null ? text : `${lead} ${text}`, "- "),
      ...Array.from({ length: white }, () => `  ${"_".repeat(COLUMNS - 2)}`),
    ]),
  ]);
  return [...wrapped(title), ...(label === null ? [] : wrapped(label)), ...lines, "", ...wrapped(foot)].join("\n");
}

/** `registrant visit`. */
export async function visitCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const given = readOptions(VISIT, words);
  const order = printOrder(given, terminal, "a4");
  const handout = visitHandout(readOrgan(given.operands[0] ?? "", terminal));
  if (order) await printCards(order, (form) => handoutPages(handout, form), terminal);
  else terminal.stdout.write(line(textOf(handout)));
  return DONE;
}
