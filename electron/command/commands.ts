import { CARD, CARDS, cardsCommand } from "./cards.ts";
import { CARRY, carryCommand } from "./carry.ts";
import { CHECK, checkCommand } from "./check.ts";
import { OPEN, openCommand } from "./open.ts";
import type { Usage } from "./options.ts";
import { PLAN, planCommand } from "./plan.ts";
import { PROPOSE, proposeCommand } from "./propose.ts";
import { READ, readCommand } from "./read.ts";
import { RULES_USAGE, rulesCommand } from "./rules.ts";
import { SCHEMA, schemaCommand } from "./schema.ts";
import { SUITS, suitsCommand } from "./suits.ts";
import { SURVEY, surveyCommand } from "./survey.ts";
import type { Terminal } from "./terminal.ts";
import { TEXTURES_USAGE, texturesCommand } from "./textures.ts";
import { VALIDATE, validateCommand } from "./validate.ts";
import { VISIT, visitCommand } from "./visit.ts";

/** A command: how it is called, and what it does. */
export interface Command {
  readonly usage: Usage;
  readonly run: (words: readonly string[], terminal: Terminal) => number | Promise<number>;
}

/** Every command that is there. */
export const COMMANDS: readonly Command[] = [
  { usage: OPEN, run: openCommand },
  { usage: READ, run: readCommand },
  { usage: VALIDATE, run: validateCommand },
  { usage: TEXTURES_USAGE, run: texturesCommand },
  { usage: PROPOSE, run: proposeCommand },
  { usage: CHECK, run: checkCommand },
  { usage: CARDS, run: (words, terminal) => cardsCommand(CARDS, words, terminal) },
  { usage: CARD, run: (words, terminal) => cardsCommand(CARD, words, terminal) },
  { usage: PLAN, run: planCommand },
  { usage: CARRY, run: carryCommand },
  { usage: SURVEY, run: surveyCommand },
  { usage: SUITS, run: suitsCommand },
  { usage: VISIT, run: visitCommand },
  { usage: RULES_USAGE, run: rulesCommand },
  { usage: SCHEMA, run: schemaCommand },
];
