import { readPitch } from "../../pitch/reading.ts";
import { readBracket, readTail } from "./bracket-in-line.ts";
import type { KnownNames } from "./known-names.ts";
import { type Token, tokensOf } from "./line-tokens.ts";
import type { PitchMark } from "./pitches-in-line.ts";
import { FORMER, REMARK_WORDS, remarkIn } from "./remarks.ts";
import { isMark, isName, runsOf, type Segment, segmentsOf } from "./runs-in-line.ts";
import { emptyDraft, hasMarks, type LinePart, type StopDraft, takeKey } from "./stop-draft.ts";
import { isTalk, nameFrom, tidyName, wording } from "./stop-name.ts";

/** Spanish names count their length in palms (`Flautado de 13`). */
const PALMS = /\s(?:de|en|d['’]) ?(?:a )?(52|26|13|7|6 ?½|6 1\/2)$/i;

/** "Flautado de 6½": no stop has six feet and a half, so it is counted in palms. */
function inPalms(mark: PitchMark, area: readonly Token[]): PitchMark {
  const last = area.at(-1);
  if (last?.kind !== "word" || last.text !== "de" || !/^6 ?(?:½|1\/2)$/.test(mark.printed)) return mark;
  const { foot } = readPitch(`${mark.printed} palmos`);
  return foot ? { ...mark, foot, choices: [] } : mark;
}

/** "Nasardo 12 2 2/3'", "Flautado de 12 8'": a figure that belongs to a known name, when a length follows. */
function takeNumberOfName(text: string, area: Token[], draft: StopDraft, names: KnownNames): void {
  const [number, length] = draft.pitches;
  const [first, last] = [area[0], area.at(-1)];
  if (!number || !first || !last || number.start < last.end) return;
  const isInterval = /^(?:12|15|17|19|22)$/.test(number.printed);
  const name = tidyName(text.slice(first.start, number.end));
  if (number.sure || !(length || isInterval) || !names.isPlainName(name)) return;
  draft.pitches.shift();
  area.push({ kind: "word", start: number.start, end: number.end, text: number.printed });
}

/** Whether the name means something else with the numeral behind it (`Vigesima II`), so that it counts no ranks. */
function isNumeralOfName(text: string, area: readonly Token[], numeral: Token, names: KnownNames): boolean {
  const whole = tidyName(wording(text, [...area, numeral]));
  if (!names.isPlainName(whole)) return false;
  const place = { pedal: false, pitch: null, ranks: null, base: null };
  return names.entry(whole, place)?.entry !== names.entry(tidyName(wording(text, area)), place)?.entry;
}

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
          // "8 bass grooved" talks about the lowest pipes.
          if (!token.mark.sure && run[index + 1]?.kind === "word") tail.push(token);
          else if (tail.length === 0)
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
        const next = run[index + 1]?.kind;
        // The last: "Cornetto I a due voci", the first of the name, of two ranks.
        const numbers = (next === "word" && !last) || next === "half" || next === "ranks";
        if (phase === "name" && token.mark.sign === "numeral" && (numbers || isNumeralOfName(text, area, token, names)))
          area.push(token);
        else {
          draft.ranks ??= token.mark;
          if (phase === "name") phase = "behind";
        }
        break;
      }
      case "pitch":
        draft.pitches.push(inPalms(token.mark, area));
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
  takeNumberOfName(text, area, draft, names);
  const pitchFirst = run.findIndex(isMark) >= 0 && run.findIndex(isMark) < run.findIndex(isName);
  const words = tidyName(wording(text, area));
  const palms = PALMS.exec(words);
  // "16 Fuß aus dem F angehend": a length and talk about it, printed under the name it belongs to.
  if (pitchFirst && /^\p{Ll}/u.test(words) && !names.knows(words)) draft.remarks.push(words);
  else
    nameFrom(
      text,
      area,
      draft,
      names,
      run.some((token) => isMark(token) && token.start >= (area.at(-1)?.end ?? 0)),
    );
  if (palms && draft.pitches.length === 0 && draft.aside.length === 0) {
    const printed = palms[1] as string;
    const { foot } = readPitch(`${printed} palmos`);
    if (foot) {
      draft.pitches.push({ start: draft.at, end: draft.at, printed, foot, choices: [], sure: true, sign: "" });
      draft.name = tidyName(draft.name.replace(PALMS, ""));
      draft.bareName = draft.name;
    }
  }
  takeUnusualLength(draft, names);
  return draft.name === "" ? { kind: "marks", draft } : { kind: "stop", draft };
}

/** "Octave 7": a figure behind a known name that is neither a usual length nor a usual label is a length to ask about. */
const UNUSUAL = /^(.{3,}) (5|7|9|10|11|18|20)$/u;

function takeUnusualLength(draft: StopDraft, names: KnownNames): void {
  const [, name = "", printed = ""] = UNUSUAL.exec(draft.name) ?? [];
  if (name === "" || hasMarks(draft) || names.isPlainName(draft.name) || !names.isPlainName(name)) return;
  const at = draft.at + draft.name.length - printed.length;
  draft.pitches.push({ start: at, end: at + printed.length, printed, foot: null, choices: [], sure: true, sign: "" });
  draft.name = name;
  draft.bareName = name;
}

