import { RULES } from "../../shared-model/rules/index.ts";
import { rulesReference } from "../../shared-model/rules/reference.ts";
import { nearestWords } from "./nearest.ts";
import { readOptions, type Usage } from "./options.ts";
import { either } from "./plain-text.ts";
import { DONE, line, Refusal, type Terminal } from "./terminal.ts";

export const RULES_USAGE: Usage = {
  command: "rules",
  line: "registrant rules [RULE]",
  does: "Prints the conventions that decide, with their sources and examples; or one of them.",
  options: {},
  operands: ["the id of a rule"],
  least: 0,
};

/** `registrant rules`. */
export function rulesCommand(words: readonly string[], terminal: Terminal): number {
  const [id] = readOptions(RULES_USAGE, words).operands;
  const page = rulesReference();
  if (id === undefined) {
    terminal.stdout.write(line(page.trimEnd()));
    return DONE;
  }
  const chapter = page.split(/^(?=#{2,3} )/m).find((each) => each.startsWith(`### ${id}\n`));
  if (!chapter) {
    const ids = RULES.map((rule) => rule.id);
    const nearest = nearestWords(id, ids);
    const hint = nearest.length > 0 ? `Did you mean ${either(nearest)}?` : `"registrant rules" prints all.`;
    throw new Refusal(`There is no rule "${id}". ${hint}`);
  }
  terminal.stdout.write(line(chapter.trimEnd()));
  return DONE;
}
