import { parseArgs } from "node:util";
import { nearestWords } from "./nearest.ts";
import { either, wrapped } from "./plain-text.ts";
import { Refusal } from "./terminal.ts";

/** What one option takes: nothing, or a value named as the usage line names it (`FILE.yaml`). */
export type OptionForm = "flag" | { readonly value: string };

/** How a command is called. */
export interface Usage {
  /** `propose`. */
  readonly command: string;
  /** `registrant propose ORGAN.yaml (--texture ID | --section F.yaml) ...`, one line. */
  readonly line: string;
  /** One sentence. */
  readonly does: string;
  /** By name without the hyphens. */
  readonly options: Readonly<Record<string, OptionForm>>;
  /** What stands beside the options, in order, as the usage line names it; the last may repeat. */
  readonly operands: readonly string[];
  readonly repeats?: boolean;
  /** How many of the operands must stand; default: all. */
  readonly least?: number;
}

/** The words behind a command, sorted. */
export interface Given {
  readonly operands: readonly string[];
  /** Whether a flag stands. */
  has(flag: string): boolean;
  /** The value of an option; `undefined` when it does not stand. */
  value(option: string): string | undefined;
}

/** How the command is called, in lines that fit. */
export const usageLines = (usage: Usage): readonly string[] => wrapped(usage.line, "Usage: ");

/** Sentence and usage line. */
const refuse = (usage: Usage, sentence: string): Refusal => new Refusal([sentence, ...usageLines(usage)].join("\n"));

const named = (option: string): string => `--${option}`;

function unknownOption(usage: Usage, raw: string, name: string): Refusal {
  const all = Object.keys(usage.options);
  const nearest = nearestWords(name, all).map(named);
  const known =
    all.length > 0 ? `It has ${either(all.map(named)).replace(/ or (?=[^ ]+$)/, " and ")}.` : "It has none.";
  return refuse(
    usage,
    `${usage.command} has no option ${raw}. ${nearest.length > 0 ? `Did you mean ${either(nearest)}?` : known}`,
  );
}

/**
 * Sorts the words behind a command into options and operands.
 *
 * @throws Refusal, with the nearest names, for an option that the command has not, a value that is missing or too many,
 * and operands too few or too many.
 */
export function readOptions(usage: Usage, words: readonly string[]): Given {
  const forms = Object.entries(usage.options);
  const { tokens } = parseArgs({
    args: [...words],
    options: Object.fromEntries(
      forms.map(([name, form]) => [name, { type: form === "flag" ? "boolean" : "string" } as const]),
    ),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const values = new Map<string, string>();
  const operands: string[] = [];
  for (const token of tokens) {
    if (token.kind === "positional") operands.push(token.value);
    if (token.kind !== "option") continue;
    const form = Object.hasOwn(usage.options, token.name) ? usage.options[token.name] : undefined;
    if (form === undefined) throw unknownOption(usage, token.rawName, token.name);
    if (values.has(token.name)) throw refuse(usage, `${named(token.name)} stands twice; keep one of the two.`);
    if (form === "flag") {
      if (token.value !== undefined)
        throw refuse(usage, `${named(token.name)} takes no value; leave "=${token.value}" off.`);
      values.set(token.name, "");
      continue;
    }
    if (token.value === undefined || token.value === "" || (!token.inlineValue && token.value.startsWith("-"))) {
      throw refuse(usage, `${named(token.name)} needs ${form.value} behind it.`);
    }
    values.set(token.name, token.value);
  }
  const missing = usage.operands[operands.length];
  if (operands.length < (usage.least ?? usage.operands.length) && missing !== undefined) {
    throw refuse(usage, `${usage.command} needs ${missing}.`);
  }
  const surplus = operands[usage.operands.length];
  if (surplus !== undefined && !usage.repeats) {
    throw refuse(usage, `${usage.command} does not know what to do with "${surplus}".`);
  }
  return { operands, has: (flag) => values.has(flag), value: (option) => values.get(option) };
}

/**
 * The word that is one of a list.
 *
 * @throws Refusal with the nearest words, or with all of a short list.
 */
export function oneOf<Word extends string>(what: string, word: string, all: readonly Word[]): Word {
  const found = all.find((each) => each === word.toLowerCase());
  if (found !== undefined) return found;
  const nearest = nearestWords(word, all);
  const hint =
    nearest.length > 0 && all.length > 8 ? `Did you mean ${either(nearest)}?` : `It is one of ${either(all)}.`;
  throw new Refusal(`There is no ${what} "${word}". ${hint}`);
}

/**
 * The whole number that an option takes, from 1 on; `null` when it does not stand.
 *
 * @throws Refusal when it is something else, or more than `most`.
 */
export function wholeNumber(given: Given, option: string, most: number): number | null {
  const text = given.value(option);
  if (text === undefined) return null;
  const number = /^\d{1,6}$/.test(text) ? Number(text) : 0;
  if (number < 1 || number > most)
    throw new Refusal(`--${option} takes a whole number from 1 to ${most}, not "${text}".`);
  return number;
}
