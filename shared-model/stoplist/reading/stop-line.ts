import type { Foot } from "../../pitch/foot.ts";
import type { Key } from "../../pitch/key.ts";
import { readPitch } from "../../pitch/reading.ts";
import { foldedSpelling } from "../glossary/spelling.ts";
import { divisionRole, rolesOfShort } from "./division-words.ts";
import type { HalfMark } from "./halves.ts";
import { isKeyPhrase, keyAlone } from "./keys-in-line.ts";
import type { KnownNames } from "./known-names.ts";
import { type Token, tokensOf } from "./line-tokens.ts";
import { type PitchMark, pitchAt } from "./pitches-in-line.ts";
import type { RanksMark } from "./ranks-in-line.ts";
import { FORMER, REMARK_WORDS, type Remark, remarkIn } from "./remarks.ts";

/** A stop while its line is being read: everything found, nothing concluded. */
export interface StopDraft {
  /** Place of its first sign in the line, for lines joined from several. */
  at: number;
  name: string;
  /** The name without a word that may or may not be a half (`Violon basse`, `Cornet D`); equal to `name` when there is none. */
  bareName: string;
  pitches: PitchMark[];
  /** Lengths that stand in brackets; they count when no other is printed. */
  aside: PitchMark[];
  /** Lengths are joined by a sign that makes them one stop or several (`8' + 4'`); a dash makes them a change of one. */
  joined: boolean;
  ranks: RanksMark | null;
  composition: readonly Foot[] | null;
  half: HalfMark | null;
  from: Key | null;
  /** Highest key (`bass up to B`). */
  to: Key | null;
  borrowed: string | null;
  prepared: boolean;
  atPedal: boolean;
  remarks: string[];
}

/** What a line holds: stops, marks that belong to a stop printed before or after, and words that are neither. */
export type LinePart =
  | { readonly kind: "stop"; readonly draft: StopDraft }
  | { readonly kind: "marks"; readonly draft: StopDraft }
  | { readonly kind: "words"; readonly text: string; readonly at: number };

const emptyDraft = (at: number): StopDraft => ({
  at,
  name: "",
  bareName: "",
  pitches: [],
  aside: [],
  joined: false,
  ranks: null,
  composition: null,
  half: null,
  from: null,
  to: null,
  borrowed: null,
  prepared: false,
  atPedal: false,
  remarks: [],
});

const isMark = (token: Token | undefined): boolean =>
  token !== undefined && (token.kind === "pitch" || token.kind === "ranks" || token.kind === "steps");
const isName = (token: Token | undefined): boolean => token?.kind === "word";

