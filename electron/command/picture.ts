import type { Problem } from "../../shared-model/judging/problem.ts";
import { registrationPicture } from "../../shared-model/pictures/registration-picture.ts";
import type { Given, OptionForm } from "./options.ts";
import { mayWrite, writeWhole } from "./output-file.ts";
import type { ListedState } from "./proposal-json.ts";
import type { Terminal } from "./terminal.ts";

/** The option of commands that draw a registration. */
export const PICTURE_OPTION = { picture: { value: "a file" } } as const satisfies Readonly<Record<string, OptionForm>>;

/**
 * Where to draw; `null` when no picture is wanted.
 *
 * @throws Refusal for a file that may not be written.
 */
export function pictureOrder(given: Given, terminal: Terminal): string | null {
  const path = given.value("picture");
  if (path === undefined) return null;
  mayWrite(path, given.has("replace"), terminal);
  return path;
}

/**
 * Draws a registration into a file.
 *
 * @returns a line that says so.
 * @throws Refusal when the file cannot be written.
 */
export function drawPicture(
  path: string,
  problem: Problem,
  { place, label, judgement }: ListedState,
  replace: boolean,
  terminal: Terminal,
): string {
  writeWhole(path, registrationPicture(problem, judgement, label), replace, terminal);
  return `${path}: proposal ${place}, ${label}.`;
}
