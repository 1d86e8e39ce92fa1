import type { KnownNames } from "./known-names.ts";
import type { Token } from "./line-tokens.ts";
import { REMARK_WORDS } from "./remarks.ts";
import { looksLikeName, tidyName, wording } from "./stop-name.ts";

/** Whether the token is a length, ranks or a row of steps. */
export const isMark = (token: Token | undefined): boolean =>
  token !== undefined && (token.kind === "pitch" || token.kind === "ranks" || token.kind === "steps");
/** Whether the token is a word of a name. */
export const isName = (token: Token | undefined): boolean => token?.kind === "word";

/** "Gedackt 8' und Flöte 4'": between two stops such a word is like a comma. */
const isConjunction = (token: Token): boolean =>
  token.kind === "word" && /^(?:und|and|et|en|e|y|og|och)$/i.test(token.text);
const beginsName = (token: Token | undefined): boolean => token?.kind === "word" && /^\p{Lu}/u.test(token.text);

/** Tokens between breaks. */
export interface Segment {
  readonly tokens: readonly Token[];
  /** What stands before it: `""` for the first. */
  readonly before: string;
}

/** A line parted at its breaks. */
export function segmentsOf(tokens: readonly Token[]): Segment[] {
  const segments: Segment[] = [];
  let [current, before]: [Token[], string] = [[], ""];
  for (const [index, token] of tokens.entries()) {
    if (isConjunction(token) && isMark(tokens[index - 1]) && beginsName(tokens[index + 1])) {
      segments.push({ tokens: current, before });
      [current, before] = [[], ","];
    } else if (token.kind !== "break") current.push(token);
    else {
      if (current.length > 0) segments.push({ tokens: current, before });
      [current, before] = [[], token.text];
    }
  }
  if (current.length > 0) segments.push({ tokens: current, before });
  return segments;
}

/** Where in a run of tokens the stops begin: names with their marks before or behind. */
export function runsOf(text: string, tokens: readonly Token[], names: KnownNames): Token[][] {
  const firstMark = tokens.findIndex(isMark);
  const firstName = tokens.findIndex(isName);
  if (firstMark < 0 || firstName < 0) return [[...tokens]];
  const pitchFirst = firstMark < firstName;
  const runs: Token[][] = [];
  let run: Token[] = [];
  const wordsFrom = (index: number): { words: Token[]; next: number } => {
    let next = index;
    while (next < tokens.length && (isName(tokens[next]) || tokens[next]?.kind === "half")) next += 1;
    return { words: tokens.slice(index, next), next };
  };
  let [named, marked] = [false, false];
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index] as Token;
    const startsWords = isName(token) && !isName(tokens[index - 1]) && tokens[index - 1]?.kind !== "half";
    let starts = false;
    if (pitchFirst && isMark(token) && named && !isMark(tokens[index - 1])) {
      const { words, next } = wordsFrom(index + 1);
      starts = words.length > 0 && looksLikeName(wording(text, words), names) && tokens[index - 1]?.kind !== "join";
      if (starts && next === tokens.length && token.kind === "ranks" && token.mark.sign === "numeral") {
        starts = names.knows(tidyName(wording(text, words)));
      }
    } else if (!pitchFirst && startsWords && named && marked) {
      const { words, next } = wordsFrom(index);
      const name = tidyName(wording(text, words));
      const first = words[0];
      const remark = first?.kind === "word" && REMARK_WORDS.has(first.text.toLowerCase());
      const marks = tokens[next];
      const hasOwnMark =
        isMark(marks) && !(marks?.kind === "ranks" && marks.mark.sign === "numeral" && !names.knows(name));
      starts =
        !remark &&
        (hasOwnMark
          ? looksLikeName(name, names)
          : names.isPlainName(name) && name.length > 3 && (beginsName(first) || !beginsName(run.find(isName))));
    }
    if (starts) {
      runs.push(run);
      run = [];
      [named, marked] = [false, false];
    }
    if (isName(token)) named = true;
    if (isMark(token)) marked = true;
    run.push(token);
  }
  if (run.length > 0) runs.push(run);
  return runs;
}
