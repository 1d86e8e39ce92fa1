import { CARD, CARDS, cardsCommand } from "./command/cards.ts";
import { CARRY, carryCommand } from "./command/carry.ts";
import { CHECK, checkCommand } from "./command/check.ts";
import { nearestWords } from "./command/nearest.ts";
import { OPEN, openCommand } from "./command/open.ts";
import type { Usage } from "./command/options.ts";
import { either } from "./command/plain-text.ts";
import { PLAN, planCommand } from "./command/plan.ts";
import { PROPOSE, proposeCommand } from "./command/propose.ts";
import { READ, readCommand } from "./command/read.ts";
import { RULES_USAGE, rulesCommand } from "./command/rules.ts";
import { SCHEMA, schemaCommand } from "./command/schema.ts";
import { SUITS, suitsCommand } from "./command/suits.ts";
import { SURVEY, surveyCommand } from "./command/survey.ts";
import { DONE, line, REFUSED, Refusal, type Terminal } from "./command/terminal.ts";
import { TEXTURES_USAGE, texturesCommand } from "./command/textures.ts";
import { help, tour } from "./command/tour.ts";
import { VALIDATE, validateCommand } from "./command/validate.ts";
import { VISIT, visitCommand } from "./command/visit.ts";
import { VERSION } from "./service/project.ts";

/** What a caller may put in the place of the process's own. */
export type CommandIo = Partial<Terminal>;

interface Command {
  readonly usage: Usage;
  readonly run: (words: readonly string[], terminal: Terminal) => number | Promise<number>;
}

const COMMANDS: readonly Command[] = [
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

const NAMES = [...COMMANDS.map((each) => each.usage.command), "tour", "help"];
const ASKS_HELP = ["--help", "-h"];

const commandNamed = (name: string): Command | undefined => COMMANDS.find((each) => each.usage.command === name);

function unknownCommand(name: string): Refusal {
  const nearest = nearestWords(name, NAMES);
  const hint = nearest.length > 0 ? `Did you mean ${either(nearest)}?` : `"registrant help" lists the commands.`;
  return new Refusal(`There is no command "${name}". ${hint}`);
}

function run(args: readonly string[], terminal: Terminal): number | Promise<number> {
  const [name, ...words] = args;
  if (name === undefined) return openCommand([], terminal);
  if (name === "--version") {
    terminal.stdout.write(line(VERSION));
    return DONE;
  }
  if (name === "tour" || name === "help" || ASKS_HELP.includes(name)) {
    const about = words[0] === undefined ? undefined : commandNamed(words[0]);
    if (words[0] !== undefined && !about) throw unknownCommand(words[0]);
    terminal.stdout.write(about ? help(about.usage) : tour());
    return DONE;
  }
  if (name.startsWith("-")) throw new Refusal(`Options stand behind a command; "registrant help" lists the commands.`);
  const command = commandNamed(name);
  if (!command) throw unknownCommand(name);
  if (words.some((word) => ASKS_HELP.includes(word))) {
    terminal.stdout.write(help(command.usage));
    return DONE;
  }
  return command.run(words, terminal);
}

/** Whoever reads the output may stop before its end (`| head`): that is no trouble. */
function calmlyClosed(stream: NodeJS.WriteStream): NodeJS.WriteStream {
  if (stream.listenerCount("error") === 0) {
    stream.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code !== "EPIPE") throw error;
    });
  }
  return stream;
}

/**
 * Runs one command.
 *
 * @param args the words behind the program's name.
 * @returns the exit status: 0 done; 1 done and something is wrong; 2 bad input or usage, nothing written.
 */
export async function main(args: readonly string[], io: CommandIo = {}): Promise<number> {
  const terminal: Terminal = {
    stdout: io.stdout ?? calmlyClosed(process.stdout),
    stderr: io.stderr ?? calmlyClosed(process.stderr),
    folder: io.folder ?? process.cwd(),
  };
  try {
    return await run(args, terminal);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    terminal.stderr.write(line(error.message));
    return REFUSED;
  }
}