/** A row of a stop has no more cells; looking cell by cell costs the square of their number. Ours, to bound time. */
const MOST_CELLS = 60;

/**
 * What a line without heading, number and bullet holds. Stops may stand one or many on it, their marks before or behind
 * their names; words that are neither a known name nor beside a mark come back as words, for the reader of the whole list.
 */
export function partsOfLine(text: string, names: KnownNames): readonly LinePart[] {
  const cells = text.split("\t");
  if (cells.length < 3 || cells.length > MOST_CELLS) return partsOfCell(text, names);
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

/** "Basso – 8": a word for a half that stands alone before its marks is the name of a stop. */
function namedByHalf(segments: readonly Segment[]): readonly Segment[] {
  const [first, second, ...others] = segments;
  const [only, ...more] = first?.tokens ?? [];
  const isName = only?.kind === "half" && more.length === 0 && !only.mark.sure && only.end - only.start > 2;
  if (!first || !second || !isName || !second.tokens.every(isMark) || !/^[-–—]$/.test(second.before)) return segments;
  return [{ tokens: [...first.tokens, ...second.tokens], before: first.before }, ...others];
}

/** "Flute 4, 12th, 15th": behind a stop that has its length, and is no compound, the figures are stops of their own. */
function ordinalStops(segment: Segment, text: string, previous: StopDraft, names: KnownNames): readonly LinePart[] {
  const [first, ...others] = segment.tokens;
  if (first?.kind !== "steps" || others.length > 0 || segment.before !== ",") return [];
  if (previous.pitches.length === 0 || previous.ranks !== null || names.isCompound(previous.name)) return [];
  const printed = text.slice(first.start, first.end);
  const ordinals = [...printed.matchAll(/\d{1,2}(?:th|nd|rd|st)/g)];
  if (ordinals.length === 0 || /\d/.test(printed.replace(/\d{1,2}(?:th|nd|rd|st)/g, ""))) return [];
  return ordinals.map((match) => {
    const at = first.start + match.index;
    return { kind: "stop", draft: { ...emptyDraft(at), name: match[0], bareName: match[0] } };
  });
}

/** "8 contras de 26": how many pipes, before the only stop whose pipes are counted so. Common practice. */
const COUNTED_CONTRAS = /^(\s*)(?:\d{1,2}|siete|ocho|diez|doce) (?=contras\b)/i;

/** "Sesquialtera bass & Cornet treble III": two half stops, and what is printed behind them holds for both. */
const HALVES_OF_TWO =
  /(\p{Lu}\p{L}+(?: \p{L}+)?) bass (?:&|and) (\p{Lu}\p{L}+(?: \p{L}+)? treble) ([IV]{1,4}|\d{1,2}(?: ?ranks?| ?ft|['’])?)(?=[.,;]|$)/gu;

/** "Bourdon 16ft 58": behind a length with its mark, more than any number of feet or ranks counts pipes. */
const PIPES = /(?<=\d ?(?:ft\.?|feet|['’′])\s+)(?!16$|32$)(?:1[2-9]|[2-9]\d)$/iu;

/** "Flautado de 12 tapado": Portuguese names count palms and go on behind them. */
const PORTUGUESE_PALMS = /(?<![\p{L}])(flautado) de (24|12|6) (tapado|aberto)(?![\p{L}])/iu;

function partsOfCell(printed: string, names: KnownNames): readonly LinePart[] {
  const text = printed
    .replace(PORTUGUESE_PALMS, "$1 $3 $2 palmos")
    .replace(PIPES, "")
    .replace(COUNTED_CONTRAS, (count) => " ".repeat(count.length))
    .replace(HALVES_OF_TWO, "$1 in the bass $3, $2 $3");
  const parts: LinePart[] = [];
  const lastStop = (): StopDraft | null => {
    const last = parts.at(-1);
    return last && last.kind !== "words" ? last.draft : null;
  };
  for (const segment of namedByHalf(segmentsOf(tokensOf(text)))) {
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
          previous.pitches.push(leading.mark);
          for (const token of segment.tokens)
            if (token.kind === "key") takeKey(previous, token.mark.key, token.mark.end_of);
        }
        previous.remarks.push(whole.trim());
      }
      continue;
    }
    const ordinals = previous ? ordinalStops(segment, text, previous, names) : [];
    if (ordinals.length > 0) {
      parts.push(...ordinals);
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
      draft.pitches.push(token.mark);
    } else if (token.kind === "ranks") draft.ranks ??= token.mark;
    else if (token.kind === "steps") draft.composition ??= token.mark.composition;
    else if (token.kind === "half") {
      // "Sesquialtera, Bass": set off by a comma, the word is no part of a name.
      const apart = segment.before === "," && token.end - token.start > 2;
      draft.half ??= { ...token.mark, sure: token.mark.sure || apart, partOfName: false };
    } else if (token.kind === "key") takeKey(draft, token.mark.key, token.mark.end_of);
    else if (token.kind === "bracket") readBracket(token, text, draft);
  }
  return true;
}
