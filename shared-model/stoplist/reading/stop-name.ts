import type { KnownNames } from "./known-names.ts";
import type { Token } from "./line-tokens.ts";
import { FORMER, REMARK_WORDS, remarkIn } from "./remarks.ts";
import type { StopDraft } from "./stop-draft.ts";

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

/** The words from one token to another as they stand in print, brackets left out. */
export function wording(text: string, tokens: readonly Token[]): string {
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

/** Whether words beside a mark can be a name: a known one, or a few that begin with a capital. */
export const looksLikeName = (words: string, names: KnownNames): boolean => {
  const name = tidyName(words);
  if (name === "") return false;
  if (names.knows(name)) return true;
  return /^[\p{Lu}\d"“„'’]/u.test(name) && /\p{L}{2}/u.test(name) && name.split(/\s+/).length <= 6;
};

const AT_PEDAL_END = /\s(?:al pedale|ai pedali|in pedale|al pedal|en el pedal|alla pedaliera)$/i;

const ARTICLE = /^(?:an?|one|eine?n?|une?|una|uno|een)\s+(?=\p{Lu})/iu;
const OF_MATERIAL =
  /\s(?:of|von|aus|en|de|di|van)\s((?:spotted |pure )?(?:metal|wood|oak|tin|lead|metall|holz|zinn|blei|étain|plomb|bois|étoffe|stagno|piombo|legno|metallo|hout|lood|metaal|madera|estaño))$/iu;

/** Contracts write "A Stopped Diapason of wood": article and material go where the name is known without them. */
function plainName(name: string, draft: StopDraft, names: KnownNames): string {
  const bare = name.replace(ARTICLE, "").replace(OF_MATERIAL, "");
  if (bare === name || names.isPlainName(name) || !names.knows(bare)) return name;
  const material = OF_MATERIAL.exec(name)?.[1];
  if (material !== undefined) draft.remarks.push(material);
  return bare;
}

/** Parts the name from a half at its end, or from a half that leads it (`Dessus de Flûte`). */
export function nameFrom(
  text: string,
  area: readonly Token[],
  draft: StopDraft,
  names: KnownNames,
  marked: boolean,
): void {
  const words = wording(text, area).trim();
  // A full stop between a name and its mark shortens the name ("Rohrfl. 8"); at the end of a line it ends a sentence.
  const tidy = tidyName(words);
  const shortened = marked && words.endsWith(`${tidy}.`) && /\p{L}\.$/u.test(words) ? `${tidy}.` : tidy;
  const printed = plainName(shortened, draft, names);
  const whole = AT_PEDAL_END.test(printed) ? tidyName(printed.replace(AT_PEDAL_END, "")) : printed;
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
export function isTalk(words: string, names: KnownNames): boolean {
  const name = tidyName(words);
  if (name === "") return false;
  if (FORMER.test(` ${words}`)) return true;
  if (remarkIn(words)) return true;
  const [first = ""] = name.split(/\s+/);
  if (REMARK_WORDS.has(first.toLowerCase())) return true;
  return /^\p{Ll}/u.test(name) && !names.knows(name);
}
