import type { Command } from "./command/commands.ts";
import { nearestWords } from "./command/nearest.ts";
import { either } from "./command/plain-text.ts";
import { DONE, line, Refusal, type Terminal } from "./command/terminal.ts";
import { VERSION } from "./service/project.ts";

/** What a caller may put in the place of the process's own. */
export type CommandIo = Partial<Terminal>;

const ASKS_HELP = ["--help", "-h"];

function unknownCommand(name: string, commands: readonly Command[]): Refusal {
  const nearest = nearestWords(name, [...commands.map((each) => each.usage.command), "tour", "help"]);
  const hint = nearest.length > 0 ? `Did you mean ${either(nearest)}?` : `"registrant help" lists the commands.`;
  return new Refusal(`There is no command "${name}". ${hint}`);
}

async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...words] = args;
  const asksHelp = words.some((word) => ASKS_HELP.includes(word));
  // Who opens the app does not wait for what the other commands load: the whole model, and what writes PDF.
  if (name === undefined || (name === "open" && !asksHelp)) {
    const { openCommand } = await import("./command/open.ts");
    return openCommand(words, terminal);
  }
  if (name === "--version") {
    terminal.stdout.write(line(VERSION));
    return DONE;
  }
  const { COMMANDS } = await import("./command/commands.ts");
  const commandNamed = (word: string): Command | undefined => COMMANDS.find((each) => each.usage.command === word);
  if (name === "tour" || name === "help" || ASKS_HELP.includes(name)) {
    const about = words[0] === undefined ? undefined : commandNamed(words[0]);
    if (words[0] !== undefined && !about) throw unknownCommand(words[0], COMMANDS);
    const { help, tour } = await import("./command/tour.ts");
    terminal.stdout.write(about ? help(about.usage) : tour());
    return DONE;
  }
  if (name.startsWith("-")) throw new Refusal(`Options stand behind a command; "registrant help" lists the commands.`);
  const command = commandNamed(name);
  if (!command) throw unknownCommand(name, COMMANDS);
  if (asksHelp) {
    const { help } = await import("./command/tour.ts");
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
    return error.status;
  }
}
