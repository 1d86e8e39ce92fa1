/** A word for one half of a divided stop, or for both. */
export interface HalfMark {
  readonly start: number;
  readonly end: number;
  readonly half: "bass" | "treble" | "both";
  /**
   * False for words that name pipes as well (`Bass`, `basse`, `B`): they mean a half only where the division has the
   * other one, and never in a pedal.
   */
  readonly sure: boolean;
  /** English knobs carry the word as part of the name (`Stopped Diapason Treble`). */
  readonly partOfName: boolean;
}

const BOTH =
  /(?:\(?(?:b(?:ass|aß|as|asse|assi|ajos?|\.)?) ?(?:\/|\+|&|-|und|en|et|and|e|y|u\.) ?(?:d(?:is[ck]ant|is[ck]\.?|escant|essus|isc|isk|\.)?|treble|t(?:iples?)?\.?|s(?:opr(?:ani|\.)?|\.))|(?:d(?:is[ck]ant|essus|escant)|treble|tiples?|soprani) ?(?:\/|\+|&|-|und|en|et|and|e|y|u\.) ?(?:bass|baß|bas|basse|bassi|bajos?)|b\. ?(?:s|d)\.|m\. ?i\. ?(?:y|\/) ?m\. ?d\.|m\. ?d\. ?(?:y|\/) ?m\. ?i\.|ambas manos|beide hälften|bas en disc\.)(?![\p{L}'’])/iuy;
const DIVIDED = /(?:divided|geteilt|gedeeld|deelbaar|spezzat[oaie]|coupée?s?|partid[oa]s?|halbiert|delt)(?![\p{L}])/iuy;
const TREBLE =
  /(?:im |in |nel |nei |ne |en |dans le |from the )?(?:d[ei]s[ck]ant(?:us|is|en|e|seite)?|disc\.|disk\.|soprani|soprana|soprane|soprano|sopr\.|sopran|tiples?|mano derecha|mão direita|mao direita|m\. ?d\.|mano destra|ma ?no dr?\.|treble|dessus|superius|cantus|derecha|right hand)(?![\p{L}])/iuy;
const BASS =
  /(?:im |in |nel |nei |en |dans la )?(?:bassi|bajos?|mano izquierda|mão esquerda|mao esquerda|m\. ?i\.|mano sinistra|izquierda|bass half|left hand)(?![\p{L}])/iuy;
const EITHER_BASS = /(?:im |in |in the )?(?:bass|baß|bas|basse|basso|bassus)(?![\p{L}])/iuy;
const LETTER = /([BDS])(?:\.|(?=[\s,;)\]]|$))(?!\s?\p{Lu}?\p{Ll}{3})/uy;
const SMALL_LETTER = /([bds])\.(?=[\s,;)\]]|$)(?!\s?\p{Lu}\p{Ll}{2})/uy;

/** The half that a line names which holds nothing else (`Mano derecha:`), or `null`. */
export function halfTitle(text: string): { readonly half: "bass" | "treble"; readonly sure: boolean } | null {
  const words = text.replace(/[\s:.]+$/, "").replace(/\s*\([^()]*\)$/, "");
  const mark = words.length > 2 ? halfAt(words, 0) : null;
  if (!mark || mark.end !== words.length || mark.half === "both") return null;
  return { half: mark.half, sure: mark.sure };
}

const at = (pattern: RegExp, text: string, start: number): RegExpExecArray | null => {
  pattern.lastIndex = start;
  return pattern.exec(text);
};

/** The word for a half that begins at `start` (a word's beginning), or `null`. */
export function halfAt(text: string, start: number): HalfMark | null {
  const found = (match: RegExpExecArray, half: HalfMark["half"], sure: boolean, partOfName = false): HalfMark => ({
    start,
    end: start + match[0].length,
    half,
    sure,
    partOfName,
  });
  const both = at(BOTH, text, start) ?? at(DIVIDED, text, start);
  if (both) return found(both, "both", true);
  const treble = at(TREBLE, text, start);
  if (treble) return found(treble, "treble", true, treble[0] === "Treble" || /^cantus$/i.test(treble[0]));
  const bass = at(BASS, text, start);
  if (bass) return found(bass, "bass", true);
  const either = at(EITHER_BASS, text, start);
  if (either) return found(either, "bass", /^in|^im/i.test(either[0]), either[0] === "Bass");
  const letter = at(LETTER, text, start) ?? at(SMALL_LETTER, text, start);
  if (letter) return found(letter, /b/i.test(letter[1] as string) ? "bass" : "treble", letter[0].endsWith("."));
  return null;
}
