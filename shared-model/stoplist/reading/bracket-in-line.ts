import { foldedSpelling } from "../glossary/spelling.ts";
import { divisionRole, rolesOfShort } from "./division-words.ts";
import { isKeyPhrase, keyAlone } from "./keys-in-line.ts";
import { type Token, tokensOf } from "./line-tokens.ts";
import { pitchAt } from "./pitches-in-line.ts";
import { type Remark, remarkIn } from "./remarks.ts";
import { isName } from "./runs-in-line.ts";
import { type StopDraft, takeKey } from "./stop-draft.ts";

/** A footnote's sign in square brackets, which some pages print behind every other word. */
const REFERENCE = /^(?:\d{1,2}|[a-z]|\*+|[†‡§])$/;

/** What a bracket behind a stop says: marks, whose pipes it uses, or talk. */
export function readBracket(token: Extract<Token, { kind: "bracket" }>, text: string, draft: StopDraft): void {
  const content = token.text.trim();
  const square = text[token.start] === "[";
  if (content === "" || /^[*†‡§]+$/.test(content)) return;
  const remark = isKeyPhrase(content) ? null : (remarkIn(content) ?? ofDivision(content));
  if (remark && (remark.borrowed !== null || remark.prepared)) {
    draft.borrowed ??= remark.borrowed;
    draft.prepared ||= remark.prepared;
    return;
  }
  // "(Sw., ext. Gedeckt)": a division, and what it lends.
  const [first = "", second = ""] = content.split(/,\s*/);
  if (second !== "" && ofDivision(first.replace(/\.$/, "")) && remarkIn(second)?.borrowed) {
    draft.borrowed ??= content;
    return;
  }
  for (const piece of content.split(/[;,](?!\d)/).map((one) => one.trim())) {
    if (square && REFERENCE.test(piece) && !/^\d/.test(piece)) continue;
    if (!readPiece(piece, draft) && !(square && REFERENCE.test(piece))) draft.remarks.push(piece);
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

/** What words behind the marks of a stop say. */
export function readTail(words: string, draft: StopDraft): void {
  const remark = remarkIn(words);
  if (remark) {
    draft.borrowed ??= remark.borrowed;
    draft.prepared ||= remark.prepared;
    draft.atPedal ||= remark.atPedal;
  } else draft.remarks.push(words.trim());
}
