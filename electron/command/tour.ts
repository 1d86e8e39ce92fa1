import { CARDS } from "./cards.ts";
import { CARRY } from "./carry.ts";
import { CHECK } from "./check.ts";
import { OPEN } from "./open.ts";
import { type Usage, usageLines } from "./options.ts";
import { table, wrapped } from "./plain-text.ts";
import { PLAN } from "./plan.ts";
import { PROPOSE } from "./propose.ts";
import { READ } from "./read.ts";
import { RULES_USAGE } from "./rules.ts";
import { SCHEMA } from "./schema.ts";
import { SUITS } from "./suits.ts";
import { SURVEY } from "./survey.ts";
import { line } from "./terminal.ts";
import { TEXTURES_USAGE } from "./textures.ts";
import { VALIDATE } from "./validate.ts";
import { VISIT } from "./visit.ts";

/** Every command that is there, in the order in which a new user meets them. */
const USAGES: readonly Usage[] = [
  OPEN,
  READ,
  VALIDATE,
  TEXTURES_USAGE,
  PROPOSE,
  CHECK,
  CARDS,
  PLAN,
  CARRY,
  SURVEY,
  SUITS,
  VISIT,
  RULES_USAGE,
  SCHEMA,
];

const STEPS: readonly (readonly [string, string])[] = [
  ["registrant textures", "what kinds of music there are"],
  ["registrant propose instruments/sallowby.yaml --texture hymn-verse", "what to draw for one"],
  ["registrant read LIST.txt --out organ.yaml", "your own organ, from its printed stoplist"],
  ["registrant propose organ.yaml --texture hymn-verse --card 1", "a card for the music desk"],
  ["registrant plan instruments/sallowby.yaml instruments/pieces/hymn.yaml", "a whole piece, change by change"],
  ["registrant survey instruments/sallowby.yaml --tradition english-18c", "what an organ can do of a school"],
  ["registrant visit organ.yaml", "what to ask, see and hear at an organ that is not yours"],
  ["registrant check organ.yaml mine.yaml", "what is wrong with what you drew yourself"],
];

/** What a person sees who calls the program without a command. */
export function tour(): string {
  return line(
    [
      "Registrant: what to draw on the organ, and why.",
      "",
      "To begin with:",
      ...STEPS.flatMap(([command, does]) => [`  ${command}`, `      ${does}`]),
      "",
      "Commands:",
      ...table(
        USAGES.map((usage) => [usage.command, usage.does]),
        "  ",
      ),
      "",
      ...wrapped('"registrant COMMAND --help" says how a command is called.'),
    ].join("\n"),
  );
}

/** How one command is called. */
export const help = (usage: Usage): string => line([...wrapped(usage.does), "", ...usageLines(usage)].join("\n"));