const FOOTNOTE = /[*†‡§°¹²³⁴⁵⁶⁷⁸⁹^#~]+$/u;

/** Outer punctuation, footnote signs and prepositions that led to a mark are no part of a name. */
export function tidyName(text: string): string {
  let name = text.replace(/\s+/g, " ").trim();
  for (let before = ""; before !== name; ) {
    before = name;
    name = name
      .replace(/^[\s*†‡§¹²³⁴⁵⁶⁷⁸⁹~,;:=.–—_"“”„«»!?\\/|-]+/u, "")
      .replace(FOOTNOTE, "")
      .replace(/[\s,;:=–—_"“”„«»!?\\/|+&-]+$/u, "")
      // Leaders of dots between a name and its pitch.
      .replace(/(?:\s*[.…]){2,}$|\s[.…]$/u, "")
      .replace(/(?<=\S{2})\s(?:di|de|du|a|à|of|zu|mit|with|met|von|des|der|im|in|nel|al|et|und|en|y|e|so)$/iu, "")
      .trim();
  }
  return name.replace(/(?<=\p{L}{6})\.$/u, "");
}

/** A footnote's sign in square brackets, which some pages print behind every other word. */
const REFERENCE = /^(?:\d{1,2}|[a-z]|\*+|[†‡§])$/;

function readBracket(token: Extract<Token, { kind: "bracket" }>, text: string, draft: StopDraft): void {
  const content = token.text.trim();
  const square = text[token.start] === "[";
  if (content === "" || /^[*†‡§]+$/.test(content)) return;
  const remark = isKeyPhrase(content) ? null : (remarkIn(content) ?? ofDivision(content));
  if (remark && (remark.borrowed !== null || remark.prepared)) {
    draft.borrowed ??= remark.borrowed;
    draft.prepared ||= remark.prepared;
    return;
  }
  for (const piece of content.split(/[;,](?!\d)/)) {
    if (!readPiece(piece.trim(), draft) && !(square && REFERENCE.test(piece.trim()))) draft.remarks.push(piece.trim());
  }
}

/** `(Sw)`, `(G.O.)` behind a stop: it is borrowed from there. */
function ofDivision(content: string): Remark | null {
  const folded = foldedSpelling(content);
  const isDivision =
    folded.length >= 2 &&
    (divisionRole(folded) !== null || (rolesOfShort(folded).length > 0 && /\p{Lu}/u.test(content)));
  return isDivision ? { borrowed: content, prepared: false, atPedal: false } : null;
}

/** Marks that make up the whole of a piece; false when words are left. */
function readPiece(piece: string, draft: StopDraft): boolean {
  const remark = isKeyPhrase(piece) ? null : remarkIn(piece);
  let rest = piece;
  if (remark?.atPedal) {
    draft.atPedal = true;
    rest = piece.replace(/^\S+\s*/, "").replace(/^(?:pedale|pedaal|pédalier)\s*/i, "");
  } else if (remark) {
    draft.borrowed ??= remark.borrowed;
    draft.prepared ||= remark.prepared;
    return true;
  }
  const alone = keyAlone(rest);
  if (alone !== null && pitchAt(rest, 0)?.end !== rest.length) {
    draft.from ??= alone;
    return true;
  }
  const tokens = tokensOf(rest);
  const half = tokens.find((token) => token.kind === "half");
  // "bass from Stopped Diapason" speaks of the lowest pipes, not of a half.
  if (half?.kind === "half" && (half.mark.half === "both" || !tokens.some(isName)))
    draft.half ??= { ...half.mark, sure: true, partOfName: false };
  for (const token of tokens) {
    if (token.kind === "pitch") draft.aside.push(token.mark);
    else if (token.kind === "ranks") draft.ranks ??= token.mark;
    else if (token.kind === "steps") draft.composition ??= token.mark.composition;
    else if (token.kind === "key") takeKey(draft, token.mark.key, token.mark.end_of);
  }
  return tokens.every((token) => token.kind !== "word" && token.kind !== "bracket");
}

function takePitch(draft: StopDraft, mark: PitchMark): void {
  draft.pitches.push(mark);
}

function takeKey(draft: StopDraft, key: Key, end: "from" | "to"): void {
  if (end === "from") draft.from ??= key;
  else draft.to ??= key;
}

/** Tokens between breaks. */
interface Segment {
  readonly tokens: readonly Token[];
  /** What stands before it: `""` for the first. */
  readonly before: string;
}

function segmentsOf(tokens: readonly Token[]): Segment[] {
  const segments: Segment[] = [];
  let [current, before]: [Token[], string] = [[], ""];
  for (const token of tokens) {
    if (token.kind !== "break") current.push(token);
    else {
      if (current.length > 0) segments.push({ tokens: current, before });
      [current, before] = [[], token.text];
    }
  }
  if (current.length > 0) segments.push({ tokens: current, before });
  return segments;
}

/** The words from one token to another as they stand in print, brackets left out. */
function wording(text: string, tokens: readonly Token[]): string {
  let words = "";
  let last = -1;
  for (const token of tokens) {
    if (token.kind === "bracket" || token.kind === "cell") continue;
    words += last >= 0 && token.start > last ? " " : "";
    words += text.slice(token.start, token.end);
    last = token.end;
  }
  return words;
}

const looksLikeName = (words: string, names: KnownNames): boolean => {
  const name = tidyName(words);
  if (name === "") return false;
  if (names.knows(name)) return true;
  return /^[\p{Lu}\d"“„'’]/u.test(name) && /\p{L}{2}/u.test(name) && name.split(/\s+/).length <= 6;
};

/** Where in a run of tokens the stops begin: names with their marks before or behind. */
function runsOf(text: string, tokens: readonly Token[], names: KnownNames): Token[][] {
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
      starts = !remark && (hasOwnMark ? looksLikeName(name, names) : names.isPlainName(name) && name.length > 3);
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

/** Spanish names count their length in palms (`Flautado de 13`). */
const PALMS = /\s(?:de|en|d['’]) ?(?:a )?(52|26|13|7|6 ?½|6 1\/2)$/i;

/** A run of tokens as one stop, or as marks when it holds no name. */
function draftOf(text: string, run: readonly Token[], names: KnownNames): LinePart {
  const draft = emptyDraft(run[0]?.start ?? 0);
  const area: Token[] = [];
  let [phase, tail]: ["before" | "name" | "behind", Token[]] = ["before", []];
  const lastMark = run.findLastIndex(isMark);
  run.forEach((token, index) => {
    switch (token.kind) {
      case "word": {
        if (phase === "before") phase = "name";
        const begins = area.length > 0 && REMARK_WORDS.has(token.text.toLowerCase().replace(/[,;]$/, ""));
        if (begins && phase === "name") phase = "behind";
        if (phase === "name") area.push(token);
        else tail.push(token);
        break;
      }
      case "half":
        if (phase === "behind") {
          if (tail.length === 0)
            draft.half ??= {
              ...token.mark,
              sure: token.mark.sure || !/^[bds]\.?$/i.test(text.slice(token.start, token.end)),
              partOfName: false,
            };
        } else {
          phase = "name";
          area.push(token);
        }
        break;
      case "ranks": {
        // A numeral inside a name numbers it (`Principale II Bassi`, `Viola I 8'`).
        const last = index >= lastMark || run.slice(index + 1).every((next) => !isName(next));
        if (phase === "name" && token.mark.sign === "numeral" && !last && run[index + 1]?.kind === "word")
          area.push(token);
        else if (phase === "name" && token.mark.sign === "numeral" && run[index + 1]?.kind === "half") area.push(token);
        else {
          draft.ranks ??= token.mark;
          if (phase === "name") phase = "behind";
        }
        break;
      }
      case "pitch":
        takePitch(draft, token.mark);
        if (phase === "name") phase = "behind";
        break;
      case "steps":
        draft.composition ??= token.mark.composition;
        if (phase === "name") phase = "behind";
        break;
      case "key":
        takeKey(draft, token.mark.key, token.mark.end_of);
        if (phase === "name") phase = "behind";
        break;
      case "bracket":
        readBracket(token, text, draft);
        break;
      case "join":
        if (tail.length === 0 && draft.pitches.length > 0) draft.joined = true;
        else if (phase === "name") area.push(token);
        break;
      case "cell":
        if (phase === "name" && area.length > 0) phase = "behind";
        break;
    }
  });
  if (tail.length > 0) readTail(wording(text, tail), draft);
  // "1 Principal 8'": the figure before the name numbers it.
  const [number, length] = draft.pitches;
  if (
    number &&
    length &&
    !number.sure &&
    number.start === run[0]?.start &&
    area.some((token) => token.start > number.start && token.start < length.start)
  )
    draft.pitches.shift();
  const pitchFirst = run.findIndex(isMark) >= 0 && run.findIndex(isMark) < run.findIndex(isName);
  const words = tidyName(wording(text, area));
  const palms = PALMS.exec(words);
  // "16 Fuß aus dem F angehend": a length and talk about it, printed under the name it belongs to.
  if (pitchFirst && /^\p{Ll}/u.test(words) && !names.knows(words)) draft.remarks.push(words);
  else nameFrom(text, area, draft, names);
  if (palms && draft.pitches.length === 0 && draft.aside.length === 0) {
    const printed = palms[1] as string;
    const { foot } = readPitch(`${printed} palmos`);
    if (foot) {
      draft.pitches.push({ start: draft.at, end: draft.at, printed, foot, choices: [], sure: true });
      draft.name = tidyName(draft.name.replace(PALMS, ""));
      draft.bareName = draft.name;
    }
  }
  return draft.name === "" ? { kind: "marks", draft } : { kind: "stop", draft };
}

function readTail(words: string, draft: StopDraft): void {
  const remark = remarkIn(words);
  if (remark) {
    draft.borrowed ??= remark.borrowed;
    draft.prepared ||= remark.prepared;
    draft.atPedal ||= remark.atPedal;
  } else draft.remarks.push(words.trim());
}

const AT_PEDAL_END = /\s(?:al pedale|ai pedali|in pedale|al pedal|en el pedal|alla pedaliera)$/i;

/** Parts the name from a half at its end, or from a half that leads it (`Dessus de Flûte`). */
function nameFrom(text: string, area: readonly Token[], draft: StopDraft, names: KnownNames): void {
  const printed = tidyName(wording(text, area));
  const whole = tidyName(printed.replace(AT_PEDAL_END, ""));
  draft.atPedal ||= whole !== printed;
  draft.name = whole;
  draft.bareName = whole;
  const last = area.at(-1);
  const first = area[0];
  const inner = area.find((token) => token.kind === "half");
  if (area.length > 1 && last?.kind === "half") {
    draft.half ??= last.mark;
    const bare = tidyName(wording(text, area.slice(0, -1)));
    if (last.mark.sure && !last.mark.partOfName) draft.name = bare;
    if (/^cantus$/i.test(text.slice(last.start, last.end))) return;
    draft.bareName = bare === "" ? whole : bare;
    if (draft.name === "") draft.name = whole;
  } else if (first?.kind === "half" && area.length > 1) {
    const leads = /^(?:dessus|basse|tiples?|bajos?|bas|discant|treble) d/i.test(whole);
    if (leads && !(first.mark.half === "bass" && names.isPlainName(whole))) {
      draft.half ??= { ...first.mark, partOfName: true, sure: first.mark.half === "treble" };
    }
  } else if (inner?.kind === "half" && area.length > 1 && inner.mark.sure) draft.half ??= inner.mark;
}

/** Segments whose words only talk about the stop before. */
function isTalk(words: string, names: KnownNames): boolean {
  const name = tidyName(words);
  if (name === "") return false;
  if (FORMER.test(` ${words}`)) return true;
  if (remarkIn(words)) return true;
  const [first = ""] = name.split(/\s+/);
  if (REMARK_WORDS.has(first.toLowerCase())) return true;
  return /^\p{Ll}/u.test(name) && !names.knows(name);
}

/**
 * What a line without heading, number and bullet holds. Stops may stand one or many on it, their marks before or behind
 * their names; words that are neither a known name nor beside a mark come back as words, for the reader of the whole list.
 */
export function partsOfLine(text: string, names: KnownNames): readonly LinePart[] {
  const cells = text.split("\t");
  if (cells.length < 3) return partsOfCell(text, names);
  let [parts, done]: [readonly LinePart[], string] = [[], ""];
  for (const cell of cells) {
    const last = parts.at(-1);
    const isFull =
      last?.kind === "stop" &&
      (last.draft.pitches.length > 0 || last.draft.aside.length > 0 || last.draft.ranks !== null);
    const next = isFull && cell.trim() !== "" ? partsOfCell(cell, names) : [];
    const talks =
      next.length > 0 &&
      !next.every((part) => part.kind === "marks") &&
      !next.some(
        (part) =>
          part.kind === "stop" &&
          (part.draft.pitches.length > 0 ||
            part.draft.ranks !== null ||
            (/^\p{Lu}/u.test(part.draft.name) && names.isPlainName(part.draft.name))),
      );
    if (isFull && talks) readTail(cell, last.draft);
    else {
      const talk = parts.flatMap((part) => (part.kind === "words" ? [] : [part.draft]));
      done = done === "" && talk.length === 0 ? cell : `${done}\t${cell}`;
      const again = partsOfCell(done, names);
      again.forEach((part, index) => {
        const before = talk[index];
        if (before && part.kind !== "words") {
          part.draft.remarks = [...new Set([...before.remarks, ...part.draft.remarks])];
          part.draft.borrowed ??= before.borrowed;
          part.draft.prepared ||= before.prepared;
        }
      });
      parts = again;
    }
  }
  return parts;
}

function partsOfCell(text: string, names: KnownNames): readonly LinePart[] {
  const parts: LinePart[] = [];
  const lastStop = (): StopDraft | null => {
    const last = parts.at(-1);
    return last && last.kind !== "words" ? last.draft : null;
  };
  for (const segment of segmentsOf(tokensOf(text))) {
    const words = segment.tokens.filter((token) => token.kind === "word" || token.kind === "half");
    const wordTokens = segment.tokens.filter(isName);
    const marks = segment.tokens.filter(isMark);
    const at = segment.tokens[0]?.start ?? 0;
    const previous = lastStop();
    const wordsText = wording(text, words);
    if (previous && wordTokens.length > 0 && isTalk(wordsText, names)) {
      const whole = wording(
        text,
        segment.tokens.filter((token) => token.kind !== "bracket"),
      );
      const remark = remarkIn(whole);
      const former = FORMER.test(` ${whole}`);
      if (remark) {
        previous.borrowed ??= remark.borrowed;
        previous.prepared ||= remark.prepared;
      } else {
        const leading = segment.tokens[0];
        if (!former && isMark(leading) && previous.pitches.length === 0 && leading?.kind === "pitch") {
          takePitch(previous, leading.mark);
          for (const token of segment.tokens)
            if (token.kind === "key") takeKey(previous, token.mark.key, token.mark.end_of);
        }
        previous.remarks.push(whole.trim());
      }
      continue;
    }
    if (wordTokens.length === 0) {
      const alone = segment.tokens[0];
      // "Soubasse 16, Basse 8": a stop of that name, not the bass half of the stop before.
      const isOwn =
        alone?.kind === "half" &&
        !alone.mark.sure &&
        alone.end - alone.start > 2 &&
        marks.length > 0 &&
        previous !== null &&
        previous.pitches.length > 0;
      if (previous && !isOwn && attach(segment, text, previous)) continue;
      const part = draftOf(text, segment.tokens, names);
      const only = segment.tokens.length === 1 ? segment.tokens[0] : undefined;
      if (part.kind === "stop" && only?.kind === "half" && !previous)
        parts.push({ kind: "words", text: wordsText, at });
      else parts.push(part);
      continue;
    }
    if (marks.length === 0) {
      const part = draftOf(text, segment.tokens, names);
      if (
        part.kind === "stop" &&
        (parts.length === 0 || names.knows(part.draft.name) || names.knows(part.draft.bareName))
      ) {
        parts.push(part);
      } else if (part.kind === "marks" && previous && attach(segment, text, previous)) continue;
      else parts.push({ kind: "words", text: wording(text, segment.tokens), at });
      continue;
    }
    for (const run of runsOf(text, segment.tokens, names)) parts.push(draftOf(text, run, names));
  }
  return parts;
}

/** Marks without a name belong to the stop before: its length, its ranks, the change of its length, its half. */
function attach(segment: Segment, text: string, draft: StopDraft): boolean {
  const dash = /^[-–—/]$/.test(segment.before);
  for (const token of segment.tokens) {
    if (token.kind === "pitch") {
      if (draft.pitches.length > 0 && dash) {
        draft.remarks.push(`${segment.before} ${text.slice(token.start, token.end)}`);
        continue;
      }
      if (draft.pitches.length > 0) draft.joined = true;
      takePitch(draft, token.mark);
    } else if (token.kind === "ranks") draft.ranks ??= token.mark;
    else if (token.kind === "steps") draft.composition ??= token.mark.composition;
    else if (token.kind === "half") draft.half ??= { ...token.mark, partOfName: false };
    else if (token.kind === "key") takeKey(draft, token.mark.key, token.mark.end_of);
    else if (token.kind === "bracket") readBracket(token, text, draft);
  }
  return true;
}

/** Marks of a line without a name put to a stop printed on another line. */
export function giveMarks(from: StopDraft, to: StopDraft): void {
  to.pitches.push(...from.pitches);
  to.aside.push(...from.aside);
  to.joined ||= from.joined;
  to.ranks ??= from.ranks;
  to.composition ??= from.composition;
  to.half ??= from.half;
  to.from ??= from.from;
  to.to ??= from.to;
  to.borrowed ??= from.borrowed;
  to.prepared ||= from.prepared;
  to.atPedal ||= from.atPedal;
  to.remarks.push(...from.remarks);
}
